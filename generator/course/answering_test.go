package course_test

import (
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// tested is the small course with a real report on its slip, which is for food.
func tested(t *testing.T, edits ...edit) *course.Course {
	t.Helper()
	files := coursetest.Small()
	for _, e := range append([]edit{
		{setting, "units:\n", "  - {id: red, name: Red earthenware, shrinkage: 8, cone: 04}\nunits:\n"},
		{clay, "", wholeClay}, {blue, "", wholeBlue}, {clear, "", wholeClear + "batch: 3\n"},
		{white, "", strings.NewReplacer("clear: none", "clear: yard-clear", "food: no", "food: yes\nbatch: 7\nleach-test: 14").Replace(blueSlip)},
		{leach, "", leachHead + wholeLeach},
		{wall, "", "code,recipe,version,percent,body,cone,clear,batch,atmosphere\nR1,white-slip,2,8,buff,6,yard-clear,7,oxidation\n"},
	}, edits...) {
		e.apply(t, files)
	}
	c, found := new(course.Reader).Load(files)
	if found.Stop() {
		t.Fatal(found)
	}
	return c
}

// TestReportAnswersForTheIdenticalCombination changes one thing at a time of what was
// tested, of what is made now, or of the day: each ends what the report allows.
func TestReportAnswersForTheIdenticalCombination(t *testing.T) {
	const day = "2026-07-01"
	for _, tt := range []struct {
		name   string
		today  string
		edits  []edit
		doubts string
	}{
		{"identical", day, nil, ""},
		{"on its last day", "2027-05-04", nil, ""},
		{"on no day that is known", "", nil, ""},
		{"the day after", "2027-05-05", nil, "expired"},
		{"before its date", "2026-05-03", nil, "future"},
		{"invented", day, []edit{{leach, "ends\n", "ends,invented\n"}, {leach, "changes\n", "changes,yes\n"}}, "invented"},
		{"failed", day, []edit{{leach, "passed", "failed"}}, "failed"},
		{"with the lead of a thousand cups", day, []edit{{leach, "<0.05 mg/L,", "9.0 mg/L,"}}, "limit"},
		{"under a clear of lead", day, []edit{{clear, "batch: 3\n", "batch: 3\nmetals: [lead]\n"}}, "heavy"},
		{"of an older version", day, []edit{{leach, "white-slip,2", "white-slip,1"}}, "version"},
		{"before a newer version", day, []edit{{white, "versions: [", "versions: [{version: 3, date: 2026-06-01, by: Nobody, change: More water.}, "}}, "version"},
		{"of less colour", day, []edit{{leach, "2,8,", "2,4,"}}, "strength"},
		{"before more colour", day, []edit{{white, "percent: 8", "percent: 9"}}, "strength"},
		{"bare", day, []edit{{leach, "yard-clear,3", "none,"}}, "clear"},
		{"before another clear", day, []edit{{white, "clear: yard-clear", "clear: none"}}, "clear"},
		{"of a cooler cone", day, []edit{{leach, "buff,6", "buff,5"}}, "cone body"},
		{"before a hotter cone", day, []edit{{white, "cone: 6", "cone: 7"}}, "cone"},
		{"on a clay of another cone", day, []edit{{leach, "buff", "red"}}, "body"},
		{"of another batch", day, []edit{{leach, "8,,7", "8,,6"}}, "batch"},
		{"before another batch", day, []edit{{white, "batch: 7", "batch: 8"}}, "batch"},
		{"while nobody says which batch", day, []edit{{white, "batch: 7\n", ""}}, "no-batch"},
		{"under another batch of the clear", day, []edit{{leach, "yard-clear,3", "yard-clear,2"}}, "clear-batch"},
		{"before another batch of the clear", day, []edit{{clear, "batch: 3", "batch: 4"}}, "clear-batch"},
		{"while nobody says which batch of the clear", day, []edit{{clear, "batch: 3\n", ""}}, "no-clear-batch"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := tested(t, tt.edits...)
			var doubts []string
			for _, d := range c.Doubts(c.Leach[0], tt.today) {
				doubts = append(doubts, string(d))
			}
			if got := strings.Join(doubts, " "); got != tt.doubts {
				t.Errorf("doubts %q, want %q", got, tt.doubts)
			}
			answers := tt.doubts == ""
			if got := c.Tested(c.Recipes[0], tt.today) != nil; got != answers {
				t.Errorf("the recipe is tested: %v, want %v", got, answers)
			}
			if got := len(c.Answering(tt.today)) == 1; got != answers {
				t.Errorf("the report answers: %v, want %v", got, answers)
			}
			said := c.Planner("en-GB", tt.today).Reports
			if got := strings.Contains(said, "report 14 (until 2027-05-04)"); got != answers || answers == strings.Contains(said, "no leach report that counts") {
				t.Errorf("the planner says %q", said)
			}
		})
	}
}

