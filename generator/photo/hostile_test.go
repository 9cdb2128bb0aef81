package photo

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"
	"testing"
)

// TestLook wants what is no picture, or takes more than may be, to be known by its
// head: nothing of it is decoded then.
func TestLook(t *testing.T) {
	photo, screen := encoded(t, asJPEG), encoded(t, png.Encode)
	claimed := func(w, h uint32) []byte { // a PNG that says it has another size
		head := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32([]byte("IHDR"), w), h)
		return bytes.Join([][]byte{screen[:8], chunk("IHDR", string(head[4:])+"\x08\x06\x00\x00\x00"), screen[33:]}, nil)
	}
	for _, c := range []struct {
		name          string
		data          []byte
		kind          string
		damaged, wide bool
	}{
		{"JPEG", photo, "jpeg", false, false},
		{"cut off", photo[:20], "jpeg", true, false},
		{"a bomb", claimed(30_000, 30_000), "png", false, true},
		{"a long line", claimed(1_000_000, 1), "png", false, true},
		{"as large as a phone's", claimed(8192, 6144), "png", false, false},
		{"HEIC", []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00"), "heic", false, false},
		{"AVIF", []byte("\x00\x00\x00\x18ftypavif\x00\x00\x00\x00"), "avif", false, false},
		{"words", []byte("not a picture"), "", true, false},
		{"nothing", nil, "", true, false},
	} {
		h, err := Look(c.data)
		if h.Kind != c.kind || errors.Is(err, ErrDamaged) != c.damaged || h.TooLarge() != c.wide {
			t.Errorf("%s: %+v, %v", c.name, h, err)
		}
	}
}

// TestMemory wants the memory that a picture takes to be reckoned from its head.
func TestMemory(t *testing.T) {
	const made = 8 << 20
	photo := encoded(t, asJPEG)
	progressive := bytes.Replace(photo, []byte("\xff\xc0"), []byte("\xff\xc2"), 1)
	for _, c := range []struct {
		name string
		data []byte
		want int64
	}{{"JPEG", photo, 600 * 3 / 2}, {"progressive", progressive, 600 * 15 / 2}, {"PNG of two colours", encoded(t, png.Encode), 600 * 5}} {
		if h, err := Look(c.data); err != nil || h.Memory != made+c.want {
			t.Errorf("%s: %d bytes beside %d (%v), want %d", c.name, h.Memory-made, made, err, c.want)
		}
	}
}

// TestBreaksOff wants each picture that breaks off to be damaged.
func TestBreaksOff(t *testing.T) {
	for _, encode := range []func(io.Writer) error{
		func(w io.Writer) error { return jpeg.Encode(w, corners(60, 40), nil) },
		func(w io.Writer) error { return png.Encode(w, corners(60, 40)) },
		func(w io.Writer) error { return gif.Encode(w, corners(60, 40), nil) },
	} {
		var b bytes.Buffer
		if err := encode(&b); err != nil {
			t.Fatal(err)
		}
		for _, n := range []int{b.Len() / 2, b.Len() - 20} {
			data := b.Bytes()[:n]
			h, err := Look(data)
			if err == nil {
				_, err = Make(h, data)
			}
			if !errors.Is(err, ErrDamaged) {
				t.Errorf("%s of %d bytes: %v", KindOf(data), n, err)
			}
		}
	}
}

// FuzzMake makes what it can of any bytes; what it makes can be looked at again, is
// not larger than it was, and holds nothing more to take out.
func FuzzMake(f *testing.F) {
	f.Add(encoded(f, asJPEG))
	f.Add(encoded(f, png.Encode))
	f.Add(encoded(f, asGIF))
	f.Add(bytes.Join([][]byte{{0xff, 0xd8}, exif(binary.BigEndian, 6), {0xff, 0xd9}}, nil))
	f.Fuzz(func(t *testing.T, data []byte) {
		h, err := Look(data)
		if err != nil || h.Points() > 100_000 || h.Memory == 0 {
			return
		}
		m, err := Make(h, data)
		if err != nil {
			return
		}
		for n, file := range m.files {
			again, err := Look(file)
			if err != nil || again.Width != m.Versions[n].Width || again.Height != m.Versions[n].Height || again.Points() > h.Points() {
				t.Errorf("%q: made %+v (%v) of %+v", data, again, err, h)
			}
			if d, err := open(again.Kind, file); err != nil || !bytes.Equal(d.whole, file) && d.whole != nil {
				t.Errorf("%q: more can be taken out of what was made (%v)", data, err)
			}
		}
	})
}
