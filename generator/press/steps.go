package press

import (
	"strings"

	"slipbook/calculators/catalog"
)

// stepView is one step of a plan.
type stepView struct {
	State, What, Ask, Why, Caution string
}

// steps are the rows of a plan's answer. A question to the label stands at the
// head of a step's caution and ends with its mark; it is shown as what it is,
// so that nobody takes it for a yes.
func steps(answer *catalog.Answer) []stepView {
	var all []stepView
	for _, row := range answer.Rows {
		cells := map[string]string{}
		for _, cell := range row {
			cells[cell.Column] = cell.Text
		}
		s := stepView{State: cells["state"], What: cells["what"], Why: cells["why"], Caution: cells["caution"]}
		if ask, rest, asks := strings.Cut(s.Caution, "?"); asks {
			s.Ask, s.Caution = ask+"?", strings.TrimSpace(rest)
		}
		all = append(all, s)
	}
	return all
}
