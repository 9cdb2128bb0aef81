package catalog

import (
	"net/url"
	"strings"
	"testing"

	"slipbook/calculators/form"
	"slipbook/calculators/slip"
)

// solveText solves an encoded request in some settings.
func solveText(t *testing.T, request string, s Settings) *Answer {
	t.Helper()
	name, given, err := form.ReadRequest(request)
	if err != nil {
		t.Fatal(err)
	}
	return Solve(name, given, s)
}

// TestAsPeopleAsk holds the first words of answers to questions as people ask
// them at the bench, and what must or must not stand beside them.
func TestAsPeopleAsk(t *testing.T) {
	for _, test := range []struct{ name, request, headline, holds, lacks string }{
		{"twelve cups and no wash yet", "calculator=wash-dilute&from=20&to=5&steps=3&cups=4&each=30",
			"Make 210 mL of strong wash: it fills 12 cups of 30 mL, 4 of each of 3 strengths.", "stock-to-make=210; water-parts=9.37", "new-volume"},
		{"too little wash", "calculator=wash-dilute&volume=100&from=20&to=5&steps=3&cups=4&each=30",
			"These 12 cups need 210 mL of strong wash; you have 100 mL.", "stock-to-make=110; Make 110 mL more, or fill each cup with 14.3 mL only.", "water-to-add"},
		{"just enough wash", "calculator=wash-dilute&volume=210&from=20&to=5&steps=3&cups=4&each=30",
			"12 cups of 30 mL, 4 of each of 3 strengths, from strength 20 g/100 mL down to 5 g/100 mL.", "stock-needed=210", "stock-to-make"},
		{"as large as the wash allows", "calculator=wash-dilute&volume=90&from=16&to=2&steps=4",
			"4 cups of 48 mL, from strength 16 g/100 mL down to 2 g/100 mL.", "stock-needed=90", "of each of"},
		{"cups of one strength", "calculator=wash-dilute&from=20&to=5&cups=12&each=30",
			"Make 90 mL of strong wash and add 270 mL of water: that fills 12 cups of 30 mL.", "new-volume=360", ""},
		{"one cup of one strength", "calculator=wash-dilute&from=20&to=5&each=30",
			"Make 7.5 mL of strong wash and add 23 mL of water: that fills 1 cup of 30 mL.", "", ""},
		{"the whole lot, weighed", "calculator=wash-dilute&volume=40&from=25&to=10",
			"Add 60 mL of water, or weigh in 60 g; it then makes 100 mL.", "Water may be weighed; 10 g/100 mL: right for a wash of stain and flux", "stock-needed"},
		{"the whole lot fills them", "calculator=wash-dilute&volume=100&from=20&to=5&cups=12&each=30",
			"Add 300 mL of water, or weigh in 300 g; it then makes 400 mL.", "That fills 12 cups of 30 mL.", "stock-needed"},
		{"the whole lot does not fill them", "calculator=wash-dilute&volume=80&from=20&to=5&cups=12&each=30",
			"12 cups of 30 mL need 90 mL of strong wash; you have 80 mL.", "stock-needed=90", "That fills"},
		{"parted among cups", "calculator=wash-dilute&volume=100&from=20&to=5&cups=8",
			"Add 300 mL of water, or weigh in 300 g; it then makes 400 mL.", "Parted among 8 cups, that is 50 mL in each.", ""},
		{"a drop of wash", "calculator=wash-dilute&volume=0.001&from=20&to=5", "The water is too little to measure: thin a larger lot.", "", ""},
		{"a tub of wash", "calculator=wash-dilute&volume=5 L&from=20&to=5", "Add 15 L of water; it then makes 20 L.", "", ""},
		{"nothing to thin", "calculator=wash-dilute&volume=100&from=20&to=20",
			"Nothing to do: it has this strength already.", "water-to-add=0", ""},
		{"cups all alike", "calculator=wash-dilute&volume=100&from=20&to=20&steps=2", "2 cups of 50 mL, from strength 20 g/100 mL down to 20 g/100 mL.", "All cups are alike", "usual in the trade"},
		{"too pale to draw up", "calculator=wash-dilute&volume=100&from=20&to=0.2&steps=3&each=30", "3 cups of 30 mL, from strength 20 g/100 mL down to 0.2 g/100 mL.", "The palest cup takes 0.3 mL of strong wash, too little to measure well.", ""},

		{"a bucket a hair too thick", "calculator=slip-adjust&volume=2 L&from=1.46&to=1.45", "Right as it is: 1.46 is within 0.01 of 1.45, and no bucket is measured closer.", "water-to-add=0; new-volume=2000", "first-pour"},
		{"a bucket a hair too thin", "calculator=slip-adjust&volume=2 L&from=1.44&to=1.45&stain=8", "Right as it is: 1.44 is within 0.01 of 1.45, and no bucket is measured closer.", "water-to-add=0; new-volume=2000", "powder-to-add"},
		{"a bucket that is there", "calculator=slip-adjust&volume=2 L&from=1.45&to=1.45", "Right as it is: the bucket is already at 1.45.", "water-to-add=0", "first-pour"},
		{"a bucket not quite there", "calculator=slip-adjust&volume=2 L&from=1.4601&to=1.45", "Add 45 mL of water, 36 mL of it first.", "first-pour=", "Right as it is"},

		{"a stencil", "calculator=shrinkage-size&shrinkage=12&fired-size=90&state=leather-hard",
			"Make it 99.2 mm now, on leather-hard clay, give or take 1 mm.", "The state counts as 3 % shrunk so far, a quarter", "A stencil is cut"},
		{"nobody said what the pot is", "calculator=shrinkage-size&shrinkage=12&fired-size=90",
			"Make it 102.3 mm now, on fresh clay.", "A stencil is cut for leather-hard clay. There it would be about 99.2 mm: say what the pot is now.", "counts as"},
		{"a clay that shrinks 8", "calculator=shrinkage-size&shrinkage=8&wet-size=100&state=bone-dry",
			"Fired, it will be 95.8 mm, give or take 0.7 mm.", "The state counts as 4 % shrunk so far, half", ""},
		{"measured today", "calculator=shrinkage-size&shrinkage=12&so-far=4&fired-size=90&state=leather-hard",
			"Make it 98.2 mm now, on clay that has shrunk 4 % so far, give or take 0.5 mm.", "", "counts as"},
		{"on bisque", "calculator=shrinkage-size&shrinkage=12&state=bisque&capacity-fired=350", "It must hold 413.1 mL now, on bisque.", "seven twelfths", ""},
		{"a part for a percentage", "calculator=shrinkage-size&shrinkage=0.12&fired-size=90", "Make it 90.1 mm now, on fresh clay.", "0.12 % is less than 1 %. Did you mean 12 %?", "smaller than"},
		{"a unit left out", "calculator=shrinkage-size&shrinkage=12&fired-size=9.5", "Make it 10.8 mm now, on fresh clay.", "9.5 mm is smaller than any pot. A number alone counts in mm: write cm or in after it if you mean those.", ""},
		{"a button", "calculator=shrinkage-size&shrinkage=12&wet-size=10", "Fired, it will be 8.8 mm.", "", "smaller than"},

		{"slip of the body", "calculator=slip-fit&body=12&slip=12&state=leather-hard",
			"This slip would end 3.1 % too short, give or take 1.6 %: our guess is that it usually fits, in a thin coat.", "No sum can tell these apart: fire a tile.", "silica"},
		{"measured on the same bars", "calculator=slip-fit&body=12&slip=12&state=leather-hard&body-so-far=5",
			"This slip would end 5.3 % too short, give or take 1.4 %: our guess is that it is risky.", "our own guess", "counts as"},
		{"no mismatch to speak of", "calculator=slip-fit&body=12.0000001&slip=12&state=wet",
			"This slip would end as long as the pot, give or take 1.2 %: our guess is that it usually fits, in a thin coat.", "", "counts as"},
		{"a clay that shrinks little", "calculator=slip-fit&body=6&slip=6&state=bone-dry",
			"This slip would end 3.1 % too short, give or take 1.3 %: our guess is that it usually fits, in a thin coat.", "The state counts as 3 % shrunk so far, half", ""},
		{"parts for percentages", "calculator=slip-fit&body=0.12&slip=0.12&state=wet&bars-ci=0", "This slip would end as long as the pot, give or take 0 %: our guess is that it usually fits, in a thin coat.", "0.12 % is less than 1 %. Did you mean 12 %?", "reaches"},
		{"slip on bisque", "calculator=slip-fit&body=12&slip=12&state=bisque&body-so-far=7", "This slip would end 7.5 % too short, give or take 1.4 %: our guess is that it peels.", "does not bond to fired clay; silica", ""},

		{"bars that agree", "calculator=shrinkage-test&plastic=100 100 100&dry=94 94 94&fired=88 88 88",
			"It shrinks 12.00 ± 0.08 % in all.", "their step of 0.1 mm alone leaves 0.077 % either way; The totals lie 0 % apart: they agree.", "stands apart"},
		{"one bar", "calculator=shrinkage-test&plastic=100&dry=94&fired=88", "It shrinks 12 % in all, by one bar.", "Make three.", "total-ci"},
		{"not fired yet", "calculator=shrinkage-test&plastic=100 100&dry=100 100&fired=100 100", "These bars have not shrunk at all. Are the fired lengths those of the fired bars?", "", ""},
		{"a bar apart", "calculator=shrinkage-test&plastic=100 100 100&dry=94 94 94&fired=88 88 86", "It shrinks 13 ± 3 % in all.", "Bar 3 stands apart: it shrinks 8.51 % in the firing, the others about 6.38 %.; The totals lie 2 % apart: more than good bars do.", "callipers"},
		{"measured at leather-hard too", "calculator=shrinkage-test&plastic=100 100&leather-hard=97 96&dry=94 94&fired=88 88", "It shrinks 12.00 ± 0.08 % in all.", "so-far=3.5", ""},

		{"stain for a damp lump", "calculator=clay-colour&clay=500&clay-water=20&stain=8", "Wedge in 32 g of stain.", "Reckoned on the damp clay it would have been 40 g of stain, 1.25 times as much.", ""},
		{"stain for dry clay", "calculator=clay-colour&clay=500&clay-water=0&stain=8", "Wedge in 40 g of stain.", "", "Reckoned on"},
		{"no stain", "calculator=clay-colour&clay=500&clay-water=20&stain=0", "Nothing to wedge in: you asked for 0 % of stain.", "", "Reckoned on"},
		{"hardly any stain", "calculator=clay-colour&clay=5&clay-water=20&stain=1", "The stain is too little to weigh: colour a larger lump.", "The stain would be 0.04 g, less than the scale can show.", ""},
		{"too much stain", "calculator=clay-colour&clay=500&clay-water=20&stain=80", "Wedge in 320 g of stain.", "80 %: strong (by what is usual in the trade). For colour in a slip, 1 to 15.", ""},

		{"three mixes by two slips", "calculator=tile-plan&kind=doubling&points=3&low=2&base=250", "Cut 3 tiles: 3 mixes.", "by-volume=3 + 1; by-volume=1 + 1; by-volume=0 + 1; a slip without the addition and the strongest", ""},
		{"five mixes by two slips", "calculator=tile-plan&points=5&low=4&high=8&base=125", "Cut 5 tiles: 5 mixes.", "by-volume=1 + 0; by-volume=3 + 1; by-volume=1 + 1; by-volume=1 + 3; by-volume=0 + 1; the first and the last mix", ""},
		{"what to scratch", "calculator=tile-plan&points=2&low=1&high=8&base=500&cones=06 6&finishes=bare, clear&coats=3", "Cut 24 tiles: 2 mixes × 3 coats × 2 cones × 2 finishes.",
			"Behind the code scratch a letter for the cone: A for 06, C for 6.; a letter for the finish: A for bare, C for clear.; from one stroke to 3", ""},
		{"a scale too coarse", "calculator=tile-plan&points=3&low=1&high=8&base=12", "Cut 3 tiles: 3 mixes.", "On this scale some amounts are off by up to 17 %.", ""},
		{"a scale fine enough", "calculator=tile-plan&points=3&low=1&high=8&base=500", "Cut 3 tiles: 3 mixes.", "", "On this scale"},
		{"too strong to blend", "calculator=tile-plan&points=3&low=0&high=10&base=100", "Cut 3 tiles: 3 mixes.", "", "by-volume"},
		{"too many parts to blend", "calculator=tile-plan&kind=doubling&points=6&low=0.25&base=500", "Cut 6 tiles: 6 mixes.", "", "by-volume"},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := solveText(t, test.request, british())
			if len(a.Errors) > 0 {
				t.Fatal(a.Errors)
			}
			said := strings.NewReplacer("\u00a0", " ", "\u202f", " ")
			if got := said.Replace(a.Headline); got != test.headline {
				t.Errorf("headline\n got %s\nwant %s", got, test.headline)
			}
			all := said.Replace(everything(a))
			for holds := range strings.SplitSeq(test.holds, "; ") {
				if !strings.Contains(all, holds) {
					t.Errorf("nothing of %q in %s", holds, all)
				}
			}
			if test.lacks != "" && strings.Contains(all, test.lacks) {
				t.Errorf("%q has no place in %s", test.lacks, all)
			}
		})
	}
}

