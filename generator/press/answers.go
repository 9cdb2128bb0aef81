package press

import (
	"html/template"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// answersView is the page of quick answers: what students ask, from all
// lessons, each with the way to where it is told.
type answersView struct {
	framed
	Parts []answersPart
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
	for _, page := range i.order {
		if page.Kind == course.LessonPage && len(page.Document.Named(markup.AskedBlock)) > 0 {
			return []sheet{{address: address.Answers, title: i.say("answers"), description: i.say("answers-description"), view: i.answers}}
		}
	}
	return nil
}

// answers makes the view of that page.
func (i *impression) answers(at place) (pageView, error) {
	parts, err := i.answersParts(at)
	return answersView{
		framed: framed{Shell: i.shell(at, about{kind: "answers", title: i.say("answers"), description: i.say("answers-description"), gathered: true})},
		Parts:  parts,
	}, err
}

// answersParts gathers what is asked, unit by unit in reading order.
func (i *impression) answersParts(at place) ([]answersPart, error) {
	var parts []answersPart
	number := 0
	for _, u := range i.course.Units {
		part := answersPart{}
		if u.Page != nil {
			part.Unit = linkTo(at, u.Page)
		}
		for _, lesson := range u.Lessons {
			page := i.documents[lesson]
			for _, b := range page.Document.Named(markup.AskedBlock) {
				number++
				body, err := i.gathered(page, b.Pieces, at)
				if err != nil {
					return nil, err
				}
				told := link{Title: lesson.Head.Title, Address: at.to(lesson.Address + "#" + address.Asked(b.Number))}
				part.Answers = append(part.Answers, answerView{at.id("answer." + strconv.Itoa(number)), markup.Bind(b.Words), body, told})
			}
		}
		if len(part.Answers) > 0 {
			parts = append(parts, part)
		}
	}
	return parts, nil
}
