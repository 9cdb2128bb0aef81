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

// refuse makes an error of a sentence, each $ in it filled with the next of the
// words.
func refuse(sentence string, words ...string) error {
	said := ""
	for _, w := range words {
		before, after, _ := letters.Cut(sentence, "$")
		said, sentence = said+before+w, after
	}
	return errors.New(said + sentence)
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
	s := Name(b.kind)
	of := Units(b.kind)
	if len(of) == 1 && of[0].ID == one {
		s += ", without a unit"
	} else {
		s += ", in " + choice(of)
	}
	return s + ", for example " + b.example()
}

// choice lists units as alternatives: "mm, cm or in".
func choice(of []Unit) string {
	s := ""
	for i, u := range of {
		switch {
		case i == 0:
		case i == len(of)-1:
			s += " or "
		default:
			s += ", "
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
	return refuse("$ is not a number. Write $ with the digits 0 to 9, for example $.", quote(text), Name(b.kind), b.example())
}

// several refuses a text that holds more than one number.
func (b *box) several(t *typed) error {
	hint := ""
	if b.kind == Mass {
		hint = ", or pounds and ounces: 2 lb 3 oz"
	}
	return refuse("$ is more than one number. Write one, for example $$.", quote(t.text), b.example(), hint)
}

// quoteLimit is how many bytes of a text an error repeats.
const quoteLimit = 48

// quote repeats what was typed in quotation marks: not all of a long text, and
// without characters that cannot be seen.
func quote(text string) string {
	b := []byte("“")
	for i, r := range text {
		if i+utf8.RuneLen(r) > quoteLimit {
			b = append(b, "…"...)
			break
		}
		if unseen(r) {
			r = utf8.RuneError
		}
		b = utf8.AppendRune(b, r)
	}
	return string(append(b, "”"...))
}

// unseen says whether a character is a control character or one that turns the
// direction of the writing after it.
func unseen(r rune) bool {
	return r < 0x20 || 0x7f <= r && r < 0xa0 || 0x200b <= r && r <= 0x200f ||
		0x2028 <= r && r <= 0x202e || 0x2060 <= r && r <= 0x2069 || r == 0xfeff
}
