package press

import (
	"slices"
	"unicode/utf8"
)

// The printed chart is one sheet, A4 or US Letter on its side, whatever an
// instructor adds to the table: the more there is, the smaller the type. The
// figures are those of the style sheet, in points, and were tried by printing;
// generator/trial holds them.
const (
	sheetHeight = 555.0 // of A4 inside its margins; US Letter is higher
	aroundRows  = 80.0  // title, key, headings
	rowPadding  = 1.6
	leading     = 1.1 // of a line, in sizes of the type
	noteLeading = 1.2 // the same under the table
	cellLetters = 31  // on a line of a cell, at the largest size, on US Letter
	brokenOff   = 4.5 // of these, on the average, since words are not broken
	nameLetters = 22  // on a line of a row's name, likewise
	noteLetters = 60  // likewise, on a line under the table; three stand side by side
)

// sheetSizes are the sizes of the type, in points, with the class of the table.
var sheetSizes = []struct {
	class  string
	points float64
}{{"size-1", 7.2}, {"size-2", 6.5}, {"size-3", 5.8}, {"size-4", 5.1}, {"size-5", 4.6}, {"size-6", 4.2}, {"size-7", 3.9}}

// sheetSize returns the class of the largest type in which the chart is one
// sheet; of a chart too large for any, the smallest.
func sheetSize(v chartView) string {
	class := ""
	for _, size := range sheetSizes {
		class = size.class
		if v.height(size.points) <= sheetHeight {
			break
		}
	}
	return class
}

// height estimates how high the printed chart is, in points, in type of a size.
func (v chartView) height(size float64) float64 {
	larger := sheetSizes[0].points / size
	height := aroundRows
	for _, part := range v.Parts {
		for _, row := range part.Rows {
			height += float64(row.lines(larger))*size*leading + rowPadding
		}
	}
	var notes, hazards []int
	for _, h := range v.Safety.Hazards {
		hazards = append(hazards, linesOf(h.Title+h.Short, runLetters(h.Marks)+4, noteLetters*larger))
	}
	for _, o := range v.Others {
		notes = append(notes, linesOf(o.Name+o.About, 20*(1+len(o.States)), noteLetters*larger))
	}
	return height + float64(inThrees(hazards)+inThrees(notes))*size*noteLeading
}

// lines counts the lines of a row, in type so many times smaller than the
// largest.
func (r chartRow) lines(larger float64) int {
	lines := linesOf(r.Name.Title, r.Safety.markLetters(), nameLetters*larger)
	for _, c := range r.Cells {
		n := c.lines(larger)
		if c.Verdict == "" {
			n = 0
		}
		for _, o := range c.Others {
			n += o.lines(larger)
		}
		lines = max(lines, n)
	}
	return lines
}

// lines counts the lines of one verdict in a cell, likewise.
func (l line) lines(larger float64) int {
	word := len(l.Verdict) + 1
	if l.Name != "" {
		word += count(l.Name) + 2
	}
	if l.Best {
		word += len(", best")
	}
	if l.Basis != "" {
		word += len(", trade custom")
	}
	if n := l.Safety.markLetters(); n > 0 {
		word += n + 3
	}
	return linesOf(l.Short, word, cellLetters*larger-brokenOff)
}

// inThrees is how many lines notes take in three columns, with their heading;
// nothing where there are none. A column may be longer than the others by most
// of a note.
func inThrees(notes []int) int {
	if len(notes) == 0 {
		return 0
	}
	all := 0
	for _, n := range notes {
		all += n
	}
	return 1 + (all+2)/3 + slices.Max(notes) - 1
}

// linesOf counts the lines of a text that follows some letters, when so many
// fit on one.
func linesOf(text string, before int, fit float64) int {
	return 1 + int(float64(before+utf8.RuneCountInString(text)-1)/fit)
}
