package press

import (
	"html/template"
	"slices"
	"strconv"

	"slipbook/calculators/catalog"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/proof"
)

// stateView is the page of a clay state: how to tell it, what the table allows
// on it now and how it may be worked, what to do next, and which lessons teach
// it.
type stateView struct {
	framed
	Number, Of int // state 2 of 6
	Drawing    template.HTML
	Short      string
	Tell       string
	Between    string // what to do between this state and the next; may be empty
	InShort    []line // all media in a line each, what may go on first
	Safety     care   // of all that may be done in the state
	Neighbours []neighbour
	Groups     []group
	Ways       []fate
	Next       []step
	Plan       any // the planner, this state filled in; nil while there is none
	Lessons    []link
	Bench      struct{ Before, Next *link } // the states before and after; nil where there is none
}

// neighbour is the state before or after, for whoever doubts which it is.
type neighbour struct {
	State   link
	Drawing template.HTML
	Tell    string
	Between string // what to do in between
}

// group is the media that share a verdict in a state.
type group struct {
	Verdict course.Verdict
	Heading string // key of its words
	Media   []fate
}

// step is something to do with the pot that puts nothing on it.
type step struct {
	Name                  string
	To                    link
	Reason, Fault, Remedy string
	Ask                   string // what to ask before; may be empty
	Safety                care
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
		sheets[n] = sheet{address: address.State(s.ID), title: s.Name, description: i.Say("state-description", s.Name),
			view: func(at place) (pageView, error) { return i.statePage(n, at) }}
	}
	return sheets
}

// statePage makes the view of the n-th state, from 0.
func (i *impression) statePage(n int, at place) (pageView, error) {
	s := i.table.States[n]
	plan, err := i.plan(s, at)
	if err != nil {
		return nil, err
	}
	v := stateView{
		framed: framed{Shell: i.shell(at, about{kind: "state", title: s.Name, description: i.Say("state-description", s.Name), state: s.ID,
			desk: plan != nil, plan: plan != nil})},
		Number:     n + 1,
		Of:         len(i.table.States),
		Drawing:    i.Icons["state-"+s.ID],
		Short:      s.Short,
		Tell:       s.Tell,
		Between:    s.Between,
		InShort:    i.inShortList(s, at),
		Safety:     i.stateSafety(s, at),
		Neighbours: i.neighbours(n, at),
		Groups:     i.groups(s, at),
		Ways:       i.ways(s, at),
		Next:       i.steps(s, at),
		Plan:       plan,
		Lessons:    i.lessonsWhere(at, func(p *proof.Page) bool { return i.teaches(p, s.ID) }),
	}
	v.Bench.Before, v.Bench.Next = i.stateLink(n-1, at), i.stateLink(n+1, at)
	return v, nil
}

// plan is the planner with a state filled in, or nil while the catalog has no
// planner.
func (i *impression) plan(s course.State, at place) (any, error) {
	c := i.calculators.Find(catalog.Plan)
	if c == nil {
		return nil, nil
	}
	return i.calculatorView(c, []markup.Setting{{Name: "state", Value: s.ID}}, 1, at)
}

// teaches reports whether a lesson is about something that is best in a state, or
// speaks of the state.
func (i *impression) teaches(p *proof.Page, state string) bool {
	if m, ok := i.table.FindMedium(p.Head.Medium); ok && m.Best == state {
		return true
	}
	return speaksOf(p, state)
}

// stateLink links a place to the page of the n-th state; nil where there is none.
func (i *impression) stateLink(n int, at place) *link {
	if n < 0 || n >= len(i.table.States) {
		return nil
	}
	s := i.table.States[n]
	return &link{Title: s.Name, Address: at.to(address.State(s.ID)), About: s.Short}
}

// neighbours tells the signs of the states before and after the n-th.
func (i *impression) neighbours(n int, at place) []neighbour {
	var all []neighbour
	for _, to := range []int{n - 1, n + 1} {
		if l := i.stateLink(to, at); l != nil {
			s := i.table.States[to]
			between := i.table.States[min(n, to)].Between
			all = append(all, neighbour{*l, i.Icons["state-"+s.ID], s.Tell, between})
		}
	}
	return all
}

