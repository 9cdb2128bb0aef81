package proof

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/calculators/form"
	"slipbook/generator/course"
)

// readClass reads a course with two clays, a stain, a gum, a slip of two clays mixed to
// 1.45, a blue one by its water, and one class.
func readClass(t *testing.T, s *course.Session, scales ...course.Scale) *Reading {
	t.Helper()
	c, _ := new(course.Reader).Load(sound(t))
	c.Scales = scales
	for _, id := range []string{"clay", "kaolin", "stain", "gum"} {
		m := &course.Material{ID: id, Own: true, Name: id, Form: "powder"}
		if id == "clay" || id == "kaolin" {
			m.Density = 2.6
		}
		c.Materials = append(c.Materials, m)
	}
	c.Recipes = []*course.Recipe{
		{ID: "white", Medium: "coloured-slip", Gravity: 1.45, Base: []course.Share{{Material: "clay", Amount: 60}, {Material: "kaolin", Amount: 40}}},
		{ID: "blue", Medium: "coloured-slip", Water: 75, Base: []course.Share{{Material: "clay", Amount: 100}},
			Additions: []course.Share{{Material: "stain", Amount: 8, Of: course.OfBase}, {Material: "gum", Amount: 0.5, Of: course.OfWater}}},
	}
	c.Sessions = []*course.Session{s}
	r, _ := new(Reader).Read(c, nil)
	return r
}

// TestShelfAgainstAHandCalculation compares what a class takes with sums made by hand,
// from mass and volume alone.
//
// White, 60 mL for each of 16 and a tenth to spare: 1056 mL of 1.45 weigh 1531.2 g,
// which is D of powder of 2.6 g/mL and W of water: D + W = 1531.2 and D/2.6 + W = 1056,
// so D = 475.2 x 2.6/1.6 = 772.2, of which 463.32 and 308.88.
//
// Blue, 2 L: 100 of clay take 38.462 mL, 8 of stain at 4.5 g/mL 1.778 and 75 of water
// 75, together 115.239; so 2000 mL hold 17.3552 times as much: 1735.5 of clay, 138.8 of
// stain, 1301.6 of water and in that 6.5 of gum.
func TestShelfAgainstAHandCalculation(t *testing.T) {
	white, blue := course.Mixed{Recipe: "white", Each: "60 mL"}, course.Mixed{Recipe: "blue", Litres: 2}
	fine := []course.Scale{{To: 20_000, Step: 0.1}}
	for _, tt := range []struct {
		name   string
		people int
		mix    []course.Mixed
		scales []course.Scale
		want   []Portion
	}{
		{"nothing", 16, nil, fine, nil},
		{"one recipe by the head", 16, []course.Mixed{white}, fine, []Portion{{"clay", 463.3}, {"kaolin", 308.9}}},
		{"half as many", 8, []course.Mixed{white}, fine, []Portion{{"clay", 231.7}, {"kaolin", 154.4}}},
		{"litres do not ask how many come", 3, []course.Mixed{blue}, fine, []Portion{{"clay", 1735.5}, {"stain", 138.8}, {"gum", 6.5}}},
		{"two recipes with one clay", 16, []course.Mixed{white, blue}, fine, []Portion{{"clay", 2198.8}, {"kaolin", 308.9}, {"stain", 138.8}, {"gum", 6.5}}},
		{"as a coarse scale shows it", 16, []course.Mixed{white, blue}, []course.Scale{{To: 1000, Step: 1}, {To: 15_000, Step: 5}}, []Portion{{"clay", 463 + 1735}, {"kaolin", 309}, {"stain", 139}, {"gum", 6.5}}},
		// 29 kg in two loads of 7312.5 g of powder: 4387.5 is weighed as 4390, 2925 as it is.
		{"in two loads", 1, []course.Mixed{{Recipe: "white", Litres: 20}}, []course.Scale{{To: 15_000, Step: 5}}, []Portion{{"clay", 8780}, {"kaolin", 5850}}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := &course.Session{ID: "first", People: tt.people, Mix: tt.mix}
			if got := readClass(t, s, tt.scales...).Shelf(s); !slices.Equal(got, tt.want) {
				t.Errorf("%v, want %v", got, tt.want)
			}
		})
	}
}

// TestPortionsOfALitre wants the same of the stock book's litre, and nothing of a batch
// that the calculator refuses.
func TestPortionsOfALitre(t *testing.T) {
	r := readClass(t, &course.Session{}, course.Scale{To: 20_000, Step: 0.1})
	blue, _ := r.Course.FindRecipe("blue")
	if got, want := r.Portions(blue, []form.Setting{Litre}), []Portion{{"clay", 867.8}, {"stain", 69.4}, {"gum", 3.3}}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if got := r.Portions(blue, []form.Setting{{Name: "volume", Text: "some"}}); got != nil {
		t.Errorf("%v of a batch that is refused", got)
	}
}

