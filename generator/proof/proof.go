// Package proof reads every page of a course once and says everything that is
// wrong with it. It exists so that publish, preview and the proof command can
// never differ in what they find.
package proof

import (
	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// Reading is a course with all its pages read.
type Reading struct {
	Course    *course.Course
	Documents []*markup.Document // in the order of Course.Pages
}

// Read parses all pages in parallel, checks each page and what pages say of
// each other (links to headings, pages nobody reaches), and returns the
// findings sorted, those of loading included.
//
//	func Read(c *course.Course, loading finding.List, s markup.Surroundings) (*Reading, finding.List)
