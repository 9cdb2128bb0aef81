//go:build !carried

package assets

import (
	"encoding/binary"
	"slices"
)

// The linker leaves every run of eight zeros out of the memory that a module
// begins with, and writes what stands between two such runs as a segment of its
// own with its address. That makes the file smaller, and what is sent larger:
// most segments of the calculators hold two bytes, and while a run of zeros
// packs to nearly nothing, forty thousand addresses do not.

// gap is the longest run of zeros between two segments that is written out.
const gap = 256

// The parts of a module that matter here (WebAssembly core specification 1.0, section 5.5).
const (
	moduleHeader    = "\x00asm\x01\x00\x00\x00"
	dataSection     = 11
	dataCount       = 12         // from version 2 on: the number of segments, which may be named by it
	dataSegment     = "\x00\x41" // in memory 0, at the constant address that follows
	endOfExpression = "\x0b"
)

// segment is a piece of the memory that a module begins with.
type segment struct {
	address uint64
	data    []byte
}

// joined is the same module with segments that lie close together joined into
// one. A module that it cannot read it gives back as it is.
func joined(module []byte) []byte { return laid(module, closer) }

// laid is the same module with other segments in its memory. A module that it
// cannot read it gives back as it is.
func laid(module []byte, other func([]segment) []segment) []byte {
	in := &sections{rest: module}
	in.skip(moduleHeader)
	out := []byte(moduleHeader)
	for len(in.rest) > 0 && !in.bad {
		id, body := in.bytes(1), in.bytes(in.number())
		if !in.bad && id[0] == dataSection {
			data := &sections{rest: body}
			body = written(other(data.segments()))
			in.bad = data.bad
		}
		out = append(out, id...)
		out = binary.AppendUvarint(out, uint64(len(body)))
		out = append(out, body...)
	}
	if in.bad {
		return module
	}
	return out
}

// closer joins segments that follow one another with a gap at most between them.
func closer(segments []segment) []segment {
	var list []segment
	for _, s := range segments {
		if len(list) > 0 {
			last := &list[len(list)-1]
			end := last.address + uint64(len(last.data))
			if s.address >= end && s.address-end <= gap {
				last.data = append(append(last.data, make([]byte, s.address-end)...), s.data...)
				continue
			}
		}
		list = append(list, segment{s.address, slices.Clone(s.data)})
	}
	return list
}

// written is the body of a data section.
func written(segments []segment) []byte {
	out := binary.AppendUvarint(nil, uint64(len(segments)))
	for _, s := range segments {
		out = append(out, dataSegment...)
		out = appendAddress(out, s.address)
		out = append(out, endOfExpression...)
		out = binary.AppendUvarint(out, uint64(len(s.data)))
		out = append(out, s.data...)
	}
	return out
}

// appendAddress writes a number as WebAssembly writes signed ones: in the last
// byte the second bit from the top is the sign.
func appendAddress(out []byte, n uint64) []byte {
	out = binary.AppendUvarint(out, n)
	if last := len(out) - 1; out[last]&0x40 != 0 {
		out[last] |= 0x80
		out = append(out, 0)
	}
	return out
}

// sections reads parts of a module in order and remembers whether one is not as
// it should be.
type sections struct {
	rest []byte
	bad  bool
}

// segments reads the body of a data section.
func (s *sections) segments() []segment {
	var list []segment
	for n := s.number(); n > 0 && !s.bad; n-- {
		s.skip(dataSegment)
		address := s.address()
		s.skip(endOfExpression)
		list = append(list, segment{address, s.bytes(s.number())})
	}
	s.bad = s.bad || len(s.rest) > 0
	return list
}

// address reads a number with a sign, which must not be negative.
func (s *sections) address() uint64 {
	from := s.rest
	n := s.number()
	if used := len(from) - len(s.rest); used > 0 && from[used-1]&0x40 != 0 {
		s.bad = true
	}
	return n
}

// number reads a number without a sign.
func (s *sections) number() uint64 {
	n, size := binary.Uvarint(s.rest)
	if size <= 0 {
		s.bad = true
		return 0
	}
	s.rest = s.rest[size:]
	return n
}

// bytes takes the next n bytes; none where there are fewer.
func (s *sections) bytes(n uint64) []byte {
	if s.bad || n > uint64(len(s.rest)) {
		s.bad = true
		return nil
	}
	taken := s.rest[:n]
	s.rest = s.rest[n:]
	return taken
}

// skip takes bytes that must stand here.
func (s *sections) skip(want string) { s.bad = string(s.bytes(uint64(len(want)))) != want || s.bad }
