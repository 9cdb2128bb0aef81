package press

import (
	"html/template"

	"slipbook/generator/course"
)

// stateView is the page of a clay state: how to tell it, and what the table
// allows on it now.
type stateView struct {
	Shell      shell
	Number, Of int // state 2 of 6
	Drawing    template.HTML
	Short      string
	Tell       string
	Between    string // what to do between this state and the next; may be empty
	Groups     []group
	Before     *link // the state before; nil for the first
	Next       *link // the state after; nil for the last
}

// group is the media that share a verdict in a state.
type group struct {
	Verdict course.Verdict
	Heading string // key of its words
	Media   []fate
}

// fate is what becomes of a medium in a state.
type fate struct {
	ID, Name, About       string
	Reason, Fault, Remedy string
	Best                  bool  // this is the state preferred for it
	Instead               *link // the preferred state, when it is another
	Never, House          bool  // cannot go on; and that by a house rule, not by physics
}

// verdicts are the groups of a state page in their order, with the keys of
// their headings.
var verdicts = []struct {
	verdict course.Verdict
	heading string
}{
	{course.Yes, "state-yes"},
	{course.Label, "state-label"},
	{course.Risky, "state-risky"},
	{course.Never, "state-never"},
}

// stateSheets are the pages of the clay states.
func (i *impression) stateSheets() []sheet {
	sheets := make([]sheet, len(i.table.States))
	for n, s := range i.table.States {
		sheets[n] = sheet{stateAddress(s.ID), "state", func() (any, error) { return i.statePage(n) }}
	}
	return sheets
}

// statePage makes the view of the n-th state, from 0.
func (i *impression) statePage(n int) (any, error) {
	s := i.table.States[n]
	description, err := i.words.say("state-description", s.Name)
	if err != nil {
		return nil, err
	}
	return stateView{
		Shell: i.shell(about{
			kind:        "state",
			address:     stateAddress(s.ID),
			title:       s.Name,
			description: description,
			state:       s.ID,
		}),
		Number:  n + 1,
		Of:      len(i.table.States),
		Drawing: i.icons["state-"+s.ID],
		Short:   s.Short,
		Tell:    s.Tell,
		Between: s.Between,
		Groups:  i.groups(s),
		Before:  i.stateLink(n, n-1),
		Next:    i.stateLink(n, n+1),
	}, nil
}

// stateLink links the page of one state to another's, by their numbers.
func (i *impression) stateLink(from, to int) *link {
	if to < 0 || to >= len(i.table.States) {
		return nil
	}
	s := i.table.States[to]
	return &link{s.Name, relative(stateAddress(i.table.States[from].ID), stateAddress(s.ID)), s.Short}
}

// groups sorts the media by their verdict in a state; within a group those
// come first for which the state is the best, then in the table's order.
func (i *impression) groups(s course.State) []group {
	var groups []group
	for _, v := range verdicts {
		g := group{Verdict: v.verdict, Heading: v.heading}
		var others []fate
		for _, m := range i.table.Media {
			if m.On[s.ID].Verdict != v.verdict {
				continue
			}
			if f := i.fate(m, s); f.Best {
				g.Media = append(g.Media, f)
			} else {
				others = append(others, f)
			}
		}
		if g.Media = append(g.Media, others...); len(g.Media) > 0 {
			groups = append(groups, g)
		}
	}
	return groups
}

// fate looks up a medium in a state.
func (i *impression) fate(m course.Medium, s course.State) fate {
	pair := m.On[s.ID]
	f := fate{
		ID: m.ID, Name: m.Name, About: m.About,
		Reason: pair.Reason, Fault: pair.Fault, Remedy: pair.Remedy,
		Best:  m.Best == s.ID,
		Never: pair.Verdict == course.Never,
		House: pair.Rule == "house",
	}
	if best, ok := i.table.FindState(m.Best); ok && !f.Best {
		f.Instead = &link{Title: best.Name, Address: relative(stateAddress(s.ID), stateAddress(best.ID)+"#"+m.ID)}
	}
	return f
}
