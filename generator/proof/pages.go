package proof

import (
	"crypto/sha256"
	"fmt"
	"maps"
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// Page is a page of a course that was read.
type Page struct {
	*course.Page
	Document *markup.Document
	Targets  []address.Target // by markup.Ref.Number; empty where a reference leads nowhere, which is reported

	uses   termUses
	faults []Fault
}

// named puts the name of a page's file into findings that were made without it.
func named(page *course.Page, found finding.List) finding.List {
	all := slices.Clone(found)
	for i := range all {
		all[i].File = page.File
	}
	return all
}

// checking is a page while it is held to the rules of a course.
type checking struct {
	page  *course.Page
	doc   *markup.Document
	prose *markup.Prose
	text  *source.Text // what is wrong with it
}

// find notes something wrong at an offset of the source; below zero is the page
// as a whole.
func (c *checking) find(offset int, rule *finding.Rule, text, do string) {
	c.text.Report(offset, rule, text, do)
}

// reading is what is kept of a page's source as long as source and rules stay
// the same: the document, and what the rules about wording found.
type reading struct {
	document *markup.Document
	found    finding.List // without the name of the file
	uses     termUses
}

// readingKey tells apart what a reading depends on. The source of a unit's page is
// told by its place in memory: a course keeps those that stay the same, and to sum
// all of them up would take longer than the rest of a save.
type readingKey struct {
	inUnit   *byte             // the first of a page of a unit
	source   [sha256.Size]byte // of another page
	head     string            // likewise
	kind     course.PageKind
	medium   string
	noHead   bool
	noText   bool
	language string
	rules    [sha256.Size]byte
}

// rules is what the checks of a page know of the course. Goroutines share it
// and only read.
type rules struct {
	language string
	sections course.Sections
	terms    *glossary
	trade    *glossary // the words of the trade that the course does not explain
	spelling *spelling
	digest   [sha256.Size]byte // of all that the rules about wording ask
}

func newRules(c *course.Course) *rules {
	r := &rules{language: c.Language, sections: c.Sections, terms: newGlossary(c), spelling: spellingOf(c.Language)}
	r.trade = newTrade(c, r.terms)
	r.digest = sha256.Sum256(fmt.Appendf(nil, "%q %q %q", c.Sections, c.Glossary, r.terms.states))
	return r
}

// read reads a page and holds its words to the rules, or takes what was read of
// the same source before. The prose is as large as the page, and is not kept.
func (r *Reader) read(rules *rules, page *course.Page) *reading {
	key := readingKey{kind: page.Kind, medium: page.Head.Medium, noHead: page.NoHead, noText: page.NoText, language: rules.language, rules: rules.digest}
	if page.Unit != nil && len(page.Source) > 0 {
		key.inUnit = &page.Source[0]
	} else {
		key.source, key.head = sha256.Sum256(page.Source), fmt.Sprint(page.Head)
	}
	if kept, ok := r.readings.Get(key); ok {
		return kept
	}
	document, prose := markup.Read(page.Source, rules.language)
	made := &reading{document: document, found: rules.checkOpening(page)}
	if prose != nil { // else nested too deep to be read; that is said
		made.found = append(made.found, rules.checkWords(page, document, prose)...)
		if page.Kind == course.LessonPage {
			made.uses = rules.terms.used(prose)
		}
	}
	made.uses.leads = rules.terms.leads(document)
	r.readings.Put(key, made)
	return made
}

// checkWords holds the words of a page to the rules that it can be held to by
// itself. What a lesson lacks can be said of one that could be read: behind a fence
// that is not closed nobody sees its questions.
func (r *rules) checkWords(page *course.Page, document *markup.Document, prose *markup.Prose) finding.List {
	c := &checking{page: page, doc: document, prose: prose, text: source.New("", page.Source)}
	if page.Kind == course.LessonPage {
		if !page.NoText && !document.Partial && page.Head.Type == course.ForBench {
			r.checkParts(c)
		}
		checkCautions(c)
		checkPictureWords(c)
		if page.Head.Type != course.ForPaper {
			checkStepNumbers(c)
		}
		r.checkWhole(c)
		r.checkPerils(c)
		r.checkTrade(c)
	}
	r.checkWording(c)
	return c.text.Found
}

// checkOpening holds a page's opening block to the rules.
func (r *rules) checkOpening(page *course.Page) finding.List {
	c := &checking{page: page, text: source.New("", page.Source)}
	if page.Kind == course.LessonPage && !page.NoHead {
		checkHead(c)
	}
	r.spelling.checkHead(c)
	return c.text.Found
}

// checkPictures warns of files in the pictures folder that no page, no test tile and no
// fault shows.
func checkPictures(c *course.Course, pages []*Page) finding.List {
	shown := make(map[*course.Picture]bool)
	for _, p := range pages {
		for _, t := range p.Targets {
			shown[t.Picture] = true
		}
	}
	for _, t := range c.Tiles {
		shown[c.Pictures[t.Before]], shown[c.Pictures[t.After]] = true, true
	}
	for _, f := range c.Faults {
		shown[c.Pictures[f.Picture]] = true
	}
	var all finding.List
	for _, path := range slices.Sorted(maps.Keys(c.Pictures)) {
		if !shown[c.Pictures[path]] {
			all = append(all, finding.Finding{File: path, Line: 1, Column: 1, Rule: finding.UnshownPicture,
				Text: "no page shows this picture", Do: "Show it where it teaches something, or take the file away."})
		}
	}
	return all
}
