package proof

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"slipbook/generator/course"
)

const (
	clayFile = "materials/yard-clay.yaml"
	blueFile = "materials/yard-blue.yaml"
	clearTub = "materials/yard-clear.yaml"
	slipFile = "recipes/blue-slip.yaml"
)

// register is a studio that keeps all rules of the gate: a clay, a stain, a clear,
// and a recipe of them.
var register = map[string]string{
	clayFile: `name: Yard clay
is: ball-clay
sheet: {supplier: Supplier A (invented), date: 2026-01-10, read-by: Nobody, read: 2026-02-01, review: 2028-02-01, invented: yes}
classified: yes
signal: Danger
pictograms: [GHS08]
statements: [H350i, H372]
precautions: [P201, P260, P501]
hazards: [dust]
`,
	blueFile: `name: Yard blue
what: A blue stain.
role: colour
form: powder
cas: ["1345-16-0"]
sheet: {supplier: Supplier B (invented), date: 2026-01-10, read-by: Nobody, read: 2026-02-01, review: 2028-02-01}
classified: no
hazards: [dust]
metals: [cobalt]
highest-cone: 6
spoiled-by: [zinc]
`,
	clearTub: `name: Yard clear
what: A clear glaze.
role: clear
form: liquid
sheet: {supplier: Supplier B (invented), date: 2026-01-10, read-by: Nobody, read: 2026-02-01, review: 2028-02-01}
classified: unclear
holds: [boron]
`,
	slipFile: `title: Blue slip
about: A slip to start from.
medium: coloured-slip
states: [wet, leather-hard]
cone: 6
base:
  - {material: yard-clay, parts: 100}
additions:
  - {material: yard-blue, percent: 8, of: base}
water: 75
clear: yard-clear
food: no
`,
}