// groups sorts the media by their verdict in a state; within a group those
// come first for which the state is the best, then in the table's order.
func (i *impression) groups(s course.State, at place) []group {
	var groups []group
	for _, v := range verdicts {
		g := group{Verdict: v.verdict, Heading: v.heading}
		var others []fate
		for _, m := range i.table.Media {
			if m.On[s.ID].Verdict != v.verdict {
				continue
			}
			f := i.fate(m, s, at)
			if f.Best {
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

// fate looks up a medium in a state, for a place.
func (i *impression) fate(m course.Medium, s course.State, at place) fate {
	f := fate{
		ID: at.id(m.ID), Name: m.Name, Address: at.to(address.Medium(m.ID)),
		Best:       m.Best == s.ID,
		Pair:       m.On[s.ID],
		Safety:     i.care(at, careOf(m, s.ID)...),
		Exceptions: i.exceptions(at, m.ID, "", s.ID),
	}
	if !i.worseForHealth(careOf(m, m.Best), careOf(m, s.ID)) {
		f.Instead, f.InsteadKey = i.preferred(m.Best, s, m.ID, at)
	}
	f.Today = i.standIns(m, s, at)
	return f
}

// preferred links to the state in which a medium or technique is best, when
// that is another than s, with the key of the words before the link: clay only
// dries, so a state that is past does not come back.
func (i *impression) preferred(best string, s course.State, on string, at place) (*link, string) {
	b, ok := i.table.FindState(best)
	if !ok || b.ID == s.ID {
		return nil, ""
	}
	key := "instead-later"
	if i.rank(b.ID) < i.rank(s.ID) {
		key = "instead-earlier"
	}
	return &link{Title: b.Name, Address: at.to(address.State(b.ID) + "#" + on)}, key
}

// rank is a state's number in the table.
func (i *impression) rank(id string) int {
	return slices.IndexFunc(i.table.States, func(s course.State) bool { return s.ID == id })
}

// ways sorts the techniques by their verdict in a state, then in the table's
// order.
func (i *impression) ways(s course.State, at place) []fate {
	var ways []fate
	for _, v := range verdicts {
		for _, t := range i.table.Techniques {
			for n, m := range i.manners(t, s) {
				if m.on[s.ID].Verdict == v.verdict {
					ways = append(ways, i.way(m, n, s, at))
				}
			}
		}
	}
	return ways
}

// way tells of the n-th part of a technique, from 0, in a state. The first has
// the technique's own place on the page.
func (i *impression) way(m manner, n int, s course.State, at place) fate {
	f := fate{
		ID: at.id(wayID(m.id)), Name: m.name, Word: m.on[s.ID].Verdict,
		Best:       m.best == s.ID && m.on[s.ID].Verdict != course.Never,
		Pair:       m.on[s.ID],
		Safety:     i.care(at, m.care, m.on[s.ID].Care),
		Exceptions: i.exceptions(at, "", m.id, s.ID),
	}
	if n > 0 {
		f.ID += "." + strconv.Itoa(n+1)
	}
	if i.sentToBest(m, s) {
		f.Instead, f.InsteadKey = i.preferred(m.best, s, wayID(m.id), at)
	}
	return f
}

// steps lists what may be done next with a pot in a state.
func (i *impression) steps(s course.State, at place) []step {
	var steps []step
	for _, t := range i.table.Transitions {
		to, ok := i.table.FindState(t.To)
		if t.From != s.ID || !ok {
			continue
		}
		steps = append(steps, step{
			Name: t.Name, To: link{Title: to.Name, Address: at.to(address.State(to.ID)), About: to.Short},
			Reason: t.Reason, Fault: t.Fault, Remedy: t.Remedy, Ask: t.Ask, Safety: i.care(at, t.Care),
		})
	}
	return steps
}
