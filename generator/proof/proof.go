// Package proof reads every page of a course once and says everything that is
// wrong with it. It exists so that publish, show and the proof command can
// never differ in what they find.
//
// What a page says wrongly by itself, markup finds; what the content folder
// says wrongly, course has found. proof puts the two together and adds the
// rules of a course: what a lesson has and how it is worded, checked page by
// page while they are read, and what only shows when all pages are read.
package proof

import (
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// Reading is a course with all its pages read.
type Reading struct {
	Course    *course.Course
	Documents []*markup.Document // in the order of Course.Pages, without their prose
}

// Read parses all pages in parallel, checks each page and what pages say of
// each other, and returns the findings sorted, those of loading included. The
// reading is complete even where there are findings, as far as the course is;
// a nil course gives an empty one.
func Read(c *course.Course, loading finding.List, s markup.Surroundings) (*Reading, finding.List) {
	r := &Reading{Course: c}
	all := append(finding.List(nil), loading...)
	if c == nil {
		all.Sort()
		return r, all
	}
	rules := newRules(c, s)
	documents, uses, found := rules.readAll(c.Pages())
	r.Documents = documents
	all = append(all, found...)
	all = append(all, checkFragments(documents)...)
	all = append(all, checkPictures(c, documents)...)
	all = append(all, rules.terms.checkLinks(documents, uses)...)
	all = append(all, rules.terms.checkUnused(documents)...)
	all = append(all, rules.spelling.checkTables(c)...)
	all.Sort()
	return r, all
}
