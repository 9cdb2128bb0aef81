package markup

import (
	"bytes"
	"strings"

	"github.com/alecthomas/chroma/v2"
)

// longestColoured is how many bytes of a sample are coloured at most; a longer
// one is printed plain, since nobody reads it word by word.
const longestColoured = 32 << 10

// inks names the classes of coloured words, by the kinds of token they stand
// for. Kinds that are not here are printed in the colour of the text.
var inks = []struct {
	class string
	kinds []chroma.TokenType
}{
	{"hl-note", []chroma.TokenType{chroma.Comment}},
	{"hl-number", []chroma.TokenType{chroma.Number}},
	{"hl-unit", []chroma.TokenType{chroma.NameConstant}},
	{"hl-name", []chroma.TokenType{chroma.NameTag}},
	{"hl-text", []chroma.TokenType{chroma.String, chroma.NameVariable}},
	{"hl-word", []chroma.TokenType{chroma.Keyword}},
	{"hl-sign", []chroma.TokenType{chroma.Operator, chroma.Punctuation}},
	{"hl-head", []chroma.TokenType{chroma.GenericHeading, chroma.GenericStrong}},
}

// ink returns the class of a token, empty for plain words and blanks.
func ink(t chroma.Token) string {
	if strings.TrimSpace(t.Value) == "" {
		return ""
	}
	for _, i := range inks {
		for _, kind := range i.kinds {
			if t.Type == kind {
				return i.class
			}
		}
	}
	return ""
}

// sampleHTML prints a code sample. It takes the keyboard's focus, so that a
// long line can be scrolled without a finger.
func sampleHTML(language string, code []byte) string {
	var b bytes.Buffer
	b.WriteString(`<pre class="sample" tabindex="0"><code>`)
	if l, ok := lexers[language]; ok && len(code) <= longestColoured {
		colour(&b, l, string(code))
	} else {
		b.WriteString(escape(string(code)))
	}
	b.WriteString("</code></pre>\n")
	return b.String()
}

// colour writes words of one class that follow each other as one.
func colour(b *bytes.Buffer, l chroma.Lexer, code string) {
	tokens, err := l.Tokenise(nil, code)
	if err != nil {
		b.WriteString(escape(code)) // no lexer here gives an error; the words matter more than their colours
		return
	}
	open := ""
	for _, t := range tokens.Tokens() {
		class := ink(t)
		if class != open {
			if open != "" {
				b.WriteString("</span>")
			}
			if class != "" {
				b.WriteString(`<span class="` + class + `">`)
			}
			open = class
		}
		b.WriteString(escape(t.Value))
	}
	if open != "" {
		b.WriteString("</span>")
	}
}
