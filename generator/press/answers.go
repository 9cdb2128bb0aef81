package press

import "html/template"

// answersView is the page of quick answers: what students ask, from all
// lessons, each with the way to where it is told.
type answersView struct {
	Shell shell
	Parts []answersPart
}

// answersPart is what is asked in one unit.
type answersPart struct {
	Unit    link
	Answers []answerView
}

// answerView is one question with its answer.
type answerView struct {
	Number int // on the page, from 1
	Ask    string
	Body   template.HTML
	Lesson link // the place in the lesson
}

// answersSheets is the page of quick answers, or nothing while no lesson has
// any.
func (i *impression) answersSheets() []sheet {
	parts := i.answersParts()
	if len(parts) == 0 {
		return nil
	}
	return []sheet{{answersAddress, "answers", func() (any, error) {
		w, err := i.words.sayAll("answers", "answers-description")
		if err != nil {
			return nil, err
		}
		return answersView{
			Shell: i.shell(about{kind: "answers", address: answersAddress, title: w[0], description: w[1], gathered: true}),
			Parts: parts,
		}, nil
	}}}
}

// answersParts gathers what is asked, unit by unit in reading order.
func (i *impression) answersParts() []answersPart {
	var parts []answersPart
	number := 0
	for _, u := range i.course.Units {
		part := answersPart{}
		if u.Page != nil {
			part.Unit = linkTo(answersAddress, u.Page)
		}
		for _, page := range u.Lessons {
			d := i.documents[page]
			if d == nil {
				continue
			}
			for _, a := range d.Asked {
				number++
				lesson := linkTo(answersAddress, page)
				lesson.Address += "#" + askedID(a.Number)
				part.Answers = append(part.Answers, answerView{number, a.Ask, moved(page.Address, answersAddress, a.HTML), lesson})
			}
		}
		if len(part.Answers) > 0 {
			parts = append(parts, part)
		}
	}
	return parts
}
