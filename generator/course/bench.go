package course

import (
	"cmp"
	"fmt"
	"slices"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// What of course.yaml the calculators answer with: the studio's clays, its
// scales and the numbers it works with.

// Answers returns what the calculators must know of the course. It works on a
// course that was only partly loaded.
func (c *Course) Answers() form.Settings {
	s := form.Settings{Words: catalog.WordsIn(c.Language), Style: quantity.Style{Decimal: c.Decimal, Measures: c.Measures}}
	for _, scale := range c.Scales {
		s.Scales = append(s.Scales, form.Scale(scale))
	}
	for _, b := range c.Bodies {
		s.Bodies = append(s.Bodies, form.Body(b))
	}
	for _, w := range c.Working {
		s.Working = append(s.Working, form.Working{Of: form.Subject(w.Of), For: w.For, Low: w.Low, High: w.High})
	}
	s.Hazards = c.hazardsInWords(func(h Hazard) string { return h.Harm + " " + h.Do })
	return s
}

// PageAnswers is Answers for a page, which says of each hazard what to do in a
// few words: the whole of it is a link away, and the answer stays in the window
// of a phone.
func (c *Course) PageAnswers() form.Settings {
	s := c.Answers()
	s.Hazards = c.hazardsInWords(func(h Hazard) string { return h.Title + ": " + h.Short })
	return s
}

// hazardsInWords returns the hazards that calculators name, in some words.
func (c *Course) hazardsInWords(words func(Hazard) string) []form.Hazard {
	if c.Decoration == nil {
		return nil
	}
	var hazards []form.Hazard
	for _, id := range catalog.HazardIDs() {
		for _, h := range c.Decoration.Hazards {
			if h.ID == id {
				hazards = append(hazards, form.Hazard{ID: id, Words: words(h)})
			}
		}
	}
	return hazards
}

// readScales reads the studio's scales and puts the one that takes least first.
func readScales(v source.Value) []Scale {
	var scales []Scale
	for _, item := range v.List() {
		f := item.Fields("to", "step")
		s := Scale{To: grams(f.Need("to", "to: 500 g")), Step: grams(f.Need("step", "step: 0.1 g"))}
		switch {
		case s.To == 0 || s.Step == 0:
		case s.Step > s.To/10:
			f.Get("step").Report(finding.ValueForm, fmt.Sprintf("a step of %g g is too coarse for a scale that takes %g g", s.Step, s.To), "Write the most that the scale takes as `to`, and the smallest step that it shows as `step`.")
		default:
			scales = append(scales, s)
		}
	}
	slices.SortStableFunc(scales, func(a, b Scale) int { return cmp.Compare(a.To, b.To) })
	return scales
}

// grams reads a weight; one that is none, or not above 0, is reported.
func grams(v source.Value) float64 {
	text := v.Text()
	if text == "" {
		return 0
	}
	q, err := quantity.Read(text, quantity.Mass, "", quantity.Style{Decimal: '.'})
	switch {
	case err != nil:
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not a weight", text), err.Error())
	case q.Value <= 0 || q.Value > 1e6:
		v.Report(finding.ValueForm, fmt.Sprintf("%s is `%s`, which no studio's scale has", v.Called(), text), "Write a weight above 0, such as 500 g or 0.1 g.")
	default:
		return q.Value
	}
	return 0
}

// mostFor is how long the words of a purpose may be: they stand in a sentence
// with the number.
const mostFor = 60

// readWorking reads the numbers that the studio works with, in its order.
func readWorking(v source.Value) []Working {
	var numbers []Working
	for _, item := range v.List() {
		f := item.Fields("of", "for", "near", "from", "to")
		purpose := f.Need("for", "for: to brush or pour")
		w := Working{Of: f.Need("of", "of: slip").Choice("slip", "wash", "stain", "coat", "flow", "absorption"), For: purpose.Text()}
		if len(w.For) > mostFor {
			purpose.Report(finding.ValueForm, fmt.Sprintf("`for` has %d letters", len(w.For)), "Write a few words that go on after the number, such as: to brush or pour.")
		}
		if w.readNumbers(item, f) && w.Of != "" && w.For != "" {
			numbers = append(numbers, w)
		}
	}
	return numbers
}

// readNumbers reads either a number alone or both ends of a range.
func (w *Working) readNumbers(item source.Value, f source.Fields) bool {
	low, high := 0.1, 500.0
	if w.Of == "slip" {
		low, high = 1.01, 2.5
	}
	number := func(key string) float64 { return f.Get(key).Number(low, high, "the number") }
	near, from, to := number("near"), number("from"), number("to")
	switch {
	case f.Get("near").Absent() && (f.Get("from").Absent() || f.Get("to").Absent()):
		item.Report(finding.MissingKey, "this working number has no number", "Write near: 1.45, or both from: 1.50 and to: 1.60.")
	case !f.Get("near").Absent() && !(f.Get("from").Absent() && f.Get("to").Absent()):
		item.Report(finding.ValueForm, "this working number has `near` and a range", "Write near: 1.45, or both from: 1.50 and to: 1.60.")
	case near > 0:
		w.Low, w.High = near, near
		return true
	case from > to:
		f.Get("to").Report(finding.ValueForm, fmt.Sprintf("`to` is less than `from` (%g)", from), "Write the smaller number as `from`.")
	case from > 0:
		w.Low, w.High = from, to
		return true
	}
	return false
}
