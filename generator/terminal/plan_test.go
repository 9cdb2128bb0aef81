package terminal

import (
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage/stagetest"
)

// enamelPlan is how a plan looks on a terminal: titles first, and what protects
// somebody before what is to be done.
const enamelPlan = `Works: 3 steps, 1 firing. On-glaze colour goes only where no food, drink or
lips touch. The instructor does part of it.

  You asked for: Glaze-fired: enamel (spraying).

  Steps                   3
  Firings                 1
  Risky steps             0
  Questions to ask first  0

  1  Glaze-fired  Put on enamel: spraying
  2  Glaze-fired  Dry
  3  Glaze-fired  On-glaze fire

  1  Glaze-fired
     Wear: a fitted respirator, safety glasses, gloves
     Place: in the booth
     Who: the instructor; you watch
     Take care: Spray in the booth only. Gloves on, and wash your hands. Keep
     it off every surface that food, drink or lips touch.
     Where to read about it: safety/spray.html
     Do this: The instructor does this step, and you watch. Put on enamel:
     spraying.
`

func TestPlanOnATerminal(t *testing.T) {
	s := form.Settings{Words: catalog.WordsIn("en-GB"), Table: stagetest.Table()}
	var out strings.Builder
	a := catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: "glaze-fired"}, {Name: "layers", Text: "enamel sprayed"}}, s)
	if err := Answer(&out, a, s); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(out.String(), enamelPlan) {
		t.Errorf("got\n%s\nwant it to begin\n%s", out.String(), enamelPlan)
	}
}
