package press

import (
	"strings"
	"testing"
)

func TestOnlyPlansLoadTheTable(t *testing.T) {
	e := printed(t, small(t))
	for address, data := range e {
		if !strings.HasSuffix(address, ".html") {
			continue
		}
		wants := strings.Contains(string(data), `data-calculator="stage-plan"`)
		if has := strings.Contains(string(data), "assets/table-"); has != wants {
			t.Errorf("%s loads the decoration table: %t", address, has)
		}
	}
}

// TestWhereOneGoesToWork wants room for what is open on the phone on the first page and
// with the calculators, and on no other.
func TestWhereOneGoesToWork(t *testing.T) {
	for address, data := range printed(t, small(t)) {
		wants := address == "index.html" || address == "calculators/index.html"
		if has := strings.Contains(string(data), "data-open-work"); has != wants {
			t.Errorf("%s has room for what is open: %t", address, has)
		}
	}
}
