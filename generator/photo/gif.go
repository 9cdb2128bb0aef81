package photo

import "bytes"

// The marks of GIF (version 89a).
const (
	gifImage, gifExtension, gifEnd = 0x2c, 0x21, 0x3b
	gifComment, gifProgram         = 0xfe, 0xff
)

func plainGIF(data []byte) ([]byte, error) {
	if len(data) < 13 {
		return nil, ErrDamaged
	}
	at := 13 + coloursOf(data[10])
	plain := make([]byte, 0, len(data))
	plain = append(plain, data[:min(at, len(data))]...)
	for at < len(data) {
		end, kept := at, true
		switch data[at] {
		case gifEnd:
			return append(plain, gifEnd), nil
		case gifImage:
			if at+10 > len(data) {
				return nil, ErrDamaged
			}
			end = blocksEnd(data, at+11+coloursOf(data[at+9]))
		case gifExtension:
			if at+2 > len(data) {
				return nil, ErrDamaged
			}
			end = blocksEnd(data, at+2)
			repeats := bytes.HasPrefix(data[at+2:], []byte("\x0bNETSCAPE2.0"))
			kept = data[at+1] != gifComment && (data[at+1] != gifProgram || repeats)
		}
		if end <= at || end > len(data) {
			return nil, ErrDamaged
		}
		if kept {
			plain = append(plain, data[at:end]...)
		}
		at = end
	}
	return nil, ErrDamaged
}

// coloursOf returns the length of the table of colours that a flag announces.
func coloursOf(flags byte) int {
	if flags&0x80 == 0 {
		return 0
	}
	return 3 << (flags&7 + 1)
}

// blocksEnd returns where the blocks that begin at an offset end, past the end
// of data where they do not.
func blocksEnd(data []byte, at int) int {
	for at < len(data) && data[at] != 0 {
		at += 1 + int(data[at])
	}
	return at + 1
}
