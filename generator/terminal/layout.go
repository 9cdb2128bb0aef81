// Package terminal lays out on a command line what the calculators say: an
// answer, the list of them, what one of them asks, and all of it in JSON for
// other programs. It exists so that the command calc only has to know what it
// was asked, and so that the layout is tested without running a command.
package terminal

import (
	"strings"
	"unicode/utf8"

	"slipbook/calculators/form"
)

// section adds lines under a heading and an empty line above them, unless there
// are none.
func section(b *strings.Builder, heading, lines string) {
	if lines == "" {
		return
	}
	b.WriteString("\n")
	if heading != "" {
		b.WriteString(heading + "\n")
	}
	b.WriteString(lines)
}

// points lays out sentences one under the other.
func points(sentences []string) string {
	var b strings.Builder
	for _, s := range sentences {
		lines := fold(s, "    ")
		b.WriteString("  - " + strings.TrimPrefix(lines, "    "))
	}
	return b.String()
}

// width is how far a line of words goes.
const width = 78

// fold breaks words into lines of at most width, each after the indent.
func fold(words, indent string) string {
	var b strings.Builder
	long := 0
	for _, word := range strings.Fields(words) {
		n := utf8.RuneCountInString(word)
		switch {
		case long == 0:
			b.WriteString(indent)
			long = len(indent)
		case long+1+n > width:
			b.WriteString("\n" + indent)
			long = len(indent)
		default:
			b.WriteByte(' ')
			long++
		}
		b.WriteString(word)
		long += n
	}
	if long > 0 {
		b.WriteByte('\n')
	}
	return b.String()
}

// grid is rows of cells.
type grid [][]string

// lines lays the grid out in columns, a little in from the left. Numbers under
// a column's name stand at the right of it, words at the left.
func (g grid) lines(numbers bool) string {
	var wide []int
	for _, row := range g {
		for i, cell := range row {
			if i == len(wide) {
				wide = append(wide, 0)
			}
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	var b strings.Builder
	for _, row := range g {
		line := ""
		for i, cell := range row {
			pad := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if numbers {
				line += "  " + pad + cell
			} else {
				line += "  " + cell + pad
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}

// unbound parts numbers from their units with plain spaces: what keeps them on
// one line of a page is in the way of other programs and of a terminal.
func unbound(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// withUnit puts the unit in brackets behind a label, if it has one.
func withUnit(label, unit string) string {
	if unit == "" || unit == "1" {
		return label
	}
	return label + " (" + unit + ")"
}

// command returns a calculator with its inputs as it is typed at a shell.
func command(calculator string, given []form.Setting) string {
	words := []string{"slipbook", "calc", calculator}
	for _, g := range given {
		word := g.Name + "=" + g.Text
		if strings.ContainsAny(g.Text, " ;,'\"$&|<>()*") {
			word = g.Name + "='" + g.Text + "'"
		}
		words = append(words, word)
	}
	return strings.Join(words, " ")
}
