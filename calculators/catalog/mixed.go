package catalog

import (
	"slipbook/calculators/form"
	"slipbook/calculators/stage"
)

// mixed tells what the studio mixes itself of the media of a plan, each once, in
// the order of the steps.
func mixed(e *form.Evaluation, t *stage.Table, steps []stage.Step) {
	told := make([]bool, len(t.Media))
	for _, step := range steps {
		if step.Medium < 0 || told[step.Medium] {
			continue
		}
		told[step.Medium] = true
		if m := &t.Media[step.Medium]; len(m.Recipes) > 0 {
			e.Answer.Mixed = append(e.Answer.Mixed, form.Mixed{Of: m.Name, By: m.Recipes, Says: m.Mixing})
		}
	}
}
