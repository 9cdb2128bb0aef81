package finding

import "bytes"

// Lines turns byte offsets of one file into lines and columns. It is made
// when the first finding of a file needs it; nothing pays for it before.
type Lines struct{ starts []int }

// NewLines notes where each line of src starts.
func NewLines(src []byte) *Lines {
	starts := []int{0}
	for at := 0; ; {
		n := bytes.IndexByte(src[at:], '\n')
		if n < 0 {
			return &Lines{starts}
		}
		at += n + 1
		starts = append(starts, at)
	}
}

// At gives the 1-based line and byte column of offset. An offset below zero
// (unknown) is 1:1.
func (l *Lines) At(offset int) (line, column int) {
	if offset < 0 {
		return 1, 1
	}
	low, high := 0, len(l.starts)
	for high-low > 1 {
		mid := (low + high) / 2
		if l.starts[mid] <= offset {
			low = mid
		} else {
			high = mid
		}
	}
	return low + 1, offset - l.starts[low] + 1
}
