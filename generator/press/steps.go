package press

import (
	"strconv"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage"
	"slipbook/generator/address"
)

// stepView is one step of a plan: what protects somebody, what to do, and why.
// A blank one is what the script of a form fills in.
type stepView struct {
	Blank                     bool
	ID                        string // where it stands on the page
	State, Title, What        string
	Wear, Place, Who, Caution string
	You                       string // who does it where the reader does alone
	Lesson                    string // relative to the page
	Risk                      string // what the table says of a step that may fail
	Ask, Wait, Why, Trouble   string
}

// Shows reports whether a text of the step has a place on the page.
func (s stepView) Shows(text string) bool { return s.Blank || text != "" }

// Cares reports whether there is anything to take care of. Who does it is said
// with that, and wherever it is not the reader alone.
func (s stepView) Cares() bool {
	return s.Blank || s.Wear != "" || s.Place != "" || s.Caution != "" || s.Who != s.You
}

// steps are the rows of a plan's answer. id begins the ids of the steps.
func steps(answer *form.Answer, id string, at place) []stepView {
	var all []stepView
	for n, row := range answer.Rows {
		text := map[string]string{}
		for _, cell := range row {
			text[cell.Column] = cell.Text
		}
		s := stepView{
			ID: id + ".step." + strconv.Itoa(n+1), State: text["state"], Title: text["title"], What: text["what"],
			Wear: text["wear"], Place: text["place"], Who: text["who"], You: catalog.Doer(answer.Language, stage.Student), Caution: text["caution"],
			Risk: text["risk"], Ask: text["ask"], Wait: text["wait"], Why: text["why"], Trouble: text["trouble"],
		}
		if text["lesson"] != "" {
			s.Lesson = lessonFrom(at, text["lesson"])
		}
		all = append(all, s)
	}
	return all
}

// lessonFrom returns where a lesson is from a step: on a page the long way round
// by the handbook's root, which is the same from all pages of one depth, so that
// what was printed of a calculator can be kept.
func lessonFrom(at place, lesson string) string {
	if at.book != nil {
		return at.to(lesson)
	}
	return homeFrom(at.to(address.CalculatorFolder)) + lesson
}

// shortSteps are steps for one sheet: what to wear, where, who if it is not the
// reader alone, and how to take care, each such sentence where it is first
// needed.
func shortSteps(plan []stage.Step, language string) []stepView {
	var all []stepView
	said := map[string]bool{}
	for _, s := range plan {
		v := stepView{What: s.What, Wear: s.Wear, Place: s.Place}
		if s.Who != stage.Student {
			v.Who = catalog.Doer(language, s.Who)
		}
		if !said[s.Caution] {
			v.Caution = s.Caution
		}
		said[s.Caution] = true
		all = append(all, v)
	}
	return all
}

// Guards lists what stands before a step on one sheet, each in a few words.
func (s stepView) Guards() []string {
	var all []string
	for _, text := range []string{s.Wear, s.Place, s.Who, s.Caution} {
		if text != "" {
			all = append(all, text)
		}
	}
	return all
}

// letters counts what a step takes on one sheet.
func (s stepView) letters() []int {
	all := []int{count(s.What) + 3}
	for _, text := range s.Guards() {
		all = append(all, count(text)+len("Take care: "))
	}
	return all
}
