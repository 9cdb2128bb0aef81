package press

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// mostToday is how many media a page names in the place of another: the nearest
// few, since the list of all stands on the same page.
const mostToday = 3

// kindsOfDecoration are the kinds of medium that decorate: one may stand in for
// another. Nothing stands in for a glaze or a resist but another of its look.
var kindsOfDecoration = []string{"clay", "colour", "powder", "on-glaze"}

// standIns lists what may go on in a state in the place of a medium that is
// risky or never there: what looks the same, else what decorates as well. What
// is worse for health, or needs a stricter eye, is never named.
func (i *impression) standIns(m course.Medium, s course.State, at place) []link {
	if v := m.On[s.ID].Verdict; v != course.Risky && v != course.Never {
		return nil
	}
	var same, others []course.Medium
	for _, o := range i.table.Media {
		switch {
		case o.ID == m.ID, o.On[s.ID].Verdict != course.Yes, i.worseForHealth(careOf(o, s.ID), careOf(m, s.ID)):
		case m.Look != "" && o.Look == m.Look:
			same = append(same, o)
		case decorates(o) && decorates(m):
			others = append(others, o)
		}
	}
	if len(same) == 0 {
		same = bestFirst(others, s.ID)
	}
	var links []link
	for _, o := range same[:min(mostToday, len(same))] {
		links = append(links, link{Title: o.Name, Address: at.to(address.State(s.ID) + "#" + o.ID)})
	}
	return links
}

// decorates reports whether a medium is there for its look.
func decorates(m course.Medium) bool { return slices.Contains(kindsOfDecoration, m.Kind) }

// bestFirst puts those media first that like a state best.
func bestFirst(media []course.Medium, state string) []course.Medium {
	media = slices.Clone(media)
	slices.SortStableFunc(media, func(a, b course.Medium) int {
		switch {
		case (a.Best == state) == (b.Best == state):
			return 0
		case a.Best == state:
			return -1
		}
		return 1
	})
	return media
}

// sentToBest reports whether a way of working may be sent from a state to the one
// that it likes best: some of its media may be worked so there, and none of them
// with more harm to health.
func (i *impression) sentToBest(m manner, s course.State) bool {
	t, there := i.table.FindTechnique(m.id)
	if !there {
		return false
	}
	works := false
	for _, medium := range m.media {
		pair := t.On[m.best].For(medium)
		if pair.Verdict == "" || pair.Verdict == course.Never {
			continue
		}
		if works = true; i.worseForHealth([]course.Care{m.care, pair.Care}, []course.Care{m.care, m.on[s.ID].Care}) {
			return false
		}
	}
	return works
}

// inShortList is the media in a state in a line each, for the top of its page:
// what may go on first and of that what likes the state best, and for what is
// risky or never what may go on in its place.
func (i *impression) inShortList(s course.State, at place) []line {
	var lines []line
	for _, v := range verdicts {
		for _, m := range bestFirst(i.table.Media, s.ID) {
			if m.On[s.ID].Verdict == v.verdict {
				l := i.mediumIn(m, s, at)
				l.Today = i.standIns(m, s, at)
				lines = append(lines, l)
			}
		}
	}
	return lines
}

// stateSafety is the safety of all that may be done in a state, and of what may
// be done next with the pot.
func (i *impression) stateSafety(s course.State, at place) care {
	rows := i.allowedIn(s)
	for _, t := range i.table.Transitions {
		if t.From == s.ID {
			rows = append(rows, t.Care)
		}
	}
	return i.care(at, rows...)
}

// allowedIn is the rows of all media and ways of working that may be done in a
// state.
func (i *impression) allowedIn(s course.State) []course.Care {
	var rows []course.Care
	for _, m := range i.table.Media {
		if m.On[s.ID].Verdict != course.Never {
			rows = append(rows, careOf(m, s.ID)...)
		}
	}
	for _, t := range i.table.Techniques {
		rows = append(rows, wayCare(t, s.ID)...)
	}
	return rows
}
