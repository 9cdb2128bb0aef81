package catalog

import (
	"slipbook/calculators/form"
	"slipbook/calculators/letters"
	"slipbook/calculators/sketch"
)

// sheet starts a drawing with its text alternative.
func sheet(e *form.Evaluation, alternative string, texts ...string) *sketch.Drawing {
	return sketch.Sheet(e.Words(alternative, texts...))
}

// brief words what stands beside a drawing, its amounts in the reader's
// measures alone.
func brief(e *form.Evaluation, sentence string) string {
	text := e.Words(sentence)
	for _, long := range []string{" to measure", " to weigh"} {
		text = letters.TrimSuffix(text, long)
	}
	text, _, _ = letters.Cut(text, " (")
	return text
}
