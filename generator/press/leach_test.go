package press

import (
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/press/presstest"
	"slipbook/generator/proof"
)

// reported is a course with a slip that is for food, as report 14 allows, a tile of it,
// and report 15, which is invented.
func reported(t *testing.T) *course.Course {
	t.Helper()
	c := harmful(t)
	stock(c)
	c.Recipes[0].Food, c.Recipes[0].LeachTest, c.Recipes[0].Batch = "yes", "14", "7"
	c.Recipes[0].Versions = []course.Version{{Number: 2, Date: "2026-02-01", By: "Nobody", Change: "Thinner."}}
	c.Bodies = []course.Body{{ID: "buff", Name: "Buff stoneware", Cone: "6"}}
	c.Tiles = []*course.Tile{{Code: "R1", Recipe: "blue-slip", Medium: "coloured-slip", Version: 2, Body: "buff", Cone: "6", Clear: course.NoClear, Batch: "7", Fired: "2026-02-09", Verdict: course.TileGood}}
	real := course.Leach{Number: "14", Laboratory: "Laboratory A", Date: "2026-05-04", Method: "ISO 6486-1", Ware: "cup", Recipe: "blue-slip", Version: 2, Batch: "7", Clear: course.NoClear,
		Body: "buff", Cone: "6", Found: []course.Leached{{Metal: "lead", Below: true, Amount: 0.05, Unit: "mg/L"}}, Passed: true, Until: "2027-05-04", Ends: "until a batch changes"}
	invented := real
	invented.Number, invented.Date, invented.Invented = "15", "2026-06-01", true
	c.Leach = []*course.Leach{&real, &invented}
	return c
}

// reportsSaid are places that say whether a pot was tested: the first text where
// report 14 answers, the second where it does not.
var reportsSaid = []struct{ page, answers, not string }{
	{"leach/index.html", "Report 14 It answers. Until 4 May 2027, or until a batch changes.", "Report 14 It answers nothing:"},
	{"leach/may-i-eat.html", "Report 14, a cup or mug: Blue slip, version 2, batch 7; bare; Buff stoneware; cone 6. Until 4 May 2027", "This studio has no report that counts"},
	{"recipes/blue-slip.html", "Only as it was tested: Report 14, a cup or mug. Until 4 May 2027, or until a batch changes. May I eat from it?", "Not where food, drink or lips touch. Report 15: It answers nothing: it is invented, to be read in class"},
	{"tiles/index.html", "Report 14: Until 4 May 2027, or until a batch changes.", "Report 14: It answers nothing:"},
	{"labels/recipe-blue-slip-a4.html", "Food: as report 14 says, until 4 May 2027.", "Not for food, drink or lips."},
}

// TestPagesSayWhatWasTested wants every page that speaks of food to rest on the report
// while it answers, to say why not once it does not, and what is invented never to
// answer.
func TestPagesSayWhatWasTested(t *testing.T) {
	for _, tt := range []struct {
		name, today string
		change      func(*course.Course)
		why         string // empty: it answers
	}{
		{"answers", "2026-07-01", func(*course.Course) {}, ""},
		{"has run out", "2027-05-05", func(*course.Course) {}, "it has expired"},
		{"another batch", "2026-07-01", func(c *course.Course) { c.Recipes[0].Batch = "8" }, "a batch of the colour has changed"},
		{"no batch", "2026-07-01", func(c *course.Course) { c.Recipes[0].Batch = "" }, "nobody wrote down which batch is in use"},
		{"a newer version", "2026-07-01", func(c *course.Course) { c.Recipes[0].Versions[0].Number = 3 }, "the recipe has changed since"},
		{"another strength", "2026-07-01", func(c *course.Course) { c.Leach[0].Percent, c.Tiles[0].Percent = 4, "4" }, "the recipe has another amount of colour"},
		{"another cone", "2026-07-01", func(c *course.Course) { c.Recipes[0].Cone = "5" }, "the recipe goes to another cone"},
		{"another clay", "2026-07-01", func(c *course.Course) { c.Bodies[0].Cone = "5" }, "this clay is fired to another cone here"},
		{"another clear", "2026-07-01", func(c *course.Course) { c.Recipes[0].Clear = "yard-clay" }, "the recipe goes under another clear"},
		{"failed", "2026-07-01", func(c *course.Course) { c.Leach[0].Passed = false }, "the laboratory failed it"},
		{"dated later", "2026-05-01", func(*course.Course) {}, "its date is still to come"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := reported(t)
			tt.change(c)
			reader := proof.Reader{Today: tt.today}
			reading, _ := reader.Read(c, nil)
			e, err := Print(studio(t), reading, shared(), Copy{})
			if err != nil {
				t.Fatal(err)
			}
			pages, err := everything(e)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range reportsSaid {
				said := presstest.Text(presstest.Parse(t, string(pages[s.page])))
				want, never := s.answers, s.not
				if tt.why != "" {
					want, never = s.not, s.answers
				}
				if !strings.Contains(said, want) || strings.Contains(said, never) && !strings.HasPrefix(never, "Not ") {
					t.Errorf("%s does not say %q, or says %q:\n%s", s.page, want, never, said)
				}
			}
			if said := presstest.Text(presstest.Parse(t, string(pages["leach/index.html"]))); !strings.Contains(said, tt.why) ||
				!strings.Contains(said, "Report 15 It answers nothing: it is invented, to be read in class") {
				t.Errorf("the page of reports: %s", said)
			}
			if said := presstest.Text(presstest.Parse(t, string(pages["leach/may-i-eat.html"]))); !strings.Contains(said, "Invented, so they answer nothing: Report 15.") {
				t.Errorf("the seven questions: %s", said)
			}
		})
	}
}

// TestPlannerNamesThePageOfReports wants the sentence of plans to call the page what it
// is called.
func TestPlannerNamesThePageOfReports(t *testing.T) {
	c := reported(t)
	name := studio(t).Say("leach")
	for _, today := range []string{"2026-07-01", "2028-01-01"} {
		if said := c.Planner("en-US", today).Reports; !strings.Contains(said, "“"+name+"”") {
			t.Errorf("%q does not name the page %q", said, name)
		}
	}
}
