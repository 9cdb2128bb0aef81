package setting

import (
	"bytes"
	"fmt"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// PictureSizes tells a browser how wide a picture is shown before it has read a style: as
// wide as the column of 34 rem, or on a narrower screen the screen without its two
// margins of 4 %.
const PictureSizes = "(min-width: 37rem) 34rem, 92vw"

// picture sets a picture: a drawing into the page itself, so that it takes the
// page's inks on screen and paper, any other as files beside it. One that stands
// alone is a figure with its caption.
func (s *setting) picture(r *markup.Ref) {
	picture := s.of.Targets[r.Number].Picture
	if r.Alone {
		s.out.WriteString("<figure class=\"plate\">\n")
	}
	if rest, ok := bytes.CutPrefix(bytes.TrimSpace(picture.SVG), []byte("<svg")); ok {
		fmt.Fprintf(s.out, `<svg role="img" aria-label="%s" width="%d" height="%d"`, escape(r.Words), picture.Width, picture.Height)
		s.out.Write(rest)
	} else {
		s.files(picture, r.Words)
	}
	if !r.Alone {
		return
	}
	s.out.WriteByte('\n')
	if r.Title != "" {
		s.out.WriteString("<figcaption>" + escape(r.Title) + "</figcaption>\n")
	}
	s.out.WriteString("</figure>\n")
}

// files sets a picture that stands beside its page, in the widths that it has.
func (s *setting) files(p *course.Picture, words string) {
	var all []string
	for _, f := range p.Files {
		all = append(all, fmt.Sprintf("%s %dw", s.at.To(address.OfPicture(p, f)), f.Width))
	}
	src, _, _ := strings.Cut(all[len(all)-1], " ")
	fmt.Fprintf(s.out, `<img src="%s"`, escape(src))
	if len(all) > 1 {
		fmt.Fprintf(s.out, ` srcset="%s" sizes="%s"`, escape(strings.Join(all, ", ")), PictureSizes)
	}
	fmt.Fprintf(s.out, ` width="%d" height="%d" alt="%s" loading="lazy" decoding="async">`, p.Width, p.Height, escape(words))
}
