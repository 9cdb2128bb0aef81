package table

import (
	"html/template"
	"slices"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/proof"
)

// stateView is the page of a clay state: how to tell it, what the table allows
// on it now and how it may be worked, what to do next, and which lessons teach
// it.
type stateView struct {
	imprint.Framed
	Number, Of int // state 2 of 6
	Drawing    template.HTML
	Short      string
	Tell       string
	TellID     string    // of the place where it is told
	Between    string    // what to do between this state and the next; may be empty
	InShort    []Line    // all media in a line each, what may go on first
	Safety     care.Care // of all that may be done in the state
	Neighbours []neighbour
	Groups     []group
	Ways       []fate
	Next       []step
	Plan       any // the planner, this state filled in; nil while there is none
	Lessons    []imprint.Link
	Bench      struct{ Before, Next *imprint.Link } // the states before and after; nil where there is none
}

// neighbour is the state before or after, for whoever doubts which it is.
type neighbour struct {
	State   imprint.Link
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
	To                    imprint.Link
	Reason, Fault, Remedy string
	Ask                   string // what to ask before; may be empty
	Safety                care.Care
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

// States are the pages of the clay states.
func (r *Table) States() []imprint.Sheet {
	sheets := make([]imprint.Sheet, len(r.Decoration.States))
	for n, s := range r.Decoration.States {
		sheets[n] = imprint.Sheet{Address: address.State(s.ID), Title: s.Name, Description: r.Say("state-description", s.Name),
			View: func(at imprint.Place) (imprint.PageView, error) { return r.statePage(n, at) }}
	}
	return sheets
}

// statePage makes the view of the n-th state, from 0.
func (r *Table) statePage(n int, at imprint.Place) (imprint.PageView, error) {
	s := r.Decoration.States[n]
	plan, err := r.calculators.Plan([]markup.Setting{{Name: "state", Value: s.ID}}, 1, at)
	if err != nil {
		return nil, err
	}
	v := stateView{
		Framed: imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "state", Title: s.Name, Description: r.Say("state-description", s.Name), State: s.ID,
			Desk: true, Plan: true})},
		Number:     n + 1,
		Of:         len(r.Decoration.States),
		Drawing:    r.Icons["state-"+s.ID],
		Short:      s.Short,
		Tell:       s.Tell,
		TellID:     at.ID("tell"),
		Between:    s.Between,
		InShort:    r.inShortList(s, at),
		Safety:     r.stateSafety(s, at),
		Neighbours: r.neighbours(n, at),
		Groups:     r.groups(s, at),
		Ways:       r.ways(s, at),
		Next:       r.steps(s, at),
		Plan:       plan,
		Lessons:    r.lessonsWhere(at, func(p *proof.Page) bool { return r.teaches(p, s.ID) }),
	}
	v.Bench.Before, v.Bench.Next = r.StateLink(n-1, at), r.StateLink(n+1, at)
	return v, nil
}

// teaches reports whether a lesson is about something that is best in a state, or
// speaks of the state.
func (r *Table) teaches(p *proof.Page, state string) bool {
	if m, ok := r.Decoration.FindMedium(p.Head.Medium); ok && m.Best == state {
		return true
	}
	return speaksOf(p, state)
}

// StateLink links a place to the page of the n-th state; nil where there is none.
func (r *Table) StateLink(n int, at imprint.Place) *imprint.Link {
	if n < 0 || n >= len(r.Decoration.States) {
		return nil
	}
	s := r.Decoration.States[n]
	return &imprint.Link{Title: s.Name, Address: at.To(address.State(s.ID)), About: s.Short}
}

// neighbours tells the signs of the states before and after the n-th.
func (r *Table) neighbours(n int, at imprint.Place) []neighbour {
	var all []neighbour
	for _, to := range []int{n - 1, n + 1} {
		if l := r.StateLink(to, at); l != nil {
			s := r.Decoration.States[to]
			between := r.Decoration.States[min(n, to)].Between
			all = append(all, neighbour{*l, r.Icons["state-"+s.ID], s.Tell, between})
		}
	}
	return all
}

