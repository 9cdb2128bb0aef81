package photo

import (
	"image"
	"image/color"
	"image/draw"
)

// sheet is a decoded picture as its planes: one of grey, three of light and its colour, or four of red, green, blue and cover.
type sheet struct {
	planes     []plane
	w, h       int
	subX, subY int // how many points of light have one of colour, each way
}

// sheetOf returns the planes of a decoded picture, which it may change.
func sheetOf(m image.Image) *sheet {
	b := m.Bounds()
	s := &sheet{w: b.Dx(), h: b.Dy(), subX: 1, subY: 1}
	switch m := m.(type) {
	case *image.Gray:
		s.planes = []plane{{m.Pix[m.PixOffset(b.Min.X, b.Min.Y):], m.Stride, 1, s.w, s.h}}
	case *image.YCbCr:
		s.ofLight(m)
	case *image.NYCbCrA:
		if m.Opaque() {
			s.ofLight(&m.YCbCr)
		} else {
			s.ofColours(m)
		}
	default:
		s.ofColours(m)
	}
	return s
}

func (s *sheet) ofLight(m *image.YCbCr) {
	s.subX, s.subY = subsampling(m.SubsampleRatio)
	cw, ch := (s.w+s.subX-1)/s.subX, (s.h+s.subY-1)/s.subY
	s.planes = []plane{{m.Y, m.YStride, 1, s.w, s.h}, {m.Cb, m.CStride, 1, cw, ch}, {m.Cr, m.CStride, 1, cw, ch}}
}

func subsampling(r image.YCbCrSubsampleRatio) (x, y int) {
	switch r {
	case image.YCbCrSubsampleRatio422:
		return 2, 1
	case image.YCbCrSubsampleRatio420:
		return 2, 2
	case image.YCbCrSubsampleRatio440:
		return 1, 2
	case image.YCbCrSubsampleRatio411:
		return 4, 1
	case image.YCbCrSubsampleRatio410:
		return 4, 2
	}
	return 1, 1
}

// ofColours takes four planes, colours multiplied by their cover, so that what is
// clear adds no colour to an average.
func (s *sheet) ofColours(m image.Image) {
	rgba, ok := m.(*image.RGBA)
	if n, clear := m.(*image.NRGBA); clear {
		rgba = multiplied(n)
	} else if !ok {
		rgba = image.NewRGBA(image.Rect(0, 0, s.w, s.h))
		draw.Draw(rgba, rgba.Bounds(), m, m.Bounds().Min, draw.Src)
	}
	for i := range 4 {
		s.planes = append(s.planes, plane{rgba.Pix[i:], rgba.Stride, 4, s.w, s.h})
	}
}

// multiplied multiplies the colours of a picture by their cover in place.
func multiplied(m *image.NRGBA) *image.RGBA {
	for i := 0; i+3 < len(m.Pix); i += 4 {
		if p := m.Pix[i : i+4 : i+4]; p[3] != 255 {
			a := uint32(p[3])
			p[0], p[1], p[2] = byte((uint32(p[0])*a+127)/255), byte((uint32(p[1])*a+127)/255), byte((uint32(p[2])*a+127)/255)
		}
	}
	return &image.RGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
}

// upright returns the sheet as it is shown, w points wide and h high, neither more
// than it has. Colour gets a point for four points of light.
func (s *sheet) upright(w, h int, t turn) *sheet {
	if t.onItsSide {
		w, h = h, w
	}
	out := &sheet{w: w, h: h, subX: 1, subY: 1}
	for n, p := range s.planes {
		var q plane
		if n == 0 || len(s.planes) != 3 {
			q = p.scaled(w, h, ratio{s.w, w}, ratio{s.h, h}, t)
		} else {
			q = p.scaled((w+1)/2, (h+1)/2, ratio{2 * s.w, w * s.subX}, ratio{2 * s.h, h * s.subY}, t)
			out.subX, out.subY = 2, 2
		}
		if t.onItsSide {
			q = q.transposed()
		}
		out.planes = append(out.planes, q)
	}
	if t.onItsSide {
		out.w, out.h = h, w
	}
	return out
}

// image returns a sheet made by upright as an image for an encoder.
func (s *sheet) image() image.Image {
	r := image.Rect(0, 0, s.w, s.h)
	switch len(s.planes) {
	case 1:
		return &image.Gray{Pix: s.planes[0].pix, Stride: s.w, Rect: r}
	case 3:
		y, cb, cr := s.planes[0], s.planes[1], s.planes[2]
		return &image.YCbCr{Y: y.pix, Cb: cb.pix, Cr: cr.pix, YStride: s.w, CStride: cb.w, SubsampleRatio: image.YCbCrSubsampleRatio420, Rect: r}
	}
	m := image.NewNRGBA(r)
	for i := range s.w * s.h {
		c := color.RGBA{s.planes[0].pix[i], s.planes[1].pix[i], s.planes[2].pix[i], s.planes[3].pix[i]}
		n := color.NRGBAModel.Convert(c).(color.NRGBA)
		copy(m.Pix[4*i:], []byte{n.R, n.G, n.B, n.A})
	}
	return m
}