// everything joins what an answer says beside its headline.
func everything(a *Answer) string {
	text := ""
	for _, r := range a.Outputs {
		text += r.Name + "=" + number(r.Value) + " "
	}
	for _, row := range a.Rows {
		for _, cell := range row {
			text += "\n" + cell.Column + "=" + cell.Text
		}
	}
	return text + "\n" + strings.Join(a.Cautions, "\n") + "\n" + strings.Join(a.Judged, "\n") + "\n" + strings.Join(a.Notes, "\n")
}

// TestBlendsAreNear holds what is said of blends: made of two slips of one
// specific gravity they hold a tenth less of the stain than the list says, at
// the most, whatever the stain weighs.
func TestBlendsAreNear(t *testing.T) {
	for _, heavy := range []float64{3, 4.5, 6} {
		plain := slip.Dry(1450, 1000, 2.6, 1)
		solids := slip.Mixed(2.6, mostBlended, heavy)
		base := slip.Dry(1450, 1000, solids, 1) / (1 + mostBlended/100.0)
		for parts := 1.0; parts < mostParts; parts++ {
			got := mostBlended * base / (base + parts*plain)
			want := mostBlended / (1 + parts)
			if off := 1 - got/want; off < 0 || off > 0.1 {
				t.Errorf("stain of %v, %v + 1: %v %% instead of %v %%", heavy, parts, got, want)
			}
		}
	}
}

