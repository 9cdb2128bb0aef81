package gathered

import (
	"html/template"

	"slipbook/calculators/stage"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/table"
	"slipbook/generator/press/theme"
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
	imprint.Framed
	Cards   string // address of the course's card
	About   string
	Safety  care.Care // of the medium in every state
	Some    care.Care // what comes to it in some states and ways of working
	States  []table.Line
	Mixed   string    // address of what the studio mixes of it
	Mixing  care.Care // of weighing and mixing that, in the form care.Mixing
	Best    *imprint.Link
	Tell    string       // how to tell the best state
	Ways    []table.Line // of working it in its best state
	Plan    []desk.Step
	Looks   []looksView
	Faults  []faultView
	Lessons []imprint.Link
	Size    string // the class of the printed type
}

// looksView is what a lesson says to look for.
type looksView struct {
	Lesson imprint.Link
	Looks  []template.HTML
}

// Cards are the cards of the media, or nothing while the course has no table.
func (r *Gathered) Cards() []imprint.Sheet {
	if len(r.Decoration.States) == 0 {
		return nil
	}
	var sheets []imprint.Sheet
	for _, m := range r.Decoration.Media {
		sheets = append(sheets, imprint.Sheet{Address: address.Card(m.ID), Title: r.Say("card-title", m.Name), Description: r.Say("card-description", m.Name),
			View: func(at imprint.Place) (imprint.PageView, error) { return r.card(m, at) }})
	}
	return sheets
}

// card makes the card of a medium.
func (r *Gathered) card(m course.Medium, at imprint.Place) (imprint.PageView, error) {
	v := cardView{
		Framed: imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "card", Title: r.Say("card-title", m.Name), Description: r.Say("card-description", m.Name), Medium: m.ID, Gathered: true})},
		Cards:  at.To(address.Cards),
		About:  m.About,

		Safety: r.Care(at, m.Care),
		Some:   r.Besides(r.Care(at, r.someCare(m)...), m.Care),
		Mixed:  r.MixedHere(m.ID, at),
		Mixing: r.MixingCare(m.ID),
		Plan:   r.cardPlan(m),
		Ways:   r.cardWays(m, at),
	}
	v.Shell.Strip = nil
	for _, s := range r.Decoration.States {
		v.States = append(v.States, table.Named(r.Cell(r.MediumIn(m, s, at), m.Care), s.Name))
		if s.ID == m.Best {
			v.Best, v.Tell = &imprint.Link{Title: s.Name, Address: at.To(address.State(s.ID))}, s.Tell
		}
	}
	for _, page := range r.lessonsOf(m.ID) {
		v.Lessons = append(v.Lessons, imprint.LinkTo(at, page))
		if err := v.take(r, r.documents[page], at); err != nil {
			return nil, err
		}
	}
	v.Size = cardSize(r.Print.Card, v.letters())
	return v, nil
}

// take adds what a lesson says to a card.
func (v *cardView) take(r *Gathered, page *proof.Page, at imprint.Place) error {
	looks := looksView{Lesson: imprint.LinkTo(at, page.Page)}
	all := r.reading.Looks(page)
	for _, look := range all[:min(perLesson, len(all))] {
		told, err := r.setter.Apart(page, page.Document.In(look), at)
		if err != nil {
			return err
		}
		looks.Looks = append(looks.Looks, told)
	}
	if len(looks.Looks) > 0 {
		v.Looks = append(v.Looks, looks)
	}
	faults, err := r.faultsOf(page, at)
	v.Faults = append(v.Faults, faults[:min(perLesson, len(faults))]...)
	return err
}

// cardWays lists the ways of working a medium in its best state.
func (r *Gathered) cardWays(m course.Medium, at imprint.Place) []table.Line {
	best, ok := r.Decoration.FindState(m.Best)
	if !ok {
		return nil
	}
	var ways []table.Line
	for _, t := range r.Decoration.Techniques {
		if l := r.TechniqueIn(t, m, *best, at); table.GoesWith(t, m.ID) && l.Verdict != "" && l.Verdict != course.Never {
			ways = append(ways, r.Cell(l, m.Care))
		}
	}
	return ways
}

// someCare is what the table says of the safety of a medium in single states, and
// of the ways of working it in its best.
func (r *Gathered) someCare(m course.Medium) []course.Care {
	var rows []course.Care
	for _, s := range r.Decoration.States {
		if m.On[s.ID].Verdict != course.Never {
			rows = append(rows, m.On[s.ID].Care)
		}
	}
	for _, t := range r.Decoration.Techniques {
		pair := t.On[m.Best].For(m.ID)
		if table.GoesWith(t, m.ID) && pair.Verdict != "" && pair.Verdict != course.Never {
			rows = append(rows, t.Care, pair.Care)
		}
	}
	return rows
}

// cardPlan is the order of work from the best state on, as the planner returns it,
// each step with its hazards in the short form.
func (r *Gathered) cardPlan(m course.Medium) []desk.Step {
	t := r.reading.Settings.Table
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
	return desk.ShortSteps(p.Steps, r.reading.Course.Language)
}

// letters counts what stands on a medium's card, piece by piece.
func (v cardView) letters() []int {
	all := append(headings(10), theme.Letters(v.About), theme.Letters(v.Tell))
	all = append(all, v.Safety.Letters()...)
	all = append(all, v.Some.Letters()...)
	for _, l := range append(v.States, v.Ways...) {
		all = append(all, theme.Letters(l.Name+l.Short)+12+l.Safety.MarkLetters())
	}
	for _, step := range v.Plan {
		all = append(all, stepLetters(step)...)
	}
	for _, l := range v.Looks {
		letters := theme.Letters(l.Lesson.Title) + 2
		for _, look := range l.Looks {
			letters += theme.Letters(string(look)) + 1
		}
		all = append(all, letters)
	}
	for _, f := range v.Faults {
		all = append(all, theme.Letters(string(f.Seen+f.Means))+3)
	}
	return append(all, runs(v.Lessons), theme.Letters(v.Mixing.Says))
}