// TestGate changes one thing of a sound register at a time.
func TestGate(t *testing.T) {
	for _, tt := range []struct{ name, file, old, new, want string }{
		{"sound", clayFile, "", "", ""},
		{"a material without a sheet", clayFile, register[clayFile][strings.Index(register[clayFile], "sheet:"):strings.Index(register[clayFile], "classified:")], "",
			"materials/yard-clay.yaml:1:1: error: no safety data sheet is named for Yard clay (material-sheet)"},
		{"a sheet without its date", clayFile, "date: 2026-01-10, ", "",
			"materials/yard-clay.yaml:3:8: error: the sheet of Yard clay has no `date` (material-sheet)"},
		{"a sheet that nobody read", clayFile, "read-by: Nobody, read: 2026-02-01, ", "",
			"materials/yard-clay.yaml:3:8: error: the sheet of Yard clay has no `read-by` (material-sheet)\n" +
				"materials/yard-clay.yaml:3:8: error: the sheet of Yard clay has no `read` (material-sheet)"},
		{"a sheet read before it was written", clayFile, "read: 2026-02-01", "read: 2025-02-01",
			"materials/yard-clay.yaml:3:83: error: the sheet of Yard clay is of 2026-01-10 and was read before, on 2025-02-01 (material-sheet)"},
		{"a review that is due", clayFile, "review: 2028-02-01", "review: 2026-06-30",
			"materials/yard-clay.yaml:3:103: error: the sheet of Yard clay was to be read again by 2026-06-30 (sheet-review)"},
		{"a review on the day", clayFile, "review: 2028-02-01", "review: 2026-07-01", ""},
		{"a sheet of which nobody says how it classes", clayFile, "classified: yes\n", "",
			"materials/yard-clay.yaml:1:1: error: nothing says how the sheet of Yard clay classes it (material-sheet)"},
		{"classified without a statement", clayFile, "statements: [H350i, H372]\n", "",
			"materials/yard-clay.yaml:4:13: error: Yard clay is classified, and no hazard statement is written (material-sheet)"},
		{"codes of what is not classified", blueFile, "classified: no\n", "classified: no\nstatements: [H317]\nsignal: Warning\npictograms: [GHS07]\n",
			"materials/yard-blue.yaml:7:13: error: Yard blue is not classified, and has codes of the GHS or a signal word (material-class)"},
		{"a milder signal word", clayFile, "signal: Danger", "signal: Warning",
			"materials/yard-clay.yaml:5:9: error: of Yard clay: the signal word is Warning, and the hazard codes call for Danger (material-class)"},
		{"a pictogram left out", clayFile, "pictograms: [GHS08]", "pictograms: []",
			"materials/yard-clay.yaml:6:13: error: of Yard clay: GHS08 is missing: H350i (May cause cancer by inhalation) calls for it (material-class)\n" +
				"materials/yard-clay.yaml:6:13: error: of Yard clay: GHS08 is missing: H372 (Causes damage to organs through prolonged or repeated exposure) calls for it (material-class)"},
		{"a code that is none", clayFile, "H372", "H327",
			"materials/yard-clay.yaml:7:13: error: `H327` is no code of the GHS that is known here (material-class)"},
		{"a slip in a CAS number", blueFile, "1345-16-0", "1345-16-1", "materials/yard-blue.yaml:5:6: error: 1345-16-1 is no CAS Registry Number: its last digit would be 0, so either that is wrong or one before it; compare it with the supplier's sheet (1345-16-0 would fit, but may be another substance) (material-number)"},
		{"dust that nobody minds", clayFile, "hazards: [dust]", "hazards: [blade]",
			"materials/yard-clay.yaml:9:10: error: Yard clay bears H350i, and no hazard says what to do about its dust (material-dust)"},
		{"quartz that nobody minds", blueFile, "hazards: [dust]", "hazards: []\nquartz: 3",
			"materials/yard-blue.yaml:8:10: error: Yard blue is a powder that may hold quartz, and no hazard says what to do about its dust (material-dust)"},
		{"a material without an entry", slipFile, "yard-clay", "yard-cly",
			"recipes/blue-slip.yaml:7:16: error: there is no entry for `yard-cly` (recipe-material)"},
		{"a material of the program's list alone", slipFile, "yard-clay", "ball-clay",
			"recipes/blue-slip.yaml:7:16: error: `ball-clay` stands in the program’s own list alone: nobody in this studio has read its sheet (recipe-material)"},
		{"a base of 90", slipFile, "parts: 100", "parts: 90",
			"recipes/blue-slip.yaml:7:3: error: the base comes to 90 parts instead of 100 (recipe-base)"},
		{"an addition of nothing", slipFile, ", of: base", "",
			"recipes/blue-slip.yaml:9:5: error: 8 % of `yard-blue` does not say of what (recipe-addition)"},
		{"a stain above its cone", slipFile, "cone: 6", "cone: 9",
			"recipes/blue-slip.yaml:9:16: error: Yard blue stands cone 6 at the most, and the recipe goes to cone 9 (recipe-cone)"},
		{"a cooler cone", slipFile, "cone: 6", "cone: 06", ""},
		{"a cone that is none", slipFile, "cone: 6", "cone: 66", "recipes/blue-slip.yaml:5:7: error: `66` is not a cone (value-form)"},
		{"a clear that spoils the colour", clearTub, "boron", "zinc",
			"recipes/blue-slip.yaml:11:8: error: Yard clear holds zinc, which spoils the colour of Yard blue (recipe-clear)"},
		{"a clear of which nothing is said", clearTub, "holds: [boron]\n", "",
			"materials/yard-clear.yaml:1:1: error: recipes go under Yard clear, and nothing says what it holds (recipe-clear)"},
		{"food with a metal", slipFile, "food: no", "food: yes",
			"recipes/blue-slip.yaml:12:7: error: this is for food or drink, it holds cobalt, and names no test (recipe-food)"},
		{"food without a metal", slipFile, "additions:\n  - {material: yard-blue, percent: 8, of: base}\nwater: 75\nclear: yard-clear\nfood: no", "water: 75\nclear: yard-clear\nfood: yes",
			"recipes/blue-slip.yaml:10:7: error: this is for food or drink, its clear may hold what leaches out, and names no test (recipe-food)"},
		{"food with what never goes there", blueFile, "metals: [cobalt]", "metals: [cadmium]", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			files := sound(t)
			for name, text := range register {
				if name == tt.file && tt.old != "" {
					changed := strings.Replace(text, tt.old, tt.new, 1)
					if changed == text {
						t.Fatalf("%s does not hold %q", name, tt.old)
					}
					text = changed
				}
				files[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
			}
			if got := gateFindings(t, files); !cmp.Equal(got, tt.want) {
				t.Error(cmp.Diff(tt.want, got))
			}
		})
	}
}

