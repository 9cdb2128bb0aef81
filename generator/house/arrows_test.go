package house

import (
	"slices"
	"strings"
	"testing"
)

// floors are the packages of the module from the ground up: an arrow runs from
// a package to one that stands before it. A new package gets its place here and
// its line in arrows.
var floors = []string{
	"calculators/letters", "calculators/decimal", "calculators/words", "calculators/quantity", "calculators/formula", "calculators/sketch",
	"calculators/slip", "calculators/wash", "calculators/shrinkage", "calculators/porosity", "calculators/stage", "calculators/tile",
	"calculators/form", "calculators/catalog", "calculators/stage/stagetest", "calculators/stage/stagetest/oracle",
	"calculators/catalog/catalogtest", "calculators/wasm",
	"themes", "generator/finding", "generator/ghs", "generator/notices", "generator/pool", "generator/keep", "generator/photo", "generator/source", "generator/course", "generator/course/coursetest",
	"generator/markup", "generator/address", "generator/proof", "generator/assets", "generator/assets/carry", "generator/press/theme", "generator/press/presstest", "generator/press/imprint", "generator/press/care",
	"generator/press/desk", "generator/press/find", "generator/press/table", "generator/press/register", "generator/press/setting", "generator/press/gathered", "generator/press/ebook", "generator/press/book", "generator/offline", "generator/press",
	"generator/shelf", "generator/preview", "generator/terminal", "generator", "generator/house", "generator/trial",
}

// arrows says which packages of the module each package imports: these and no
// others. Only the arrows from the generator to the calculators, which all of it
// may use, are left out. A test that fails here prints the line as it must be.
var arrows = map[string]string{
	"calculators/catalog":                "calculators/decimal calculators/form calculators/formula calculators/letters calculators/porosity calculators/quantity calculators/shrinkage calculators/sketch calculators/slip calculators/stage calculators/tile calculators/wash calculators/words",
	"calculators/catalog/catalogtest":    "calculators/form calculators/quantity",
	"calculators/form":                   "calculators/decimal calculators/formula calculators/letters calculators/quantity calculators/stage calculators/words",
	"calculators/quantity":               "calculators/decimal calculators/letters calculators/words",
	"calculators/sketch":                 "calculators/letters",
	"calculators/stage":                  "calculators/decimal calculators/letters calculators/words",
	"calculators/stage/stagetest":        "calculators/stage calculators/words",
	"calculators/stage/stagetest/oracle": "calculators/stage",
	"calculators/wasm":                   "calculators/catalog calculators/form",
	"calculators/words":                  "calculators/letters",
	"generator":                          "generator/address generator/assets generator/course generator/finding generator/keep generator/notices generator/offline generator/photo generator/press generator/press/theme generator/preview generator/proof generator/shelf generator/terminal themes",
	"generator/address":                  "generator/course generator/finding generator/markup generator/source",
	"generator/assets":                   "generator/keep",
	"generator/assets/carry":             "generator/assets",
	"generator/course":                   "generator/finding generator/photo generator/pool generator/source",
	"generator/markup":                   "generator/finding generator/source",
	"generator/photo":                    "generator/keep",
	"generator/press":                    "generator/address generator/assets generator/course generator/markup generator/notices generator/offline generator/press/book generator/press/care generator/press/desk generator/press/ebook generator/press/find generator/press/gathered generator/press/imprint generator/press/register generator/press/setting generator/press/table generator/press/theme generator/proof",
	"generator/press/book":               "generator/address generator/assets generator/course generator/press/imprint generator/press/setting generator/press/theme generator/proof",
	"generator/press/care":               "generator/address generator/course generator/press/imprint generator/press/theme",
	"generator/press/desk":               "generator/address generator/course generator/markup generator/press/care generator/press/imprint generator/press/theme",
	"generator/press/ebook":              "generator/address generator/course generator/markup generator/pool generator/press/imprint generator/press/theme generator/proof",
	"generator/press/find":               "generator/address generator/assets generator/course generator/markup generator/press/imprint generator/press/theme generator/proof",
	"generator/press/gathered":           "generator/address generator/assets generator/course generator/markup generator/press/care generator/press/desk generator/press/find generator/press/imprint generator/press/setting generator/press/table generator/press/theme generator/proof",
	"generator/press/imprint":            "generator/address generator/assets generator/course generator/press/theme",
	"generator/press/presstest":          "generator/assets generator/course generator/course/coursetest generator/finding generator/press/theme generator/proof themes",
	"generator/press/register":           "generator/address generator/course generator/ghs generator/markup generator/press/care generator/press/desk generator/press/imprint generator/press/table generator/proof",
	"generator/press/setting":            "generator/address generator/course generator/markup generator/press/desk generator/press/imprint generator/press/register generator/press/table generator/press/theme generator/proof",
	"generator/press/table":              "generator/address generator/course generator/markup generator/press/care generator/press/desk generator/press/imprint generator/press/theme generator/proof",
	"generator/press/theme":              "generator/course",
	"generator/preview":                  "generator/finding",
	"generator/proof":                    "generator/address generator/course generator/finding generator/ghs generator/markup generator/pool generator/source",
	"generator/shelf":                    "generator/pool",
	"generator/source":                   "generator/finding",
}

// free reports whether an arrow needs no line in the table: from the generator
// to what the calculators offer. What helps tests, a package named for it, is
// for tests alone.
func free(from, to string) bool {
	return strings.HasPrefix(from, "generator") && strings.HasPrefix(to, "calculators/") && to != "calculators/wasm" && !strings.Contains(to, "test")
}

// drawn returns the arrows of a package as the table has them.
func drawn(p pkg) string {
	var to []string
	for _, path := range p.Imports {
		if name, own := strings.CutPrefix(path, "slipbook/"); own && !free(p.short(), name) {
			to = append(to, name)
		}
	}
	slices.Sort(to)
	return strings.Join(to, " ")
}

func TestArrowsAreThoseOfTheTable(t *testing.T) {
	there := map[string]bool{}
	for _, p := range module(t) {
		there[p.short()] = true
		if got := drawn(p); got != arrows[p.short()] {
			t.Errorf("the imports of %s are not those of the table of arrows; if the house is meant to be so, write there (generator/house/arrows_test.go)\n\t%q: %q,",
				p.short(), p.short(), got)
		}
	}
	for from := range arrows {
		if !there[from] {
			t.Errorf("the table of arrows names %s, which does not exist", from)
		}
	}
}

func TestArrowsRunDown(t *testing.T) {
	for _, p := range module(t) {
		from := slices.Index(floors, p.short())
		if from < 0 {
			t.Errorf("%s has no place among the floors of the house (generator/house/arrows_test.go)", p.short())
		}
		for _, to := range strings.Fields(drawn(p)) {
			if slices.Index(floors, to) > from {
				t.Errorf("%s imports %s, which stands above it", p.short(), to)
			}
		}
		for _, path := range append(p.TestImports, p.XTestImports...) {
			if strings.HasPrefix(p.short(), "calculators/") && strings.HasPrefix(path, "slipbook/generator") {
				t.Errorf("tests of %s import %s: the calculators never know the generator", p.short(), path)
			}
		}
	}
	for _, name := range floors {
		if !slices.ContainsFunc(module(t), func(p pkg) bool { return p.short() == name }) {
			t.Errorf("%s has a place among the floors and does not exist", name)
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
