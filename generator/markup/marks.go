package markup

import (
	"fmt"
	"regexp"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// marks are those signs of Markdown that nobody writes for themselves.
var marks = []struct {
	sign     *regexp.Regexp
	what, do string
}{
	{regexp.MustCompile(`!?\[[^\[\]]*\]\(|\]\(|!\[`), "a link or a picture", "Write plain words here; links and pictures belong into the text around the block."},
	{regexp.MustCompile(`\*\*`), "words in bold type", "Write plain words, without **."},
	{regexp.MustCompile("`[^`]*[^`\\s][^`]*`"), "code", "Write plain words, without `; what has to stand out may stand in “quotation marks”."},
}

// checkMarks reports marks of Markdown in the texts that people read: a block of
// YAML prints its texts as they stand, and nobody would be told that a link in one
// leads nowhere. Of several like marks in a text the first is enough.
func (b *body) checkMarks() {
	b.root.EachAt(b.kind.prose, func(v source.Value, text string) {
		if !strings.ContainsAny(text, "[]*`") {
			return // as most texts
		}
		for _, m := range marks {
			if m.sign.MatchString(text) {
				b.p.find(b.placeOf(m.sign, v), finding.PlainWords,
					fmt.Sprintf("%s is printed as it stands, and has the marks of %s", v.Called(), m.what), m.do)
			}
		}
	})
}

// placeOf returns the offset in the page of a mark in a text; of one that YAML
// writes otherwise, that of the text.
func (b *body) placeOf(mark *regexp.Regexp, v source.Value) int {
	all := b.node.Lines()
	start, end := v.At(), all.At(all.Len()-1).Stop
	if found := mark.FindIndex(b.p.Source[start:max(start, end)]); found != nil {
		return start + found[0]
	}
	return start
}
