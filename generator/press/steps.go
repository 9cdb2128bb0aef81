package press

import (
	"strconv"

	"slipbook/calculators/catalog"
	"slipbook/calculators/stage"
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
	Ask, Wait, Why, Trouble   string
}

// Shows reports whether a text of the step has a place on the page.
func (s stepView) Shows(text string) bool { return s.Blank || text != "" }

// Cares reports whether there is anything to take care of. Who does it is said
// with that, and wherever it is not the reader alone.
func (s stepView) Cares() bool {
	return s.Blank || s.Wear != "" || s.Place != "" || s.Caution != "" || s.Who != s.You
}

// steps are the rows of a plan's answer. id begins the ids of the steps, home
// is where the handbook's root is from the page.
func steps(answer *catalog.Answer, id, home string) []stepView {
	var all []stepView
	for n, row := range answer.Rows {
		at := map[string]string{}
		for _, cell := range row {
			at[cell.Column] = cell.Text
		}
		s := stepView{
			ID: id + ".step." + strconv.Itoa(n+1), State: at["state"], Title: at["title"], What: at["what"],
			Wear: at["wear"], Place: at["place"], Who: at["who"], You: catalog.Doer(answer.Language, stage.Student), Caution: at["caution"],
			Ask: at["ask"], Wait: at["wait"], Why: at["why"], Trouble: at["trouble"],
		}
		if at["lesson"] != "" {
			s.Lesson = home + at["lesson"]
		}
		all = append(all, s)
	}
	return all
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
