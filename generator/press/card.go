package press

import (
	"html/template"

	"slipbook/calculators/stage"
	"slipbook/generator/course"
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
	Shell   shell
	Cards   string // address of the course's card
	About   string
	Safety  care // of the medium in every state
	Some    care // what comes to it in some states and ways of working
	States  []line
	Best    *link
	Tell    string // how to tell the best state
	Ways    []line // of working it in its best state
	Plan    []stepView
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

// cardSheets are the cards, or nothing while the course has no table.
func (i *impression) cardSheets() []sheet {
	if len(i.table.States) == 0 {
		return nil
	}
	sheets := []sheet{{cardsAddress, "course-card", func() (any, error) { return i.courseCard() }}}
	for _, m := range i.table.Media {
		sheets = append(sheets, sheet{cardAddress(m.ID), "card", func() (any, error) { return i.card(m) }})
	}
	return sheets
}

// card makes the card of a medium.
func (i *impression) card(m course.Medium) (any, error) {
	w, err := i.words.say("card-title", m.Name)
	if err != nil {
		return nil, err
	}
	description, err := i.words.say("card-description", m.Name)
	if err != nil {
		return nil, err
	}
	address := cardAddress(m.ID)
	v := cardView{
		Shell: i.shell(about{kind: "card", address: address, title: w, description: description, medium: m.ID, gathered: true}),
		Cards: relative(address, cardsAddress),
		About: m.About,

		Safety: i.care(address, m.Care),
		Some:   i.besides(i.care(address, i.someCare(m)...), m.Care),
		Plan:   i.cardPlan(m),
		Ways:   i.cardWays(m, address),
	}
	v.Shell.Strip = nil
	for _, s := range i.table.States {
		v.States = append(v.States, named(i.cell(i.mediumIn(m, s, address), m.Care), s.Name))
		if s.ID == m.Best {
			v.Best, v.Tell = &link{Title: s.Name, Address: relative(address, stateAddress(s.ID))}, s.Tell
		}
	}
	for _, page := range i.lessonsOf(m.ID) {
		v.Lessons = append(v.Lessons, linkTo(address, page))
		v.take(i, page, address)
	}
	v.Size = cardSize(v.letters())
	return v, nil
}

// take adds what a lesson gives to a card.
func (v *cardView) take(i *impression, page *course.Page, address string) {
	d := i.documents[page]
	if d == nil {
		return
	}
	looks := looksView{Lesson: linkTo(address, page)}
	for _, look := range d.Looks[:min(perLesson, len(d.Looks))] {
		looks.Looks = append(looks.Looks, moved(page.Address, address, look))
	}
	if len(looks.Looks) > 0 {
		v.Looks = append(v.Looks, looks)
	}
	for _, f := range d.Faults[:min(perLesson, len(d.Faults))] {
		v.Faults = append(v.Faults, faultView{
			Seen:  moved(page.Address, address, f.Seen),
			Means: moved(page.Address, address, f.Means),
		})
	}
}

// cardWays lists the ways of working a medium in its best state.
func (i *impression) cardWays(m course.Medium, address string) []line {
	best, ok := i.table.FindState(m.Best)
	if !ok {
		return nil
	}
	var ways []line
	for _, t := range i.table.Techniques {
		if l := i.techniqueIn(t, m, *best, address); goesWith(t, m.ID) && l.Verdict != "" && l.Verdict != course.Never {
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

// cardPlan is the order of work from the best state on, as the planner gives it,
// each step with its hazards in the short form.
func (i *impression) cardPlan(m course.Medium) []stepView {
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
	return shortSteps(p.Steps, i.course.Language)
}
