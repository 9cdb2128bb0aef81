package table

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// fate looks up a medium in a state, for a place.
func (r *Table) fate(m course.Medium, s course.State, at imprint.Place) fate {
	f := fate{
		ID: at.ID(m.ID), Name: m.Name, Address: at.To(address.Medium(m.ID)),
		Best:       m.Best == s.ID,
		Pair:       m.On[s.ID],
		Safety:     r.Care(at, care.Of(m, s.ID)...),
		Exceptions: r.exceptions(at, m.ID, "", s.ID),
	}
	if !r.WorseForHealth(care.Of(m, m.Best), care.Of(m, s.ID)) {
		f.Instead, f.InsteadKey = r.preferred(m.Best, s, m.ID, at)
	}
	f.Today = r.standIns(m, s, at)
	return f
}

// preferred links to the state in which a medium or technique is best, when
// that is another than s, with the key of the words before the link: clay only
// dries, so a state that is past does not come back.
func (r *Table) preferred(best string, s course.State, on string, at imprint.Place) (*imprint.Link, string) {
	b, ok := r.Decoration.FindState(best)
	if !ok || b.ID == s.ID {
		return nil, ""
	}
	key := "instead-later"
	if r.rank(b.ID) < r.rank(s.ID) {
		key = "instead-earlier"
	}
	return &imprint.Link{Title: b.Name, Address: at.To(address.State(b.ID) + "#" + on)}, key
}

// rank is a state's number in the table.
func (r *Table) rank(id string) int {
	return slices.IndexFunc(r.Decoration.States, func(s course.State) bool { return s.ID == id })
}