// TestClays holds what a choice among the studio's clays fills in, and what is
// known where it is refused.
func TestClays(t *testing.T) {
	s := british()
	s.Bodies = []Body{{ID: "yard-stoneware", Name: "Yard stoneware", Shrinkage: 12.5, Cone: "6"}, {ID: "attic-porcelain", Name: "Attic porcelain", Shrinkage: 14, Cone: ""}}
	back, err := Configure([]byte(s.Encode()))
	if err != nil || back.Encode() != s.Encode() || len(back.Bodies) != 2 || back.Bodies[0] != s.Bodies[0] {
		t.Fatalf("%+v came back as %+v, %v", s.Bodies, back.Bodies, err)
	}
	a := solveText(t, "calculator=shrinkage-size&body=Yard Stoneware&wet-size=100", back)
	if got := valueOf(a, "fired-size"); got != 87.5 {
		t.Errorf("fired %v, want 87.5: %v", got, a.Errors)
	}
	if text := everything(a); !strings.Contains(text, "for Yard stoneware is what this handbook has, at cone 6.") {
		t.Error(text)
	}
	if len(a.Read) != 1 || a.Read[0] != (Phrase{Input: "body", Text: "shrinks 12.5\u00a0%"}) {
		t.Errorf("beside the choice: %v", a.Read)
	}
	if g := a.Inputs[0]; g.Name != "shrinkage" || g.Values[0] != 12.5 {
		t.Errorf("understood as %+v", a.Inputs)
	}
	if a := solveText(t, "calculator=slip-fit&clay=attic-porcelain&slip=14&state=wet", back); valueOf(a, "mismatch") != 0 {
		t.Errorf("%v %v", a.Errors, a.Outputs)
	}
	a = solveText(t, "calculator=slip-fit&clay=mud&slip=14&state=wet", back)
	if want := "“mud” is none of the choices. They are: yard-stoneware and attic-porcelain."; len(a.Errors) != 1 || a.Errors[0].Text != want {
		t.Errorf("%v, want %s", a.Errors, want)
	}
	for _, bad := range []string{"body=x", "body=" + url.QueryEscape("id=x&shrinkage=60"), "body=" + url.QueryEscape("id=x&shrinkage=a"), "body=" + url.QueryEscape("name=x&shrinkage=6")} {
		if _, err := Configure([]byte(bad)); err == nil {
			t.Errorf("%s was taken", bad)
		}
	}
}
