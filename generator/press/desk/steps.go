package desk

import (
	"strconv"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage"
)

// Step is one step of a plan: what protects somebody, what to do, and why.
// A blank one is what the script of a form fills in.
type Step struct {
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
func (s Step) Shows(text string) bool { return s.Blank || text != "" }

// Cares reports whether there is anything to take care of. Who does it is said
// with that, and wherever it is not the reader alone.
func (s Step) Cares() bool {
	return s.Blank || s.Wear != "" || s.Place != "" || s.Caution != "" || s.Who != s.You
}

// Steps returns the rows of a plan's answer. id begins the ids of the steps; lesson
// returns the way to a lesson.
func Steps(answer *form.Answer, id string, lesson func(string) string) []Step {
	var all []Step
	for n, row := range answer.Rows {
		text := map[string]string{}
		for _, cell := range row {
			text[cell.Column] = cell.Text
		}
		s := Step{
			ID: id + ".step." + strconv.Itoa(n+1), State: text["state"], Title: text["title"], What: text["what"],
			Wear: text["wear"], Place: text["place"], Who: text["who"], You: catalog.Doer(answer.Language, stage.Student), Caution: text["caution"],
			Risk: text["risk"], Ask: text["ask"], Wait: text["wait"], Why: text["why"], Trouble: text["trouble"],
		}
		if text["lesson"] != "" {
			s.Lesson = lesson(text["lesson"])
		}
		all = append(all, s)
	}
	return all
}

// ShortSteps returns the steps of a plan for one sheet: what to wear, where, who if it is not the
// reader alone, and how to take care, each such sentence where it is first
// needed.
func ShortSteps(plan []stage.Step, language string) []Step {
	var all []Step
	said := map[string]bool{}
	for _, s := range plan {
		v := Step{What: s.What, Wear: s.Wear, Place: s.Place}
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
func (s Step) Guards() []string {
	var all []string
	for _, text := range []string{s.Wear, s.Place, s.Who, s.Caution} {
		if text != "" {
			all = append(all, text)
		}
	}
	return all
}