// TestReportNamedByItsOwnRecipe wants a report to allow nothing that does not name it,
// that is not for food, or that it is not of.
func TestReportNamedByItsOwnRecipe(t *testing.T) {
	for name, e := range map[string]edit{
		"unnamed":      {white, "leach-test: 14\n", ""},
		"not for food": {white, "food: yes", "food: no"},
		"another":      {leach, "white-slip,2,8,,7,", ",,,yard-blue,7,"},
		"no colour":    {leach, "white-slip,2,8,,7,", ",,,,,"},
	} {
		if c := tested(t, e); c.Tested(c.Recipes[0], "2026-07-01") != nil {
			t.Errorf("%s: it is tested", name)
		}
	}
}

// TestTileOfTheCombination wants a tile to lead to a report only where everything that
// a tile can say is the same.
func TestTileOfTheCombination(t *testing.T) {
	for row, want := range map[string]bool{
		"white-slip,2,8,buff,6,yard-clear,7,oxidation":  true,
		"white-slip,1,8,buff,6,yard-clear,7,oxidation":  false,
		"white-slip,2,4,buff,6,yard-clear,7,oxidation":  false,
		"white-slip,2,9,buff,6,yard-clear,7,oxidation":  false,
		"white-slip,2,8,white,6,yard-clear,7,oxidation": false,
		"white-slip,2,8,buff,5,yard-clear,7,oxidation":  false,
		"white-slip,2,8,buff,6,none,7,oxidation":        false,
		"white-slip,2,8,buff,6,yard-clear,8,oxidation":  false,
		"white-slip,2,8,buff,6,yard-clear,,oxidation":   false,
		"white-slip,2,8,buff,6,yard-clear,7,reduction":  false,
	} {
		c := tested(t, edit{wall, "white-slip,2,8,buff,6,yard-clear,7,oxidation", row},
			edit{leach, "ends\n", "ends,atmosphere\n"}, edit{leach, "changes\n", "changes,oxidation\n"})
		if got := c.IsOf(c.Leach[0], c.Tiles[0]); got != want {
			t.Errorf("%s: %v, want %v", row, got, want)
		}
	}
}

// TestNewestReportFirst wants reports by their dates, the newest first.
func TestNewestReportFirst(t *testing.T) {
	c := tested(t, edit{leach, "changes\n", "changes\n" + strings.NewReplacer("14", "9", "2026-05-04", "2026-06-01").Replace(wholeLeach)})
	var numbers []string
	for _, l := range c.NewestLeach() {
		numbers = append(numbers, l.Number)
	}
	if !slices.Equal(numbers, []string{"9", "14"}) || c.Leach[0].Number != "14" {
		t.Errorf("reports %q", numbers)
	}
	if f := c.Leach[0].Found; len(f) != 3 || !f[0].Below || f[0].Amount != 0.05 || f[1].Below || f[2].Metal != "cobalt" || f[2].Unit != "mg/L" {
		t.Errorf("found %+v", f)
	}
}
