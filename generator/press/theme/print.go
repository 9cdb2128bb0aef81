package theme

import (
	"fmt"
	"io/fs"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
)

// printFile says how large what must fit one printed sheet is.
const printFile = "print.yaml"

// Printing is what the program must know of a theme's style sheets to set what
// has to fit one sheet: the figures, in points unless they say otherwise.
type Printing struct {
	Chart ChartPrint `yaml:"chart"`
	Card  CardPrint  `yaml:"card"`
}

// TypeSize is a size of type, with the class that sets it.
type TypeSize struct {
	Class  string  `yaml:"class"`
	Points float64 `yaml:"points"`
}

// ChartPrint is the chart on its side.
type ChartPrint struct {
	Sizes       []TypeSize `yaml:"sizes"` // the largest first
	Height      float64    `yaml:"height"`
	Around      float64    `yaml:"around"` // title, key, headings
	RowPadding  float64    `yaml:"row-padding"`
	Leading     float64    `yaml:"leading"` // of a line, in sizes of the type
	NoteLeading float64    `yaml:"note-leading"`
	CellLetters float64    `yaml:"cell-letters"` // on a line of a cell, at the largest size
	BrokenOff   float64    `yaml:"broken-off"`   // of these, since words are not broken
	NameLetters float64    `yaml:"name-letters"`
	Sign        float64    `yaml:"sign"`         // of a medium's row, at the least: as high as its signs
	SignLetters float64    `yaml:"sign-letters"` // of a line of a cell, which they take
	NoteLetters float64    `yaml:"note-letters"` // under the table, in one of three columns
}

// CardPrint is a recap card upright, in two columns.
type CardPrint struct {
	Sizes   []TypeSize `yaml:"sizes"` // the largest first
	Height  float64    `yaml:"height"`
	Column  float64    `yaml:"column"`
	Leading float64    `yaml:"leading"` // of a line, in sizes of the type
	Letter  float64    `yaml:"letter"`  // the mean width of a letter, likewise
	Between float64    `yaml:"between"` // of a line, between two pieces of text
}

// readPrinting reads the figures of a theme.
func readPrinting(theme fs.FS) (Printing, error) {
	var p Printing
	data, err := fs.ReadFile(theme, printFile)
	if err == nil {
		err = yaml.Load(data, &p, yaml.WithKnownFields())
	}
	if err != nil {
		return p, fmt.Errorf("%s: %w", printFile, err)
	}
	for _, of := range []struct {
		name    string
		figures []float64
	}{
		{"chart", []float64{float64(len(p.Chart.Sizes)), p.Chart.Height, p.Chart.Leading, p.Chart.NoteLeading, p.Chart.CellLetters - p.Chart.BrokenOff - p.Chart.SignLetters, p.Chart.NameLetters, p.Chart.NoteLetters}},
		{"card", []float64{float64(len(p.Card.Sizes)), p.Card.Height, p.Card.Column, p.Card.Leading, p.Card.Letter}},
	} {
		for _, figure := range of.figures {
			if figure <= 0 {
				return p, fmt.Errorf("%s: a figure of %q is missing, or not more than nothing", printFile, of.name)
			}
		}
	}
	for _, size := range append(p.Chart.Sizes, p.Card.Sizes...) {
		if size.Class == "" || size.Points <= 0 {
			return p, fmt.Errorf("%s: a size needs a class and points", printFile)
		}
	}
	return p, nil
}

// Largest returns the class of the largest size for which something fits; of what
// fits in none, the smallest.
func Largest(sizes []TypeSize, fits func(points float64) bool) string {
	class := ""
	for _, size := range sizes {
		if class = size.Class; fits(size.Points) {
			break
		}
	}
	return class
}

// Letters counts the letters of a text as it is shown, without tags.
func Letters(text string) int {
	n, inside := 0, false
	for _, r := range text {
		switch {
		case r == '<':
			inside = true
		case r == '>':
			inside = false
		case !inside && utf8.ValidRune(r):
			n++
		}
	}
	return n
}

// RunLetters counts the letters of words that stand one after the other.
func RunLetters(words []string) int {
	n := 0
	for _, w := range words {
		n += Letters(w) + 2
	}
	return n
}
