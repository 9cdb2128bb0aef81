package press

import (
	"slipbook/calculators/catalog"
)

// stepView is one step of a plan.
type stepView struct {
	State, What, Ask, Why, Caution string
}

// steps are the rows of a plan's answer.
func steps(answer *catalog.Answer) []stepView {
	var all []stepView
	for _, row := range answer.Rows {
		cells := map[string]string{}
		for _, cell := range row {
			cells[cell.Column] = cell.Text
		}
		all = append(all, stepView{State: cells["state"], What: cells["what"], Ask: cells["ask"], Why: cells["why"], Caution: cells["caution"]})
	}
	return all
}
