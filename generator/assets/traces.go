//go:build !carried

package assets

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// A Go program carries what it prints when it dies: the name of each function,
// its file, the line of each instruction, the place of its arguments. Nobody ever
// reads that here, since a page throws away what the calculators print (fd_write
// in the theme's scripts), and it is a tenth of what is sent. It stands among the
// tables by which the runtime finds its way through its stack, which stay; and a
// few of the names the runtime reads itself.
//
// What the tables look like is the runtime's own affair. So every number is held
// against the others before it is trusted, and where one does not fit the module
// stays as it was: larger, never wrong.

// tablesMagic begins the tables of functions, as Go writes them from 1.20 on
// where addresses have eight bytes (internal/abi/symtab.go).
const tablesMagic = "\xf1\xff\xff\xff\x00\x00\x01\x08"

// Where things stand in the header behind that (runtime/symtab.go, pcHeader),
// and in the record of a function (runtime/runtime2.go, _func).
const (
	atCount, atNames, atUnits, atSteps, atRecords = 8, 32, 40, 56, 64

	ofName, ofStack, ofFile, ofLine, ofSteps, ofUnit, ofStart, ofSpecial, ofData, ofAll = 4, 16, 20, 24, 28, 32, 36, 40, 43, 44

	ofArguments = 5 // among the data that a function has
	noData      = 0xffffffff
)

// The names that are left: none, and one for functions of the runtime, by which
// it tells its own goroutines (isSystemGoroutine). What it treats specially,
// wrappers of methods among it, keeps its name (panicwrap).
const (
	runtimePrefix = "runtime."
	namesLeft     = "\x00" + runtimePrefix + "\x00"
	noName        = 0
	runtimeName   = 1
)

// untraced is the same module without what is printed only when it dies. It
// wants the segments joined.
func untraced(module []byte) []byte { return laid(module, withoutTraces) }

func withoutTraces(segments []segment) []segment {
	for i, s := range segments {
		if at := bytes.Index(s.data, []byte(tablesMagic)); at >= 0 {
			t := &tables{all: slices.Clone(s.data[at:])}
			if t.clear(); !t.bad {
				segments[i].data = append(s.data[:at:at], t.all...)
			}
		}
	}
	return segments
}

// tables are the tables of functions, and what stays of those that are cleared.
type tables struct {
	all                          []byte // from the header on; holds the others
	names, units, steps, records []byte
	namesLeft, stepsLeft         []byte
	bad                          bool // something is not as it should be
}

// clear clears what is only printed.
func (t *tables) clear() {
	names, units, steps, records := t.long(atNames), t.long(atUnits), t.long(atSteps), t.long(atRecords)
	if t.bad = t.bad || !slices.IsSorted([]int{len(namesLeft), names, units, steps, records, len(t.all)}); t.bad {
		return
	}
	t.names, t.units, t.steps, t.records = t.all[names:units], t.all[units:steps], t.all[steps:records], t.all[records:]
	t.namesLeft, t.stepsLeft = make([]byte, len(t.names)), make([]byte, len(t.steps))
	copy(t.namesLeft, namesLeft)
	count := t.long(atCount)
	if list := 8*count + 4; t.word(t.records, 4) != (list+7)&^7 { // the first record follows the list
		t.bad = true
	}
	for i := 0; i < count && !t.bad; i++ {
		t.strip(t.record(i))
	}
	copy(t.names, t.namesLeft)
	clear(t.units)
	copy(t.steps, t.stepsLeft)
}

// record returns the record of a function, of which the first number, where its
// code begins, stands in the list of records too. It is blank where the table is
// not as it should be.
func (t *tables) record(i int) []byte {
	from := t.word(t.records, 8*i+4)
	size := ofAll + 4*t.word(t.records, from+ofSteps) + 4*int(t.byte(t.records, from+ofData))
	if t.bad = t.bad || from+size > len(t.records) || t.word(t.records, 8*i) != t.word(t.records, from); t.bad {
		return make([]byte, ofAll)
	}
	return t.records[from : from+size]
}

// strip takes out of a function's record what is only printed, and keeps the
// steps that it needs.
func (t *tables) strip(record []byte) {
	t.rename(record)
	for _, of := range []int{ofFile, ofLine, ofUnit, ofStart} {
		binary.LittleEndian.PutUint32(record[of:], 0)
	}
	t.keep(t.word(record, ofStack))
	data := ofAll + 4*t.word(record, ofSteps)
	for of := ofAll; of < data; of += 4 {
		t.keep(t.word(record, of))
	}
	if of := data + 4*ofArguments; of < len(record) {
		binary.LittleEndian.PutUint32(record[of:], noData)
	}
}

// rename gives a function one of the names that are left.
func (t *tables) rename(record []byte) {
	at := t.word(record, ofName)
	name, _, ended := bytes.Cut(t.names[min(at, len(t.names)):], []byte{0})
	special := record[ofSpecial] != 0
	if t.bad = t.bad || !ended || at > 0 && t.names[at-1] != 0 || special && at < len(namesLeft); t.bad {
		return
	}
	switch {
	case special:
		copy(t.namesLeft[at:], name)
		return
	case bytes.HasPrefix(name, []byte(runtimePrefix)):
		at = runtimeName
	default:
		at = noName
	}
	binary.LittleEndian.PutUint32(record[ofName:], uint32(at))
}

// keep keeps the list of steps at a place: pairs of numbers, ended by a zero
// where no first pair begins. At place 0 there is none.
func (t *tables) keep(from int) {
	for at := from; from > 0; {
		value, n := binary.Uvarint(t.steps[min(at, len(t.steps)):])
		if value == 0 && n > 0 && at > from {
			copy(t.stepsLeft[from:], t.steps[from:at])
			return
		}
		_, m := binary.Uvarint(t.steps[min(at+max(n, 0), len(t.steps)):])
		if n <= 0 || m <= 0 {
			t.bad = true
			return
		}
		at += n + m
	}
}

// long reads a number of eight bytes in the header.
func (t *tables) long(at int) int {
	return t.word(t.all, at) | t.word(t.all, at+4)<<32
}

// word reads a number of four bytes.
func (t *tables) word(part []byte, at int) int {
	if at < 0 || at+4 > len(part) {
		t.bad = true
		return 0
	}
	return int(binary.LittleEndian.Uint32(part[at:]))
}

// byte reads one byte.
func (t *tables) byte(part []byte, at int) byte {
	if at < 0 || at >= len(part) {
		t.bad = true
		return 0
	}
	return part[at]
}
