package markup

import (
	"strings"

	"github.com/alecthomas/chroma/v2"
)

// The grounds that code samples stand on, on light and on dark screens. Every
// ink keeps a contrast of at least 4.5 : 1 with its ground.
const (
	paperGround = "#f6f0e4"
	nightGround = "#1d1712"
)

// inksOnPaper and inksAtNight are the two palettes, by the first kind of token
// of each class: iron brown for words that order, cobalt for names, rutile for
// text; numbers are plain ink, so that a recipe looks written.
var (
	inksOnPaper = chroma.MustNewStyle("inks-on-paper", chroma.StyleEntries{
		chroma.Background:     "#33241a bg:" + paperGround,
		chroma.Comment:        "italic #6b5b4b",
		chroma.Number:         "#33241a",
		chroma.NameConstant:   "#4a6357",
		chroma.NameTag:        "#233f8f",
		chroma.String:         "#84450f",
		chroma.Keyword:        "bold #7a2e14",
		chroma.Operator:       "#7a2e14",
		chroma.GenericHeading: "bold #233f8f",
	})
	inksAtNight = chroma.MustNewStyle("inks-at-night", chroma.StyleEntries{
		chroma.Background:     "#efe4d2 bg:" + nightGround,
		chroma.Comment:        "italic #b3a28d",
		chroma.Number:         "#efe4d2",
		chroma.NameConstant:   "#a9c2b3",
		chroma.NameTag:        "#a7bdf5",
		chroma.String:         "#e6b877",
		chroma.Keyword:        "bold #f0a483",
		chroma.Operator:       "#f0a483",
		chroma.GenericHeading: "bold #a7bdf5",
	})
)

// CodeStyles gives the style rules of coloured code samples: the light ones,
// which paper keeps too, and dark ones for screens that ask for them. The ground
// is the page's.
func CodeStyles() string {
	var b strings.Builder
	styleRules(&b, inksOnPaper, "")
	b.WriteString("@media screen and (prefers-color-scheme: dark) {\n")
	styleRules(&b, inksAtNight, "\t")
	b.WriteString("}\n")
	return b.String()
}

// styleRules writes one palette, one rule a class.
func styleRules(b *strings.Builder, s *chroma.Style, indent string) {
	for _, i := range inks {
		e := s.Get(i.kinds[0])
		b.WriteString(indent + ".sample ." + i.class + " { color: " + e.Colour.String())
		if e.Bold == chroma.Yes {
			b.WriteString("; font-weight: bold")
		}
		if e.Italic == chroma.Yes {
			b.WriteString("; font-style: italic")
		}
		b.WriteString(" }\n")
	}
}
