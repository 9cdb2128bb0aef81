//go:build judges

package trial

import (
	"strings"
	"testing"

	"slipbook/calculators/catalog"
)

// standing is what one form of a page holds and shows.
type standing struct {
	Calculator string
	Fields     [][]string
	Shown      map[string]string
}

// standings reads every form of the page.
const standings = `[...document.querySelectorAll("form[data-calculator]")].map(form => ({
	calculator: form.dataset.calculator,
	fields: [...new FormData(form)],
	shown: Object.fromEntries([...form.querySelectorAll("output")].filter(o => o.querySelector("data")).map(o => [o.name, o.querySelector("data").value])),
}))`

func TestCalculatorsInLessons(t *testing.T) {
	h, s := published(t), settings(t)
	seen := 0
	for _, address := range h.pages {
		if kind(address) != "lesson" || !strings.Contains(string(h.read(t, address)), "data-calculator=") {
			continue
		}
		b := open(t)
		b.visit(h.home + address)
		b.ready()
		for _, stands := range ask[[]standing](b, standings) {
			seen++
			var given []catalog.Setting
			for _, f := range stands.Fields {
				given = append(given, catalog.Setting{Name: f[0], Text: f[1]})
			}
			want := catalog.Solve(stands.Calculator, given, s)
			for _, fault := range differences(want, stands.Shown) {
				t.Errorf("%s, %s as it stands with %v:\n%s", address, stands.Calculator, given, fault)
			}
			f := &form{tab: b, calc: catalog.Find(stands.Calculator)}
			f.fill(f.calc.Example.Given, true)
			f.agree(f.calc.Example.Given, s)
		}
	}
	if seen == 0 {
		t.Error("no lesson has a calculator")
	}
}
