//go:build !wasm

package stage

// Report is a laboratory's report on what leaches out of one combination, which
// answers until a day.
type Report struct{ Number, Until string }

// TellReports has plans for food name the reports that answer, or say that none
// does. It fills the sentence in here, so that it travels with the table: a plan knows
// neither version, batch nor cone, and can say no more.
func (t *Table) TellReports(reports []Report) {
	if len(reports) == 0 {
		t.Reports = t.fill("no-report")
		return
	}
	var each []string
	for _, r := range reports {
		each = append(each, t.fill("report", "number", r.Number, "until", r.Until))
	}
	t.Reports = t.fill("reports", "reports", t.Words.List(each))
}
