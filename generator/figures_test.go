package main

import (
	"encoding/csv"
	"math"
	"net/url"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
)

// lastNumber finds the last number in a piece of a lesson.
var lastNumber = regexp.MustCompile(`[0-9]+(?:\.[0-9]+)?`)

// TestFiguresOfLessons works out the figures that stand in tables and sums of
// the demo course without a link to their calculator. Each row names the page,
// a piece of it that ends in the figure, and the request and output that give
// it; the figure must agree to the digits that it shows.
func TestFiguresOfLessons(t *testing.T) {
	file, err := os.Open("../testdata/lesson-figures.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 50 {
		t.Errorf("only %d figures", len(rows)-1)
	}
	for n, row := range rows[1:] {
		page, piece, calculator, request, output := row[0], row[1], row[2], row[3], row[4]
		text, err := os.ReadFile("../content/" + page)
		if err != nil || !strings.Contains(string(text), piece) {
			t.Errorf("row %d: %s does not say %q (%v)", n+2, page, piece, err)
			continue
		}
		numbers := lastNumber.FindAllString(piece, -1)
		if len(numbers) == 0 {
			t.Errorf("row %d: no figure in %q", n+2, piece)
			continue
		}
		shown := numbers[len(numbers)-1]
		want, err := strconv.ParseFloat(shown, 64)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := answered(t, calculator, request, output)
		_, digits, _ := strings.Cut(shown, ".")
		if !ok || math.Abs(got-want) > 0.5000001*math.Pow10(-len(digits)) {
			t.Errorf("row %d: %s says %q, %s gives %v for %s", n+2, page, piece, calculator, got, output)
		}
	}
}

// TestFactsOfSafety wants every fact of health that is listed with its source to
// stand in its lesson in the very words listed, and in a lesson that has
// footnotes.
func TestFactsOfSafety(t *testing.T) {
	file, err := os.Open("../testdata/published/safety-facts.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	page, words, source := slices.Index(rows[0], "page"), slices.Index(rows[0], "text"), slices.Index(rows[0], "source")
	if len(rows) < 70 || page < 0 || words < 0 || source < 0 {
		t.Fatalf("%d rows with the columns %q", len(rows), rows[0])
	}
	for n, row := range rows[1:] {
		text, err := os.ReadFile("../content/" + row[page])
		if err != nil || row[words] == "" || !strings.Contains(string(text), row[words]) {
			t.Errorf("row %d (%s): %s does not say %q (%v)", n+2, row[0], row[page], row[words], err)
		}
		if !strings.Contains(row[source], "read") && !strings.Contains(row[source], "practice") {
			t.Errorf("row %d (%s): nobody has read its source %q", n+2, row[0], row[source])
		}
	}
}

// printed is the amount of water that an answer prints, in mL: a lesson says no
// other.
func printed(t *testing.T, text string) float64 {
	t.Helper()
	number, unit, _ := strings.Cut(text, "\u00a0")
	amount, err := strconv.ParseFloat(number, 64)
	if err != nil {
		t.Errorf("%q is no amount", text)
	}
	if unit == "L" {
		amount *= 1000
	}
	return amount
}

// answered returns an output of a calculator, the amount behind some words of its
// notes, named note:WORDS, or a place in its rows named
// row.N.COLUMN, without its sign; false when there is none.
func answered(t *testing.T, calculator, request, output string) (float64, bool) {
	t.Helper()
	var given []form.Setting
	for _, pair := range strings.Split(request, "&") {
		name, text, _ := strings.Cut(pair, "=")
		if plain, err := url.QueryUnescape(text); err == nil {
			text = plain
		}
		given = append(given, form.Setting{Name: name, Text: text})
	}
	answer := catalog.Solve(calculator, given, form.Plain())
	for _, e := range answer.Errors {
		t.Errorf("%s %s: %s: %s", calculator, request, e.Input, e.Text)
	}
	for _, o := range answer.Outputs {
		if o.Name != output || o.IsText {
			continue
		}
		if as := catalog.In("en-GB").Find(calculator).Output(output).As; as == form.Bucket || as == form.Poured {
			return printed(t, o.Text), true
		}
		return math.Abs(o.Value), true
	}
	for _, note := range answer.Notes {
		words, isNote := strings.CutPrefix(output, "note:")
		if _, after, found := strings.Cut(note, words+" "); isNote && found {
			amount, _, _ := strings.Cut(after, " ")
			return printed(t, amount), true
		}
	}
	for n, row := range answer.Rows {
		for _, cell := range row {
			if "row."+strconv.Itoa(n+1)+"."+cell.Column == output {
				return math.Abs(cell.Value), true
			}
		}
	}
	return 0, false
}
