package photo

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"
	"math/rand/v2"
	"slices"
	"testing"
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

func encoded(t testing.TB, encode func(io.Writer, image.Image) error) []byte {
	t.Helper()
	var b bytes.Buffer
	m := image.NewPaletted(image.Rect(0, 0, 30, 20), color.Palette{color.Black, color.White})
	if err := encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func asJPEG(w io.Writer, m image.Image) error { return jpeg.Encode(w, m, nil) }

func asGIF(w io.Writer, m image.Image) error { return gif.Encode(w, m, nil) }

// made makes the files of a picture.
func made(t testing.TB, data []byte) *Made {
	t.Helper()
	h, err := Look(data)
	if err != nil {
		t.Fatal(err)
	}
	m, err := Make(h, data)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestNothingUnseenIsPublished puts a secret into every place of a picture that
// is not seen, and wants it gone, and each point as it was where it may be.
func TestNothingUnseenIsPublished(t *testing.T) {
	photo, screen, moving := encoded(t, asJPEG), encoded(t, png.Encode), encoded(t, asGIF)
	jfif := segment(0xe0, "JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00")
	for _, c := range []struct {
		name string
		data []byte
		kept []byte // what must still stand there
		same bool   // each point
	}{
		{"plain", photo, nil, true},
		{"as it lies", slices.Concat(photo[:2], jfif, exif(binary.BigEndian, 1), photo[2:]), []byte("JFIF"), true},
		{"no way up", slices.Concat(photo[:2], exif(binary.LittleEndian, 77), photo[2:]), nil, true},
		{"on its side", slices.Concat(photo[:2], exif(binary.BigEndian, 6), photo[2:]), nil, false},
		{"more", slices.Concat(photo[:2], segment(0xe0, "JFXX\x00"+secret), segment(0xe1, "http://ns.adobe.com/xap/1.0/\x00"+secret), segment(0xe2, "MPF\x00"+secret),
			segment(0xed, "Photoshop 3.0\x00"+secret), segment(0xfe, secret), []byte{0xff}, photo[2:], []byte(secret)), nil, true},
		{"a profile", slices.Concat(photo[:2], segment(0xe2, iccName+"\x01\x01"+string(wide(secret))), photo[2:]), []byte("rTRC"), true},
		{"screen", slices.Concat(screen[:33], chunk("tEXt", "Place\x00"+secret), chunk("iTXt", secret), chunk("zTXt", secret), chunk("eXIf", secret), chunk("tIME", "1234567"), chunk("prVt", secret),
			chunk("gAMA", "\x00\x00\xb1\x8f"), screen[33:], []byte("<script>"+secret)), chunk("gAMA", "\x00\x00\xb1\x8f"), true},
		{"moving", slices.Concat(moving[:len(moving)-1], []byte("\x21\xfe\x17"+secret+"\x00\x21\xff\x0bXMP DataXMP\x17"+secret+"\x00\x21\xff\x0bNETSCAPE2.0\x03\x01\x00\x00\x00;"+secret)), []byte("NETSCAPE2.0"), true},
	} {
		m := made(t, c.data)
		is := m.files[0]
		was, _, _ := image.Decode(bytes.NewReader(c.data))
		now, _, err := image.Decode(bytes.NewReader(is))
		switch {
		case len(m.files) != 1:
			t.Errorf("%s: %d files", c.name, len(m.files))
		case bytes.Contains(is, []byte(secret)), bytes.Contains(is, []byte("abc\x00")), bytes.Contains(is, []byte(exifName)):
			t.Errorf("%s: the secret is still there", c.name)
		case !bytes.Contains(is, c.kept):
			t.Errorf("%s: more is gone than should be", c.name)
		case err != nil || samePoints(was, now) != c.same:
			t.Errorf("%s: the same picture is %v, want %v: %v", c.name, !c.same, c.same, err)
		}
	}
}

func samePoints(a, b image.Image) bool {
	if a.Bounds() != b.Bounds() {
		return false
	}
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			if a.At(x, y) != b.At(x, y) {
				return false
			}
		}
	}
	return true
}

// corners is a photo of four colours: red, green, blue and grey in its corners, from
// the upper left on clockwise.
func corners(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetRGBA(x, y, [][]color.RGBA{{{220, 20, 20, 255}, {20, 200, 20, 255}}, {{128, 128, 128, 255}, {20, 20, 220, 255}}}[2*y/h][2*x/w])
		}
	}
	return m
}

// colourAt names the colour of a corner.
func colourAt(m image.Image, x, y int) string {
	r, g, b, _ := m.At(x, y).RGBA()
	switch most := max(r, g, b); {
	case most-min(r, g, b) < 0x2000:
		return "grey"
	case most == r:
		return "red"
	case most == g:
		return "green"
	}
	return "blue"
}

