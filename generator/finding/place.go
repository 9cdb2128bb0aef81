package finding

import (
	"bytes"
	"unicode/utf8"
)

// Lines turns byte offsets of one file into lines and columns. It is made
// when the first finding of a file needs it; nothing pays for it before.
type Lines struct {
	src    []byte
	starts []int // offset of the first byte of each line
}

// NewLines notes where each line of src starts. A line ends with "\n", so "\r\n"
// counts once. NewLines keeps src, which must not change afterwards.
func NewLines(src []byte) *Lines {
	starts := make([]int, 1, 1+bytes.Count(src, []byte("\n")))
	for at := 0; ; {
		n := bytes.IndexByte(src[at:], '\n')
		if n < 0 {
			return &Lines{src, starts}
		}
		at += n + 1
		starts = append(starts, at)
	}
}

// At returns the 1-based line and the 1-based column, in characters, of offset.
// An offset below zero (unknown) is 1:1, one past the end is the place after
// the last character, one inside a character is that character's. Bytes that
// are not UTF-8 count as a character each.
func (l *Lines) At(offset int) (line, column int) {
	if offset < 0 {
		return 1, 1
	}
	offset = min(offset, len(l.src))
	low, high := 0, len(l.starts)
	for high-low > 1 {
		mid := (low + high) / 2
		if l.starts[mid] <= offset {
			low = mid
		} else {
			high = mid
		}
	}
	start := l.starts[low]
	for column = 1; ; column++ {
		_, size := utf8.DecodeRune(l.src[start:])
		if start+max(size, 1) > offset {
			return low + 1, column
		}
		start += size
	}
}