// TestShelfWhereGumGoesInFirst mixes 1050 g dry of 60 and 40 of clay with 4 of stain
// and 1 of gum: the gum is weighed before the powder, and each tub still gives its own
// share, 10, 600, 400 and 40 g.
func TestShelfWhereGumGoesInFirst(t *testing.T) {
	r := readClass(t, &course.Session{}, course.Scale{To: 20_000, Step: 0.1})
	white, _ := r.Course.FindRecipe("white")
	white.Additions = []course.Share{{Material: "stain", Amount: 4, Of: course.OfBase}, {Material: "gum", Amount: 1, Of: course.OfBase, First: true}}
	got := r.Portions(white, []form.Setting{{Name: "dry-mass", Text: "1050 g"}})
	if want := []Portion{{"gum", 10}, {"clay", 600}, {"kaolin", 400}, {"stain", 40}}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

const classFile = "classes.yaml"

// wholeClass is a class that keeps the rules of the gate, with what register holds.
const wholeClass = `classes:
  - id: first
    title: First slips
    people: 16
    when: 2027-02-03
    lesson: units/slip/mix.md
    mix: [{recipe: blue-slip, each: 60 mL}]
    tubs: [yard-clear]
`

// TestGateOfClasses changes one thing of a sound register with a class at a time.
func TestGateOfClasses(t *testing.T) {
	const instead = "\n    Write `with: instructor` where the instructor is in the room all the time, or take something else." +
		"\n    Source of the rule: who may, as decoration.yaml and the tubs' own entries say it."
	const amount = "\n    Source of the rule: our own rule: a slip in the unit is likelier than a batch of that size."
	for _, tt := range []struct{ name, file, old, new, want string }{
		{"sound", classFile, "", "", ""},
		{"a tub of the mix that students do not open alone", blueFile, "hazards:", "who: with-instructor\nhazards:",
			"classes.yaml:7:20: error: students work with `blue-slip` beside the instructor only, and this class does not say who is there (class-person)" + instead},
		{"a tub of the mix that is the instructor's", clayFile, "hazards:", "who: instructor\nhazards:",
			"classes.yaml:7:20: error: only the instructor works with `blue-slip`, and this class does not say who is there (class-person)" + instead},
		{"a tub put out that is the instructor's", clearTub, "holds:", "who: instructor\nholds:",
			"classes.yaml:8:12: error: only the instructor works with `yard-clear`, and this class does not say who is there (class-person)" + instead},
		{"litres for millilitres", classFile, "60 mL", "60 L",
			"classes.yaml:7:37: error: that is 1056 L of `blue-slip` for 16 people (class-amount)\n    Look at its unit again. More than 200 L is no batch for one class." + amount},
		{"an amount that is none", classFile, "60 mL", "a cup",
			"classes.yaml:7:37: error: the calculator recipe-scale refuses this amount: “a cup” is not a number. Write a volume with the digits 0 to 9, for example 100 mL. (class-amount)\n    Write a volume for each, such as `each: 60 mL`, or in all, such as `litres: 2`." + amount},
		{"too little to weigh", classFile, "each: 60 mL", "each: 0.01 mL",
			"classes.yaml:7:37: error: so little of `blue-slip` takes less of `yard-blue` than the scale shows (class-amount)\n    Mix enough for several classes, such as `litres: 1`, and keep the rest." + amount},
		{"a batch in all that the scale does not show", classFile, "each: 60 mL", "litres: 0.04",
			"classes.yaml:7:39: error: `litres` is 0.04, outside 0.05 to 200 (value-form)\n    Write how many litres are mixed in all; check the decimal point."},
	} {
		t.Run(tt.name, func(t *testing.T) {
			files := sound(t)
			for name, text := range register {
				files[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
			}
			files[classFile] = &fstest.MapFile{Data: []byte(wholeClass), Mode: 0o644}
			if tt.old != "" {
				change(t, files, tt.file, tt.old, tt.new)
			}
			if got := classFindings(files); got != tt.want {
				t.Errorf("%s\nwant %s", got, tt.want)
			}
			change(t, files, classFile, "people: 16", "people: 16\n    with: instructor")
			if got := classFindings(files); strings.Contains(got, "class-person") {
				t.Errorf("with the instructor in the room: %s", got)
			}
		})
	}
}

// classFindings proofs a course on the first of July 2026, and returns what is found
// wrong with its classes.
func classFindings(files fstest.MapFS) string {
	reader := Reader{Today: "2026-07-01"}
	_, found := reader.Read(new(course.Reader).Load(files))
	var all []string
	for _, f := range found {
		if f.File == classFile {
			all = append(all, f.String())
		}
	}
	return strings.Join(all, "\n")
}
