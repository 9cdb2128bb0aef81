package press

import (
	"html/template"
	"net/url"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// lessonView is a lesson: what it is for, what it needs, its words, and where
// to go from it.
type lessonView struct {
	imprint.Framed
	Unit          imprint.Link
	InUnit        int    // the number of the unit
	Number        string // "2.3"
	Place, Of     int    // lesson 3 of 4 in its unit
	Teaches       []string
	Time          course.Duration
	Needs         []string
	Medium        imprint.Link // to the medium's own page
	BestState     string
	Technique     string
	Safety        care.Care      // of medium and technique, where both are best
	Parts         []imprint.Link // of the lesson, where it has enough of them to choose from
	Steps         bool           // it has steps, which can be shown one to a screen
	Handout       bool           // it is printed and given out: paper holds nothing else
	Body          template.HTML
	Answers       []answersView // to its questions, for a page of paper of their own
	Before, After []imprint.Link
}

// lessonSheets are the lessons, in the order of their units.
func (i *impression) lessonSheets() []imprint.Sheet {
	var sheets []imprint.Sheet
	for number, u := range i.course.Units {
		for n, page := range u.Lessons {
			sheets = append(sheets, imprint.Sheet{Address: page.Address, Title: page.Head.Title, Description: page.Head.Description,
				View: func(at imprint.Place) (imprint.PageView, error) { return i.lesson(u, number+1, n, at) }})
		}
	}
	return sheets
}

// lesson makes the view of the n-th lesson, from 0, of the unit with a number.
func (i *impression) lesson(u *course.Unit, number, n int, at imprint.Place) (imprint.PageView, error) {
	page := u.Lessons[n]
	v := lessonView{
		Framed:    imprint.Framed{Shell: i.Shell(at, i.aboutPage("lesson", page))},
		Parts:     i.parts(page, at),
		Steps:     i.hasSteps(page),
		InUnit:    number,
		Number:    imprint.LessonNumber(strconv.Itoa(number), n),
		Place:     n + 1,
		Of:        len(u.Lessons),
		Teaches:   page.Head.Teaches,
		Time:      page.Head.TimeRequired,
		Needs:     page.Head.Needs,
		Technique: page.Head.Technique,
		Handout:   page.Head.Type == course.ForPaper,
		Safety:    i.Care(at, i.WorkCare(page.Head.Medium, page.Head.Technique, "")...),
		Before:    i.before(page, at),
		After:     i.after(page, at),
	}
	if t, ok := i.Decoration.FindTechnique(page.Head.Technique); ok {
		v.Technique = t.Name
	}
	if u.Page != nil {
		v.Unit = imprint.LinkTo(at, u.Page)
	}
	if m, ok := i.Decoration.FindMedium(page.Head.Medium); ok {
		if best, ok := i.Decoration.FindState(m.Best); ok {
			v.BestState = best.Name
		}
		v.Medium = imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}
	}
	v.Body = v.Slot(i.setter.Body(i.documents[page], at))
	if at.Ebook == nil { // which gathers them itself
		v.Answers = answersApart(i.documents[page].Document.Named(markup.QuestionBlock))
	}
	return v, nil
}

// fewestParts is how many parts a lesson has at least that lists them.
const fewestParts = 3

// parts are the parts of a lesson, as links on its own page. Paper needs none: it is
// turned over faster.
func (i *impression) parts(page *course.Page, at imprint.Place) []imprint.Link {
	parts := i.documents[page].Document.Parts()
	if len(parts) < fewestParts || at.Book != nil || page.Head.Type == course.ForPaper {
		return nil
	}
	var links []imprint.Link
	for _, h := range parts {
		links = append(links, imprint.Link{Title: h.Text, Address: "#" + url.PathEscape(h.ID)})
	}
	return links
}

// before lists what a page's opening block asks for before it at the bench; in
// want of that, the page before in reading order.
func (i *impression) before(page *course.Page, at imprint.Place) []imprint.Link {
	if len(page.Head.Before) > 0 {
		return i.links(page.Head.Before, at)
	}
	return i.neighbour(page, -1, at)
}

// after lists what comes after a page, likewise.
func (i *impression) after(page *course.Page, at imprint.Place) []imprint.Link {
	if len(page.Head.After) > 0 {
		return i.links(page.Head.After, at)
	}
	return i.neighbour(page, +1, at)
}

// links turns the pages that an opening block names into links.
func (i *impression) links(to []course.Link, at imprint.Place) []imprint.Link {
	var links []imprint.Link
	for _, l := range to {
		if page, ok := i.Addresses.Page(l.File); ok {
			links = append(links, imprint.LinkTo(at, page))
		}
	}
	return links
}

// neighbour is the unit or lesson that many steps on in reading order, if
// there is one. The pages that belong to no unit are no work at the bench.
func (i *impression) neighbour(page *course.Page, step int, at imprint.Place) []imprint.Link {
	n := i.place[page] + step
	if n < 0 || n >= len(i.reading.Pages) || i.reading.Pages[n].Unit == nil {
		return nil
	}
	return []imprint.Link{imprint.LinkTo(at, i.reading.Pages[n].Page)}
}

// answersView are the answers to a question of a lesson, apart from it.
type answersView struct {
	Number  int // of the question in the lesson, from 1
	Answers []answerView
}

// answerView is what is said of one of the answers to choose from.
type answerView struct {
	Letter  string // that it bears on paper
	Right   bool
	Because string
}

// answersApart are the answers to questions, in their order.
func answersApart(questions []*markup.Block) []answersView {
	var all []answersView
	for _, q := range questions {
		v := answersView{Number: q.Number}
		for n, a := range q.Ask.Answers {
			v.Answers = append(v.Answers, answerView{string(rune('a' + n)), a.Right, markup.Bind(a.Because)})
		}
		all = append(all, v)
	}
	return all
}
