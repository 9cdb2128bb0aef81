package form

import (
	"math"
	"strings"
	"testing"
)

// lot is a calculator with nothing but outputs.
var lot = &Calculator{Name: "lot", Outputs: []Output{{Name: "new-volume", Unit: "mL", Digits: 4}, {Name: "water-to-add", Unit: "mL", Digits: 4}}}

// evaluation is an evaluation of nothing in some settings.
func evaluation(s Settings) *Evaluation {
	return &Evaluation{Calculator: lot, Settings: s.inWords(), Answer: &Answer{Calculator: lot.Name}}
}

func TestAmountsHaveWords(t *testing.T) {
	e := evaluation(withScales())
	for _, c := range []struct {
		value float64
		unit  string
		as    Measure
		want  string
	}{
		{0, "g", Weighed, "none"}, {0.04, "g", Weighed, "too little to weigh"}, {0.05, "g", Weighed, "0.1 g"},
		{0.3, "mL", Bucket, "too little to measure"}, {84.12, "mL", Bucket, "84 mL"}, {588.8, "mL", Bucket, "590 mL"}, {2995, "mL", Bucket, "3000 mL"},
		{30000, "mL", Bucket, "30 L"}, {5.93, "mL", Poured, "5.9 mL"}, {186.4, "g", Poured, "186 g"}, {3140, "mL", Reckoned, "3.14 L"},
		{12.5, "%", Reckoned, "12.5 %"}, {4.5454, "mm", Ruled, "4.5 mm"}, {999.96, "mm", Ruled, "1000 mm"}, {1136.4, "mm", Ruled, "1136 mm"}, {-0.5, "g", Weighed, "−0.5 g"},
	} {
		if got := plainly(e.Amount(c.value, c.unit, 4, 0, c.as)); got != c.want {
			t.Errorf("%v %s: %q, want %q", c.value, c.unit, got, c.want)
		}
	}
}

func TestDoubtRounds(t *testing.T) {
	e := evaluation(Plain())
	for _, c := range []struct {
		value, u float64
		want     string
	}{
		{812.5, 14.07, "810 ± 30 g/L"}, {81.25, 0.94, "81.3 ± 1.9 g/L"}, {812.5, 141, "800 ± 300 g/L"}, {1.5, 0.00866, "1.500 ± 0.018 g/L"},
	} {
		if got := plainly(e.doubtful(c.value, c.u, "g/L")); got != c.want {
			t.Errorf("%v, u %v: %q, want %q", c.value, c.u, got, c.want)
		}
	}
	for u, want := range map[float64]float64{0.0144: 0.01, 0.01: 0.01, 0.0099: 0.001, 14: 10, 9.99: 1, 1: 1, 2000: 1000} {
		if got := Place(u); math.Abs(got-want) > 1e-12*want {
			t.Errorf("the place of %v is %v, want %v", u, got, want)
		}
	}
}

func TestJudged(t *testing.T) {
	trails := withScales()
	trails.Working = append(trails.Working, Working{OfSlip, "to trail", 1.55, 1.62}, Working{OfWash, "on bisque", 18, 18})
	for _, c := range []struct {
		of    Subject
		value float64
		in    Settings
		want  string
	}{
		{OfSlip, 1.60, withScales(), "1.6: thick. To brush or pour, near 1.45."},
		{OfSlip, 1.46, withScales(), "1.46: right to brush or pour."},
		{OfSlip, 1.3, withScales(), "1.3: thin. To brush or pour, near 1.45."},
		{OfSlip, 1.6, trails, "1.6: right to trail. To brush or pour, near 1.45."},
		{OfSlip, 1.5, trails, "1.5: between what is usual. To brush or pour, near 1.45; to trail, 1.55 to 1.62."},
		{OfSlip, 1.7, trails, "1.7: thick. To brush or pour, near 1.45; to trail, 1.55 to 1.62."},
		{OfSlip, 1.44, withScales(), "1.44: right to brush or pour."},
		{OfSlip, 1.42, withScales(), "1.42: thin. To brush or pour, near 1.45."},
		{OfSlip, 1.48, withScales(), "1.48: thick. To brush or pour, near 1.45."},
		{OfSlip, 1.62, trails, "1.62: right to trail. To brush or pour, near 1.45."},
		{OfSlip, 1.3, Plain(), "1.3: right to brush, dip or pour (by what is usual in the trade). To trail, 1.45 to 1.60."},
		{OfWash, 16.5, trails, "16.5: right on bisque."},
		{OfWash, 20, trails, "20: strong. On bisque, near 18."},
		{OfWash, 19, trails, "19: right on bisque."},
		{OfWash, 4, trails, "4: weak. On bisque, near 18."},
		{OfStain, 8, trails, "8: right for color in a slip (by what is usual in the trade)."},
		{OfSlip, 1.46, Plain(), "1.46: right to brush, dip or pour and to trail (by what is usual in the trade)."},
		{OfSlip, 1.2, Plain(), "1.2: thin (by what is usual in the trade). To brush, dip or pour, 1.30 to 1.50; to trail, 1.45 to 1.60."},
	} {
		e := evaluation(c.in)
		e.Judge(c.of, c.value, e.Text(c.value, 3))
		if got := plainly(strings.Join(e.Answer.Judged, "|")); got != c.want {
			t.Errorf("%v of %s: %q, want %q", c.value, c.of, got, c.want)
		}
	}
}

// TestNoAnswerIsInfinite wants an answer that is no number to be refused, and
// nothing else to be said.
func TestNoAnswerIsInfinite(t *testing.T) {
	for _, value := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		e := evaluation(Plain())
		e.Set("new-volume", 100)
		e.Set("water-to-add", value)
		e.Headline("It makes {new-volume}.")
		e.Note("Stir it.")
		e.finish()
		want := "These numbers lead to no sensible answer. Check each of them for a slipped decimal mark."
		if a := e.Answer; len(a.Errors) != 1 || a.Errors[0].Text != want || a.Headline != "" || len(a.Outputs)+len(a.Notes) > 0 {
			t.Errorf("%v: %+v", value, a)
		}
	}
}

func plainly(text string) string {
	return strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(text)
}

// withScales is a studio with two scales and working numbers of its own.
func withScales() Settings {
	s := Plain()
	s.Scales = []Scale{{500, 0.1}, {5000, 5}}
	s.Working = []Working{{OfSlip, "to brush or pour", 1.45, 1.45}}
	return s
}
