package gathered

import (
	"html/template"
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

// answersPart is what is asked in one unit.
type answersPart struct {
	Unit    imprint.Link
	Answers []answerView
}

// answerView is one question with its answer.
type answerView struct {
	ID     string
	Ask    string
	Body   template.HTML
	Lesson imprint.Link // the place in the lesson
}

// Answers is the page of quick answers, or nothing while no lesson has
// any.
func (r *Gathered) Answers() []imprint.Sheet {
	var asking []*course.Unit
	for _, u := range r.reading.Course.Units {
		if len(r.askedIn(u)) > 0 {
			asking = append(asking, u)
		}
	}
	return gathering[*course.Unit]{
		address: address.Answers, title: r.Say("answers"), description: r.Say("answers-description"), parts: asking,
		size: func(u *course.Unit) int {
			size := 0
			for _, a := range r.askedIn(u) {
				size += aroundAnswer + setting.Size(a.page, a.block.Pieces)
			}
			return size
		},
		name: unitName,
		view: r.answers,
	}.sheets()
}

// aroundAnswer is how many bytes an answer is thought to take beside its words.
const aroundAnswer = 450

// askedBlock is something that students ask, in its lesson.
type askedBlock struct {
	page  *proof.Page
	block *markup.Block
}

// askedIn lists what is asked in the lessons of a unit.
func (r *Gathered) askedIn(u *course.Unit) []askedBlock {
	var all []askedBlock
	for _, lesson := range u.Lessons {
		page := r.documents[lesson]
		for _, b := range page.Document.Named(markup.AskedBlock) {
			all = append(all, askedBlock{page, b})
		}
	}
	return all
}

// unitName returns the title of a unit; empty where it has no page.
func unitName(u *course.Unit) string {
	if u.Page == nil {
		return ""
	}
	return u.Page.Head.Title
}

// answers makes the view of a page with what is asked in some units.
func (r *Gathered) answers(at imprint.Place, g gatheredPage, units []*course.Unit) (imprint.PageView, error) {
	v := answersView{
		Framed:  imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "answers", Title: g.title, Description: g.description, Gathered: true})},
		Further: g.links(at),
	}
	number := 0
	for _, u := range units {
		part := answersPart{}
		if u.Page != nil {
			part.Unit = imprint.LinkTo(at, u.Page)
		}
		for _, a := range r.askedIn(u) {
			number++
			body, err := r.setter.Apart(a.page, a.block.Pieces, at)
			if err != nil {
				return nil, err
			}
			told := imprint.Link{Title: a.page.Head.Title, Address: at.To(a.page.Address + "#" + address.Asked(a.block.Number))}
			part.Answers = append(part.Answers, answerView{at.ID("answer." + strconv.Itoa(number)), markup.Bind(a.block.Words), body, told})
		}
		v.Parts = append(v.Parts, part)
	}
	return v, nil
}
