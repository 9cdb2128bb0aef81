package photo

import "encoding/binary"

// openWebP returns the profile of a WebP and which side of it is up (RFC 9649). It
// is never published itself: all that can show it can show what is made of it.
func openWebP(data []byte) (profile []byte, up int) {
	up = 1
	for at := 12; at+8 <= len(data); {
		end := int64(at) + 8 + int64(binary.LittleEndian.Uint32(data[at+4:]))
		if end > int64(len(data)) {
			break
		}
		switch words := data[at+8 : end]; string(data[at : at+4]) {
		case "ICCP":
			if len(words) <= mostProfile {
				profile = words
			}
		case "EXIF":
			if len(words) > len(exifName) && string(words[:len(exifName)]) == exifName {
				words = words[len(exifName):]
			}
			up = upOf(words)
		}
		at = int(end + end&1)
	}
	return profile, up
}
