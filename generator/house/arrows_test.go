package house

import (
	"slices"
	"strings"
	"testing"
)

// arrows says which packages of the module a package may import. All of the
// generator may besides use the calculators. A new package gets its line here
// when its place in the house is decided.
var arrows = map[string][]string{
	"calculators/letters":   {},
	"calculators/decimal":   {},
	"calculators/quantity":  {"calculators/decimal", "calculators/letters"},
	"calculators/formula":   {},
	"calculators/sketch":    {"calculators/letters"},
	"calculators/slip":      {},
	"calculators/wash":      {},
	"calculators/shrinkage": {},
	"calculators/stage":     {"calculators/decimal", "calculators/letters"},
	"calculators/tile":      {},
	"calculators/catalog": {"calculators/decimal", "calculators/letters", "calculators/quantity", "calculators/formula", "calculators/sketch",
		"calculators/slip", "calculators/wash", "calculators/shrinkage", "calculators/stage", "calculators/tile"},
	"calculators/catalog/catalogtest":    {"calculators/catalog", "calculators/quantity", "calculators/stage/stagetest"},
	"calculators/stage/stagetest":        {"calculators/stage"},
	"calculators/stage/stagetest/oracle": {"calculators/stage"},
	"calculators/wasm":                   {"calculators/catalog"},

	"themes": {},

	"generator/finding":           {},
	"generator/course":            {"generator/finding"},
	"generator/course/coursetest": {},
	"generator/markup":            {"generator/finding", "generator/course"},
	"generator/proof":             {"generator/finding", "generator/course", "generator/markup"},
	"generator/assets":            {"themes"},
	"generator/assets/carry":      {"generator/assets"},
	"generator/press": {"generator/finding", "generator/course", "generator/markup", "generator/proof",
		"generator/assets", "themes"},
	"generator/shelf": {},
	"generator/preview": {"generator/finding", "generator/course", "generator/markup", "generator/proof",
		"generator/assets", "generator/press", "generator/shelf", "themes"},
	"generator": {"generator/finding", "generator/course", "generator/markup", "generator/proof",
		"generator/assets", "generator/press", "generator/shelf", "generator/preview", "themes"},

	"generator/house": {},
	"generator/trial": {},
}

// allowed says whether the package named from may import the one named to.
// What helps tests, a package named for it, is for tests alone.
func allowed(from, to string) bool {
	calculators := strings.HasPrefix(to, "calculators/") && to != "calculators/wasm" && !strings.Contains(to, "test")
	return calculators && strings.HasPrefix(from, "generator") || slices.Contains(arrows[from], to)
}

func TestImportsRunOneWay(t *testing.T) {
	for _, p := range module(t) {
		from := p.short()
		if _, ok := arrows[from]; !ok {
			t.Errorf("%s has no line in the table of arrows (generator/house/arrows_test.go): say there what it may import", from)
			continue
		}
		for _, path := range p.Imports {
			if to, own := strings.CutPrefix(path, "slipbook/"); own && !allowed(from, to) {
				t.Errorf("%s imports %s, which design and table do not allow: arrows run one way", from, to)
			}
		}
		for _, path := range append(p.TestImports, p.XTestImports...) {
			if strings.HasPrefix(from, "calculators/") && strings.HasPrefix(path, "slipbook/generator") {
				t.Errorf("tests of %s import %s: the calculators never know the generator", from, path)
			}
		}
	}
}

func TestArrowsNameOnlyWhatExists(t *testing.T) {
	there := map[string]bool{}
	for _, p := range module(t) {
		there[p.short()] = true
	}
	for from, to := range arrows {
		for _, name := range append(to, from) {
			if !there[name] {
				t.Errorf("the table of arrows names %s, which does not exist", name)
			}
		}
	}
}

// judgesOnly are libraries that only tests with outside judges may use.
const judgesOnly = "github.com/chromedp/"

func TestTheProgramDrivesNoBrowser(t *testing.T) {
	for _, p := range module(t) {
		for _, path := range p.Imports {
			if strings.HasPrefix(path, judgesOnly) {
				t.Errorf("%s imports %s: browsers belong to the tests tagged judges", p.short(), path)
			}
		}
	}
}
