//go:build !wasm

package form

import (
	"slipbook/calculators/formula"
	"slipbook/calculators/letters"
	"slipbook/calculators/words"
)

// Pages reports whether this build shows calculators on pages and on the
// command line: examples, printed tables and formulas. The WebAssembly reactor
// only answers, and is built without them.
const Pages = true

// Panicked is set by tests alone: it words what a calculation panicked with,
// while the stack still says where. People are told that it is a mistake of the
// handbook and nothing more, which helps nobody to mend it.
var Panicked func(calculator string, why any) string

// panicked is what stands behind what people are told.
func panicked(calculator string, why any) string {
	if Panicked == nil {
		return ""
	}
	return " " + Panicked(calculator, why)
}

// usualWords are the words where no language is asked for.
func usualWords() *words.Table { return words.In(words.Default) }

// Language is the language of the answers.
func (s Settings) Language() string { return s.inWords().Words.Language }

// In returns calculators with everything that pages print of them filled in,
// in the words of a language. The declarations stay as they are.
func (l List) In(w *words.Table) List {
	worded := make(List, len(l))
	for i, c := range l {
		worded[i] = c.in(w)
	}
	return worded
}

func (c *Calculator) in(w *words.Table) *Calculator {
	own := *c
	say := func(key string) string { return w.Text(c.Name + "." + key) }
	own.Title, own.Purpose = say("title"), say("purpose")
	own.Notes, own.Cautions = texts(c.Says, "note.", say), texts(c.Cares, "caution.", say)
	own.Formulas = func() []formula.Formula {
		return c.Formula(func(key string) string { return w.Text(c.formulaID(key)) })
	}
	own.Inputs = make([]Input, len(c.Inputs))
	for i := range c.Inputs {
		own.Inputs[i] = c.inputIn(&c.Inputs[i], w)
	}
	own.Outputs = append([]Output(nil), c.Outputs...)
	for i := range own.Outputs {
		own.Outputs[i].Label = say("answer." + own.Outputs[i].Name)
	}
	own.Columns = append([]Column(nil), c.Columns...)
	for i := range own.Columns {
		own.Columns[i].Label = say("column." + own.Columns[i].Name)
		if either := own.Columns[i].Either; either != "" {
			own.Columns[i].Unit = w.Text("form.unit." + either)
		}
	}
	own.Example.Case, own.Table.Caption = say("example"), say("table.caption")
	own.Table.Cases = append([]Case(nil), c.Table.Cases...)
	for i := range own.Table.Cases {
		own.Table.Cases[i].Words = say("table." + own.Table.Cases[i].ID)
	}
	return &own
}

// formulaID is the id of words in a formula; a key with a stop is one already.
func (c *Calculator) formulaID(key string) string {
	if letters.Contains(key, ".") {
		return key
	}
	return c.Name + ".formula." + key
}

func (c *Calculator) inputIn(in *Input, w *words.Table) Input {
	own := *in
	own.Label, own.Help = w.Text(c.wordsOf(in)+".label"), w.Text(c.wordsOf(in)+".help")
	own.Choices = append([]Choice(nil), in.Choices...)
	for i := range own.Choices {
		own.Choices[i].Label = w.Text(c.choicesOf(in) + "." + own.Choices[i].ID)
	}
	return own
}

func texts(keys []string, group string, say func(string) string) []string {
	var list []string
	for _, key := range keys {
		list = append(list, say(group+key))
	}
	return list
}
