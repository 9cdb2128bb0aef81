package form

import (
	"errors"

	"slipbook/calculators/decimal"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/stage"
	"slipbook/calculators/words"
)

// Settings are the course's own constants, given to every answer.
type Settings struct {
	Words   *words.Table // what answers say, in their language; nil = the default language's
	Style   quantity.Style
	Scales  []Scale      // of the studio, the finest first; empty = the usual ones
	Bodies  []Body       // the studio's clays
	Working []Working    // the studio's working numbers; of what it has none, the trade's usual ones judge
	Hazards []Hazard     // in the course's words; of what it has none, the program's own stand
	Table   *stage.Table // the course's decoration table; nil where only sums are asked for
}

// Scale is one scale of the studio.
type Scale struct{ To, Step float64 } // it takes so much (g) and shows steps of so much (g)

// Working is a number that the studio works with.
type Working struct {
	Of        Subject
	For       string  // the purpose in words: "to brush or pour"
	Low, High float64 // the same for a single number; in the subject's unit
}

// Subject is what a working number is of.
type Subject string

// The subjects.
const (
	OfSlip  Subject = "slip"  // specific gravity
	OfWash  Subject = "wash"  // strength, g dry per 100 mL
	OfStain Subject = "stain" // percent over dry base

	OfCoat       Subject = "coat"       // wet thickness of one coat, mm
	OfFlow       Subject = "flow"       // so many times as long as water through the same cup
	OfAbsorption Subject = "absorption" // of fired clay, percent of its dry weight
)

// Sums returns the settings that a calculator which does not plan can need: its
// page carries no more. Words and table travel beside it.
func (s Settings) Sums(c *Calculator) Settings {
	s.Table, s.Words = nil, nil
	bodies := s.Bodies
	s.Bodies = nil
	for i := range c.Inputs {
		if c.Inputs[i].Bodies {
			s.Bodies = bodies
		}
	}
	named := s.Hazards
	s.Hazards = nil
	for _, h := range named {
		if letters.In(c.Hazards, h.ID) || letters.In(c.MayHurt, h.ID) {
			s.Hazards = append(s.Hazards, h)
		}
	}
	return s
}

// Plain returns the settings of the command line: the point is the decimal mark,
// a bare pint is asked about.
func Plain() Settings {
	return Settings{Style: quantity.Style{Decimal: '.', Measures: "metric"}}
}

// Configure reads the settings from their encoded form, for example
// "decimal=%2C&measures=us&scale=500+0.1". What is left out stays as Plain has
// it.
func Configure(encoded []byte) (Settings, error) {
	fields, err := decode(string(encoded), mostSettings)
	if err != nil {
		return Settings{}, err
	}
	s := Plain()
	for _, f := range fields {
		if err := s.take(f); err != nil {
			return Settings{}, err
		}
	}
	return s, nil
}

// take puts one setting in.
func (s *Settings) take(f Setting) (err error) {
	switch f.Name {
	case "decimal":
		if f.Text == "." || f.Text == "," {
			s.Style.Decimal = f.Text[0]
			return nil
		}
	case "measures":
		if letters.In([]string{"metric", "us", "imperial"}, f.Text) {
			s.Style.Measures = f.Text
			return nil
		}
	case "scale":
		if n, rest, ok := leading(f.Text, 2); ok && rest == "" && n[0] > 0 && n[1] > 0 {
			s.Scales = append(s.Scales, Scale{n[0], n[1]})
			return nil
		}
	case "body":
		body, err := decodeBody(f.Text)
		s.Bodies = append(s.Bodies, body)
		return err
	case "working":
		of, rest, _ := letters.Cut(f.Text, " ")
		if n, words, ok := leading(rest, 2); ok && words != "" && n[0] <= n[1] {
			s.Working = append(s.Working, Working{Subject(of), words, n[0], n[1]})
			return nil
		}
	case "hazard":
		if id, words, ok := letters.Cut(f.Text, " "); ok && id != "" && words != "" {
			s.Hazards = append(s.Hazards, Hazard{id, words})
			return nil
		}
	case "words":
		s.Words, err = words.Decode(f.Text)
		return err
	case "table":
		s.Table, err = stage.Decode(f.Text)
		return err
	}
	return errors.New(Clip(f.Name) + "=" + Clip(f.Text))
}

// leading reads so many numbers, separated by single spaces, from the beginning
// of a text.
func leading(text string, count int) (numbers []float64, rest string, ok bool) {
	for range count {
		word, after, _ := letters.Cut(text, " ")
		n, parsed := decimal.Parse(word)
		if !parsed {
			return nil, "", false
		}
		numbers, text = append(numbers, n), after
	}
	return numbers, text, true
}

// usualScales stand in where the course names none: a small scale, a kitchen
// scale and a floor scale, common practice.
var usualScales = []Scale{{500, 0.1}, {5000, 1}, {1e9, 5}}

// Step returns the step (g) of the finest scale that takes a mass (g); of the one
// that takes most where none does, since the mass is then weighed in loads.
func (s Settings) Step(mass float64) float64 {
	scales := s.Scales
	if len(scales) == 0 {
		scales = usualScales
	}
	best := scales[0]
	for _, scale := range scales[1:] {
		switch takes := scale.To >= mass; {
		case takes && (best.To < mass || scale.Step < best.Step),
			!takes && best.To < scale.To:
			best = scale
		}
	}
	return best.Step
}

// inWords are settings that have words: the default language's where they name
// none.
func (s Settings) inWords() Settings {
	if s.Words == nil {
		s.Words = usualWords()
	}
	s.Style.Words = s.Words
	if s.Table != nil && s.Table.Words != s.Words {
		t := *s.Table // which others may answer from in other words
		t.Words = s.Words
		s.Table = &t
	}
	return s
}

// said words an error of reading.
func (s Settings) said(err error) string {
	if worded, ok := err.(words.Error); ok {
		return s.Words.Fill(worded.ID, worded.Fills...)
	}
	return err.Error()
}
