package course

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"
	"slices"
	"testing"
	"testing/fstest"
)

// secret stands in every place where a picture can hold what is not seen.
const secret = "54.3 N 9.7 E, kiln room"

// segment makes a segment of a JPEG.
func segment(mark byte, words string) []byte {
	return append(binary.BigEndian.AppendUint16([]byte{0xff, mark}, uint16(len(words)+2)), words...)
}

// chunk makes a chunk of a PNG.
func chunk(name, words string) []byte {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(words)))
	b = append(b, name+words...)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE([]byte(name+words)))
}

// exif says which side of a photo is up, in either order of bytes, and more.
func exif(order binary.AppendByteOrder, up uint16) []byte {
	words := exifName + map[bool]string{true: "MM", false: "II"}[order.String() == "BigEndian"]
	b := order.AppendUint32(order.AppendUint16([]byte(words), 42), 8)
	b = order.AppendUint16(b, 2)
	b = order.AppendUint16(append(order.AppendUint32(order.AppendUint16(order.AppendUint16(b, 0x10f), 2), 3), "abc\x00"...), 0x112)
	b = order.AppendUint16(order.AppendUint32(order.AppendUint16(b, 3), 1), up)
	return segment(0xe1, string(b)+"\x00\x00\x00\x00\x00\x00"+secret)
}

// photoOf loads one picture as a course does.
func photoOf(t *testing.T, name string, data []byte) *Picture {
	t.Helper()
	c, found := new(Reader).Load(fstest.MapFS{"course.yaml": {Data: []byte("title: x\n")}, name: {Data: data}})
	for _, f := range found {
		if f.File == name {
			t.Errorf("found %v", f)
		}
	}
	return c.Pictures[name]
}

// TestNothingUnseenIsPublished puts a secret into every place of a picture that
// is not seen, and wants it gone and each point as it was.
func TestNothingUnseenIsPublished(t *testing.T) {
	asJPEG := encoded(t, func(w io.Writer, m image.Image) error { return jpeg.Encode(w, m, nil) })
	asPNG := encoded(t, png.Encode)
	asGIF := encoded(t, func(w io.Writer, m image.Image) error { return gif.Encode(w, m, nil) })
	jfif := segment(0xe0, "JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00")
	profile := segment(0xe2, "ICC_PROFILE\x00\x01\x01colours")
	for _, c := range []struct {
		name string
		data []byte
		kept []byte // what must still stand there
		tall bool
	}{
		{"pictures/plain.jpg", asJPEG, nil, false},
		{"pictures/exif.jpg", slices.Concat(asJPEG[:2], jfif, exif(binary.BigEndian, 1), profile, asJPEG[2:]), profile, false},
		{"pictures/side.jpg", slices.Concat(asJPEG[:2], exif(binary.BigEndian, 6), asJPEG[2:]), exifOf(6), true},
		{"pictures/other.jpg", slices.Concat(asJPEG[:2], exif(binary.LittleEndian, 8), asJPEG[2:]), exifOf(8), true},
		{"pictures/fifth.jpg", slices.Concat(asJPEG[:2], exif(binary.BigEndian, 5), asJPEG[2:]), exifOf(5), true},
		{"pictures/fourth.jpg", slices.Concat(asJPEG[:2], exif(binary.BigEndian, 4), asJPEG[2:]), exifOf(4), false},
		{"pictures/down.jpg", slices.Concat(asJPEG[:2], exif(binary.LittleEndian, 3), asJPEG[2:]), exifOf(3), false},
		{"pictures/wrong.jpg", slices.Concat(asJPEG[:2], exif(binary.LittleEndian, 77), asJPEG[2:]), nil, false},
		{"pictures/more.jpg", slices.Concat(asJPEG[:2], segment(0xe0, "JFXX\x00"+secret), segment(0xe1, "http://ns.adobe.com/xap/1.0/\x00"+secret), segment(0xe2, "MPF\x00"+secret),
			segment(0xed, "Photoshop 3.0\x00"+secret), segment(0xfe, secret), []byte{0xff}, asJPEG[2:], []byte(secret)), nil, false},
		{"pictures/words.png", slices.Concat(asPNG[:33], chunk("tEXt", "Place\x00"+secret), chunk("iTXt", secret), chunk("zTXt", secret), chunk("eXIf", secret), chunk("tIME", "1234567"), chunk("prVt", secret),
			chunk("gAMA", "\x00\x00\xb1\x8f"), asPNG[33:], []byte("<script>"+secret)), chunk("gAMA", "\x00\x00\xb1\x8f"), false},
		{"pictures/words.gif", slices.Concat(asGIF[:len(asGIF)-1], []byte("\x21\xfe\x17"+secret+"\x00\x21\xff\x0bXMP DataXMP\x17"+secret+"\x00\x21\xff\x0bNETSCAPE2.0\x03\x01\x00\x00\x00;"+secret)), []byte("NETSCAPE2.0"), false},
	} {
		p := photoOf(t, c.name, c.data)
		if p == nil {
			continue
		}
		was, _, _ := image.Decode(bytes.NewReader(c.data))
		is, _, err := image.Decode(bytes.NewReader(p.Data))
		switch {
		case bytes.Contains(p.Data, []byte(secret)), bytes.Contains(p.Data, []byte("abc\x00")):
			t.Errorf("%s: the secret is still there", c.name)
		case !bytes.Contains(p.Data, c.kept):
			t.Errorf("%s: more is gone than should be", c.name)
		case err != nil || !samePoints(was, is):
			t.Errorf("%s: not the same picture: %v", c.name, err)
		case (p.Height == 30) != c.tall:
			t.Errorf("%s: %d by %d", c.name, p.Width, p.Height)
		}
	}
}

