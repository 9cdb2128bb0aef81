package terminal

import (
	"slices"
	"strings"

	"slipbook/calculators/form"
)

// inHeads are the columns of a plan that stand in the headings of its steps.
var inHeads = []string{"step", "state", "action", "title"}

// planLines lays out the steps of a plan: first what is done in each, in short,
// then each whole, a paragraph a column, what protects somebody before what is
// to be done.
func planLines(c *form.Calculator, rows [][]form.Cell) string {
	short := grid{}
	var whole strings.Builder
	for _, row := range rows {
		at := map[string]string{}
		for _, cell := range row {
			at[cell.Column] = cell.Text
		}
		short = append(short, []string{at["step"], at["state"], at["title"]})
		whole.WriteString("\n  " + at["step"] + "  " + at["state"] + "\n")
		for _, cell := range row {
			if cell.Text != "" && !slices.Contains(inHeads, cell.Column) {
				whole.WriteString(fold(c.Column(cell.Column).Label+": "+cell.Text, "     "))
			}
		}
	}
	return short.lines(false) + whole.String()
}
