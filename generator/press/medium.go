package press

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/proof"
)

// mediumView is the page of one medium: state by state, the ways of working it,
// what may lie on it and what it may lie on.
type mediumView struct {
	framed
	About   string
	Safety  care // in every state
	Strip   *strip
	Best    *link
	States  []fate
	Ways    []mediumWay
	OnTop   []fate // what may lie on it while it is unfired
	Under   []fate // what it may lie on
	Lessons []link
	Faults  string // address of what goes wrong with it
	Card    string // address of its recap card
}

// mediumWay is a technique for a medium, with the states in which both may be.
type mediumWay struct {
	Name, About string
	Safety      care // of the technique, beside that of the medium
	States      []line
}

// mediumSheets are the pages of the media.
func (i *impression) mediumSheets() []sheet {
	sheets := make([]sheet, len(i.table.Media))
	for n, m := range i.table.Media {
		sheets[n] = sheet{address: address.Medium(m.ID), title: m.Name, description: i.Say("medium-description", m.Name),
			view: func(at place) (pageView, error) { return i.mediumPage(m, at) }}
	}
	return sheets
}

// mediumPage makes the view of a medium.
func (i *impression) mediumPage(m course.Medium, at place) (pageView, error) {
	v := mediumView{
		framed:  framed{Shell: i.shell(at, about{kind: "medium", title: m.Name, description: i.Say("medium-description", m.Name), medium: m.ID})},
		About:   m.About,
		Safety:  i.care(at, m.Care),
		States:  i.mediumStates(m, at),
		Ways:    i.mediumWays(m, at),
		Lessons: i.lessonsWhere(at, func(p *proof.Page) bool { return p.Head.Medium == m.ID }),
	}
	v.Strip, v.Shell.Strip = v.Shell.Strip, nil // hazards come before it
	if best, ok := i.table.FindState(m.Best); ok {
		v.Best = &link{Title: best.Name, Address: at.to(address.State(best.ID) + "#" + m.ID)}
	}
	v.OnTop, v.Under = i.layers(m, at)
	v.Card = at.to(address.Card(m.ID))
	if page := i.faultsOn[m.ID]; page != "" {
		v.Faults = at.to(page + "#" + m.ID)
	}
	return v, nil
}

// mediumStates tells a medium's fate in each state.
func (i *impression) mediumStates(m course.Medium, at place) []fate {
	var fates []fate
	for _, s := range i.table.States {
		f := i.fate(m, s, at)
		f.ID, f.Name, f.Word = at.id(s.ID), s.Name, f.Verdict
		f.Address = at.to(address.State(s.ID) + "#" + m.ID)
		f.Instead = nil // the page says it once, at its top
		f.Safety = i.besides(f.Safety, m.Care)
		fates = append(fates, f)
	}
	return fates
}

// mediumWays lists the techniques for a medium.
func (i *impression) mediumWays(m course.Medium, at place) []mediumWay {
	var ways []mediumWay
	for _, t := range i.table.Techniques {
		if !goesWith(t, m.ID) {
			continue
		}
		w := mediumWay{Name: t.Name, About: t.About, Safety: i.besides(i.care(at, t.Care), m.Care)}
		var no []line // where the way is for no state, its description would read as leave
		for _, s := range i.table.States {
			l := i.techniqueIn(t, m, s, at)
			l.Verdict = worse(l.Verdict, m.On[s.ID].Verdict)
			l.Best = l.Best && l.Verdict == course.Yes
			l.Safety = i.besides(l.Safety, m.Care, t.Care)
			switch {
			case l.Verdict == course.Never && s.ID == m.Best:
				no = append(no, named(l, s.Name))
			case l.Verdict != "" && l.Verdict != course.Never:
				w.States = append(w.States, named(l, s.Name))
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
func (i *impression) layers(m course.Medium, at place) (onTop, under []fate) {
	for _, o := range i.table.Overs {
		other := o.Above
		if o.Above == m.ID && o.Under != m.ID {
			other = o.Under
		}
		n, ok := i.table.FindMedium(other)
		if !ok || o.Under != m.ID && o.Above != m.ID {
			continue
		}
		f := fate{
			Name:    n.Name,
			Address: at.to(address.Medium(n.ID)),
			Word:    o.Verdict,
			Pair:    o.Pair,
			Safety:  i.care(at, n.Care, o.Care),
			Waits:   i.techniqueNames(o.Unless),
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
func (p *impression) techniqueNames(ids []string) []string {
	var names []string
	for _, id := range ids {
		if t, ok := p.table.FindTechnique(id); ok {
			names = append(names, t.Name)
		}
	}
	return names
}

// mediumLinks lists the media for a place.
func (i *impression) mediumLinks(at place) []link {
	var links []link
	for _, m := range i.table.Media {
		links = append(links, link{Title: m.Name, Address: at.to(address.Medium(m.ID)), About: m.About})
	}
	return links
}

// lessonsWhere lists the lessons that a question answers yes to, in reading
// order, for a place.
func (i *impression) lessonsWhere(at place, yes func(*proof.Page) bool) []link {
	var links []link
	for _, page := range i.order {
		if page.Kind == course.LessonPage && yes(page) {
			links = append(links, linkTo(at, page.Page))
		}
	}
	return links
}

// speaksOf reports whether a page links to a state or shows it from the table.
func speaksOf(p *proof.Page, state string) bool {
	return slices.Contains(p.Document.Made(), "state:"+state) ||
		slices.ContainsFunc(p.Document.Named(markup.StagesBlock), func(b *markup.Block) bool { return b.Part.State.ID == state })
}
