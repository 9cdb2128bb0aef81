package imprint

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// Picture is a picture as it is set in a place: a drawing into the page itself, so
// that it takes the page's inks on screen and paper, any other as files beside it, in
// the widths that it has. words say what it shows; sizes tell a browser how wide it
// is shown before it has read a style.
func Picture(at Place, p *course.Picture, words, sizes string) template.HTML {
	return NamedPicture(at, "", p, words, sizes)
}

// NamedPicture is Picture, a drawing of it with an id, by which the page can show it
// once more. Of other pictures, and for an empty id, there is none.
func NamedPicture(at Place, id string, p *course.Picture, words, sizes string) template.HTML {
	words = template.HTMLEscapeString(words)
	if id != "" {
		id = ` id="` + template.HTMLEscapeString(id) + `"`
	}
	if rest, ok := bytes.CutPrefix(bytes.TrimSpace(p.SVG), []byte("<svg")); ok {
		if at.Ebook != nil {
			id += ` xmlns="http://www.w3.org/2000/svg"`
		}
		begin := fmt.Sprintf(`<svg%s role="img" aria-label="%s" width="%d" height="%d"`, id, words, p.Width, p.Height)
		var drawing strings.Builder // a drawing is long
		drawing.Grow(len(begin) + len(rest))
		drawing.WriteString(begin)
		drawing.Write(rest)
		return template.HTML(drawing.String())
	}
	if at.Ebook != nil {
		return template.HTML(fmt.Sprintf(`<img src="%s" width="%d" height="%d" alt="%s"/>`,
			template.HTMLEscapeString(at.Ebook.show(at.Page, p)), p.Width, p.Height, words))
	}
	var all []string
	for _, f := range p.Files {
		all = append(all, fmt.Sprintf("%s %dw", at.To(address.OfPicture(p, f)), f.Width))
	}
	src, _, _ := strings.Cut(all[len(all)-1], " ")
	widths := ""
	if len(all) > 1 {
		widths = fmt.Sprintf(` srcset="%s" sizes="%s"`, template.HTMLEscapeString(strings.Join(all, ", ")), sizes)
	}
	return template.HTML(fmt.Sprintf(`<img src="%s"%s width="%d" height="%d" alt="%s" loading="lazy" decoding="async">`,
		template.HTMLEscapeString(src), widths, p.Width, p.Height, words))
}
