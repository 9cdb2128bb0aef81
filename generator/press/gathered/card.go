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

// perLesson is how many of the things to look for, and of those that go wrong, a card
// takes from a lesson: the first, and as many as leave it one page in type that is read
// at arm's length. The rest stands in the lesson, to which the card sends its reader.
var perLesson = []struct{ looks, faults int }{{2, 2}, {1, 2}, {1, 1}, {0, 1}}

// cardView is the card of one medium.
type cardView struct {
	imprint.Framed
	Cards   string // address of the course's card
	About   string
	Safety  care.Care     // of the medium in every state
	Some    care.Care     // what comes to it in some states and ways of working, the foremost
	More    *imprint.Link // where the rest of that is told; nil where there is none
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
	Left    bool   // whether the lessons say more than the card has room for
	Size    string // the class of the printed type
}

// looksView is what a lesson says to look for.
type looksView struct {
	Lesson imprint.Link
	Looks  []template.HTML
}

// Cards are the cards of the media of which there is something to say, or nothing while
// the course has no table.
func (r *Gathered) Cards() []imprint.Sheet {
	if len(r.Decoration.States) == 0 {
		return nil
	}
	var sheets []imprint.Sheet
	for _, m := range r.Decoration.Media {
		if !r.hasCard(m) {
			continue
		}
		sheets = append(sheets, imprint.Sheet{Address: address.Card(m.ID), Title: r.Say("card-title", m.Name), Description: r.Say("card-description", m.Name),
			View: func(at imprint.Place) (imprint.PageView, error) { return r.card(m, at) }})
	}
	return sheets
}

// hasCard reports whether there is something to say on the card of a medium: a caution,
// or a lesson.
func (r *Gathered) hasCard(m course.Medium) bool {
	return r.Care(imprint.Place{}, append(r.someCare(m), m.Care)...).Any() || len(r.lessonsOf(m.ID)) > 0
}

// card makes the card of a medium.
func (r *Gathered) card(m course.Medium, at imprint.Place) (imprint.PageView, error) {
	v := cardView{
		Framed: imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "card", Title: r.Say("card-title", m.Name), Description: r.Say("card-description", m.Name), Medium: m.ID, Gathered: true, Share: true})},
		Cards:  at.To(address.Cards),
		About:  m.About,

		Safety: r.Care(at, m.Care),
		Mixed:  r.MixedHere(m.ID, at),
		Mixing: r.MixingCare(m.ID),
		Plan:   r.cardPlan(m),
		Ways:   r.cardWays(m, at),
	}
	v.Shell.Strip = nil
	some, more := r.cardSome(m, at)
	if v.Some = some; more {
		v.More = &imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}
	}
	for _, s := range r.Decoration.States {
		v.States = append(v.States, table.Named(r.Cell(r.MediumIn(m, s, at), m.Care), s.Name))
		if s.ID == m.Best {
			v.Best, v.Tell = &imprint.Link{Title: s.Name, Address: at.To(address.State(s.ID))}, s.Tell
		}
	}
	for _, page := range r.lessonsOf(m.ID) {
		v.Lessons = append(v.Lessons, imprint.LinkTo(at, page))
	}
	v, err := r.filled(v, m, at)
	v.Size = cardSize(r.Print.Card, v.letters())
	return v, err
}

// filled takes from the lessons about a medium as much as a card has room for: of each
// the same, or else something from as many as fit.
func (r *Gathered) filled(v cardView, m course.Medium, at imprint.Place) (cardView, error) {
	lessons := r.lessonsOf(m.ID)
	take := func(into *cardView, page *course.Page, looks, faults int) error {
		return into.take(r, r.documents[page], at, looks, faults)
	}
	for _, most := range perLesson {
		full := v
		for _, page := range lessons {
			if err := take(&full, page, most.looks, most.faults); err != nil {
				return v, err
			}
		}
		if cardFits(r.Print.Card, full.letters()) {
			return full, nil
		}
	}
	v.Left = len(lessons) > 0
	for _, page := range lessons {
		more := v
		if err := take(&more, page, 0, 1); err != nil || !cardFits(r.Print.Card, more.letters()) {
			return v, err
		}
		v = more
	}
	return v, nil
}

// take adds the first of what a lesson says to a card.
func (v *cardView) take(r *Gathered, page *proof.Page, at imprint.Place, mostLooks, mostFaults int) error {
	looks := looksView{Lesson: imprint.LinkTo(at, page.Page)}
	all := r.reading.Looks(page)
	for _, look := range all[:min(mostLooks, len(all))] {
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
	v.Faults = append(v.Faults, faults[:min(mostFaults, len(faults))]...)
	v.Left = v.Left || len(all) > mostLooks || len(faults) > mostFaults
	return err
}

// cardSome is what comes to a medium in some states and ways of working: beside its own
// hazards the foremost, and whether there are more.
func (r *Gathered) cardSome(m course.Medium, at imprint.Place) (care.Care, bool) {
	rows := r.someCare(m)
	return foremost(r.Besides(r.Care(at, rows...), m.Care), rows, mostCautions-len(r.Care(at, m.Care).Hazards))
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
	if v.More != nil {
		all = append(all, theme.Letters(v.More.Title)+10)
	}
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
	return append(all, 60, runs(v.Lessons), theme.Letters(v.Mixing.Says))
}
