package photo

import (
	"bytes"
	"fmt"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"
	"strings"

	"golang.org/x/image/webp"
)

// Look reads what a picture says of itself. The error is ErrDamaged where it says
// nothing that can be.
func Look(data []byte) (Head, error) {
	h := Head{Kind: KindOf(data)}
	var config image.Config
	var err error
	in := bytes.NewReader(data)
	switch h.Kind {
	case "jpeg":
		config, err = jpeg.DecodeConfig(in)
	case "png":
		config, err = png.DecodeConfig(in)
	case "gif":
		config, err = gif.DecodeConfig(in)
	case "webp":
		config, err = webp.DecodeConfig(in)
	case "heic", "avif":
		return h, nil
	default:
		return h, ErrDamaged
	}
	if err != nil || config.Width < 1 || config.Height < 1 {
		return h, ErrDamaged
	}
	h.Width, h.Height = config.Width, config.Height
	return h, h.weigh(data)
}

// weigh works out the memory that a picture takes.
func (h *Head) weigh(data []byte) error {
	half := int64(16) // halves of a byte a point: WebP, decoded twice over
	switch h.Kind {
	case "jpeg":
		j, err := openJPEG(data)
		if err != nil {
			return err
		}
		half, h.Progressive = j.bytesPerPoint(), j.progressive
	case "png":
		p, err := openPNG(data)
		if err != nil {
			return err
		}
		half = p.bytesPerPoint()
	case "gif":
		half = 2
	}
	if !h.TooLarge() { // or the product may not fit
		h.Memory = int64(h.Points())*half/2 + 8<<20 // and what is made of it
	}
	return nil
}

// KindOf tells the format of a picture by how it begins: "jpeg", "png", "gif", "webp",
// "heic" or "avif"; empty for any other.
func KindOf(data []byte) string {
	begins := func(at int, with string) bool { return len(data) > at && bytes.HasPrefix(data[at:], []byte(with)) }
	switch {
	case begins(0, "\xff\xd8"):
		return "jpeg"
	case begins(0, pngHead):
		return "png"
	case begins(0, "GIF8"):
		return "gif"
	case begins(0, "RIFF") && begins(8, "WEBP"):
		return "webp"
	case begins(4, "ftypavif"):
		return "avif"
	case begins(4, "ftyp"):
		for _, brand := range []string{"heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1"} {
			if begins(8, brand) {
				return "heic"
			}
		}
	}
	return ""
}

// open takes a picture apart.
func open(kind string, data []byte) (*decodable, error) {
	d := &decodable{kind: kind, up: 1}
	decoder := map[string]func(io.Reader) (image.Image, error){"jpeg": jpeg.Decode, "png": png.Decode, "gif": gif.Decode, "webp": webp.Decode}[kind]
	d.decode = func() (image.Image, error) { return decoded(decoder, data) }
	switch kind {
	case "jpeg":
		j, err := openJPEG(data)
		if err != nil {
			return nil, err
		}
		d.up, d.profile = j.up, shownProfile(j.profile, "RGB ")
		if n, _ := j.planes(); n == 1 {
			d.profile = shownProfile(j.profile, "GRAY")
		} else if n == 3 && j.up == 1 {
			d.whole = j.whole()
		}
	case "png":
		p, err := openPNG(data)
		if err != nil {
			return nil, err
		}
		d.up, d.profile = p.up, shownProfile(p.profile, p.colours())
		if p.up == 1 {
			d.whole = p.whole()
		}
	case "gif":
		var err error
		d.whole, err = plainGIF(data)
		return d, err
	case "webp":
		profile, up := openWebP(data)
		d.up, d.profile = up, shownProfile(profile, "RGB ")
	}
	return d, nil
}

// decoded decodes a picture. A decoder that panics over a file from outside must not
// end the program.
func decoded(decoder func(io.Reader) (image.Image, error), data []byte) (m image.Image, err error) {
	defer func() {
		if p := recover(); p != nil {
			m, err = nil, fmt.Errorf("%w: %v", ErrDamaged, p)
		}
	}()
	if m, err = decoder(bytes.NewReader(data)); err != nil {
		return nil, fmt.Errorf("%w: %s", ErrDamaged, strings.TrimPrefix(err.Error(), "image: "))
	}
	return m, nil
}
