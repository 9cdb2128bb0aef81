package quantity

import (
	"errors"
	"unicode/utf8"

	"slipbook/calculators/letters"
)

// box is what the one who types was asked for, and how the course writes.
type box struct {
	kind  Kind
	style Style
}

// say is a sentence of the style's words, by what follows "quantity." in its id.
func (s Style) say(key string, fills ...string) string {
	return s.Words.Fill("quantity."+key, fills...)
}

// refuse makes an error of a sentence.
func (b *box) refuse(key string, fills ...string) error {
	return errors.New(b.style.say(key, fills...))
}

// example is a good answer for the box.
func (b *box) example() string {
	switch b.kind {
	case Mass:
		return b.spell("174.5 g")
	case Volume:
		return "100 mL"
	case Length:
		return "120 mm"
	case Area:
		return "250 cm²"
	case Percent:
		return "12"
	case Temperature:
		return "20"
	case Gravity:
		return b.spell("1.45")
	case Strength:
		return "18"
	case Density:
		return b.spell("2.6")
	}
	return "3"
}

// wants says what belongs in the box: "a weight, in g, kg, oz or lb, for
// example 174.5 g".
func (b *box) wants() string {
	kind, of := b.style.say("kind."+string(b.kind)), Units(b.kind)
	if len(of) == 1 && of[0].ID == one {
		return b.style.say("wants-number", "kind", kind, "example", b.example())
	}
	return b.style.say("wants", "kind", kind, "units", b.choice(of), "example", b.example())
}

// choice lists units as alternatives: "mm, cm or in".
func (b *box) choice(of []Unit) string {
	s := ""
	for i, u := range of {
		switch {
		case i == 0:
		case i == len(of)-1:
			s += b.style.say("or")
		default:
			s += b.style.Words.Text("language.list.between")
		}
		s += u.ID
	}
	return s
}

// spell writes an example, given with a decimal point, in the style.
func (b *box) spell(example string) string {
	if before, after, found := letters.Cut(example, "."); found {
		return before + string(rune(b.style.mark())) + after
	}
	return example
}

// notNumber refuses a text in which no number can be found.
func (b *box) notNumber(text string) error {
	return b.refuse("no-number", "typed", b.quote(text), "kind", b.style.say("kind."+string(b.kind)), "example", b.example())
}

// quoteLimit is how many bytes of a text an error repeats.
const quoteLimit = 48

// quote repeats what was typed in quotation marks: not all of a long text, and
// without characters that cannot be seen.
func (b *box) quote(text string) string {
	text = Visible(text)
	for i, r := range text {
		if i+utf8.RuneLen(r) > quoteLimit {
			return b.style.Words.Fill("language.quoted", "text", text[:i]+"…")
		}
	}
	return b.style.Words.Fill("language.quoted", "text", text)
}

// Visible is a text without the characters that cannot be seen and without
// broken ones, for sentences that repeat it.
func Visible(text string) string {
	b := make([]byte, 0, len(text))
	for _, r := range text {
		if r != utf8.RuneError && !unseen(r) {
			b = utf8.AppendRune(b, r)
		}
	}
	return string(b)
}

// broken refuses a text with characters that stand for nothing: what they were
// is not known, so nothing is read from what is left.
func (b *box) broken() error {
	return b.refuse("broken", "example", b.example())
}

// unseen reports whether a character is a control character or one that turns the
// direction of the writing after it.
func unseen(r rune) bool {
	return control(r) || weightless(r)
}

func control(r rune) bool { return r < 0x20 || 0x7f <= r && r < 0xa0 || 0x2028 <= r && r <= 0x2029 }

// weightless reports whether a character takes no room: it comes along when a
// number is copied from somewhere, and means nothing in one.
func weightless(r rune) bool {
	return r == 0xad || 0x200b <= r && r <= 0x200f || 0x202a <= r && r <= 0x202e || 0x2060 <= r && r <= 0x2069 || r == 0xfeff
}
