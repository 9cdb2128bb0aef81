package proof

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// What links to what no Markdown file holds begin with.
const (
	glossaryScheme = "glossary:"
	stateScheme    = "state:"
)

// glossary finds the terms of the course in a text. It is read by many
// goroutines at once.
type glossary struct {
	terms  []course.Term
	states []string         // by term: the link to the state that it names, or nothing
	root   node             // of the trie of their words
	begins [1 << 10]bool    // by the first two letters of a term; most words end here
	byTo   map[string][]int // terms that a link explains, by what is written in it
}

// node is a node of the trie: where one is after some words of a term.
type node struct {
	term int // its number from 1; 0 where no term ends here
	next map[string]*node
}

func newGlossary(c *course.Course) *glossary {
	g := &glossary{terms: c.Glossary, states: make([]string, len(c.Glossary)), byTo: make(map[string][]int)}
	for i, t := range c.Glossary {
		for _, word := range append([]string{t.Word}, t.Also...) {
			g.insert(word, i+1)
		}
		g.explain(glossaryScheme+t.ID, i)
		if c.Decoration == nil {
			continue
		}
		for _, s := range c.Decoration.States {
			if s.ID == t.ID || sameWords(s.Name, t.Word) {
				g.states[i] = stateScheme + s.ID
				g.explain(g.states[i], i)
			}
		}
	}
	return g
}

func (g *glossary) explain(to string, term int) { g.byTo[to] = append(g.byTo[to], term) }

// sameWords reports whether two names differ in nothing but capitals and hyphens.
func sameWords(a, b string) bool { return slices.Equal(wordsOf(a), wordsOf(b)) }

// wordsOf parts a name into its words, in small letters.
func wordsOf(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(c rune) bool { return !isWordRune(c) })
}

func isWordRune(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) || unicode.IsMark(c) }

// insert adds a term's word, in the singular and in the plural. Of two terms with
// one word, which course reports, the first holds it.
func (g *glossary) insert(word string, term int) {
	words := wordsOf(word)
	if len(words) == 0 {
		return
	}
	at := &g.root
	g.begins[twoOf(words[0])] = true
	for _, w := range words[:len(words)-1] {
		at = at.child(w)
	}
	last := words[len(words)-1]
	for _, form := range []string{last, last + "s", last + "es"} {
		if b := at.child(form); b.term == 0 {
			b.term = term
		}
	}
}

func (n *node) child(word string) *node {
	if n.next == nil {
		n.next = make(map[string]*node)
	}
	if n.next[word] == nil {
		n.next[word] = new(node)
	}
	return n.next[word]
}

// twoOf returns the place of a word's first two letters, whatever their capitals.
// Those beyond ASCII, whose capitals may be other bytes, share one place.
func twoOf(word string) int {
	place := 0
	for i := range min(2, len(word)) {
		c := word[i]
		if c >= utf8.RuneSelf {
			return 0
		}
		place = place<<5 | int(c&31)
	}
	return place
}

// termUses is what is kept of a page for the glossary: a few numbers a term.
type termUses struct {
	leads  []int // terms that the page leads to, whoever reads it there
	linked []int // of a lesson: terms that it links to
	first  []termUse
}

// termUse is a term that stands unlinked on a page: the first place, from its
// offset in the source to the end.
type termUse struct{ term, offset, end int }

// leads returns the terms that a page leads to.
func (g *glossary) leads(d *markup.Document) (terms []int) {
	for _, made := range d.Made() {
		terms = append(terms, g.byTo[made]...)
	}
	return terms
}

// used returns the terms that a lesson links to, and those that stand in words
// that could have been links: not in headings, captions and blocks of YAML, nor in
// footnotes, which nobody reads first. What only the instructor reads counts for
// neither.
func (g *glossary) used(p *markup.Prose) termUses {
	var u termUses
	if len(g.terms) == 0 {
		return u
	}
	seen := make([]bool, len(g.terms))
	links := p.Links
	for _, passage := range p.Passages {
		for len(links) > 0 && links[0].Start < passage.Start {
			links = links[1:]
		}
		if passage.Teaching {
			continue
		}
		for _, l := range links {
			if l.Start >= passage.End {
				break
			}
			u.linked = append(u.linked, g.byTo[l.To]...)
		}
		if passage.Note || passage.Kind != markup.RunningWords {
			continue
		}
		g.scan(p.Text[passage.Start:passage.End], func(start, end, term int) {
			if seen[term] || inLink(links, passage.Start+start) {
				return
			}
			seen[term] = true
			u.first = append(u.first, termUse{term, p.Offset(passage.Start + start), p.Offset(passage.Start+end-1) + 1})
		})
	}
	return u
}

