package imprint

import (
	"strconv"

	"slipbook/generator/course"
)

// Link is a link as a page prints it.
type Link struct {
	Title   string
	Address string // relative to the page
	About   string // one sentence; may be empty
}

// LinkTo is a link from a place to a hand-written page.
func LinkTo(at Place, page *course.Page) Link {
	return Link{Title: page.Head.Title, Address: at.To(page.Address), About: page.Head.Description}
}

// UnitEntry is a unit in a list of units.
type UnitEntry struct {
	Number  int
	Unit    Link
	Lessons []LessonEntry
}

// LessonEntry is a lesson in a list of lessons.
type LessonEntry struct {
	Number  string // "2.3"
	Lesson  Link
	Teaches []string
	Time    course.Duration
}

// UnitEntries lists units with their lessons, for a place. A unit without a page
// is left out.
func UnitEntries(at Place, units []*course.Unit) []UnitEntry {
	var entries []UnitEntry
	for n, u := range units {
		if u.Page != nil {
			entries = append(entries, UnitEntry{n + 1, LinkTo(at, u.Page), LessonEntries(at, u, n+1)})
		}
	}
	return entries
}

// LessonEntries lists a unit's lessons in order, for a place. number is
// the unit's, from 1.
func LessonEntries(at Place, u *course.Unit, number int) []LessonEntry {
	entries := make([]LessonEntry, len(u.Lessons))
	for n, l := range u.Lessons {
		entries[n] = LessonEntry{LessonNumber(strconv.Itoa(number), n), LinkTo(at, l), l.Head.Teaches, l.Head.TimeRequired}
	}
	return entries
}

// LessonNumber is the number of the n-th lesson of a unit, from 0: "2.3".
func LessonNumber(unit string, n int) string { return unit + "." + strconv.Itoa(n+1) }
