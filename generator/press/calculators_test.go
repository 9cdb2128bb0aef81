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
