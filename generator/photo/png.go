package photo

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"io"
	"slices"
)

// keptOfPNG are the chunks (W3C PNG, third edition) that say how the picture
// looks. Whatever else stands in a file is words, times, or not for showing.
var keptOfPNG = []string{"IHDR", "PLTE", "IDAT", "IEND", "tRNS", "cHRM", "gAMA", "sBIT", "sRGB", "cICP", "mDCV", "cLLI", "bKGD", "pHYs", "acTL", "fcTL", "fdAT"}

const pngHead = "\x89PNG\r\n\x1a\n"

// pngFile is a PNG taken apart.
type pngFile struct {
	kept    [][]byte // its head and the chunks needed to show it, without its profile
	profile []byte   // nil when it has none
	header  []byte   // the words of IHDR
	up      int
}

func openPNG(data []byte) (*pngFile, error) {
	if len(data) < len(pngHead) {
		return nil, ErrDamaged
	}
	p := &pngFile{kept: [][]byte{data[:len(pngHead)]}, up: 1}
	for at := len(pngHead); at+12 <= len(data); {
		end := at + 12 + int(binary.BigEndian.Uint32(data[at:]))
		if end > len(data) || end < at {
			return nil, ErrDamaged
		}
		name, words := string(data[at+4:at+8]), data[at+8:end-4]
		switch {
		case slices.Contains(keptOfPNG, name):
			p.kept = append(p.kept, data[at:end])
		case name == "iCCP":
			p.profile = unpackProfile(words)
		case name == "eXIf":
			p.up = upOf(words)
		}
		if name == "IHDR" {
			p.header = words
		}
		if name == "IEND" {
			return p, nil
		}
		at = end
	}
	return nil, ErrDamaged
}

// whole returns the file as it is published without being made anew.
func (p *pngFile) whole() []byte {
	return slices.Concat(slices.Concat(p.kept[:2]...), profileChunk(shownProfile(p.profile, p.colours())), slices.Concat(p.kept[2:]...))
}

// colours is what a profile calls the colours of the picture.
func (p *pngFile) colours() string {
	if len(p.header) > 9 && p.header[9]&2 == 0 {
		return "GRAY"
	}
	return "RGB "
}

// bytesPerPoint is how many bytes of memory the points take, in halves of a byte.
func (p *pngFile) bytesPerPoint() int64 {
	if len(p.header) < 13 {
		return 0
	}
	half := int64(8)
	switch {
	case p.header[8] == 16:
		half = 24 // the eight bytes of a point, and the four that are made of them
	case p.header[9] == 3:
		half = 10 // the number of a colour, and the colour
	}
	if p.header[12] != 0 { // interlaced: a part of it stands beside the whole
		half = half * 3 / 2
	}
	return half
}

// unpackProfile returns the profile in a chunk, nil where it is damaged.
func unpackProfile(words []byte) []byte {
	_, packed, ok := bytes.Cut(words, []byte{0})
	if !ok || len(packed) < 1 || packed[0] != 0 {
		return nil
	}
	r, err := zlib.NewReader(bytes.NewReader(packed[1:]))
	if err != nil {
		return nil
	}
	profile, err := io.ReadAll(io.LimitReader(r, mostProfile+1))
	if err != nil || len(profile) > mostProfile {
		return nil
	}
	return profile
}

// profileChunk is a chunk with a profile; empty without one.
func profileChunk(profile []byte) []byte {
	if profile == nil {
		return nil
	}
	packed := bytes.NewBufferString("iCCPcolour\x00\x00")
	w := zlib.NewWriter(packed)
	_, _ = w.Write(profile) // into memory
	_ = w.Close()
	chunk := binary.BigEndian.AppendUint32(nil, uint32(packed.Len()-4))
	chunk = append(chunk, packed.Bytes()...)
	return binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(packed.Bytes()))
}
