package photo

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
)

// quality is that of the JPEGs. From 80 on up files grow faster than what can be
// told apart: at 90 a file is half as large again, and at two points for each CSS
// pixel, where most photos are looked at, no eye tells it from 80. Below 75 even
// grounds, such as a glaze, begin to show blocks.
const quality = 80

// Make makes the files of a picture whose head was looked at. The error is
// ErrDamaged, with what the decoder says, where its points cannot be read.
func Make(h Head, data []byte) (*Made, error) {
	d, err := open(h.Kind, data)
	if err != nil {
		return nil, err
	}
	m, err := d.decode()
	if err != nil {
		return nil, err
	}
	made := &Made{Points: h.Points()}
	t := turns[d.up]
	w, high := m.Bounds().Dx(), m.Bounds().Dy()
	if t.onItsSide {
		w, high = high, w
	}
	made.shown(w, high)
	switch {
	case h.Kind == "gif": // it may move
		made.add(".gif", w, high, d.whole)
	case h.Kind != "jpeg" && fewColours(m):
		err = made.drawing(m, d, w, high)
	default:
		err = made.photo(sheetOf(m), d, w, high)
	}
	return made, err
}

// photo makes the files of a photo, from the widest down: one is made of the widest
// where that has twice its width exactly, or else of the source. A JPEG that is
// upright and no wider than the widest stays as it is, with each of its points; so
// does a PNG that hardly takes more bytes than JPEG would.
func (m *Made) photo(s *sheet, d *decodable, w, h int) error {
	from, t := s, turns[d.up]
	for i, width := range widthsOf(w) {
		isWhole := width == w && d.whole != nil
		if isWhole && d.kind == "jpeg" {
			m.add(".jpg", w, h, d.whole)
			continue
		}
		source, turned := s, t
		if from.w == 2*width {
			source, turned = from, turn{}
		}
		made := source.upright(width, heightOf(width, w, h), turned)
		if i == 0 {
			from = made
		}
		data, err := made.encoded(".jpg", d.profile)
		if err != nil {
			return err
		}
		if isWhole && 2*len(d.whole) <= 3*len(data) {
			m.add(".png", w, h, d.whole)
			return nil
		}
		m.add(".jpg", made.w, made.h, data)
	}
	return nil
}

// encoded writes a sheet as a file.
func (s *sheet) encoded(ending string, profile []byte) ([]byte, error) {
	var out bytes.Buffer
	if ending == ".png" {
		err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, s.image())
		return withChunk(out.Bytes(), profile), err
	}
	err := jpeg.Encode(&out, s.image(), &jpeg.Options{Quality: quality})
	return withSegment(out.Bytes(), profile), err
}

// withSegment puts a profile behind the start of a JPEG.
func withSegment(data, profile []byte) []byte {
	return bytes.Join([][]byte{data[:2], profileSegment(profile), data[2:]}, nil)
}

// withChunk puts a profile behind the head of a PNG.
func withChunk(data, profile []byte) []byte {
	const head = len(pngHead) + 4 + 4 + 13 + 4
	return bytes.Join([][]byte{data[:head], profileChunk(profile), data[head:]}, nil)
}

// drawing makes the files of a picture that stays PNG: a screen, a scan of a drawing,
// a mark on a clear ground. The whole is published with each of its points unless it
// is wider than a page needs, and then too, and alone, if it takes no more bytes than
// what is made of it: points between two colours pack badly.
func (m *Made) drawing(source image.Image, d *decodable, w, h int) error {
	s := &sheet{w: source.Bounds().Dx(), h: source.Bounds().Dy()}
	s.ofColours(source)
	for _, width := range widthsOf(w) {
		if width == w && d.whole != nil {
			m.add(".png", w, h, d.whole)
			continue
		}
		made := s.upright(width, heightOf(width, w, h), turns[d.up])
		data, err := made.encoded(".png", d.profile)
		if err != nil {
			return err
		}
		if d.whole != nil && len(data) >= len(d.whole) {
			m.Versions, m.files = nil, nil
			m.add(".png", w, h, d.whole)
			return nil
		}
		m.add(".png", made.w, made.h, data)
	}
	return nil
}

// fewColours reports whether a picture has so few colours, or so much that is clear,
// that PNG serves it better than JPEG. A photo soon shows more.
func fewColours(m image.Image) bool {
	most := 256
	switch m := m.(type) {
	case *image.YCbCr: // of WebP
		return false
	case *image.Paletted:
		return true
	case *image.Gray, *image.Gray16: // a photo may have no more than 256 greys
		most = 64
	case interface{ Opaque() bool }:
		if !m.Opaque() {
			return true
		}
	}
	points, ok := m.(image.RGBA64Image)
	if !ok {
		return false
	}
	seen := map[color.RGBA64]bool{}
	var last color.RGBA64
	b := m.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := points.RGBA64At(x, y)
			if c == last {
				continue
			}
			if last, seen[c] = c, true; len(seen) > most {
				return false
			}
		}
	}
	return true
}
