package catalog

import (
	"slipbook/calculators/form"
	"slipbook/calculators/letters"
	"slipbook/calculators/sketch"
)

// sheet starts a drawing with its text alternative.
func sheet(e *form.Evaluation, key string, fills ...string) *sketch.Drawing {
	return sketch.Sheet(e.Say(drawing(e, key), fills...))
}

// brief words what stands beside a drawing, its amounts in the reader's
// measures alone.
func brief(e *form.Evaluation, key string) string {
	text := e.Say(drawing(e, key))
	for _, long := range []string{"amount.unweighable", "amount.unmeasurable"} {
		text = letters.ReplaceAll(text, e.Say(long), e.Say("amount.brief"))
	}
	text, _, _ = letters.Cut(text, " (")
	return text
}

// drawing is the id of words in a drawing.
func drawing(e *form.Evaluation, key string) string { return e.Calculator.Name + ".draw." + key }
