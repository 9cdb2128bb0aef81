package proof

import (
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/pool"
	"slipbook/generator/source"
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
	findings := pool.Map(len(pages), func(i int) finding.List {
		d, found := markup.Parse(pages[i], r.around)
		documents[i] = d
		found = append(found, r.check(d)...)
		if d.Prose != nil && d.Page.Kind == course.LessonPage {
			uses[i] = r.terms.used(d.Prose)
		}
		d.Prose = nil // as large as the page, and read
		return found
	})
	var all finding.List
	for _, f := range findings {
		all = append(all, f...)
	}
	return documents, uses, all
}

// sheet is a page being checked.
type sheet struct {
	*markup.Document
	text *source.Text // what is wrong with it
}

// find notes something wrong at an offset of the source; below zero is the
// page as a whole.
func (s *sheet) find(offset int, rule *finding.Rule, text, do string) {
	s.text.Report(offset, rule, text, do)
}

// check holds one page to the rules of a course that a page can be held to by
// itself.
func (r *rules) check(d *markup.Document) finding.List {
	s := &sheet{d, source.New(d.Page.File, d.Page.Source)}
	lesson := d.Page.Kind == course.LessonPage
	if lesson {
		checkHead(s)
	}
	r.spelling.checkHead(s)
	if d.Prose == nil {
		return s.text.Found // nested too deep to be read; that is said
	}
	if lesson {
		r.checkParts(s)
		checkCautions(s)
		checkPictureWords(s)
	}
	r.checkWording(s)
	return s.text.Found
}
