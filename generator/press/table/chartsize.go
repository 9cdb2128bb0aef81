package table

import (
	"slices"
	"unicode/utf8"

	"slipbook/generator/press/theme"
)

// chartSize returns the class of the largest type in which the chart is one sheet, A4
// or US Letter on its side, whatever an instructor adds to the table: the more
// there is, the smaller the type; of a chart too large for any, the smallest.
func chartSize(p theme.ChartPrint, v chartView) string {
	return theme.Largest(p.Sizes, func(points float64) bool { return chartHeight(p, v, points) <= p.Height })
}

// chartHeight estimates how high the printed chart is, in points, in type of a size.
func chartHeight(p theme.ChartPrint, v chartView, size float64) float64 {
	larger := p.Sizes[0].Points / size
	height := p.Around
	for _, part := range v.Parts {
		for _, row := range part.Rows {
			height += rowHeight(p, row, size) + p.RowPadding
		}
	}
	var notes, hazards []int
	for _, h := range v.Safety.Hazards {
		hazards = append(hazards, linesOf(h.Title+h.Short, theme.RunLetters(h.Marks)+4, p.NoteLetters*larger))
	}
	for _, o := range v.Others {
		notes = append(notes, linesOf(o.Name+o.About, 20*(1+len(o.States)), p.NoteLetters*larger))
	}
	return height + float64(inThrees(hazards)+inThrees(notes))*size*p.NoteLeading
}

// rowHeight is how high a row is, in points, in type of a size. The signs of a medium
// keep their size beside all type but the smallest.
func rowHeight(p theme.ChartPrint, r chartRow, size float64) float64 {
	larger := p.Sizes[0].Points / size
	if r.Name.Address == "" || size == p.Sizes[len(p.Sizes)-1].Points { // a way of working, or all is small
		return float64(rowLines(p, r, larger, p.CellLetters*larger)) * size * p.Leading
	}
	return max(p.Sign, float64(rowLines(p, r, larger, (p.CellLetters-p.SignLetters)*larger))*size*p.Leading)
}

// rowLines counts the lines of a row, in type so many times smaller than the
// largest, of which so many letters fit on a line of a cell.
func rowLines(p theme.ChartPrint, r chartRow, larger, fit float64) int {
	lines := linesOf(r.Name.Title, r.Safety.MarkLetters(), p.NameLetters*larger)
	for _, c := range r.Cells {
		n := lineLines(c.Line, fit-p.BrokenOff)
		if c.Verdict == "" {
			n = 0
		}
		for _, o := range c.Others {
			n += lineLines(o, fit-p.BrokenOff)
		}
		lines = max(lines, n)
	}
	return lines
}

// lineLines counts the lines of one verdict in a cell, when so many letters fit on one.
// Its sign is about as wide as one.
func lineLines(l Line, fit float64) int {
	word := len(l.Verdict) + 2
	if l.Name != "" {
		word += theme.Letters(l.Name) + 2
	}
	if l.Best {
		word += len(", best")
	}
	if l.Basis != "" {
		word += len(", trade custom")
	}
	if n := l.Safety.MarkLetters(); n > 0 {
		word += n + 3
	}
	return linesOf(l.Short, word, fit)
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
