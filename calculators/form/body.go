package form

import (
	"errors"

	"slipbook/calculators/decimal"
)

// Body is one of the studio's clays, as course.yaml names them.
type Body struct {
	ID        string
	Name      string
	Shrinkage float64 // in all, % of the fresh length
	Cone      string  // the cone its shrinkage is for; may be empty
}

// ChoicesFor lists what an input may be: its declared choices, or the studio's
// clays. It is empty for an input that is a quantity, and for clays where the
// course names none.
func (s Settings) ChoicesFor(in *Input) []Choice {
	if !in.Bodies {
		return in.Choices
	}
	choices := make([]Choice, len(s.Bodies))
	for i, body := range s.Bodies {
		choices[i] = Choice{body.ID, body.Name}
	}
	return choices
}

// decodeBody reads what encode wrote.
func decodeBody(text string) (Body, error) {
	fields, err := decode(text, mostBytes)
	if err != nil {
		return Body{}, err
	}
	var body Body
	ok := true
	for _, f := range fields {
		switch f.Name {
		case "id":
			body.ID = f.Text
		case "name":
			body.Name = f.Text
		case "cone":
			body.Cone = f.Text
		case "shrinkage":
			body.Shrinkage, ok = decimal.Parse(f.Text)
		}
	}
	if !ok || body.ID == "" || !(body.Shrinkage >= 0 && body.Shrinkage <= 50) {
		return Body{}, errors.New("body=" + Clip(text))
	}
	return body, nil
}
