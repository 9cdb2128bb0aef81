package gathered

import (
	"html/template"
	"slices"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/setting"
	"slipbook/generator/proof"
)

// answersView is the page of quick answers: what students ask, from all
// lessons, each with the way to where it is told.
type answersView struct {
	imprint.Framed
	Parts   []answersPart
	Further []imprint.Link // other pages of it, where it does not fit one
}

// answersPart is what is asked most, or in one unit.
type answersPart struct {
	ID      string
	Of      imprint.Link // the unit; of what is asked most without an address
	Answers []answerView
}

// answerView is one question with its answer.
type answerView struct {
	ID     string
	Ask    string
	Body   template.HTML
	Lesson imprint.Link // the place in the lesson
}

// askedPart is what a part of the page is gathered from.
type askedPart struct {
	unit  *course.Unit // nil where it is asked most
	asked []proof.Asked
}

// Answers is the page of quick answers, or nothing while no lesson has
// any.
func (r *Gathered) Answers() []imprint.Sheet {
	return gathering[askedPart]{
		address: address.Answers, title: r.Say("answers"), description: r.Say("answers-description"), parts: r.askedParts(),
		size: func(p askedPart) int {
			size := 0
			for _, a := range p.asked {
				size += aroundAnswer + setting.Size(a.Page, a.Block.Pieces)
			}
			return size
		},
		name: r.askedName,
		view: r.answers,
	}.sheets()
}

// aroundAnswer is how many bytes an answer is thought to take beside its words.
const aroundAnswer = 450

// askedParts lists the parts that hold something: what the course puts first, then the
// rest by unit.
func (r *Gathered) askedParts() []askedPart {
	first, rest := r.reading.Asked()
	first = slices.DeleteFunc(first, func(a proof.Asked) bool { return a.Block == nil })
	var parts []askedPart
	if len(first) > 0 {
		parts = append(parts, askedPart{asked: first})
	}
	for _, a := range rest {
		if last := len(parts) - 1; last < 0 || parts[last].unit != a.Page.Unit {
			parts = append(parts, askedPart{unit: a.Page.Unit})
		}
		last := &parts[len(parts)-1]
		last.asked = append(last.asked, a)
	}
	return parts
}

// askedName returns what a part is called.
func (r *Gathered) askedName(p askedPart) string {
	if p.unit == nil {
		return r.Say("answers-first")
	}
	return unitName(p.unit)
}

// unitName returns the title of a unit; empty where it has no page.
func unitName(u *course.Unit) string {
	if u.Page == nil {
		return ""
	}
	return u.Page.Head.Title
}

// answers makes the view of a page with some of the parts.
func (r *Gathered) answers(at imprint.Place, g gatheredPage, parts []askedPart) (imprint.PageView, error) {
	v := answersView{
		Framed:  imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "answers", Title: g.title, Description: g.description, Gathered: true, Filter: true})},
		Further: g.links(at),
	}
	number := 0
	for _, p := range parts {
		part := answersPart{ID: at.ID("asked.most"), Of: imprint.Link{Title: r.askedName(p)}}
		if p.unit != nil {
			part.ID = at.ID("asked.in." + p.unit.ID)
		}
		if p.unit != nil && p.unit.Page != nil {
			part.Of = imprint.LinkTo(at, p.unit.Page)
		}
		for _, a := range p.asked {
			number++
			answer, err := r.answer(a, number, at)
			if err != nil {
				return nil, err
			}
			part.Answers = append(part.Answers, answer)
		}
		v.Parts = append(v.Parts, part)
	}
	return v, nil
}

// answer sets one question with its answer, the number-th on its page.
func (r *Gathered) answer(a proof.Asked, number int, at imprint.Place) (answerView, error) {
	body, err := r.setter.Apart(a.Page, a.Block.Pieces, at)
	told := imprint.Link{Title: a.Page.Head.Title, Address: at.To(a.Page.Address + "#" + address.Asked(a.Block.Number))}
	return answerView{at.ID("answer." + strconv.Itoa(number)), markup.Bind(a.Block.Words), body, told}, err
}
