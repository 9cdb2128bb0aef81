package course

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

func encoded(t *testing.T, encode func(io.Writer, image.Image) error) []byte {
	t.Helper()
	var b bytes.Buffer
	m := image.NewPaletted(image.Rect(0, 0, 30, 20), color.Palette{color.Black, color.White})
	if err := encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// withoutPoints takes the chunk of points out of a PNG.
func withoutPoints(data []byte) []byte {
	at := bytes.Index(data, []byte("IDAT")) - 4
	end := bytes.Index(data, []byte("IEND")) - 4
	return append(bytes.Clone(data[:at]), data[end:]...)
}

// sized gives a GIF another size.
func sized(data []byte, width, height int) []byte {
	data = bytes.Clone(data)
	data[6], data[7], data[8], data[9] = byte(width), byte(width>>8), byte(height), byte(height>>8)
	return data
}

func TestPictures(t *testing.T) {
	asPNG := encoded(t, png.Encode)
	asJPEG := encoded(t, func(w io.Writer, m image.Image) error { return jpeg.Encode(w, m, nil) })
	asGIF := encoded(t, func(w io.Writer, m image.Image) error { return gif.Encode(w, m, nil) })
	const broken = "the picture is damaged, or not of the kind its name says"
	heic := []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic")
	tests := []struct {
		name string
		data []byte
		want string // the finding; empty when the picture is good
	}{
		{"pictures/IMG_1234.JPG", asJPEG, ""},
		{"pictures/b.jpeg", asJPEG, ""},
		{"pictures/more/c.gif", asGIF, ""},
		{"pictures/d.png", asJPEG, "the name says PNG, but the picture is JPEG"},
		{"pictures/claims.jpg", asPNG, "the name says JPEG, but the picture is PNG"},
		{"pictures/e.jpg", asJPEG[:20], broken},
		{"pictures/g.jpg", heic, "the name says JPEG, but the picture is HEIC, which many browsers cannot show"},
		{"pictures/f.heic", heic, "many browsers cannot show a picture with the ending `.heic`"},
		{"pictures/plain", asPNG, "the handbook cannot show a picture with the ending ``"},
		{"pictures/größe.png", asPNG, "a picture cannot have this name"},
		{"pictures/.thumbs/a.png", nil, ""},
		{"pictures/.hidden", nil, ""},
		{"pictures/aux.jpg", asJPEG, "Windows keeps the name `aux` for itself"},
		{"pictures/COM1.more.gif", asGIF, "Windows keeps the name `COM1` for itself"},
		{"pictures/console.gif", asGIF, ""},
		{"pictures/A.png", asPNG, ""},
		{"pictures/a.png", asPNG, "this name differs from that of pictures/A.png in capital letters alone"},
		{"pictures/cut.png", asPNG[:len(asPNG)-14], broken},
		{"pictures/empty.png", withoutPoints(asPNG), broken},
		{"pictures/half.jpg", asJPEG[:len(asJPEG)-10], broken},
		{"pictures/wide.gif", sized(asGIF, 65535, 65535), "the picture has 65535 × 65535 points, more than 64 million or more than 30,000 in a row"},
		{"pictures/most.gif", sized(asGIF, 8001, 8000), "the picture has 8001 × 8000 points, more than 64 million or more than 30,000 in a row"},
		{"pictures/large.svg", []byte(svgStart + strings.Repeat(" ", drawingLimit) + "</svg>"), "the file is larger than 128 KiB"},
	}
	files := fstest.MapFS{"course.yaml": {Data: []byte("title: x\n")}}
	for _, tt := range tests {
		files[tt.name] = &fstest.MapFile{Data: tt.data}
	}
	c, found := new(Reader).Load(files)
	said := map[string]string{}
	for _, f := range found {
		said[f.File] = f.Text
	}
	for _, tt := range tests {
		p := c.Pictures[tt.name]
		switch {
		case said[tt.name] != tt.want:
			t.Errorf("%s: found %q, want %q", tt.name, said[tt.name], tt.want)
		case (p != nil) != (tt.want == "" && tt.data != nil):
			t.Errorf("%s: picture is %v", tt.name, p)
		case p != nil && (p.Width != 30 || p.Height != 20 || p.SVG != nil || len(p.Files) != 1 || !bytes.Equal(fileOf(t, p), tt.data) || p.Path != tt.name):
			t.Errorf("%s: %d x %d", tt.name, p.Width, p.Height)
		}
	}
}

func fileOf(t *testing.T, p *Picture) []byte {
	t.Helper()
	data, err := p.Files[0].Data()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// TestPicturesTogether wants the pictures of a course to be bounded together, by
// their points, by their bytes, and by what of them stays in memory.
func TestPicturesTogether(t *testing.T) {
	all := totals{points: mostPoints - 100}
	last := &photograph{Text: source.New("pictures/a.jpg", nil), kind: "jpeg", points: 100, sound: true}
	all.add(last)
	more := &photograph{Text: source.New("pictures/b.jpg", nil), kind: "jpeg", points: 1, sound: true}
	all.add(more)
	outline := &photograph{Text: source.New("pictures/c.svg", nil), kind: "svg", picture: Whole("pictures/c.svg", 1, 1, make([]byte, mostOutlineBytes+1)), sound: true}
	all.add(outline)
	if !last.sound || more.sound || outline.sound {
		t.Errorf("sound are %v, %v, %v", last.sound, more.sound, outline.sound)
	}
	wantSize(t, more.Found, "pictures/b.jpg:1:1: error: up to this one, all pictures together have more than 10000 million points (picture-size)")
	wantSize(t, outline.Found, "pictures/c.svg:1:1: error: up to this one, all pictures together have more than 64 MiB of drawings (picture-size)")

	files := fstest.MapFS{"course.yaml": {Data: []byte("title: x\n")}}
	heavy := make([]byte, pictureLimit+1) // too large for one already, but counted
	for i := range mostPictureBytes/pictureLimit + 2 {
		files[fmt.Sprintf("pictures/b%03d.png", i)] = &fstest.MapFile{Data: heavy}
	}
	_, found := new(Reader).Load(files)
	wantSize(t, found, "pictures/b136.png:1:1: error: up to this one, all pictures together are larger than 4 GiB (picture-size)")
}

// wantSize wants one finding about the size of pictures.
func wantSize(t *testing.T, found finding.List, want string) {
	t.Helper()
	var got []string
	for _, f := range found {
		if f.Rule == finding.PictureSize {
			got = append(got, strings.Split(f.String(), "\n")[0])
		}
	}
	if len(got) != 1 || got[0] != want {
		t.Errorf("got %v, want %s", got, want)
	}
}