// TestUpright wants each of the eight values of the orientation tag to put a photo
// upright, in all its widths, one of them in the other order of bytes too. What a value means is
// written as the corners that a viewer shows of the photo as it lies.
func TestUpright(t *testing.T) {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, corners(1300, 901), &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	for up, want := range map[uint16]string{
		1: "red green blue grey", 2: "green red grey blue", 3: "blue grey red green", 4: "grey blue green red",
		5: "red grey blue green", 6: "grey red green blue", 7: "blue green red grey", 8: "green blue grey red",
	} {
		for _, order := range []binary.AppendByteOrder{binary.BigEndian, binary.LittleEndian} {
			if order.String() == "LittleEndian" && up != 6 {
				continue
			}
			m := made(t, slices.Concat(b.Bytes()[:2], exif(order, up), b.Bytes()[2:]))
			tall := up > 4
			for n, v := range m.Versions {
				shown, err := jpeg.Decode(bytes.NewReader(m.files[n]))
				if err != nil {
					t.Fatal(err)
				}
				w, h := shown.Bounds().Dx(), shown.Bounds().Dy()
				got := fmt.Sprint(colourAt(shown, 20, 20), " ", colourAt(shown, w-20, 20), " ", colourAt(shown, w-20, h-20), " ", colourAt(shown, 20, h-20))
				if got != want || w != v.Width || h != v.Height || (h > w) != tall {
					t.Errorf("%d, %v, %d by %d (said %d by %d): %s, want %s", up, order, w, h, v.Width, v.Height, got, want)
				}
			}
			if (m.Height > m.Width) != tall || m.Width != Column {
				t.Errorf("%d: shown %d by %d", up, m.Width, m.Height)
			}
		}
	}
}

// TestWidths wants no file wider than the picture, none wider than a page needs, no
// two nearly alike, and every height true to the picture.
func TestWidths(t *testing.T) {
	for _, c := range []struct {
		w, h int
		want string
	}{
		{4000, 3000, "544x408 816x612 1088x816 shown 544x408"},
		{3000, 4001, "544x726 816x1088 1088x1451 shown 544x726"},
		{1200, 300, "544x136 816x204 1088x272 shown 544x136"},
		{1000, 500, "544x272 816x408 1000x500 shown 544x272"},
		{900, 500, "544x302 900x500 shown 544x302"},
		{600, 10, "600x10 shown 544x9"},
		{300, 400, "300x400 shown 300x400"},
		{9000, 2, "544x1 816x1 1088x1 shown 544x1"},
	} {
		var b bytes.Buffer
		if err := jpeg.Encode(&b, image.NewYCbCr(image.Rect(0, 0, c.w, c.h), image.YCbCrSubsampleRatio420), nil); err != nil {
			t.Fatal(err)
		}
		m := made(t, b.Bytes())
		got := ""
		for n, v := range m.Versions {
			config, err := jpeg.DecodeConfig(bytes.NewReader(m.files[n]))
			if err != nil || config.Width != v.Width || config.Height != v.Height || v.Ending != ".jpg" {
				t.Errorf("%v: %d by %d (%v), said %v", c, config.Width, config.Height, err, v)
			}
			got += fmt.Sprintf("%dx%d ", v.Width, v.Height)
		}
		if got += fmt.Sprintf("shown %dx%d", m.Width, m.Height); got != c.want {
			t.Errorf("%d by %d: %s, want %s", c.w, c.h, got, c.want)
		}
	}
}

// TestAverages wants a photo made smaller to have the mean of its points, and to be
// the same from two ways of holding its colours.
func TestAverages(t *testing.T) {
	p := plane{[]byte{0, 30, 60, 90, 120, 150, 180, 210}, 4, 1, 4, 2}
	for _, c := range []struct {
		w, h int
		want []byte
	}{{4, 2, p.pix}, {2, 1, []byte{75, 135}}, {1, 1, []byte{105}}, {3, 2, []byte{8, 45, 83, 128, 165, 203}}} {
		if got := p.scaled(c.w, c.h, ratio{4, c.w}, ratio{2, c.h}, turn{}); !bytes.Equal(got.pix, c.want) {
			t.Errorf("%d by %d: %v, want %v", c.w, c.h, got.pix, c.want)
		}
	}
}

// TestKindOfFile wants a photo to become JPEG whatever it was, and a drawing or what
// is clear to stay PNG.
func TestKindOfFile(t *testing.T) {
	clear := image.NewNRGBA(image.Rect(0, 0, 2000, 100))
	grain := image.NewRGBA(image.Rect(0, 0, 2000, 100))
	random := rand.NewChaCha8([32]byte{})
	_, _ = random.Read(grain.Pix) // it always fills
	copy(clear.Pix, grain.Pix)
	for i := 3; i < len(grain.Pix); i += 4 {
		grain.Pix[i] = 255
	}
	for _, c := range []struct {
		name string
		m    image.Image
		want string
	}{{"a drawing", image.NewPaletted(image.Rect(0, 0, 2000, 100), color.Palette{color.White, color.Black}), ".png"}, {"few colours", corners(2000, 100), ".png"}, {"clear", clear, ".png"}, {"a photo", grain, ".jpg"}} {
		var b bytes.Buffer
		if err := png.Encode(&b, c.m); err != nil {
			t.Fatal(err)
		}
		m := made(t, b.Bytes())
		for n, v := range m.Versions {
			if v.Ending != c.want || len(m.files[n]) > b.Len() {
				t.Errorf("%s: %d wide is %s, of %d bytes of %d", c.name, v.Width, v.Ending, len(m.files[n]), b.Len())
			}
		}
	}
}

// TestSameBytes wants the same files each time, and those of the edition: a change of
// what is made must count it up. A new Go may encode otherwise, which the key of what
// is kept knows; then the sum is to be written anew.
func TestSameBytes(t *testing.T) {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, corners(1300, 901), nil); err != nil {
		t.Fatal(err)
	}
	one, two := made(t, b.Bytes()), made(t, b.Bytes())
	if !bytes.Equal(one.pack(), two.pack()) {
		t.Error("not the same twice")
	}
	const want = "79753fec2222901c76c9dc85a0f2ff734b0f8521507fb5f05b6050c127ae56bf of edition 1"
	if got := fmt.Sprintf("%x of edition %d", sha256.Sum256(one.pack()), edition); got != want {
		t.Errorf("made is %s, was %s: count the edition up", got, want)
	}
}