// TestGateBare tells what stays bare where food goes, and that lead never does.
func TestGateBare(t *testing.T) {
	files := sound(t)
	for name, text := range register {
		if name == slipFile {
			text = strings.NewReplacer("clear: yard-clear", "clear: none", "food: no", "food: yes", "  - {material: yard-blue, percent: 8, of: base}\n", "", "additions:\n", "").Replace(text)
		}
		files[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
	}
	want := "recipes/blue-slip.yaml:10:7: error: this is for food or drink, it stays bare, and names no test (recipe-food)"
	if got := gateFindings(t, files); got != want {
		t.Error(got)
	}
}

// TestWallOfTheGate changes one thing of a wall that proves each version of a recipe,
// the first by the tile that failed.
func TestWallOfTheGate(t *testing.T) {
	const versions = `versions:
  - {version: 2, date: 2026-03-10, by: Nobody, change: More of the blue., tile: r2}
  - {version: 1, date: 2026-02-10, by: Nobody, change: First mix., tile: R1}
`
	const tiles = "code,recipe,version,medium,body,cone,clear,fired,verdict,retest\n" +
		"R1,blue-slip,1,,buff,6,yard-clear,2026-02-20,failed,\n" +
		"R2,blue-slip,2,,buff,6,yard-clear,2026-03-10,good,2026-07-01\n"
	for _, tt := range []struct{ name, old, new, want string }{
		{"sound", "", "", ""},
		{"a tile that does not hang there", "tile: r2", "tile: R22", "recipes/blue-slip.yaml:14:81: warning: no tile `R22` hangs on the wall (recipe-proof)"},
		{"a tile of another mix", "R2,blue-slip,2,,", "R2,,,coloured-slip,", "recipes/blue-slip.yaml:14:81: warning: tile R2 is of `coloured-slip`, not of this recipe (recipe-proof)"},
		{"a tile of an older version", "R2,blue-slip,2", "R2,blue-slip,1", "recipes/blue-slip.yaml:14:81: warning: tile R2 is of version 1, not of version 2 (recipe-proof)"},
		{"a tile of some version", "R2,blue-slip,2", "R2,blue-slip,", "recipes/blue-slip.yaml:14:81: warning: tile R2 does not say of which version it is (recipe-proof)"},
		{"a tile that waits for the kiln", "2026-03-10,good", ",", "recipes/blue-slip.yaml:14:81: warning: tile R2 is not fired yet (recipe-proof)"},
		{"a tile fired too early", "2026-03-10,good", "2026-03-09,good", "recipes/blue-slip.yaml:14:81: warning: tile R2 was fired on 2026-03-09, before version 2 was mixed on 2026-03-10 (recipe-proof)"},
		{"a tile that failed", "2026-03-10,good", "2026-03-10,failed", "recipes/blue-slip.yaml:14:81: warning: tile R2 failed, and version 2 is the one in use (recipe-proof)"},
		{"a tile to be tried again", "2026-07-01", "2026-06-30", "tiles.csv:3:51: warning: tile R2 was to be tried again by 2026-06-30 (tile-retest)"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			change := strings.NewReplacer(tt.old, tt.new)
			if tt.old == "" {
				change = strings.NewReplacer()
			}
			files := sound(t)
			for name, text := range register {
				files[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
			}
			files[slipFile].Data = []byte(register[slipFile] + change.Replace(versions))
			files["tiles.csv"] = &fstest.MapFile{Data: []byte(change.Replace(tiles)), Mode: 0o644}
			if got := gateFindings(t, files); got != tt.want {
				t.Error(cmp.Diff(tt.want, got))
			}
		})
	}
}

// gateFindings proofs a course on the first of July 2026, and returns the first
// line of each finding about the register.
func gateFindings(t *testing.T, files fstest.MapFS) string {
	t.Helper()
	reader := Reader{Today: "2026-07-01"}
	_, found := reader.Read(new(course.Reader).Load(files))
	var lines []string
	for _, f := range found {
		if strings.HasPrefix(f.File, "materials/") || strings.HasPrefix(f.File, "recipes/") || f.File == "tiles.csv" || f.File == "leach.csv" {
			line, _, _ := strings.Cut(f.String(), "\n")
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n")
}
