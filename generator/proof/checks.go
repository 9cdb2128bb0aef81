package proof

import (
	"fmt"
	"maps"
	"slices"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// checkFragments reports links to headings that the page they lead to does not
// have. That the page itself is there, markup has checked.
func checkFragments(documents []*markup.Document) finding.List {
	byFile := make(map[string]*markup.Document, len(documents))
	for _, d := range documents {
		byFile[d.Page.File] = d
	}
	var all finding.List
	for _, d := range documents {
		text := source.New(d.Page.File, d.Page.Source)
		for _, l := range d.Links {
			to, ok := byFile[l.To]
			if l.Fragment == "" || ok && to.HasHeading(l.Fragment) {
				continue
			}
			do := "Link to the page without a heading."
			if ok {
				do = to.HeadingHelp()
			}
			text.Report(l.Offset, finding.LinkTarget, fmt.Sprintf("link to #%s: %s has no such heading", l.Fragment, l.To), do)
		}
		all = append(all, text.Found...)
	}
	return all
}

// checkPictures warns of files in the pictures folder that no page shows.
func checkPictures(c *course.Course, documents []*markup.Document) finding.List {
	shown := make(map[string]bool)
	for _, d := range documents {
		for _, path := range d.Shown {
			shown[path] = true
		}
	}
	var all finding.List
	for _, path := range slices.Sorted(maps.Keys(c.Pictures)) {
		if !shown[path] {
			all = append(all, finding.Finding{File: path, Line: 1, Column: 1, Rule: finding.UnshownPicture,
				Text: "no page shows this picture", Do: "Show it where it teaches something, or take the file away."})
		}
	}
	return all
}
