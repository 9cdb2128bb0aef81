package proof

import (
	"fmt"
	"iter"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// How long a sentence may be, in words. A long one now and then reads better than two
// that were cut apart; many of them nobody reads at the bench.
const (
	longSentence    = 25
	longestSentence = 40
	oneIn           = 10 // sentences may be long
)

// checkWording warns of sentences that are too long to be read at the bench, and
// of words in the other spelling.
func (r *rules) checkWording(s *checking) {
	var long []longOne
	all := 0
	for _, p := range s.prose.Passages {
		text := s.prose.Text[p.Start:p.End]
		for sentence := range sentences(text) {
			at := p.Start + sentence.start
			if !p.Note && p.Kind != markup.HeadingLine && p.Kind != markup.PictureWords {
				all++
				if sentence.words > longSentence {
					long = append(long, longOne{s.beginning(p, at), sentence.words})
				}
			}
			r.spelling.check(text[sentence.start:sentence.end], func(word int, fault, do string) {
				s.find(s.prose.Offset(at+word), finding.TwoSpellings, fault, do)
			})
		}
	}
	s.checkLong(long, all)
}

// longOne is a long sentence: where it begins in the source, and its words.
type longOne struct{ offset, words int }

// checkLong warns of sentences that are too long for anywhere, and of the others once
// there are more of them than a page bears.
func (s *checking) checkLong(long []longOne, all int) {
	bears := max(1, all/oneIn)
	for _, l := range long {
		switch {
		case l.words > longestSentence:
			s.find(l.offset, finding.LongSentence, fmt.Sprintf("this sentence has %d words, more than %d", l.words, longestSentence),
				"Make two of it, or leave out what the reader can do without.")
		case len(long) > bears:
			s.find(l.offset, finding.LongSentence, fmt.Sprintf("this sentence has %d words; %d of the page's %d have more than %d, and it bears %d", l.words, len(long), all, longSentence, bears),
				"Make two of some of them, or leave out what the reader can do without.")
		}
	}
}

// beginning returns where a sentence of a passage begins in the source.
func (s *checking) beginning(p markup.Passage, at int) int {
	offset := s.prose.Offset(at)
	if p.Kind == markup.RunningWords {
		offset = beginning(s.page.Source, offset)
	}
	return offset
}

// beginning goes back from a sentence's first sign over those of Markdown that
// belong to it: emphasis, the bracket of a link.
func beginning(source []byte, offset int) int {
	for offset > 0 && offset <= len(source) && strings.IndexByte("*_[", source[offset-1]) >= 0 {
		offset--
	}
	return offset
}

// sentence is a sentence of a text: from its first sign to behind its last.
type sentence struct {
	start, end int
	words      int // as a reader counts them: what holds a letter or a digit, between blanks
}

// sentences parts a text into sentences. One ends at . ! ? or … with a blank
// behind it and then a capital, a digit, a quote or a thing; abbreviations and
// numbers end none, and neither does a colon.
func sentences(text string) iter.Seq[sentence] {
	return func(yield func(sentence) bool) {
		var s sentence
		open, counted := false, false // a sentence has begun; the word at hand was counted
		for i := 0; i < len(text); {
			kind, size := signAt(text, i)
			i += size
			if kind == blankSign {
				counted = false
				continue
			}
			if !open {
				s, open = sentence{start: i - size}, true
			}
			if kind == wordSign {
				if !counted {
					s.words++
					counted = true
				}
				for i < len(text) && signs[text[i]] == wordSign {
					i++
				}
			}
			s.end = i
			if kind != stopSign {
				continue
			}
			i += trailing(text[i:])
			dot := s.end - size
			s.end = i
			if i == len(text) || endsAt(text[s.start:dot], text[dot:i], text[i:]) {
				if !yield(s) {
					return
				}
				open, counted = false, false
			}
		}
		if open {
			yield(s)
		}
	}
}

// sign is what a character is to a sentence.
type sign uint8

const (
	otherSign sign = iota
	blankSign      // parts words
	wordSign       // makes what it stands in a word
	stopSign       // a sentence may end with it
	longSign       // of more than one byte: to be looked at
)

// signs tells what each byte is; most of a text is told by it alone.
var signs = func() (table [256]sign) {
	for c := range table {
		table[c] = longSign
		if c < utf8.RuneSelf {
			table[c] = signOf(rune(c))
		}
	}
	return table
}()

func signOf(c rune) sign {
	switch {
	case unicode.IsSpace(c) || c == '—':
		return blankSign
	case unicode.IsLetter(c) || unicode.IsDigit(c):
		return wordSign
	case isStop(c):
		return stopSign
	}
	return otherSign
}

func signAt(text string, at int) (sign, int) {
	if kind := signs[text[at]]; kind != longSign {
		return kind, 1
	}
	c, size := utf8.DecodeRuneInString(text[at:])
	return signOf(c), size
}

// isStop reports whether a sentence may end with a sign. The last three are those
// of Arabic, Hindi and Chinese.
func isStop(c rune) bool {
	switch c {
	case '.', '!', '?', '…', '؟', '।', '。':
		return true
	}
	return false
}

// trailing returns the length of what still belongs to a sentence behind its stop:
// other stops, quotes, brackets.
func trailing(text string) int {
	rest := strings.TrimLeftFunc(text, func(c rune) bool { return isStop(c) || strings.ContainsRune("\"')]”’»", c) })
	return len(text) - len(rest)
}

// endsAt reports whether a sentence ends with a stop, which stands between what was
// read of the sentence and what is still to be read.
func endsAt(before, stop, after string) bool {
	next := strings.TrimLeftFunc(after, unicode.IsSpace)
	if len(next) == len(after) {
		return false // no blank: a number, an address
	}
	if next == "" {
		return true
	}
	c, _ := utf8.DecodeRuneInString(next)
	if stop == "." && isAbbreviation(before, unicode.IsDigit(c)) {
		return false
	}
	if strings.ContainsRune("([", c) {
		c, _ = utf8.DecodeRuneInString(next[1:])
	}
	return unicode.IsLetter(c) && !unicode.IsLower(c) || unicode.IsDigit(c) || c == markup.Thing || strings.ContainsRune("\"'“‘«", c)
}

// Abbreviations by what stands before their last stop. Those of the second list
// are words, too, and abbreviate only before a number.
var (
	abbreviations = []string{"e.g", "i.e", "cf", "vs", "approx", "viz", "fig", "figs", "mr", "mrs", "ms", "dr", "prof", "st"}
	beforeNumbers = []string{"no", "nos", "p", "pp", "vol", "ca"}
)

// isAbbreviation reports whether a text that a stop follows ends with an
// abbreviation.
func isAbbreviation(before string, number bool) bool {
	word := before
	if i := strings.LastIndexFunc(before, func(c rune) bool { return c != '.' && !unicode.IsLetter(c) }); i >= 0 {
		_, size := utf8.DecodeRuneInString(before[i:])
		word = before[i+size:]
	}
	has := func(list []string) bool {
		for _, a := range list {
			if strings.EqualFold(word, a) {
				return true
			}
		}
		return false
	}
	return has(abbreviations) || number && has(beforeNumbers)
}
