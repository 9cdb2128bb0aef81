package markup

import (
	"bytes"
	"fmt"

	"github.com/yuin/goldmark/text"

	"slipbook/generator/finding"
)

// checkRows reports the rows of a table that have not a cell for each column:
// goldmark drops cells that are too many, and fills rows that are too short,
// which makes a page of many megabytes out of a few lines. It returns how many
// of a paragraph's lines may be read.
func (p *page) checkRows(lines []text.Segment) int {
	read := len(lines)
	columns := 0
	for i := 1; i < len(lines); i++ {
		line := lines[i]
		row := line.Value(p.Source)
		switch {
		case columns == 0 && isDelimiter(row):
			if columns = cellsOf(row); cellsOf(lines[i-1].Value(p.Source)) != columns {
				return read // no table
			}
		case columns > 0 && cellsOf(row) != columns:
			p.find(line.Start, finding.TableRow, fmt.Sprintf("this row has %d cells, the table has %d columns", cellsOf(row), columns),
				"Write a | between the cells, also beside an empty one; write a | that is meant as itself as \\|. An empty line ends the table.")
			read = min(read, i)
		}
	}
	return read
}

// isDelimiter reports whether a line is the one under the head of a table.
func isDelimiter(line []byte) bool {
	return bytes.IndexByte(line, '-') >= 0 && len(bytes.Trim(line, "|:- \t\r\n")) == 0
}

// cellsOf counts the cells of a row as goldmark does.
func cellsOf(row []byte) int {
	row = bytes.TrimSpace(row)
	row = bytes.TrimPrefix(row, []byte("|"))
	row = bytes.TrimSuffix(row, []byte("|"))
	if len(row) == 0 {
		return 0
	}
	return 1 + bytes.Count(row, []byte("|")) - bytes.Count(row, []byte(`\|`))
}
