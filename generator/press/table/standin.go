package table

import (
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// mostToday is how many media a page names in the place of another: the nearest
// few, since the list of all stands on the same page.
const mostToday = 3

// kindsOfDecoration are the kinds of medium that decorate: one may stand in for
// another. Nothing stands in for a glaze or a resist but another of its look.
var kindsOfDecoration = []string{"clay", "colour", "powder", "on-glaze"}

// StandIn is a medium that may go on now in the place of another.
type StandIn struct {
	imprint.Link
	If []string // what has to be so first, in words; may be empty
}

// standIns lists what may go on in a state in the place of a medium that is
// risky or never there: what looks the same, else what decorates as well, each of
// them by the table a plain yes. What is worse for health, or needs a stricter eye,
// is never named.
func (r *Table) standIns(m course.Medium, s course.State, at imprint.Place) []StandIn {
	if v := m.On[s.ID].Verdict; v != course.Risky && v != course.Never {
		return nil
	}
	var same, others []course.Medium
	for _, o := range r.Decoration.Media {
		switch {
		case o.ID == m.ID, o.On[s.ID].Verdict != course.Yes, r.WorseForHealth(care.Of(o, s.ID), care.Of(m, s.ID)):
		case m.Look != "" && o.Look == m.Look:
			same = append(same, o)
		case decorates(o) && decorates(m):
			others = append(others, o)
		}
	}
	if len(same) == 0 {
		same = bestFirst(others, s.ID)
	}
	var named []StandIn
	for _, o := range same[:min(mostToday, len(same))] {
		named = append(named, StandIn{imprint.Link{Title: o.Name, Address: at.To(address.State(s.ID) + "#" + o.ID)}, r.conditions(o, s)})
	}
	return named
}

// conditions are the words for what has to be so before a medium is a plain yes in a
// state: a part of the state, a question, somebody beside, and what is no yes by an
// exception.
func (r *Table) conditions(m course.Medium, s course.State) []string {
	var all []string
	pair := m.On[s.ID]
	if part := slices.IndexFunc(s.Parts, func(p course.Part) bool { return p.ID == pair.Part }); part >= 0 {
		all = append(all, r.Say("today-part", strings.ToLower(s.Parts[part].Name)))
	}
	if pair.Ask != "" {
		all = append(all, pair.Ask)
	}
	if _, who := r.Decoration.HazardsOf(care.Of(m, s.ID)...); care.WhoWords[who] != "" {
		all = append(all, r.Word(care.WhoWords[who]))
	}
	for _, e := range r.Decoration.Exceptions {
		if p, here := e.On[s.ID]; here && e.Medium == m.ID && e.Kind != ofHouse && p.Verdict != course.Yes {
			all = append(all, r.Say("today-except", e.Name))
		}
	}
	return all
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
func (r *Table) sentToBest(m manner, s course.State) bool {
	t, there := r.Decoration.FindTechnique(m.id)
	if !there {
		return false
	}
	works := false
	for _, medium := range m.media {
		pair := t.On[m.best].For(medium)
		if pair.Verdict == "" || pair.Verdict == course.Never {
			continue
		}
		if works = true; r.WorseForHealth([]course.Care{m.care, pair.Care}, []course.Care{m.care, m.on[s.ID].Care}) {
			return false
		}
	}
	return works
}

// allowedIn is the rows of all media and ways of working that may be done in a
// state.
func (r *Table) allowedIn(s course.State) []course.Care {
	var rows []course.Care
	for _, m := range r.Decoration.Media {
		if m.On[s.ID].Verdict != course.Never {
			rows = append(rows, care.Of(m, s.ID)...)
		}
	}
	for _, t := range r.Decoration.Techniques {
		rows = append(rows, care.OfWay(t, s.ID)...)
	}
	return rows
}
