package main

import (
	"html"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// week is a technician's, written into the demo course day by day.
type week struct {
	t       *testing.T
	content fstest.MapFS
	book    *handbook
	files   func(address string) string // of the newest edition
	found   finding.List
}

// TestTechniciansWeek plays a new stain through: it arrives, its sheet is read, it goes
// into a recipe, a batch is mixed for sixteen and labelled, a tile is fired and hung,
// and the next version of the recipe rests on it.
func TestTechniciansWeek(t *testing.T) {
	var reader course.Reader
	w := &week{t: t, content: demoCopy(t)}
	w.book = &handbook{lessons: func() (*course.Course, finding.List) { return reader.Load(w.content) }, theme: spoken(houseTheme)}

	w.write("recipes/tern-grey-slip.yaml", ternSlip)
	w.refused(finding.RecipeMaterial, "recipes/tern-grey-slip.yaml", "tern-grey-stain")

	w.write("materials/tern-grey-stain.yaml", strings.Replace(ternStain, "  read: 2026-11-03\n", "", 1))
	w.refused(finding.MaterialSheet, "materials/tern-grey-stain.yaml", "`read`")
	w.write("materials/tern-grey-stain.yaml", ternStain)
	w.published()
	w.says("materials/tern-grey-stain.html", "May cause an allergic skin reaction", "nitrile gloves", "Supplier C (invented)")
	w.says("recipes/tern-grey-slip.html", "Tern grey stain", "May cause an allergic skin reaction", "May cause cancer by inhalation")

	w.batchForSixteen()
	w.says("labels/recipe-tern-grey-slip-a4.html", "Tern grey slip", "Version 1, 4 November 2026", "May cause an allergic skin reaction", "instructor")

	row := "W1,tern-grey-slip,1,6,,heron-stoneware,2,6,\"middle shelf, back\",studio-clear,oxidation,2026-11,2026-11-05,2026-11-07,,,#7d8288,good,Even grey in two coats.,\n"
	w.write("tiles.csv", string(w.content["tiles.csv"].Data)+row)
	w.write("recipes/tern-grey-slip.yaml", strings.Replace(ternSlip, "change: First mix.", "change: First mix., tile: W1", 1))
	w.published()
	w.says("tiles/index.html", `id="tile.w1"`, "Even grey in two coats.")
	w.says("recipes/tern-grey-slip.html", "#tile.w1", "Even grey in two coats.")
}

// write changes a file of the course.
func (w *week) write(name, text string) { put(w.content, name, text) }

// print makes the next edition.
func (w *week) print() bool {
	w.t.Helper()
	e, found, err := w.book.print(w.t.Context())
	if err != nil {
		w.t.Fatal(err)
	}
	w.found, w.files = found, nil
	if e == nil {
		return false
	}
	w.files = func(address string) string {
		data, _, err := e.File(address)
		if err != nil {
			w.t.Fatal(err)
		}
		return string(data)
	}
	return true
}

// published wants an edition of which nothing is said.
func (w *week) published() {
	w.t.Helper()
	if !w.print() || len(w.found) > 0 {
		w.t.Fatalf("not published: %v", w.found)
	}
}

// refused wants no edition, for one reason.
func (w *week) refused(rule *finding.Rule, file, word string) {
	w.t.Helper()
	if w.print() {
		w.t.Fatalf("published, though %s", rule.Means)
	}
	for _, f := range w.found {
		if f.Rule != rule || f.File != file || !strings.Contains(f.Text, word) {
			w.t.Errorf("refused for another reason: %v", f)
		}
	}
}

// says wants words on a page.
func (w *week) says(address string, wanted ...string) {
	w.t.Helper()
	page := html.UnescapeString(w.files(address))
	for _, words := range wanted {
		if !strings.Contains(page, words) {
			w.t.Errorf("%s does not say %q", address, words)
		}
	}
}

// boxOf finds what stands in a box of a form.
var boxOf = regexp.MustCompile(`<input[^>]* name="([a-z-]+)"[^>]* value="([^"]*)"`)

// batchForSixteen scales the recipe for sixteen people by what stands in the form of
// its page, and compares with sums on paper: 94.34 of base and 5.66 of stain in 100 of
// what is weighed dry, at the gravity of the recipe.
func (w *week) batchForSixteen() {
	w.t.Helper()
	parts := map[string]string{}
	for _, box := range boxOf.FindAllStringSubmatch(html.UnescapeString(w.files("recipes/tern-grey-slip.html")), -1) {
		parts[box[1]] += " " + box[2]
	}
	given := []form.Setting{{Name: "parts", Text: strings.TrimSpace(parts["parts"])}, {Name: "additions", Text: strings.TrimSpace(parts["additions"])},
		{Name: "specific-gravity", Text: "1.45"}, {Name: "people", Text: "16"}, {Name: "each", Text: "60"}, {Name: "spare", Text: "10"}}
	answer := catalog.Solve("recipe-scale", given, form.Settings{})
	if len(answer.Errors) > 0 {
		w.t.Fatalf("for sixteen: %v of %v", answer.Errors, given)
	}
	values := map[string]float64{}
	for _, o := range answer.Outputs {
		values[o.Name] = o.Value
	}
	// 16 x 60 mL and a tenth are 1,056 mL; of 1.45 g/mL they are 1,531.2 g. With powder
	// of 2.6 and stain of 4.5 g/mL, 100 of base and 6 of stain take 39.795 mL, so that
	// 106 g of powder weigh 66.205 g more than their water: (1.45 - 1) x 1,056 = 475.2 g
	// more are 760.8 g of powder.
	if dry := values["dry-total"]; dry < 760.3 || dry > 761.3 {
		w.t.Errorf("for sixteen %g g are weighed dry, want 760.8", dry)
	}
	if sum := values["dry-total"] + values["water"]; sum < 1530.7 || sum > 1531.7 {
		w.t.Errorf("for sixteen powder and water weigh %g g, want 1531.2", sum)
	}
}

const ternSlip = `title: Tern grey slip
about: A plain grey on the base of Yard white. A starting point.
medium: coloured-slip
states: [wet, leather-hard]
cone: "6"
base:
  - {material: river-ball-clay, parts: 50}
  - {material: pale-china-clay, parts: 25}
  - {material: weir-potash-feldspar, parts: 15}
  - {material: yard-flint, parts: 10}
additions:
  - {material: tern-grey-stain, percent: 6, of: base}
gravity: 1.45
mesh: 120
clear: studio-clear
food: no
keeps: A year, lidded.
mixing:
  - Put the powder onto the water, a scoop at a time, and leave it overnight with the lid on.
versions:
  - {version: 1, date: 2026-11-04, by: Marit Olsen, change: First mix.}
`

const ternStain = `name: Tern grey stain
what: A grey stain for slips and underglazes.
role: colour
form: powder
density: 4.5
hazards: [stain-powder]
metals: [cobalt, chromium]
sheet:
  supplier: Supplier C (invented)
  date: 2026-10-20
  read-by: Marit Olsen
  read: 2026-11-03
  review: 2036-11-01
  invented: yes
classified: yes
signal: Warning
pictograms: [GHS07]
statements: [H317]
precautions: [P261, P272, P280, P302+P352, P333+P313, P501]
who: with-instructor
wear: [a fitted respirator, nitrile gloves]
storage: Screw-top jar on the stain shelf.
spill: Wipe it up wet.
waste: Damp, into the lidded tub of mixed mud.
first-aid: "On skin: soap and water, and stop at a rash."
quartz: none
highest-cone: "10"
`
