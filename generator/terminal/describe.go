package terminal

import (
	"io"
	"strings"

	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
)

// List lists the calculators, each with what it answers.
func List(w io.Writer, calculators form.List) error {
	var b strings.Builder
	for _, c := range calculators {
		b.WriteString(c.Name + "\n" + fold(c.Purpose, "    "))
	}
	b.WriteString("\nOne of these names after \"slipbook calc\" shows its inputs and an example.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// Describe says what a calculator asks and answers, with its formulas and its
// worked example as a command, in the words that the settings have.
func Describe(w io.Writer, c *form.Calculator, s form.Settings) error {
	var b strings.Builder
	b.WriteString(c.Name + ": " + c.Title + "\n" + fold(c.Purpose, ""))
	section(&b, "Caution", points(form.Settings{Words: s.Words}.CautionsOf(c)))
	var inputs strings.Builder
	for i := range c.Inputs {
		inputs.WriteString(describeInput(c, &c.Inputs[i]))
	}
	section(&b, "Inputs", inputs.String())
	outputs := grid{}
	for _, out := range c.Outputs {
		outputs = append(outputs, []string{out.Name, withUnit(out.Label, out.Unit)})
	}
	section(&b, "Outputs", outputs.lines(false))
	columns := grid{}
	for _, column := range c.Columns {
		columns = append(columns, []string{column.Name, withUnit(column.Label, column.Unit)})
	}
	section(&b, "Rows", columns.lines(false))
	var formulas strings.Builder
	for _, f := range c.Formulas() {
		formulas.WriteString("  " + f.Text() + "\n")
		for _, where := range f.Where {
			formulas.WriteString("      " + where.Letter + ": " + where.Means + "\n")
		}
	}
	section(&b, "Formulas", formulas.String())
	section(&b, "For example", fold(c.Example.Case, "  ")+"  "+command(c.Name, c.Example.Given)+"\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// describeInput says what one input is, how it may be written, and when it
// may be left out.
func describeInput(c *form.Calculator, in *form.Input) string {
	words := []string{in.Label + ".", in.Help}
	var choices []string
	for _, choice := range in.Choices {
		choices = append(choices, choice.ID)
	}
	switch {
	case in.Bodies:
		words = append(words, "The id or the name of one of the clays in course.yaml.")
	case len(choices) > 0:
		words = append(words, "One of: "+strings.Join(choices, ", ")+".")
	case in.List && in.Words:
		words = append(words, "Several, separated by commas.")
	case in.List:
		words = append(words, "Several values, separated by spaces or semicolons.")
	}
	var units []string
	for _, u := range quantity.Units(in.Kind) {
		if u.ID != "1" {
			units = append(units, u.ID)
		}
	}
	if len(units) > 0 {
		words = append(words, "In "+strings.Join(units, ", ")+"; a bare number is "+quantity.Canonical(in.Kind)+".")
	}
	words = append(words, whenNeeded(c, in)...)
	if in.Finds != "" {
		words = append(words, "To find it out: slipbook calc "+in.Finds+".")
	}
	return "  " + in.Name + "\n" + fold(strings.Join(words, " "), "      ")
}

// whenNeeded says what an input goes with, what it stands instead of, and
// whether it may be left out.
func whenNeeded(c *form.Calculator, in *form.Input) (words []string) {
	with, instead := company(c, in)
	if len(with) > 0 {
		words = append(words, "Together with "+strings.Join(with, ", ")+".")
	}
	if len(instead) > 0 {
		words = append(words, "Not together with "+strings.Join(instead, ", ")+".")
	}
	switch {
	case in.Default != "" && len(instead) > 0:
		words = append(words, "All of these left out: "+in.Default+".")
	case in.Default != "":
		words = append(words, "Left out: "+in.Default+".")
	case in.Needed && len(instead) > 0:
		words = append(words, "One or the other is needed.")
	case in.Needed:
		words = append(words, "Needed.")
	}
	return words
}

// company lists the inputs that one input is given with, and those that it is
// an alternative to.
func company(c *form.Calculator, in *form.Input) (with, instead []string) {
	for _, other := range c.Inputs {
		switch {
		case in.Group == "" || other.Group != in.Group || other.Name == in.Name:
		case in.Side != "" && other.Side == in.Side:
			with = append(with, other.Name)
		default:
			instead = append(instead, other.Name)
		}
	}
	return with, instead
}
