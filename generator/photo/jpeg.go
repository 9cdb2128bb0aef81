package photo

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// The marks of JPEG (ITU-T T.81) that matter here.
const (
	jpegStart, jpegEnd, jpegScan          = 0xd8, 0xd9, 0xda
	jpegRestart                           = 0xd0 // to 0xd7
	jpegApp, jpegExif, jpegICC, jpegAdobe = 0xe0, 0xe1, 0xe2, 0xee
	jpegComment                           = 0xfe
	jpegProgressive                       = 0xc2
)

const (
	exifName = "Exif\x00\x00"
	iccName  = "ICC_PROFILE\x00"
)

// jpegFile is a JPEG taken apart.
type jpegFile struct {
	kept        [][]byte // what is needed to show it, in order, without its profile
	profile     []byte   // of its colours, nil when it has none
	frame       []byte   // the segment that says its size
	up          int
	progressive bool
}

// openJPEG takes a JPEG apart. What stands behind its end is left out.
func openJPEG(data []byte) (*jpegFile, error) {
	if len(data) < 4 || data[0] != 0xff || data[1] != jpegStart {
		return nil, ErrDamaged
	}
	j := &jpegFile{kept: [][]byte{data[:2]}, up: 1}
	scanned := false
	for at := 2; at+2 <= len(data); {
		mark := data[at+1]
		switch {
		case data[at] != 0xff:
			return nil, ErrDamaged
		case mark == 0xff: // a filling byte
			at++
			continue
		case mark == jpegEnd && scanned:
			j.kept = append(j.kept, data[at:at+2])
			return j, nil
		case at+4 > len(data):
			return nil, ErrDamaged
		}
		end := at + 2 + int(binary.BigEndian.Uint16(data[at+2:]))
		if end > len(data) || end < at+4 {
			return nil, ErrDamaged
		}
		if mark == jpegScan {
			end, scanned = scanEnd(data, end), true
		}
		j.segment(data[at:end])
		at = end
	}
	return nil, ErrDamaged
}

// segment takes what a segment says.
func (j *jpegFile) segment(segment []byte) {
	mark, words := segment[1], segment[4:]
	switch {
	case mark == jpegExif && bytes.HasPrefix(words, []byte(exifName)):
		j.up = upOf(words[len(exifName):])
	case mark == jpegICC && bytes.HasPrefix(words, []byte(iccName)) && len(words) > len(iccName)+2:
		if len(j.profile) < mostProfile {
			j.profile = append(j.profile, words[len(iccName)+2:]...) // after its number, and how many there are
		}
	case keptOfJPEG(mark, words):
		j.kept = append(j.kept, segment)
	}
	if mark&^15 == 0xc0 && mark != 0xc4 && mark != 0xc8 && mark != 0xcc && j.frame == nil {
		j.frame, j.progressive = words, mark == jpegProgressive
	}
}

// keptOfJPEG reports whether a segment is needed to show the picture.
func keptOfJPEG(mark byte, words []byte) bool {
	switch {
	case mark == jpegApp:
		return bytes.HasPrefix(words, []byte("JFIF\x00"))
	case mark == jpegAdobe:
		return bytes.HasPrefix(words, []byte("Adobe"))
	case mark&^15 == jpegApp, mark == jpegComment:
		return false
	}
	return true
}

// whole returns the file as it is published without being made anew: no point
// of it is changed.
func (j *jpegFile) whole() []byte {
	first, rest := j.kept[:1], j.kept[1:]
	if len(rest) > 0 && rest[0][1] == jpegApp { // JFIF stands first
		first, rest = j.kept[:2], j.kept[2:]
	}
	return slices.Concat(slices.Concat(first...), profileSegment(shownProfile(j.profile, "RGB ")), slices.Concat(rest...))
}

// planes returns how many planes of colour the picture has, and whether the two
// of colour have half the points each way, as cameras write them.
func (j *jpegFile) planes() (n int, halved bool) {
	if len(j.frame) < 6 || len(j.frame) < 6+3*int(j.frame[5]) {
		return 0, false
	}
	n = int(j.frame[5])
	return n, n == 3 && j.frame[7] == 0x22 && j.frame[10] == 0x11 && j.frame[13] == 0x11
}

// bytesPerPoint is how many bytes of memory the decoder takes for each point; a
// progressive picture is held in whole numbers of four bytes until its end.
func (j *jpegFile) bytesPerPoint() (per2 int64) {
	n, halved := j.planes()
	half := int64(2 * n) // in halves of a byte
	if halved {
		half = 3
	}
	if n == 4 {
		half += 8 // turned into red, green and blue
	}
	if j.progressive {
		half *= 5
	}
	return half
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

// upOf returns which side of a photo is up, from 1 (as it lies) to 8, as its Exif
// says (CIPA DC-008, tag 274); 1 where that says nothing.
func upOf(tiff []byte) int {
	if len(tiff) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if string(tiff[:2]) == "II" {
		order = binary.LittleEndian
	}
	first := int64(order.Uint32(tiff[4:]))
	if first < 8 || first+2 > int64(len(tiff)) {
		return 1
	}
	entries := tiff[first+2:]
	for range order.Uint16(tiff[first:]) {
		if len(entries) < 12 {
			return 1
		}
		if order.Uint16(entries) == 0x112 {
			if up := int(order.Uint16(entries[8:])); up >= 1 && up <= 8 {
				return up
			}
			return 1
		}
		entries = entries[12:]
	}
	return 1
}
