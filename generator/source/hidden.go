package source

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/finding"
)

// A character that nobody sees can turn the digits of an amount round, keep a
// word from being found, or part two that look alike. It is refused wherever it
// comes from: written plainly, escaped in YAML, as a reference in Markdown or
// in a drawing. Two kinds pass where a script needs them: marks of direction and
// isolates in a language written from right to left, and joiners in one whose
// letters join or stack. A soft hyphen passes everywhere, and so does what makes
// one picture of several emoji.

// fromRight are the languages written from right to left, by their first
// subtag; a script subtag such as Arab says so of any language.
var fromRight = []string{"ar", "arc", "ckb", "dv", "fa", "he", "nqo", "ps", "sd", "syr", "ug", "ur", "yi"}

// joining are further languages whose scripts use the joiners: those of India,
// Nepal and Sri Lanka, Khmer and Burmese.
var joining = []string{"as", "bn", "gu", "hi", "km", "kn", "kok", "mai", "ml", "mr", "my", "ne", "or", "pa", "sa", "si", "ta", "te"}

// runsFromRight reports whether a language is written from right to left.
func runsFromRight(language string) bool {
	tags := strings.Split(strings.ToLower(language), "-")
	return slices.Contains(fromRight, tags[0]) || slices.ContainsFunc(tags[1:], func(t string) bool {
		return slices.Contains([]string{"arab", "hebr", "nkoo", "syrc", "thaa"}, t)
	})
}

// joins reports whether a language needs the joiners.
func joins(language string) bool {
	first, _, _ := strings.Cut(strings.ToLower(language), "-")
	return runsFromRight(language) || slices.Contains(joining, first)
}

// span is the characters from first to last, with what they do.
type span struct {
	first, last rune
	does        string
	passes      func(language string) bool // nil: nowhere
}

const (
	noRoom = "takes no room and cannot be seen"
	turns  = "turns the direction of the words behind it"
	marks  = "sets the direction of what stands beside it"
)

// unseen are the characters that are refused, in order.
var unseen = []span{
	{0x00, 0x08, "is a control character", nil},
	{0x0b, 0x1f, "is a control character", nil}, // a carriage return alone, too
	{0x7f, 0x9f, "is a control character", nil},
	{0x034f, 0x034f, noRoom, nil},
	{0x061c, 0x061c, marks, runsFromRight},
	{0x115f, 0x1160, noRoom, nil},
	{0x180e, 0x180e, noRoom, nil},
	{0x200b, 0x200b, noRoom, nil},
	{0x200c, 0x200d, noRoom, joins},
	{0x200e, 0x200f, marks, runsFromRight},
	{0x2028, 0x2029, "ends a line for some programs and not for others", nil},
	{0x202a, 0x202e, turns, nil},
	{0x2060, 0x2064, noRoom, nil},
	{0x2066, 0x2069, marks, runsFromRight},
	{0x206a, 0x206f, turns, nil},
	{0x3164, 0x3164, noRoom, nil},
	{0xfeff, 0xfeff, noRoom, nil},
	{0xffa0, 0xffa0, noRoom, nil},
	{0xfff9, 0xfffb, noRoom, nil},
	{0xe0000, 0xe0fff, noRoom, nil},
}

// Hidden says what is wrong with a character in a page of this language, and
// what to do; both are empty where nothing is.
func Hidden(language string, r rune) (text, do string) {
	if r == '\t' || r == '\n' || r >= ' ' && r < 0x7f {
		return "", ""
	}
	i, there := slices.BinarySearchFunc(unseen, r, func(s span, r rune) int {
		switch {
		case s.last < r:
			return -1
		case s.first > r:
			return 1
		}
		return 0
	})
	if !there || unseen[i].passes != nil && unseen[i].passes(language) {
		return "", ""
	}
	text = fmt.Sprintf("this character, %U, %s", r, unseen[i].does)
	switch {
	case r == 0x2028 || r == 0x2029:
		return text, "Write an ordinary line end, or a space."
	case unseen[i].does == turns:
		return text, "Take it out; where words of both directions meet, put the marks U+200E or U+200F beside them instead, in a course of a language written from right to left."
	case unseen[i].does == marks:
		return text, "Take it out; only a course of a language written from right to left may have it."
	}
	return text, "Take it out; it may have come along with copied text."
}

// CheckHidden reports the characters of the file that cannot be seen.
func (t *Text) CheckHidden() {
	for at := 0; at < len(t.Bytes); {
		if c := t.Bytes[at]; c < utf8.RuneSelf && (c >= ' ' && c != 0x7f || c == '\n' || c == '\t') {
			at++
			continue
		}
		r, size := utf8.DecodeRune(t.Bytes[at:])
		text, do := Hidden(t.Language, r)
		if text != "" && r != '\r' && !(r == 0x200d && joinsEmoji(t.Bytes, at, size)) {
			t.Report(at, finding.HiddenCharacter, text, do)
		}
		at += size
	}
}

// joinsEmoji reports whether a joiner stands between two signs of one picture.
func joinsEmoji(text []byte, at, size int) bool {
	before, _ := utf8.DecodeLastRune(text[:at])
	after, _ := utf8.DecodeRune(text[at+size:])
	return isEmoji(before) && isEmoji(after)
}

func isEmoji(r rune) bool {
	return r == 0xfe0f || r >= 0x1f3fb && r <= 0x1f3ff || unicode.Is(unicode.So, r)
}

// checkEscapes reports a character in a value of YAML that cannot be seen and
// does not stand in the file: it was written as an escape.
func (d *document) checkEscapes(at int, value string) {
	for _, r := range value {
		if text, do := Hidden(d.file.Language, r); text != "" && !bytes.ContainsRune(d.text, r) {
			d.report(at, finding.HiddenCharacter, "an escape stands here: "+text, do)
			return
		}
	}
}
