package proof

import (
	"math"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// TestSyllables holds the count to words of the trade and of every day, divided as
// dictionaries divide them; from memory.
func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{
		"slip": 1, "glaze": 1, "glazes": 2, "kettle": 2, "stirred": 1, "wanted": 2, "coated": 2, "poured": 1, "underglaze": 3, "feldspar": 2,
		"water": 2, "the": 1, "be": 1, "free": 1, "leather-hard": 3, "deflocculant": 4, "porcelain": 3, "kiln": 1, "12.5": 1, "every": 3, "table": 2, "whole": 1, "sponge": 1,
	} {
		if got := syllables(word); got != want {
			t.Errorf("%s has %d syllables, want %d", word, got, want)
		}
	}
}

// TestGrade works the formula by hand on a page of which only the running words count.
func TestGrade(t *testing.T) {
	const page = "Stir the slip. Pour it into water.\n\n| Never | counted |\n|---|---|\n| as deflocculation | is |\n\n```caution Dust\nConsiderable carefulness.\n```\n\n```teaching\nLong\n: Preparation.\n```\n"
	_, prose := markup.Read([]byte(page), "en-GB")
	got := measure(prose)
	if got != (measured{7, 2, 9}) {
		t.Fatalf("%+v, want 7 words in 2 sentences with 9 syllables", got)
	}
	if want := 0.39*7/2 + 11.8*9/7 - 15.59; math.Abs(got.grade()-want) > 1e-9 {
		t.Errorf("grade %v, want %v", got.grade(), want)
	}
	if (measured{}).grade() != 0 {
		t.Error("a page without words has a grade")
	}
}

// checked returns the ids of the rules that a lesson of a course breaks of those that
// check is about.
func checked(t *testing.T, language, page string, check func(*rules, *checking)) (ids []string) {
	t.Helper()
	document, prose := markup.Read([]byte(page), language)
	c := &course.Course{Language: language, Glossary: []course.Term{{ID: "frit", Word: "Frit"}}}
	s := &checking{page: &course.Page{Kind: course.LessonPage, File: "x.md", Source: []byte(page)}, doc: document, prose: prose}
	s.text = source.New("", []byte(page))
	check(newRules(c), s)
	for _, f := range s.text.Found {
		ids = append(ids, f.Rule.ID+": "+f.Text)
	}
	return ids
}

func TestStepNumbers(t *testing.T) {
	number := func(_ *rules, s *checking) { checkStepNumbers(s) }
	for page, want := range map[string][]string{
		"1. Stir.\n2. As in [step 1](#step-1), and [Steps 1](#step-1) to 2.\n": nil,
		"## Step 7\n\nOne step, steps two and three, 2 steps, footsteps 3.\n":  nil,
		"teps 3 and misteps 4.\n":                                nil,
		"1. Stir.\n\nAs in step 1.\n":                            {"step-number: “step 1” is no link, so nobody sees when it is another step"},
		"Steps 4 to 6 come [first](#a), and\nstep\n7.\n\n## A\n": {"step-number: “Steps 4” is no link, so nobody sees when it is another step", "step-number: “step 7” is no link, so nobody sees when it is another step"},
	} {
		if got := checked(t, "en-GB", page, number); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", page, got, want)
		}
	}
}

func TestWholeLesson(t *testing.T) {
	many := strings.Repeat("Stir it well. ", mostWords/3)
	if got := checked(t, "en-GB", many, (*rules).checkWhole); len(got) != 0 {
		t.Errorf("of %d words: %v", mostWords, got)
	}
	if got := checked(t, "en-GB", many+"Now.", (*rules).checkWhole); len(got) != 1 || !strings.HasPrefix(got[0], "lesson-length: this lesson has 901 words") {
		t.Errorf("of one more: %v", got)
	}
	hard := strings.Repeat("Deflocculation necessitates considerable experimentation. ", 5)
	if got := checked(t, "en-GB", hard, (*rules).checkWhole); len(got) != 1 || !strings.HasPrefix(got[0], "hard-to-read") {
		t.Errorf("hard words: %v", got)
	}
	if got := checked(t, "de", hard, (*rules).checkWhole); len(got) != 0 {
		t.Errorf("the formula is of English: %v", got)
	}
}

func TestPerils(t *testing.T) {
	dust := "```caution Dust\nPowder is dust in the lungs. Wear the respirator.\n```\n\n"
	for _, test := range []struct {
		name, page string
		want       int
	}{
		{"powder without a caution", "1. Weigh 80 g of stain.\n", 1},
		{"powder with one", dust + "1. Weigh 80 g of stain.\n", 0},
		{"a caution behind it", "1. Weigh 80 g of stain.\n\n" + dust, 1},
		{"a caution about something else", "```caution Knife\nIt cuts. Hold it low.\n```\n\n1. Weigh 80 g of stain.\n", 1},
		{"onto water, which is what makes the dust", "1. Put the powder onto the water, a scoop at a time.\n", 1},
		{"forbidding something else behind it", "1. Weigh the stain, and do not lean over it.\n", 1},
		{"dry slip scraped", "1. Scrape the dried slip off the bench.\n", 1},
		{"slip put back", "1. Scrape what is left back into its own bucket.\n", 0},
		{"damping with a spray of water", "1. Damp it with a spray of water.\n", 0},
		{"the first of two is another's", "1. Never spray indoors.\n2. Spray the outside.\n", 1},
		{"in a step that forbids it", "1. Never sweep the bench.\n", 0},
		{"what another does", "1. The technician weighs the stain; weigh no stain.\n", 0},
		{"not in a step", "Some people weigh the stain.\n", 0},
		{"spraying, sweeping and a kiln", "1. Spray the inside.\n2. Sweep the floor.\n3. Open the kiln.\n", 3},
		{"latex and oxide", "1. Brush latex on.\n2. Stir the iron oxide.\n", 2},
		{"scraping", "1. Scrape it flush.\n", 1},
	} {
		if got := checked(t, "en-GB", test.page, (*rules).checkPerils); len(got) != test.want {
			t.Errorf("%s: %v, want %d", test.name, got, test.want)
		}
	}
	if got := checked(t, "de", "1. Spray it.\n", (*rules).checkPerils); len(got) != 0 {
		t.Errorf("in another language: %v", got)
	}
}

func TestTradeWords(t *testing.T) {
	got := checked(t, "en-GB", "Add frit and *Grog*. More grog.\n", (*rules).checkTrade)
	if len(got) != 1 || !strings.Contains(got[0], "“grog”") {
		t.Errorf("%v, want grog alone, once: the glossary has frit", got)
	}
	if got := checked(t, "de", "Grog.\n", (*rules).checkTrade); len(got) != 0 {
		t.Errorf("in another language: %v", got)
	}
}
