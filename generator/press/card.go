package press

import (
	"html/template"

	"slipbook/calculators/stage"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/desk"
	"slipbook/generator/proof"
)

// A recap card is one printed page: of a medium, or of the whole course. All of
// it comes from the decoration table and from the lessons, so that a card can
// never say anything else than they do.

// perLesson is how many of the things to look for, and of those that go wrong,
// a card takes from a lesson: the first, since a card is one page. The rest
// stands in the lesson.
const perLesson = 2

// cardView is the card of one medium.
type cardView struct {
	framed
	Cards   string // address of the course's card
	About   string
	Safety  care // of the medium in every state
	Some    care // what comes to it in some states and ways of working
	States  []line
	Best    *link
	Tell    string // how to tell the best state
	Ways    []line // of working it in its best state
	Plan    []desk.Step
	Looks   []looksView
	Faults  []faultView
	Lessons []link
	Size    string // the class of the printed type
}

// looksView is what a lesson says to look for.
type looksView struct {
	Lesson link
	Looks  []template.HTML
}

// cardSheets are the cards of the media, or nothing while the course has no table.
func (i *impression) cardSheets() []sheet {
	if len(i.table.States) == 0 {
		return nil
	}
	var sheets []sheet
	for _, m := range i.table.Media {
		sheets = append(sheets, sheet{address: address.Card(m.ID), title: i.Say("card-title", m.Name), description: i.Say("card-description", m.Name),
			view: func(at place) (pageView, error) { return i.card(m, at) }})
	}
	return sheets
}

// card makes the card of a medium.
func (i *impression) card(m course.Medium, at place) (pageView, error) {
	v := cardView{
		framed: framed{Shell: i.shell(at, about{kind: "card", title: i.Say("card-title", m.Name), description: i.Say("card-description", m.Name), medium: m.ID, gathered: true})},
		Cards:  at.to(address.Cards),
		About:  m.About,

		Safety: i.care(at, m.Care),
		Some:   i.besides(i.care(at, i.someCare(m)...), m.Care),
		Plan:   i.cardPlan(m),
		Ways:   i.cardWays(m, at),
	}
	v.Shell.Strip = nil
	for _, s := range i.table.States {
		v.States = append(v.States, named(i.cell(i.mediumIn(m, s, at), m.Care), s.Name))
		if s.ID == m.Best {
			v.Best, v.Tell = &link{Title: s.Name, Address: at.to(address.State(s.ID))}, s.Tell
		}
	}
	for _, page := range i.lessonsOf(m.ID) {
		v.Lessons = append(v.Lessons, linkTo(at, page))
		if err := v.take(i, i.documents[page], at); err != nil {
			return nil, err
		}
	}
	v.Size = cardSize(i.Print.Card, v.letters())
	return v, nil
}

// take adds what a lesson says to a card.
func (v *cardView) take(i *impression, page *proof.Page, at place) error {
	looks := looksView{Lesson: linkTo(at, page.Page)}
	all := i.reading.Looks(page)
	for _, look := range all[:min(perLesson, len(all))] {
		told, err := i.gathered(page, page.Document.In(look), at)
		if err != nil {
			return err
		}
		looks.Looks = append(looks.Looks, told)
	}
	if len(looks.Looks) > 0 {
		v.Looks = append(v.Looks, looks)
	}
	faults, err := i.faultsOf(page, at)
	v.Faults = append(v.Faults, faults[:min(perLesson, len(faults))]...)
	return err
}

// cardWays lists the ways of working a medium in its best state.
func (i *impression) cardWays(m course.Medium, at place) []line {
	best, ok := i.table.FindState(m.Best)
	if !ok {
		return nil
	}
	var ways []line
	for _, t := range i.table.Techniques {
		if l := i.techniqueIn(t, m, *best, at); goesWith(t, m.ID) && l.Verdict != "" && l.Verdict != course.Never {
			ways = append(ways, i.cell(l, m.Care))
		}
	}
	return ways
}

// someCare is what the table says of the safety of a medium in single states, and
// of the ways of working it in its best.
func (i *impression) someCare(m course.Medium) []course.Care {
	var rows []course.Care
	for _, s := range i.table.States {
		if m.On[s.ID].Verdict != course.Never {
			rows = append(rows, m.On[s.ID].Care)
		}
	}
	for _, t := range i.table.Techniques {
		pair := t.On[m.Best].For(m.ID)
		if goesWith(t, m.ID) && pair.Verdict != "" && pair.Verdict != course.Never {
			rows = append(rows, t.Care, pair.Care)
		}
	}
	return rows
}

// cardPlan is the order of work from the best state on, as the planner returns it,
// each step with its hazards in the short form.
func (i *impression) cardPlan(m course.Medium) []desk.Step {
	t := i.settings.Table
	if t == nil {
		return nil
	}
	wish := stage.Wish{State: -1, Body: -1, Food: true}
	for n, s := range t.States {
		if s.ID == m.Best {
			wish.State = n
		}
	}
	for n, medium := range t.Media {
		if medium.ID == m.ID {
			wish.Layers = []stage.Layer{{Medium: n}}
		}
	}
	if wish.State < 0 || wish.Layers == nil {
		return nil
	}
	p := t.Plan(wish)
	if p.Conflict != nil {
		return nil
	}
	return desk.ShortSteps(p.Steps, i.course.Language)
}
