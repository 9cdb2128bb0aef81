package press

import (
	"html/template"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/proof"
)

// answersView is the page of quick answers: what students ask, from all
// lessons, each with the way to where it is told.
type answersView struct {
	framed
	Parts   []answersPart
	Further []link // other pages of it, where it does not fit one
}

// answersPart is what is asked in one unit.
type answersPart struct {
	Unit    link
	Answers []answerView
}

// answerView is one question with its answer.
type answerView struct {
	ID     string
	Ask    string
	Body   template.HTML
	Lesson link // the place in the lesson
}

// answersSheets is the page of quick answers, or nothing while no lesson has
// any.
func (i *impression) answersSheets() []sheet {
	var asking []*course.Unit
	for _, u := range i.course.Units {
		if len(i.askedIn(u)) > 0 {
			asking = append(asking, u)
		}
	}
	return gathering[*course.Unit]{
		address: address.Answers, title: i.Say("answers"), description: i.Say("answers-description"), parts: asking,
		size: func(u *course.Unit) int {
			size := 0
			for _, a := range i.askedIn(u) {
				size += aroundAnswer + wordsSize(a.page, a.block.Pieces)
			}
			return size
		},
		name: unitName,
		view: i.answers,
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
func (i *impression) askedIn(u *course.Unit) []askedBlock {
	var all []askedBlock
	for _, lesson := range u.Lessons {
		page := i.documents[lesson]
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
func (i *impression) answers(at place, g gatheredPage, units []*course.Unit) (pageView, error) {
	v := answersView{
		framed:  framed{Shell: i.shell(at, about{kind: "answers", title: g.title, description: g.description, gathered: true})},
		Further: g.links(at),
	}
	number := 0
	for _, u := range units {
		part := answersPart{}
		if u.Page != nil {
			part.Unit = linkTo(at, u.Page)
		}
		for _, a := range i.askedIn(u) {
			number++
			body, err := i.gathered(a.page, a.block.Pieces, at)
			if err != nil {
				return nil, err
			}
			told := link{Title: a.page.Head.Title, Address: at.to(a.page.Address + "#" + address.Asked(a.block.Number))}
			part.Answers = append(part.Answers, answerView{at.id("answer." + strconv.Itoa(number)), markup.Bind(a.block.Words), body, told})
		}
		v.Parts = append(v.Parts, part)
	}
	return v, nil
}
