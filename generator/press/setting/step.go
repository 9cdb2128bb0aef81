package setting

import (
	"strconv"
	"strings"

	"slipbook/generator/markup"
)

// StepPiece is the piece of the theme that begins a step.
const StepPiece = "step"

// stepView is a step of a lesson on its page, as the piece of the theme begins it.
type stepView struct {
	ID     string // "step-7", which is also its address on the page
	Number int    // through the whole lesson
	Key    string // the same while its words stay the same
	Waits  string // in seconds, parted by spaces, a range with a hyphen: "120 600-1800"
	Until  string // what it waits for: markup.Shine, or the words for a state of the clay
}

func newStepView(step *markup.Step) stepView {
	var waits []string
	for _, w := range step.Waits {
		wait := strconv.Itoa(w.Seconds)
		if w.Most > 0 {
			wait += "-" + strconv.Itoa(w.Most)
		}
		waits = append(waits, wait)
	}
	return stepView{markup.StepID(step.Number), step.Number, step.Key, strings.Join(waits, " "), step.Until}
}

// stepsBegin is where a list of steps begins, with a number and perhaps a class.
func stepsBegin(start int, class string) string {
	tag := "<ol"
	if class != "" {
		tag += ` class="` + class + `"`
	}
	if start != 1 {
		tag += ` start="` + strconv.Itoa(start) + `"`
	}
	return tag + ">\n"
}
