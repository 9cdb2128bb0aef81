package markup

import (
	"bytes"
	"fmt"
	"net/url"
	"path"
	"slices"

	"github.com/yuin/goldmark/ast"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// makePictures puts each picture in its place: a drawing into the page itself,
// so that it takes the page's inks on screen and paper, any other picture as a
// file beside it. A picture alone in its paragraph becomes a plate with its
// title under it.
func (p *page) makePictures() {
	for _, n := range p.pictures {
		if n.Parent() == nil || inside(n, ast.KindImage) {
			p.find(position(n), finding.PictureWords, "a picture inside the words of another", "Show it by itself.")
			continue
		}
		words, caption := plain(n, p.Source), resolve(n.Title)
		if words == "" {
			p.find(position(n), finding.PictureWords, "a picture without words for whoever cannot see it",
				"Write between the square brackets what the picture teaches.")
		}
		picture, file := p.picture(n)
		if picture == nil {
			continue
		}
		p.doc.Pictures++
		if !slices.Contains(p.doc.Shown, file) {
			p.doc.Shown = append(p.doc.Shown, file)
		}
		html := p.pictureHTML(picture, words)
		block := n.Parent()
		if alone(n) {
			replace(block, plate(html, caption))
			continue
		}
		if caption != "" {
			p.find(position(n), finding.PictureWords, "the title of a picture within a line is not shown",
				"Put the picture in a paragraph of its own, or take the title out.")
		}
		replace(n, html)
	}
}

// alone says whether a picture is all that its paragraph holds.
func alone(n *ast.Image) bool {
	kind := n.Parent().Kind()
	return (kind == ast.KindParagraph || kind == ast.KindTextBlock) && n.NextSibling() == nil && n.PreviousSibling() == nil
}

// picture finds the picture that is meant; nil when there is none, which is
// then reported.
func (p *page) picture(n *ast.Image) (picture *course.Picture, file string) {
	const help = "Put the file into the folder pictures and write the path from this file, for example ../../pictures/jar.svg."
	written := resolve(n.Destination)
	name, err := url.PathUnescape(written)
	if err != nil || written == "" || scheme.MatchString(written) || written[0] == '/' {
		p.find(position(n), finding.PictureFile, fmt.Sprintf("picture %q: this is no path to a picture", written), help)
		return nil, ""
	}
	file = path.Join(path.Dir(p.File), name)
	picture, ok := p.around.Picture(file)
	if !ok {
		p.find(position(n), finding.PictureFile, fmt.Sprintf("picture %q: there is no such picture (looked for %s)", written, file), help)
		return nil, ""
	}
	return picture, file
}

// pictureHTML prints one picture with its words.
func (p *page) pictureHTML(picture *course.Picture, words string) []byte {
	var b bytes.Buffer
	if rest, ok := bytes.CutPrefix(bytes.TrimSpace(picture.SVG), []byte("<svg")); ok {
		fmt.Fprintf(&b, `<svg role="img" aria-label="%s" width="%d" height="%d"`, escape(words), picture.Width, picture.Height)
		b.Write(rest)
		return b.Bytes()
	}
	fmt.Fprintf(&b, `<img src="%s" width="%d" height="%d" alt="%s" loading="lazy" decoding="async">`,
		escape(relative(p.Address, p.around.PictureAddress(picture.Path))), picture.Width, picture.Height, escape(words))
	return b.Bytes()
}

// plate prints a picture that stands alone, with its caption under it.
func plate(html []byte, caption string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "<figure class=\"plate\">\n%s\n", html)
	if caption != "" {
		fmt.Fprintf(&b, "<figcaption>%s</figcaption>\n", escape(caption))
	}
	b.WriteString("</figure>\n")
	return b.Bytes()
}