func samePoints(a, b image.Image) bool {
	for y := range 20 {
		for x := range 30 {
			if a.At(x, y) != b.At(x, y) {
				return false
			}
		}
	}
	return a.Bounds() == b.Bounds()
}

// FuzzPicture reads any bytes as each kind of picture: what is published is a
// picture again, and nothing more can be taken out of it.
func FuzzPicture(f *testing.F) {
	m := image.NewGray(image.Rect(0, 0, 3, 2))
	for kind, encode := range []func(io.Writer) error{
		func(w io.Writer) error { return jpeg.Encode(w, m, nil) },
		func(w io.Writer) error { return png.Encode(w, m) },
		func(w io.Writer) error { return gif.Encode(w, m, nil) },
	} {
		var b bytes.Buffer
		if err := encode(&b); err != nil {
			f.Fatal(err)
		}
		f.Add(kind, b.Bytes())
	}
	f.Add(0, slices.Concat([]byte{0xff, 0xd8}, exif(binary.BigEndian, 6), []byte{0xff, 0xd9}))
	f.Fuzz(func(t *testing.T, kind int, data []byte) {
		kinds := []string{"jpeg", "png", "gif"}
		name := kinds[uint(kind)%3]
		plain, side, err := plainPicture(name, data)
		if err != nil {
			return
		}
		again, sideAgain, err := plainPicture(name, plain)
		if err != nil || side != sideAgain || !bytes.Equal(plain, again) || len(plain) > len(data)+36 {
			t.Errorf("%s %q: then %q, then %q: %v", name, data, plain, again, err)
		}
	})
}

// TestTailOfAPhoto wants what stands behind the end of a photo, as some programs
// write it, to be dropped, however short.
func TestTailOfAPhoto(t *testing.T) {
	whole := encoded(t, func(w io.Writer, m image.Image) error { return jpeg.Encode(w, m, nil) })
	for n := range 6 {
		p := photoOf(t, "pictures/a.jpg", append(slices.Clone(whole), "\n\n\n\n\n\n"[:n]...))
		if p == nil || !bytes.Equal(p.Data, whole) {
			t.Errorf("with %d bytes behind its end: %v", n, p)
		}
	}
}