// groups sorts the media by their verdict in a state; within a group those
// come first for which the state is the best, then in the table's order.
func (r *Table) groups(s course.State, at imprint.Place) []group {
	var groups []group
	for _, v := range verdicts {
		g := group{Verdict: v.verdict, Heading: v.heading}
		var others []fate
		for _, m := range r.Decoration.Media {
			if m.On[s.ID].Verdict != v.verdict {
				continue
			}
			f := r.fate(m, s, at)
			r.cite(&f, m.ID, s.ID, at)
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

// ways sorts the techniques by their verdict in a state, then in the table's
// order.
func (r *Table) ways(s course.State, at imprint.Place) []fate {
	var ways []fate
	for _, v := range verdicts {
		for _, t := range r.Decoration.Techniques {
			for n, m := range r.manners(t, s) {
				if m.on[s.ID].Verdict == v.verdict {
					ways = append(ways, r.way(m, n, s, at))
				}
			}
		}
	}
	return ways
}

// way tells of the n-th part of a technique, from 0, in a state. The first has
// the technique's own place on the page.
func (r *Table) way(m manner, n int, s course.State, at imprint.Place) fate {
	f := fate{
		ID: at.ID(wayID(m.id)), Name: m.name, Word: m.on[s.ID].Verdict,
		Best:       m.best == s.ID && m.on[s.ID].Verdict != course.Never,
		Pair:       m.on[s.ID],
		Safety:     r.Care(at, m.care, m.on[s.ID].Care),
		Exceptions: r.exceptions(at, "", m.id, s.ID),
	}
	if n > 0 {
		f.ID += "." + strconv.Itoa(n+1)
	}
	if r.sentToBest(m, s) {
		f.Instead, f.InsteadKey = r.preferred(m.best, s, wayID(m.id), at)
	}
	return f
}

// steps lists what may be done next with a pot in a state.
func (r *Table) steps(s course.State, at imprint.Place) []step {
	var steps []step
	for _, t := range r.Decoration.Transitions {
		to, ok := r.Decoration.FindState(t.To)
		if t.From != s.ID || !ok {
			continue
		}
		steps = append(steps, step{
			Name: t.Name, To: imprint.Link{Title: to.Name, Address: at.To(address.State(to.ID)), About: to.Short},
			Reason: t.Reason, Fault: t.Fault, Remedy: t.Remedy, Ask: t.Ask, Safety: r.Care(at, t.Care),
		})
	}
	return steps
}

// StateLinks lists the clay states for a place.
func (r *Table) StateLinks(at imprint.Place) []imprint.Link {
	var links []imprint.Link
	for n := range r.Decoration.States {
		links = append(links, *r.StateLink(n, at))
	}
	return links
}

// inShortList is the media in a state in a line each, for the top of its page:
// what may go on first and of that what likes the state best, and for what is
// risky or never what may go on in its place.
func (r *Table) inShortList(s course.State, at imprint.Place) []Line {
	var lines []Line
	for _, v := range verdicts {
		for _, m := range bestFirst(r.Decoration.Media, s.ID) {
			if m.On[s.ID].Verdict == v.verdict {
				l := r.MediumIn(m, s, at)
				l.Today = r.standIns(m, s, at)
				lines = append(lines, l)
			}
		}
	}
	return lines
}

// stateSafety is the safety of all that may be done in a state, and of what may
// be done next with the pot.
func (r *Table) stateSafety(s course.State, at imprint.Place) care.Care {
	rows := r.allowedIn(s)
	for _, t := range r.Decoration.Transitions {
		if t.From == s.ID {
			rows = append(rows, t.Care)
		}
	}
	return r.Care(at, rows...)
}

// speaksOf reports whether a page links to a state or shows it from the table.
func speaksOf(p *proof.Page, state string) bool {
	return slices.Contains(p.Document.Made(), "state:"+state) ||
		slices.ContainsFunc(p.Document.Named(markup.StagesBlock), func(b *markup.Block) bool { return b.Part.State.ID == state })
}
