package markup

import (
	"fmt"
	"net/url"

	"github.com/yuin/goldmark/ast"

	"slipbook/generator/finding"
)

// makePictures notes which pictures stand where. A picture alone in its
// paragraph becomes a figure with its title under it.
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
		written := resolve(n.Destination)
		if name, err := url.PathUnescape(written); err != nil || name == "" || scheme.MatchString(written) || written[0] == '/' {
			p.find(position(n), finding.PictureFile, fmt.Sprintf("picture %q: this is no path to a picture", written), PictureHelp)
			continue
		}
		ref := p.refer(&Ref{Kind: PictureRef, To: written, Words: words, Offset: position(n), Alone: alone(n)})
		if ref.Alone {
			ref.Title = caption
			replace(n.Parent(), Piece{Ref: ref})
			continue
		}
		if caption != "" {
			p.find(position(n), finding.PictureWords, "the title of a picture within a line is not shown",
				"Put the picture in a paragraph of its own, or take the title out.")
		}
		replace(n, Piece{Ref: ref})
	}
}

// PictureHelp says what to write where a picture cannot be found.
const PictureHelp = "Put the file into the folder pictures and write the path from this file, for example ../../pictures/jar.svg."

// alone reports whether a picture is all that its paragraph holds.
func alone(n *ast.Image) bool {
	kind := n.Parent().Kind()
	return (kind == ast.KindParagraph || kind == ast.KindTextBlock) && n.NextSibling() == nil && n.PreviousSibling() == nil
}
