package form

import (
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/words"
)

// Clip shortens what was typed so that a message stays readable, at a
// character's edge, without characters that cannot be seen.
func Clip(text string) string {
	const most = 40
	text = quantity.Visible(text)
	if len(text) <= most {
		return text
	}
	end := most
	for end > 0 && text[end]&0xC0 == 0x80 {
		end--
	}
	return text[:end] + "…"
}

// WithUnit joins a number's text and its unit; "1" is no unit.
func WithUnit(text, unit string) string {
	if unit == "1" || unit == "" {
		return text
	}
	return text + "\u00a0" + unit
}

// Join puts two sentences one after the other, where there are two.
func Join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}

// id is the id of a calculator's own sentence. A key with a stop in it is an id
// already: of what several calculators say.
func (c *Calculator) id(key string) string {
	if letters.IndexByte(key, '.') >= 0 {
		return key
	}
	return c.Name + ".say." + key
}

// Say returns a sentence of the calculator by its key, or any by its id. A
// fill-in is one of fills, names each with its text after it, or the output or
// input of that name as it is shown.
func (e *Evaluation) Say(key string, fills ...string) string {
	return words.Filled(e.Settings.Words.Text(e.Calculator.id(key)), fills, e.Shown)
}

// Count words a number of things in the form that the language has for it.
func (e *Evaluation) Count(key string, n int) string {
	return e.Settings.Words.Count(e.Calculator.id(key), n)
}

// Listing joins words: "a, b and c".
func (e *Evaluation) Listing(list []string) string { return e.Settings.Words.List(list) }

// wordsOf is the id before those of an input's words. Inputs that several
// calculators share have them once.
func (c *Calculator) wordsOf(in *Input) string {
	if in.Shared != "" {
		return "shared." + in.Shared
	}
	return c.Name + "." + in.Name
}

// choicesOf is the id before those of its choices and of what people also say
// for them.
func (c *Calculator) choicesOf(in *Input) string {
	if in.SharedChoices != "" {
		return "shared." + in.SharedChoices
	}
	return c.wordsOf(in) + ".choice"
}

// label is the label of an input.
func (e *Evaluation) label(in *Input) string {
	return e.Settings.Words.Text(e.Calculator.wordsOf(in) + ".label")
}

// why is the sentence of a limit; empty where it has none of its own.
func (e *Evaluation) why(in *Input, l Limit) string {
	switch {
	case l.Why == "":
		return ""
	case letters.IndexByte(l.Why, '.') >= 0:
		return e.Settings.Words.Text(l.Why)
	}
	return e.Settings.Words.Text(e.Calculator.wordsOf(in) + "." + l.Why)
}