// inLink reports whether a place is among a link's words; links are those from
// its passage on.
func inLink(links []markup.Linked, at int) bool {
	for _, l := range links {
		if at < l.Start {
			return false
		}
		if at < l.End {
			return true
		}
	}
	return false
}

// scan calls found for each term in a text, the longest where one begins with
// another.
func (g *glossary) scan(text string, found func(start, end, term int)) {
	for i := 0; i < len(text); {
		end := wordEnd(text, i)
		if end == i {
			_, size := utf8.DecodeRuneInString(text[i:])
			i += size
			continue
		}
		if !g.begins[twoOf(text[i:end])] {
			i = end
			continue
		}
		term, last := g.longest(text, i)
		if term > 0 && !hyphenBefore(text, i) {
			found(i, last, term-1)
			end = last
		}
		i = end
	}
}

// wordEnd returns where the word that begins at an offset ends; the offset itself
// where none begins.
func wordEnd(text string, at int) int {
	for at < len(text) {
		if kind := signs[text[at]]; kind == wordSign {
			at++
			continue
		} else if kind != longSign {
			break
		}
		c, size := utf8.DecodeRuneInString(text[at:])
		if !isWordRune(c) {
			break
		}
		at += size
	}
	return at
}

// longest returns the longest term that begins with the word at an offset, counted
// from 1, and where it ends; 0 where none does.
func (g *glossary) longest(text string, start int) (term, end int) {
	b := &g.root
	for at := start; ; {
		stop := wordEnd(text, at)
		if b = b.next[strings.ToLower(text[at:stop])]; b == nil {
			return term, end
		}
		joint, size := utf8.DecodeRuneInString(text[stop:])
		joined := joint == '-' && wordEnd(text, stop+size) > stop+size
		if b.term > 0 && !joined {
			term, end = b.term, stop
		}
		if joint != ' ' && !joined {
			return term, end
		}
		at = stop + size
	}
}

// hyphenBefore reports whether a word is the second part of another.
func hyphenBefore(text string, at int) bool {
	if at < 2 || text[at-1] != '-' {
		return false
	}
	c, _ := utf8.DecodeLastRuneInString(text[:at-1])
	return isWordRune(c)
}

// checkLinks warns of terms that the first lesson to use them does not link.
// Pages come in reading order.
func (g *glossary) checkLinks(pages []*Page) finding.List {
	var all finding.List
	met := make([]bool, len(g.terms))
	for _, p := range pages {
		for _, term := range p.uses.linked {
			met[term] = true
		}
		text := source.New(p.File, p.Source)
		for _, use := range p.uses.first {
			if met[use.term] {
				continue
			}
			met[use.term] = true
			word := strings.Join(strings.Fields(string(p.Source[use.offset:max(use.offset, use.end)])), " ")
			text.Report(use.offset, finding.TermLink,
				fmt.Sprintf("“%s” stands here in a lesson for the first time, and this page does not link it", word), g.linkHelp(use.term, word))
		}
		all = append(all, text.Found...)
	}
	return all
}

// linkHelp says what to write for a term.
func (g *glossary) linkHelp(term int, word string) string {
	do := fmt.Sprintf("Write [%s](%s%s), here or elsewhere on this page", word, glossaryScheme, g.terms[term].ID)
	if state := g.states[term]; state != "" {
		do += ", or link " + state
	}
	return do + "."
}

// checkUnused warns of terms that nothing leads to.
func (g *glossary) checkUnused(pages []*Page) finding.List {
	led := make([]bool, len(g.terms))
	for _, p := range pages {
		for _, term := range p.uses.leads {
			led[term] = true
		}
	}
	for _, t := range g.terms {
		for _, other := range t.See {
			for _, term := range g.byTo[glossaryScheme+other] {
				led[term] = true
			}
		}
	}
	var all finding.List
	for i, t := range g.terms {
		if !led[i] {
			all = append(all, finding.Finding{File: glossaryFile, Line: 1, Column: 1, Rule: finding.TermUnused,
				Text: fmt.Sprintf("nothing leads to the term “%s”", t.Word), Do: fmt.Sprintf("Link it as %s%s where a lesson uses it, name it under “see” of another term, or take it out.", glossaryScheme, t.ID)})
		}
	}
	return all
}
