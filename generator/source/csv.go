package source

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// mostRows bounds a table, far above what a course writes by hand.
const mostRows = 10_000

// CSV reads a file of comma-separated values as RFC 4180 has it: the first row
// names the columns, a cell in double quotes may hold commas, line ends and,
// written twice, double quotes. It returns a row each, in order, with a cell
// under its column's name as the value at a key; an empty cell is an absent
// value. Empty lines are passed over. A row whose cells do not fit the columns
// is reported and left out; without one of the columns in need, all are.
func (t *Text) CSV(need []string, others ...string) []Fields {
	r := &rows{file: t, doc: &document{file: t, called: "the row", text: t.Bytes, place: func(at int) int { return at },
		of: func(n *yaml.Node) int { return n.Line }}}
	head, ok := r.next()
	if !ok {
		if t.Found == nil {
			t.Report(-1, finding.TableForm, "the table is empty", "Write the names of its columns into the first row: "+strings.Join(need, ",")+".")
		}
		return nil
	}
	if !r.columns(head, need, append(slices.Clip(need), others...)) {
		return nil
	}
	var all []Fields
	for cells, ok := r.next(); ok; cells, ok = r.next() {
		if len(all) == mostRows {
			t.Report(cells[0].at, finding.TableForm, fmt.Sprintf("the table has more than %d rows", mostRows), "Divide it.")
			break
		}
		if row, ok := r.fields(cells); ok {
			all = append(all, row)
		}
	}
	return all
}

// rows is a table being read.
type rows struct {
	file  *Text
	doc   *document
	at    int      // what is before it was read
	names []string // of the columns; empty for one that is not known
}

// cell is one cell as it was written, without its quotes.
type cell struct {
	at   int // where it begins
	text string
}

// columns reads the first row, and reports whether the others can be read by
// it.
func (r *rows) columns(head []cell, need, known []string) bool {
	before := r.file.Reported()
	for i, c := range head {
		name := strings.TrimSpace(c.text)
		switch {
		case len(head) == 1 && strings.ContainsAny(name, ";\t"):
			r.file.Report(c.at, finding.TableForm, "the cells of this table are not separated by commas", "Save it again as CSV with commas between the cells.")
			return false
		case name == "":
			r.file.Report(c.at, finding.TableForm, fmt.Sprintf("column %d has no name", i+1), "Write one of: "+strings.Join(known, ", ")+"; or take the column out.")
		case !slices.Contains(known, name):
			r.file.Report(c.at, finding.UnknownKey, fmt.Sprintf("`%s` is not a column that is known here", name), Meant(name, known)+"The columns are: "+strings.Join(known, ", ")+".")
			name = ""
		case slices.Contains(r.names, name):
			r.file.Report(c.at, finding.RepeatedKey, fmt.Sprintf("there is a second column `%s`", name), "Keep one of the two.")
			name = ""
		}
		r.names = append(r.names, name)
		if r.file.Full() {
			return false
		}
	}
	for _, name := range need {
		if !slices.Contains(r.names, name) && r.file.Reported() == before {
			r.file.Report(-1, finding.MissingKey, fmt.Sprintf("there is no column `%s`", name), "Write its name into the first row, and a cell for it into the others.")
			return false
		}
	}
	return r.file.Reported() == before
}

// fields gives the cells of a row the names of their columns.
func (r *rows) fields(cells []cell) (Fields, bool) {
	row := Value{doc: r.doc, node: &yaml.Node{Kind: yaml.MappingNode, Line: cells[0].at}}
	if len(cells) != len(r.names) {
		row.Report(finding.TableForm, fmt.Sprintf("this row has %s, the first has %d", counted(len(cells)), len(r.names)),
			"Write a comma between the cells, also beside an empty one; put a cell that has a comma in it in double quotes.")
		return Fields{}, false
	}
	f := Fields{Of: row}
	for i, c := range cells {
		if name := r.names[i]; name != "" && strings.TrimSpace(c.text) != "" {
			f.values = append(f.values, Value{doc: r.doc, node: &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: c.text, Line: c.at}, name: name})
		}
	}
	return f, true
}

func counted(cells int) string {
	if cells == 1 {
		return "one cell"
	}
	return fmt.Sprintf("%d cells", cells)
}

// next reads the cells of the next row that is not empty; false at the end, or
// where reading cannot go on.
func (r *rows) next() ([]cell, bool) {
	for r.at < len(r.file.Bytes) && (r.file.Bytes[r.at] == '\n' || r.file.Bytes[r.at] == '\r') {
		r.at++
	}
	if r.at == len(r.file.Bytes) {
		return nil, false
	}
	var cells []cell
	for {
		c, ok := r.cell()
		if !ok {
			return nil, false
		}
		cells = append(cells, c)
		if r.at == len(r.file.Bytes) || r.file.Bytes[r.at] != ',' {
			return cells, true
		}
		r.at++
	}
}

// cell reads a cell up to the comma, line end or end of file behind it.
func (r *rows) cell() (cell, bool) {
	rest := r.file.Bytes[r.at:]
	if len(rest) > 0 && rest[0] == '"' {
		return r.quoted()
	}
	n := bytes.IndexAny(rest, ",\r\n")
	if n < 0 {
		n = len(rest)
	}
	c := cell{r.at, string(rest[:n])}
	if quote := strings.IndexByte(c.text, '"'); quote >= 0 {
		r.file.Report(r.at+quote, finding.TableForm, "there is a quotation mark in the middle of this cell",
			"Put the whole cell in double quotes, right behind the comma, and write each quotation mark inside it twice.")
	}
	r.at += n
	return c, true
}

// quoted reads a cell in double quotes.
func (r *rows) quoted() (cell, bool) {
	c := cell{at: r.at}
	var text []byte
	rest := r.file.Bytes[r.at+1:]
	for {
		n := bytes.IndexByte(rest, '"')
		if n < 0 {
			r.file.Report(c.at, finding.TableForm, "the quotation that opens here is not closed", "Close it with a double quotation mark; write one that belongs to the words twice.")
			return c, false
		}
		text = append(text, rest[:n]...)
		if rest = rest[n+1:]; len(rest) == 0 || rest[0] != '"' {
			break
		}
		text, rest = append(text, '"'), rest[1:]
	}
	c.text, r.at = string(text), len(r.file.Bytes)-len(rest)
	if n := bytes.IndexAny(rest, ",\r\n"); n > 0 || n < 0 && len(rest) > 0 {
		r.file.Report(r.at, finding.TableForm, "words follow the quotation of this cell", "Put the whole cell in double quotes, and write each quotation mark inside it twice.")
		r.at = len(r.file.Bytes) - len(rest) + max(n, 0)
		if n < 0 {
			r.at = len(r.file.Bytes)
		}
	}
	return c, true
}
