package proof

import (
	"runtime"
	"sync"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// rules is what the checks of a page know of the course. Goroutines share it
// and only read.
type rules struct {
	around   markup.Surroundings
	sections course.Sections
	terms    *glossary
	spelling *spelling
}

func newRules(c *course.Course, s markup.Surroundings) *rules {
	return &rules{around: s, sections: c.Sections, terms: newGlossary(c), spelling: spellingOf(c.Language)}
}

// readAll reads and checks pages, as many at once as there are processors.
// Documents, the terms they use, and findings come back in the order of the
// pages, whichever was finished first.
func (r *rules) readAll(pages []*course.Page) ([]*markup.Document, []termUses, finding.List) {
	documents := make([]*markup.Document, len(pages))
	uses := make([]termUses, len(pages))
	findings := make([]finding.List, len(pages))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(pages)) {
		workers.Go(func() {
			for i := range next {
				d, found := markup.Parse(pages[i], r.around)
				documents[i], findings[i] = d, append(found, r.check(d)...)
				if d.Prose != nil && d.Page.Kind == course.LessonPage {
					uses[i] = r.terms.used(d.Prose)
				}
				d.Prose = nil // as large as the page, and read
			}
		})
	}
	for i := range pages {
		next <- i
	}
	close(next)
	workers.Wait()
	var all finding.List
	for _, f := range findings {
		all = append(all, f...)
	}
	return documents, uses, all
}

// mostFindings is how many findings of one page's rules are worth reading; a
// page written by a script has no more.
const mostFindings = 200

// sheet is a page being checked.
type sheet struct {
	*markup.Document
	lines *finding.Lines // made for the first finding
	found finding.List
}

// find notes something wrong at an offset of the source; below zero is the
// page as a whole.
func (s *sheet) find(offset int, rule *finding.Rule, text, do string) {
	if len(s.found) >= mostFindings {
		return
	}
	if s.lines == nil {
		s.lines = finding.NewLines(s.Page.Source)
	}
	line, column := s.lines.At(offset)
	s.found = append(s.found, finding.Finding{File: s.Page.File, Line: line, Column: column, Rule: rule, Text: text, Do: do})
}

// check holds one page to the rules of a course that a page can be held to by
// itself.
func (r *rules) check(d *markup.Document) finding.List {
	s := &sheet{Document: d}
	lesson := d.Page.Kind == course.LessonPage
	if lesson {
		checkHead(s)
	}
	r.spelling.checkHead(s)
	if d.Prose == nil {
		return s.found // nested too deep to be read; that is said
	}
	if lesson {
		r.checkParts(s)
		checkCautions(s)
		checkPictureWords(s)
	}
	r.checkWording(s)
	return s.found
}
