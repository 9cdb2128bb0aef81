package proof

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// How a lesson reads as a whole. What a reader at the bench reads are its running
// words: not what stands in tables, cautions, questions, notes for teaching and
// footnotes, which are looked at when they are wanted.

const (
	mostWords    = 900 // of a lesson: what is more becomes a lesson of its own
	hardestGrade = 6.0 // by Flesch and Kincaid, in years of school
)

// checkWhole warns of a lesson that is long, or hard to read.
func (r *rules) checkWhole(s *checking) {
	counted := measure(s.prose)
	if counted.words > mostWords && s.page.Head.Type == course.ForBench {
		s.find(-1, finding.LessonLength, fmt.Sprintf("this lesson has %d words beside its tables, cautions and questions, more than %d", counted.words, mostWords),
			"Leave out what the reader can do without, or make a lesson of its own of a part.")
	}
	if grade := counted.grade(); strings.HasPrefix(r.language, "en") && grade > hardestGrade {
		s.find(-1, finding.HardToRead, fmt.Sprintf("this page reads like year %.1f of school by Flesch and Kincaid's formula, more than %.0f", grade, hardestGrade),
			"Write shorter sentences and plainer words where both are long.")
	}
}

// measured is what the formula of a page's readability asks for.
type measured struct{ words, sentences, syllables int }

// grade is the grade level by Flesch and Kincaid, years of school in the United
// States: 0.39 words/sentences + 11.8 syllables/words - 15.59 (Kincaid, Fishburne,
// Rogers and Chissom, Derivation of New Readability Formulas for Navy Enlisted
// Personnel, Research Branch Report 8-75, 1975). A page without words has grade 0.
func (m measured) grade() float64 {
	if m.words == 0 {
		return 0
	}
	words := float64(m.words)
	return 0.39*words/float64(m.sentences) + 11.8*float64(m.syllables)/words - 15.59
}

// measure counts the running words of a page.
func measure(p *markup.Prose) measured {
	var m measured
	for n, passage := range p.Passages {
		if passage.Kind != markup.RunningWords || passage.Note || passage.Teaching || passage.Cell || inCaution(p, n) {
			continue
		}
		text := p.Text[passage.Start:passage.End]
		for sentence := range sentences(text) {
			m.sentences++
			m.words += sentence.words
		}
		m.syllables += syllablesOf(text)
	}
	return m
}

// inCaution reports whether a passage is of a caution.
func inCaution(p *markup.Prose, n int) bool {
	for _, c := range p.Cautions {
		if c.First <= n && n < c.Last {
			return true
		}
	}
	return false
}

// syllablesOf counts the syllables of all words of a text, which blanks and dashes part.
func syllablesOf(text string) int {
	n, start, isWord := 0, 0, false
	for i := 0; i < len(text); {
		kind, size := signAt(text, i)
		if kind == blankSign {
			if isWord {
				n += syllables(text[start:i])
			}
			start, isWord = i+size, false
		}
		isWord = isWord || kind == wordSign
		i += size
	}
	if isWord {
		n += syllables(text[start:])
	}
	return n
}

// vowels are those of English and of words that it borrowed.
const vowels = "aeiouyâäàéèêöôü"

// isVowel tells it of the bytes that are letters by themselves.
var isVowel = func() (table [utf8.RuneSelf]bool) {
	for c := range table {
		table[c] = strings.IndexByte(vowels, byte(c)) >= 0
	}
	return table
}()

// syllables counts those of an English word by its groups of vowels: a silent e at
// the end, and the e of -ed behind most consonants, are none. Of a number, which
// everybody reads at a glance, there is one. It is off by one for a word in ten,
// up as often as down.
func syllables(word string) int {
	n, vowel := 0, false
	letters := strings.ToLower(strings.TrimFunc(word, func(c rune) bool { return !unicode.IsLetter(c) }))
	for _, c := range letters {
		is := c < utf8.RuneSelf && isVowel[c] || c >= utf8.RuneSelf && strings.ContainsRune(vowels, c)
		if is && !vowel || c == '-' {
			n++
		}
		if c == '-' {
			n-- // what follows begins anew
		}
		vowel = is
	}
	switch {
	case n < 2:
	case strings.HasSuffix(letters, "le") && len(letters) > 2 && !strings.ContainsRune("aeiouy", rune(letters[len(letters)-3])):
	case strings.HasSuffix(letters, "e") && !strings.ContainsRune("aeiouy", rune(letters[len(letters)-2])):
		n--
	case strings.HasSuffix(letters, "ed") && len(letters) > 3 && !strings.ContainsRune("aeiouytd", rune(letters[len(letters)-3])):
		n--
	case strings.HasSuffix(letters, "es") && len(letters) > 3 && !strings.ContainsRune("aeiouyscxzgh", rune(letters[len(letters)-3])):
		n--
	}
	return max(n, 1)
}
