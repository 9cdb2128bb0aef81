package terminal

import (
	"io"
	"net/url"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
)

// Answer lays an answer out for a terminal: what may hurt, then the answer
// in words and whether it is any good, the numbers, what they came from, the
// rows, what has to be said with them, and where to go on.
func Answer(w io.Writer, a *form.Answer, s form.Settings) error {
	c := catalog.In(a.Language).Find(a.Calculator)
	var b strings.Builder
	if len(a.Cautions) > 0 {
		b.WriteString("Caution\n" + points(a.Cautions) + "\n")
	}
	b.WriteString(fold(a.Headline, ""))
	for _, sentence := range a.Judged {
		b.WriteString(fold(sentence, ""))
	}
	sentences, numbers := outputLines(c, a.Outputs)
	section(&b, "", sentences)
	section(&b, "", numbers)
	section(&b, "", rowLines(c, a.Rows))
	section(&b, "Mixed here: weighing and mixing, which putting on is not", mixedLines(a.Mixed))
	from := grid{}
	for _, in := range a.Inputs {
		from = append(from, []string{c.Input(in.Name).Label, unbound(in.Said(s.Style))})
	}
	section(&b, "Reckoned from", from.lines(false))
	section(&b, "Notes", points(a.Notes))
	section(&b, "Next", nextLines(a.Next))
	_, err := io.WriteString(w, b.String())
	return err
}

// mixedLines lays out what the studio mixes itself, with what weighing and mixing it
// call for.
func mixedLines(all []form.Mixed) string {
	var lines []string
	for _, m := range all {
		var names []string
		for _, r := range m.By {
			names = append(names, r.Name+", "+r.Proof)
		}
		lines = append(lines, m.Of+" ("+strings.Join(names, "; ")+"): "+m.Says)
	}
	return points(lines)
}

// nextLines lays out where to go on, each command in one line however long: whoever
// copies it must not get a line break within a value.
func nextLines(all []form.Onward) string {
	var b strings.Builder
	for _, n := range all {
		b.WriteString(points([]string{n.Words + ":"}) + "    " + command(onward(n.Request)) + "\n")
	}
	return b.String()
}

// outputLines lays out the outputs of an answer in columns. What a plan says in
// words are whole sentences, which stand before its numbers.
func outputLines(c *form.Calculator, outputs []form.Result) (sentences, numbers string) {
	columns := grid{}
	for _, out := range outputs {
		label, text := c.Output(out.Name).Label, unbound(out.Text)
		if out.IsText && c.NeedsTable {
			sentences += fold(label+": "+text, "  ")
		} else {
			columns = append(columns, []string{label, text})
		}
	}
	return sentences, columns.lines(false)
}

// onward reads the calculator of a request and its inputs, each unit behind its
// number.
func onward(request string) (calculator string, given []form.Setting) {
	for pair := range strings.SplitSeq(request, "&") {
		name, text, _ := strings.Cut(pair, "=")
		text, err := url.QueryUnescape(text)
		if err != nil {
			continue // no request of the catalog's
		}
		if name == "calculator" {
			calculator = text
			continue
		}
		if of, isUnit := strings.CutSuffix(name, ".unit"); isUnit && len(given) > 0 && given[len(given)-1].Name == of {
			given[len(given)-1].Text += " " + text
			continue
		}
		given = append(given, form.Setting{Name: name, Text: text})
	}
	return calculator, given
}

// rowLines lays out the rows of an answer under their columns' names. Columns
// that an answer has no use for are left out, in all its rows alike.
func rowLines(c *form.Calculator, rows [][]form.Cell) string {
	if c.NeedsTable {
		return planLines(c, rows)
	}
	var table grid
	for _, row := range rows {
		var head, cells []string
		for _, cell := range row {
			column := c.Column(cell.Column)
			head = append(head, withUnit(column.Label, column.Unit))
			cells = append(cells, cell.Text)
		}
		if table == nil {
			table = grid{head}
		}
		table = append(table, cells)
	}
	return table.lines(true)
}
