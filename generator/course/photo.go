package course

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

// What a camera or a program writes into a picture beside its points is taken
// out when it is published: the place where a photo was taken, the camera, the
// hour, words, a smaller picture of the whole, a film behind it. A phone writes
// all of that into every photo, and nobody who takes one at the bench would go
// and take it out again. The file in the content folder stays as it is, and no
// point of the picture is changed. Colour profiles stay, and so does the one
// word of a photo that says which side is up.

// errDamaged is the error for a file whose parts do not fit together.
var errDamaged = errors.New("damaged")

// plainPicture returns a picture of a kind without what is not seen, and whether
// its width and height are to be swapped when it is shown.
func plainPicture(kind string, data []byte) (plain []byte, onItsSide bool, err error) {
	switch kind {
	case "jpeg":
		return plainJPEG(data)
	case "png":
		plain, err = plainPNG(data)
	case "gif":
		plain, err = plainGIF(data)
	}
	return plain, false, err
}

// The marks of JPEG (ITU-T T.81) that matter here.
const (
	jpegStart, jpegEnd, jpegScan          = 0xd8, 0xd9, 0xda
	jpegRestart                           = 0xd0 // to 0xd7
	jpegApp, jpegExif, jpegICC, jpegAdobe = 0xe0, 0xe1, 0xe2, 0xee
	jpegComment                           = 0xfe
)

func plainJPEG(data []byte) (plain []byte, onItsSide bool, err error) {
	if len(data) < 4 || data[0] != 0xff || data[1] != jpegStart {
		return nil, false, errDamaged
	}
	plain = append(make([]byte, 0, len(data)), data[:2]...)
	scanned := false
	for at := 2; at+2 <= len(data); {
		mark := data[at+1]
		switch {
		case data[at] != 0xff:
			return nil, false, errDamaged
		case mark == 0xff: // a filling byte
			at++
			continue
		case mark == jpegEnd && scanned:
			return append(plain, data[at:at+2]...), onItsSide, nil
		case at+4 > len(data):
			return nil, false, errDamaged
		}
		end := at + 2 + int(binary.BigEndian.Uint16(data[at+2:]))
		if end > len(data) || end < at+4 {
			return nil, false, errDamaged
		}
		if mark == jpegScan {
			end, scanned = scanEnd(data, end), true
		}
		segment := data[at:end]
		if up := upOf(segment); up > 1 {
			plain = append(plain, exifOf(up)...)
			onItsSide = up > 4
		} else if keptOfJPEG(segment) {
			plain = append(plain, segment...)
		}
		at = end
	}
	return nil, false, errDamaged
}

// scanEnd returns where the points that begin at an offset end: at the next mark
// that is none of theirs.
func scanEnd(data []byte, at int) int {
	for at+1 < len(data) {
		n := bytes.IndexByte(data[at:], 0xff)
		if n < 0 || at+n+1 >= len(data) {
			return len(data)
		}
		at += n
		switch next := data[at+1]; {
		case next == 0xff: // a filling byte
			at++
		case next == 0, next&^7 == jpegRestart:
			at += 2
		default:
			return at
		}
	}
	return len(data)
}

// keptOfJPEG reports whether a segment is needed to show the picture.
func keptOfJPEG(segment []byte) bool {
	is := func(name string) bool { return bytes.HasPrefix(segment[4:], []byte(name)) }
	switch mark := segment[1]; {
	case mark == jpegApp:
		return is("JFIF\x00")
	case mark == jpegICC:
		return is("ICC_PROFILE\x00")
	case mark == jpegAdobe:
		return is("Adobe")
	case mark&^15 == jpegApp, mark == jpegComment:
		return false
	}
	return true
}

const exifName = "Exif\x00\x00"

// upOf returns which side of a photo is up, from 1 (as it lies) to 8, as a
// segment of Exif says (CIPA DC-008, tag 274); 0 of any other segment, and of
// one that says nothing.
func upOf(segment []byte) int {
	if segment[1] != jpegExif || len(segment) < 18 || string(segment[4:10]) != exifName {
		return 0
	}
	tiff := segment[10:]
	var order binary.ByteOrder = binary.BigEndian
	if string(tiff[:2]) == "II" {
		order = binary.LittleEndian
	}
	first := int(order.Uint32(tiff[4:]))
	if first < 8 || first+2 > len(tiff) {
		return 0
	}
	entries := tiff[first+2:]
	for range order.Uint16(tiff[first:]) {
		if len(entries) < 12 {
			return 0
		}
		if order.Uint16(entries) == 0x112 {
			if up := int(order.Uint16(entries[8:])); up <= 8 {
				return up
			}
			return 0
		}
		entries = entries[12:]
	}
	return 0
}

// exifOf returns a segment that says nothing but which side is up.
func exifOf(up int) []byte {
	return slices.Concat([]byte{0xff, jpegExif, 0, 34}, []byte(exifName), []byte("MM\x00\x2a\x00\x00\x00\x08"),
		[]byte{0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, byte(up), 0, 0, 0, 0, 0, 0})
}

// keptOfPNG are the chunks (W3C PNG, third edition) that say how the picture
// looks. Whatever else stands in a file is words, times, or not for showing.
var keptOfPNG = []string{"IHDR", "PLTE", "IDAT", "IEND", "tRNS", "cHRM", "gAMA", "iCCP", "sBIT", "sRGB", "cICP", "mDCV", "cLLI", "bKGD", "pHYs", "acTL", "fcTL", "fdAT"}

func plainPNG(data []byte) ([]byte, error) {
	const head = 8
	if len(data) < head {
		return nil, errDamaged
	}
	plain := append(make([]byte, 0, len(data)), data[:head]...)
	for at := head; at+12 <= len(data); {
		end := at + 12 + int(binary.BigEndian.Uint32(data[at:]))
		if end > len(data) || end < at {
			return nil, errDamaged
		}
		name := string(data[at+4 : at+8])
		if slices.Contains(keptOfPNG, name) {
			plain = append(plain, data[at:end]...)
		}
		if name == "IEND" {
			return plain, nil
		}
		at = end
	}
	return nil, errDamaged
}

// The marks of GIF (version 89a).
const (
	gifImage, gifExtension, gifEnd = 0x2c, 0x21, 0x3b
	gifComment, gifProgram         = 0xfe, 0xff
)

func plainGIF(data []byte) ([]byte, error) {
	if len(data) < 13 {
		return nil, errDamaged
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
				return nil, errDamaged
			}
			end = blocksEnd(data, at+11+coloursOf(data[at+9]))
		case gifExtension:
			if at+2 > len(data) {
				return nil, errDamaged
			}
			end = blocksEnd(data, at+2)
			repeats := bytes.HasPrefix(data[at+2:], []byte("\x0bNETSCAPE2.0"))
			kept = data[at+1] != gifComment && (data[at+1] != gifProgram || repeats)
		}
		if end <= at || end > len(data) {
			return nil, errDamaged
		}
		if kept {
			plain = append(plain, data[at:end]...)
		}
		at = end
	}
	return nil, errDamaged
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
