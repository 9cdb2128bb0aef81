package press

import "unicode/utf8"

// The printed chart is one sheet, A4 or US Letter on its side, whatever an
// instructor adds to the table: the more there is, the smaller the type. The
// figures are those of the style sheet, in points, and were tried by printing;
// generator/trial holds them.
const (
	sheetHeight = 545.0 // of A4 inside its margins; US Letter is higher
	aroundRows  = 94.0  // title, key, headings
	rowPadding  = 2.2
	leading     = 1.15 // of a line, in sizes of the type
	cellLetters = 27   // on a line of a cell, at the largest size, on US Letter
	nameLetters = 22   // on a line of a row's name, likewise
	noteHeight  = 8.5  // a line of what differs in this studio; these stand in threes
	noteLetters = 60
)

// sheetSizes are the sizes of the type, in points, with the class of the table.
var sheetSizes = []struct {
	class  string
	points float64
}{{"size-1", 7.2}, {"size-2", 6.5}, {"size-3", 5.8}, {"size-4", 5.1}, {"size-5", 4.5}}

// sheetSize gives the class of the largest type in which the chart is one
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
			lines := linesOf(row.Name.Title, 0, nameLetters*larger)
			for _, c := range row.Cells {
				word := len(c.Verdict) + 1
				if c.Best {
					word += len(", best")
				}
				lines = max(lines, linesOf(c.Short, word, cellLetters*larger))
			}
			height += float64(lines)*size*leading + rowPadding
		}
	}
	notes := 0
	for _, o := range v.Others {
		notes += linesOf(o.Name+o.About, 20*(1+len(o.States)), noteLetters)
	}
	return height + float64((notes+2)/3)*noteHeight
}

// linesOf counts the lines of a text that follows some letters, when so many
// fit on one.
func linesOf(text string, before int, fit float64) int {
	return 1 + int(float64(before+utf8.RuneCountInString(text)-1)/fit)
}
