package table

import (
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/proof"
)

// mediumView is the page of one medium: state by state, the ways of working it,
// what may lie on it and what it may lie on.
type mediumView struct {
	imprint.Framed
	About   string
	Safety  care.Care // in every state
	Strip   any
	InPlace []Line // the states in which it is risky or never, with what may go on there today
	Best    *imprint.Link
	States  []fate
	Ways    []mediumWay
	OnTop   []fate     // what may lie on it while it is unfired
	Under   []fate     // what it may lie on
	Mixed   *mixedView // nil where the studio mixes none
	MixedID string     // where it stands
	Lessons []imprint.Link
	Faults  string         // address of what goes wrong
	Seen    []imprint.Link // what of that its lessons name
	Card    string         // address of its recap card
}

// mediumWay is a technique for a medium, with the states in which both may be.
type mediumWay struct {
	Name, About string
	Safety      care.Care // of the technique, beside that of the medium
	States      []Line
}

// Media are the pages of the media.
func (r *Table) Media() []imprint.Sheet {
	sheets := make([]imprint.Sheet, len(r.Decoration.Media))
	for n, m := range r.Decoration.Media {
		sheets[n] = imprint.Sheet{Address: address.Medium(m.ID), Title: m.Name, Description: r.Say("medium-description", m.Name),
			View: func(at imprint.Place) (imprint.PageView, error) { return r.mediumPage(m, at) }}
	}
	return sheets
}

// mediumPage makes the view of a medium.
func (r *Table) mediumPage(m course.Medium, at imprint.Place) (imprint.PageView, error) {
	v := mediumView{
		Framed:  imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "medium", Title: m.Name, Description: r.Say("medium-description", m.Name), Medium: m.ID, Share: true})},
		About:   m.About,
		Safety:  r.Care(at, m.Care),
		InPlace: r.inPlace(m, at),
		States:  r.mediumStates(m, at),
		Ways:    r.mediumWays(m, at),
		Mixed:   r.mixed(m, at),
		MixedID: at.ID(mixedID),
		Lessons: r.lessonsWhere(at, func(p *proof.Page) bool { return p.Head.Medium == m.ID }),
	}
	v.Strip, v.Shell.Strip = v.Shell.Strip, nil // hazards come before it
	if best, ok := r.Decoration.FindState(m.Best); ok {
		v.Best = &imprint.Link{Title: best.Name, Address: at.To(address.State(best.ID) + "#" + m.ID)}
	}
	v.OnTop, v.Under = r.layers(m, at)
	v.Card = r.frame.WhereThere(at, address.Card(m.ID))
	v.Faults, v.Seen = r.frame.WhereThere(at, address.Faults), r.FaultsWith(m.ID, at)
	return v, nil
}

// mediumStates tells a medium's fate in each state.
func (r *Table) mediumStates(m course.Medium, at imprint.Place) []fate {
	var fates []fate
	for _, s := range r.Decoration.States {
		f := r.fate(m, s, at)
		f.ID, f.Name, f.Word = at.ID(s.ID), s.Name, f.Verdict
		f.Address = at.To(address.State(s.ID) + "#" + m.ID)
		f.Instead = nil // the page says it once, at its top
		f.Safety = r.Besides(f.Safety, m.Care)
		fates = append(fates, f)
	}
	return fates
}

// inPlace lists the states in which something else may go on in the place of a medium.
func (r *Table) inPlace(m course.Medium, at imprint.Place) []Line {
	var lines []Line
	for _, s := range r.Decoration.States {
		l := Named(r.MediumIn(m, s, at), s.Name)
		if l.Today = r.standIns(m, s, at); len(l.Today) > 0 {
			lines = append(lines, l)
		}
	}
	return lines
}

// mediumWays lists the techniques for a medium.
func (r *Table) mediumWays(m course.Medium, at imprint.Place) []mediumWay {
	var ways []mediumWay
	for _, t := range r.Decoration.Techniques {
		if !GoesWith(t, m.ID) {
			continue
		}
		w := mediumWay{Name: t.Name, About: t.About, Safety: r.Besides(r.Care(at, t.Care), m.Care)}
		var no []Line // where the way is for no state, its description would read as leave
		for _, s := range r.Decoration.States {
			l := r.TechniqueIn(t, m, s, at)
			l.Verdict = worse(l.Verdict, m.On[s.ID].Verdict)
			l.Best = l.Best && l.Verdict == course.Yes
			l.Safety = r.Besides(l.Safety, m.Care, t.Care)
			switch {
			case l.Verdict == course.Never && s.ID == m.Best:
				no = append(no, Named(l, s.Name))
			case l.Verdict != "" && l.Verdict != course.Never:
				w.States = append(w.States, Named(l, s.Name))
			}
		}
		if len(w.States) == 0 {
			w.States = no
		}
		ways = append(ways, w)
	}
	return ways
}

// layers tells what may lie on a medium while that is unfired, and what it may
// lie on itself.
func (r *Table) layers(m course.Medium, at imprint.Place) (onTop, under []fate) {
	for _, o := range r.Decoration.Overs {
		other := o.Above
		if o.Above == m.ID && o.Under != m.ID {
			other = o.Under
		}
		n, ok := r.Decoration.FindMedium(other)
		if !ok || o.Under != m.ID && o.Above != m.ID {
			continue
		}
		f := fate{
			Name:    n.Name,
			Address: at.To(address.Medium(n.ID)),
			Word:    o.Verdict,
			Pair:    o.Pair,
			Safety:  r.Care(at, n.Care, o.Care),
			Waits:   r.techniqueNames(o.Unless),
		}
		if o.Under == m.ID {
			onTop = append(onTop, f)
		} else {
			under = append(under, f)
		}
	}
	return onTop, under
}

// techniqueNames returns the names of techniques.
func (r *Table) techniqueNames(ids []string) []string {
	var names []string
	for _, id := range ids {
		if t, ok := r.Decoration.FindTechnique(id); ok {
			names = append(names, t.Name)
		}
	}
	return names
}

// MediumLinks lists the media for a place.
func (r *Table) MediumLinks(at imprint.Place) []imprint.Link {
	var links []imprint.Link
	for _, m := range r.Decoration.Media {
		links = append(links, imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID)), About: m.About})
	}
	return links
}
