package proof

import (
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// resolverOf makes a resolver for a course.
func resolverOf(t *testing.T, c *course.Course) *resolver {
	t.Helper()
	var r Reader
	reading, _ := r.Read(c, nil)
	return &resolver{Reading: reading, figures: &r.figures, refused: &r.refused}
}

// lined is a text of so many lines of nothing, in which an offset is a line.
func lined() *source.Text {
	return source.New("units/slip/mix.md", []byte(strings.Repeat("\n", 200)))
}

// at returns the offset at which lined has found something.
func at(f finding.Finding) int { return f.Line - 1 }

func TestUnknownCalculator(t *testing.T) {
	c, _ := new(course.Reader).Load(coursetest.Small())
	text := lined()
	resolverOf(t, c).block(&markup.Block{Kind: markup.CalculatorBlock, Words: "slip-destiny", Offset: 41, Number: 1}, text)
	if len(text.Found) != 1 {
		t.Fatalf("%v", text.Found)
	}
	got := text.Found[0]
	if at(got) != 41 || got.Rule != finding.CalculatorName || got.Text != `no calculator is named "slip-destiny"` || !strings.Contains(got.Do, "slip-density") {
		t.Errorf("%+v", got)
	}
}

func TestFaultsOfFilling(t *testing.T) {
	c, _ := new(course.Reader).Load(coursetest.Small())
	text := lined()
	resolverOf(t, c).block(&markup.Block{Kind: markup.CalculatorBlock, Words: "slip-density", Offset: 2, Number: 1, Fill: []markup.Setting{
		{Name: "weight", Value: "12", NameOffset: 10, ValueOffset: 18},
		{Name: "tare", Value: "a spoon", NameOffset: 30, ValueOffset: 36},
		{Name: "solids-density", Value: "0.5", NameOffset: 50, ValueOffset: 66},
		{Name: "volume", Value: "", NameOffset: 80, ValueOffset: 88},
	}}, text)
	wantFound(t, text.Found, finding.CalculatorInput,
		problem{10, `the calculator slip-density has no input "weight"`,
			"Write one of its inputs: mass, tare, volume, water-mass, solids-density, temperature, mass-resolution, volume-tolerance, line-tolerance."},
		problem{36, `the calculator slip-density refuses "a spoon" for tare`, ""},
		problem{66, `the calculator slip-density refuses "0.5" for solids-density`, "Powder that is no heavier than water would float. Clay is about 2.6."},
	)
}

// problem is what is wrong at an offset, and what to write instead; any advice
// where that is empty.
type problem struct {
	offset   int
	text, do string
}

// wantFound compares what was found with what is wrong.
func wantFound(t *testing.T, found finding.List, rule *finding.Rule, want ...problem) {
	t.Helper()
	if len(found) != len(want) {
		t.Fatalf("found %v, want %+v", found, want)
	}
	for n, f := range found {
		if f.Rule != rule || f.Do == "" || at(f) != want[n].offset || f.Text != want[n].text || want[n].do != "" && f.Do != want[n].do {
			t.Errorf("found %d %+v, want %+v", at(f), f, want[n])
		}
	}
}

// stagesBlock makes a stages block of three ids; their offsets are 1, 2, 3.
func stagesBlock(medium, state, technique string) *markup.Block {
	return &markup.Block{Kind: markup.StagesBlock, Number: 1, Part: &markup.Part{
		Medium:    markup.Name{ID: medium, Offset: 1},
		State:     markup.Name{ID: state, Offset: 2},
		Technique: markup.Name{ID: technique, Offset: 3},
	}}
}

func TestStagesBlockReportsWhatTheTableLacks(t *testing.T) {
	for _, test := range []struct {
		name  string
		block *markup.Block
		want  []problem
	}{
		{"nothing", stagesBlock("stain-wash", "bisque", "wiping-back"), nil},
		{"medium", stagesBlock("slip", "", ""), []problem{{1, `the decoration table has no medium "slip"`, "Write one of: coloured-slip, stain-wash."}}},
		{"state and technique", stagesBlock("", "dry", "wipe"), []problem{
			{3, `the decoration table has no technique "wipe"`, "Write one of: wiping-back."},
			{2, `the decoration table has no state "dry"`, "Write one of: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired."}}},
	} {
		t.Run(test.name, func(t *testing.T) {
			c, _ := new(course.Reader).Load(coursetest.Small())
			text := lined()
			resolverOf(t, c).block(test.block, text)
			wantFound(t, text.Found, finding.UnknownName, test.want...)
		})
	}
}

// TestStagesBlockOfAnEmptyTable shows that a course without its table yet is
// told so.
func TestStagesBlockOfAnEmptyTable(t *testing.T) {
	for _, empty := range []*course.Decoration{nil, {}} {
		c, _ := new(course.Reader).Load(coursetest.Small())
		c.Decoration = empty
		text := lined()
		resolverOf(t, c).block(stagesBlock("", "", "trailing"), text)
		wantFound(t, text.Found, finding.UnknownName, problem{3, `the decoration table has no technique "trailing"`, "There is none yet; add it to decoration.yaml."})
	}
}

// TestFindingsOfBlocks wants what is wrong with blocks of a lesson to be found at
// its line and column.
func TestFindingsOfBlocks(t *testing.T) {
	const file = "units/slip/measure.md"
	for _, test := range []struct{ name, block, want string }{
		{"unknown calculator", "```calculator slip-destiny\n```", file + ":40:4: error: no calculator is named \"slip-destiny\" (calculator-name)"},
		{"unknown input", "```calculator slip-density\nweight: 12\n```", file + ":41:1: error: the calculator slip-density has no input \"weight\" (calculator-input)"},
		{"refused value", "```calculator slip-density\ntare: a spoon\n```", file + ":41:7: error: the calculator slip-density refuses \"a spoon\" for tare (calculator-input)"},
		{"unknown limits", "```limits\nabout: silica\n```", file + ":41:8: error: there are no limits about \"silica\" (unknown-name)"},
		{"unknown medium", "```stages\nmedium: slip\n```", file + ":41:9: error: the decoration table has no medium \"slip\" (unknown-name)"},
	} {
		t.Run(test.name, func(t *testing.T) {
			files := sound(t)
			change(t, files, file, "1. Stir it.", "1. Stir it.\n\n"+test.block)
			_, found := proofread(t, files)
			if len(found) != 1 || !strings.HasPrefix(found[0].String(), test.want) {
				t.Errorf("found %v, want %s", found, test.want)
			}
		})
	}
}
