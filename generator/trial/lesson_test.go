//go:build judges

package trial

import (
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
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
	shown: Object.fromEntries([...document.getElementById(form.dataset.part).querySelectorAll("output")].filter(o => o.querySelector("data")).map(o => [o.name, o.querySelector("data").value])),
}))`

func TestCalculatorsInLessons(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	lessons := slices.DeleteFunc(h.all(t, "lesson"), func(address string) bool {
		return !strings.Contains(h.document(t, address).source, "data-calculator=")
	})
	if len(lessons) == 0 {
		t.Fatal("no lesson has a calculator")
	}
	tour(t, lessons, func(b *tab, address string) {
		b.visit(h.home + address)
		b.unfold()
		b.ready()
		for _, stands := range ask[[]standing](b, standings) {
			var given []engine.Setting
			for _, f := range stands.Fields {
				given = append(given, engine.Setting{Name: f[0], Text: f[1]})
			}
			want := catalog.Solve(stands.Calculator, given, s)
			for _, fault := range differences(want, stands.Shown) {
				b.t.Errorf("%s, %s as it stands with %v:\n%s", address, stands.Calculator, given, fault)
			}
			f := &form{tab: b, calc: catalog.In("en-GB").Find(stands.Calculator)}
			f.fill(f.calc.Example.Given, true)
			f.agree(f.calc.Example.Given, s)
		}
	})
}
