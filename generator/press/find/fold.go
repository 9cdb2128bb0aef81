package find

import (
	"iter"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"slipbook/generator/press/theme"
)

// Rules is how words of a language are made alike. The theme has them among its words,
// and the index tells them to the script, which does the same (scripts/fold.ts).
type Rules struct {
	passed  map[string]bool // words that say nothing of what is looked for
	endings [][]string      // of each group the first that fits is taken off
}

// NewRules reads the rules from the theme's words.
func NewRules(t *theme.Theme) Rules {
	r := Rules{passed: map[string]bool{}}
	for _, word := range strings.Fields(t.Say("find-passed-over")) {
		r.passed[word] = true
	}
	for group := range strings.SplitSeq(t.Say("find-endings"), "|") {
		r.endings = append(r.endings, strings.Fields(group))
	}
	return r
}

// Fold takes capitals, accents and apostrophes away.
func Fold(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.M, r) || r == '\'' || r == '’' {
			return -1
		}
		return r
	}, strings.ToLower(norm.NFD.String(text)))
}

// Words returns the stems of a text's words in order, those that say nothing left out.
func (r Rules) Words(text string) []string {
	var all []string
	for word := range apart(Fold(text)) {
		if !r.passed[word] {
			all = append(all, r.Stem(word))
		}
	}
	return all
}

// apart goes through the words of a folded text: letters, or a number with the points and
// commas inside it. (An expression says the same in a line, and took most of an index's time.)
func apart(folded string) iter.Seq[string] {
	return func(yield func(string) bool) {
		for len(folded) > 0 {
			n := leading(folded, unicode.IsLetter)
			if n == 0 {
				n = number(folded)
			}
			if n > 0 && !yield(folded[:n]) {
				return
			}
			if n == 0 {
				_, n = utf8.DecodeRuneInString(folded)
			}
			folded = folded[n:]
		}
	}
}

// number returns how many bytes of a number a text begins with: digits, and behind a point
// or comma more digits.
func number(text string) int {
	n := leading(text, unicode.IsDigit)
	for n > 0 && n < len(text) && (text[n] == '.' || text[n] == ',') {
		more := leading(text[n+1:], unicode.IsDigit)
		if more == 0 {
			break
		}
		n += 1 + more
	}
	return n
}

// leading returns how many bytes a text begins with that are of one kind.
func leading(text string, kind func(rune) bool) int {
	if n := strings.IndexFunc(text, func(c rune) bool { return !kind(c) }); n >= 0 {
		return n
	}
	return len(text)
}

// Stem takes off a folded word what changes with its use, and makes doubled letters
// single: "slipped" becomes "slip". It leaves three letters at least, of the last
// group two, and takes nothing off behind the ending's own first letter: "glass".
func (r Rules) Stem(word string) string {
	if c, _ := utf8.DecodeRuneInString(word); !unicode.IsLetter(c) {
		return strings.ReplaceAll(word, ",", ".")
	}
	for n, group := range r.endings {
		least := 3
		if n > 0 {
			least = 2
		}
		word = without(word, group, least)
	}
	return single(word)
}

// without takes the first ending that fits off a word.
func without(word string, endings []string, least int) string {
	for _, ending := range endings {
		rest, ok := strings.CutSuffix(word, ending)
		if ok && utf8.RuneCountInString(rest) >= least && !strings.HasSuffix(rest, ending[:1]) {
			return rest
		}
	}
	return word
}

// single makes doubled letters single.
func single(word string) string {
	var last rune
	return strings.Map(func(r rune) rune {
		if r == last {
			return -1
		}
		last = r
		return r
	}, word)
}
