package terminal

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"

	"slipbook/calculators/form"
)

// The types below are the shapes of "calc --json", which other programs rely
// on: lists are never null, and the keys stand in this order.
type (
	answerShape struct {
		Calculator string        `json:"calculator"`
		Language   string        `json:"language"`
		Inputs     []inputShape  `json:"inputs"`
		Outputs    []outputShape `json:"outputs"`
		Rows       []rowShape    `json:"rows"`
		Mixed      []mixedShape  `json:"mixed,omitempty"`
		Notes      []string      `json:"notes"`
		Cautions   []string      `json:"cautions"`
		Judged     []string      `json:"judged"`
		Next       []nextShape   `json:"next"`
	}
	mixedShape struct {
		Of      string        `json:"of"`
		Says    string        `json:"says"`
		Recipes []recipeShape `json:"recipes"`
	}
	recipeShape struct {
		Name  string `json:"name"`
		Page  string `json:"page"` // from the home page, as is the tile's
		Proof string `json:"proof"`
		Tile  string `json:"tile"`
	}
	nextShape struct {
		Words   string `json:"words"`
		Request string `json:"request"`
	}
	inputShape struct {
		Name  string `json:"name"`
		Value any    `json:"value"` // a number, words, or a list of either
		Unit  string `json:"unit,omitempty"`
	}
	outputShape struct {
		Name  string `json:"name"`
		Value any    `json:"value"`          // a number, or words
		Unit  string `json:"unit,omitempty"` // words have none
		Text  string `json:"text"`
	}
	errorsShape struct {
		Errors []errorShape `json:"errors"`
	}
	errorShape struct {
		Input   string `json:"input"`
		Message string `json:"message"`
	}
	listShape struct {
		Calculators []calculatorShape `json:"calculators"`
	}
	calculatorShape struct {
		Name    string `json:"name"`
		Title   string `json:"title"`
		Purpose string `json:"purpose"`
	}
)

// rowShape is one row of an answer, its columns in the declared order.
type rowShape []form.Cell

// MarshalJSON writes the row as an object.
func (r rowShape) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, cell := range r {
		if i > 0 {
			b.WriteByte(',')
		}
		var value any = cell.Value
		if cell.IsText {
			value = cell.Text
		}
		key, err := json.Marshal(cell.Column)
		if err != nil {
			return nil, err
		}
		data, err := json.Marshal(value)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(data)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// JSONAnswer writes an answer.
func JSONAnswer(w io.Writer, a *form.Answer) error { return writeJSON(w, shapeOf(a)) }

// shapeOf returns the shape of an answer.
func shapeOf(a *form.Answer) answerShape {
	shape := answerShape{
		Calculator: a.Calculator, Language: a.Language,
		Inputs: []inputShape{}, Outputs: []outputShape{}, Rows: []rowShape{}, Mixed: []mixedShape{},
		Notes: loose(a.Notes), Cautions: loose(a.Cautions), Judged: loose(a.Judged), Next: []nextShape{},
	}
	for _, m := range a.Mixed {
		mixed := mixedShape{Of: m.Of, Says: m.Says, Recipes: []recipeShape{}}
		for _, r := range m.By {
			mixed.Recipes = append(mixed.Recipes, recipeShape(r))
		}
		shape.Mixed = append(shape.Mixed, mixed)
	}
	for _, next := range a.Next {
		shape.Next = append(shape.Next, nextShape(next))
	}
	for _, in := range a.Inputs {
		shape.Inputs = append(shape.Inputs, inputShape{in.Name, jsonValue(in), in.Unit})
	}
	for _, out := range a.Outputs {
		if out.IsText {
			shape.Outputs = append(shape.Outputs, outputShape{Name: out.Name, Value: out.Text, Text: out.Text})
			continue
		}
		shape.Outputs = append(shape.Outputs, outputShape{out.Name, out.Value, out.Unit, unbound(out.Text)})
	}
	for _, row := range a.Rows {
		shape.Rows = append(shape.Rows, row)
	}
	return shape
}

// loose returns sentences unbound, and a list where there are none.
func loose(sentences []string) []string {
	list := make([]string, len(sentences))
	for i, s := range sentences {
		list[i] = unbound(s)
	}
	return list
}

// jsonValue returns what an input was understood as.
func jsonValue(in form.Given) any {
	switch {
	case in.List && len(in.Values) == 0:
		return listed(in.Text)
	case in.List:
		return in.Values
	case len(in.Values) == 1:
		return in.Values[0]
	}
	return in.Text
}

// listed splits the text of a list of words.
func listed(text string) []string {
	list := []string{}
	for piece := range strings.SplitSeq(strings.ReplaceAll(text, ";", ","), ",") {
		if piece = strings.TrimSpace(piece); piece != "" {
			list = append(list, piece)
		}
	}
	return list
}

// JSONErrors writes why input was refused.
func JSONErrors(w io.Writer, errors []form.Phrase) error {
	var shape errorsShape
	for _, e := range errors {
		shape.Errors = append(shape.Errors, errorShape{e.Input, e.Text})
	}
	return writeJSON(w, shape)
}

// JSONList writes the list of calculators.
func JSONList(w io.Writer, calculators form.List) error {
	var shape listShape
	for _, c := range calculators {
		shape.Calculators = append(shape.Calculators, calculatorShape{c.Name, c.Title, c.Purpose})
	}
	return writeJSON(w, shape)
}

// writeJSON writes one line. Texts stay readable: nothing in them is made safe
// for a place inside a web page.
func writeJSON(w io.Writer, shape any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(shape)
}
