package catalog

import (
	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

// solidsDensity is asked by every calculator that reckons dry content.
var solidsDensity = form.Input{
	Name: "solids-density", Shared: "solids-density",
	Kind: quantity.Density, Default: "2.6",
	Low:  form.Limit{End: form.Above, Value: 1, Why: "low"},
	High: form.Limit{End: form.UpTo, Value: 10, Why: "high"},
}

// forPeople, forEach and forSpare ask how much a class needs, beside a volume of the
// whole lot.
var (
	forPeople = form.Input{Name: "people", Shared: "people", Kind: quantity.Number, Needed: true, Group: "amount", Side: "class", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 1000}}
	forEach   = form.Input{Name: "each", Shared: "each", Kind: quantity.Volume, Needed: true, Group: "amount", Side: "class", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}}
	forSpare  = form.Input{Name: "spare", Shared: "spare", Kind: quantity.Percent, Default: "10", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 200}}
)

// stainDensity and fluxDensity are asked by calculators that weigh them.
var (
	stainDensity = form.Input{Name: "stain-density", Shared: "stain-density", Kind: quantity.Density, Default: "4.5",
		Low:  form.Limit{End: form.Above, Value: 1, Why: "low"},
		High: form.Limit{End: form.UpTo, Value: 10, Why: "high"}}
	fluxDensity = form.Input{Name: "flux-density", Shared: "flux-density", Kind: quantity.Density, Default: "2.5",
		Low:  form.Limit{End: form.Above, Value: 1, Why: "low"},
		High: form.Limit{End: form.UpTo, Value: 10, Why: "high"}}
)

// volumeWanted returns the volume (mL) that such inputs ask for; where that is
// the whole lot, nothing is spared.
func volumeWanted(e *form.Evaluation) float64 {
	if !e.Has("people") {
		e.Unused("spare", "shared.spare-unused")
		return e.Value("volume")
	}
	return float64(e.Value("people") * e.Value("each") * (1 + e.Value("spare")/100))
}

// sayPeople says how much a class needs in all, and each of it.
func sayPeople(e *form.Evaluation, volume float64) {
	all := e.Amount(volume, "mL", 4, 0, form.Poured)
	people := e.Count("shared.people", int(e.Value("people")))
	if e.Value("spare") == 0 {
		e.Note("that-is-exact", "all", all, "people", people)
		return
	}
	e.Note("that-is", "all", all, "people", people)
}

// The states of a pot, of which each guesses what it has shrunk so far by what
// its clay shrinks in all. How stiff leather-hard clay is makes no difference to
// the guess: it lies within its doubt.
var (
	potStates = []form.Choice{{ID: "wet"}, {ID: "leather-hard"}, {ID: "bone-dry"}, {ID: "bisque"}}
	saidLoss  = []string{"wet", "leather-hard", "bone-dry", "bisque"}
	asksLoss  = []string{"greenware"}
)

// noClay is the end of every shrinkage.
var noClay = form.Limit{End: form.UpTo, Value: 50, Why: "shared.no-clay"}

// barsDoubt is how sure (%, ±) a loss is that was measured on bars while they
// were soft: half a millimetre in 100.
const barsDoubt = 0.5

// soFar returns what the pot has shrunk so far, in percent of the fresh length,
// and how wrong that may be. What was measured counts before what the state
// makes likely; with neither the clay is fresh. More than the clay shrinks in
// all is refused.
func soFar(e *form.Evaluation, total float64, measured string) (percent, doubt float64) {
	if !e.Has(measured) {
		percent, doubt = shrinkage.SoFar(total, potState(e))
		if percent > 0 {
			e.Note("shared.state-counts",
				"percent", form.WithUnit(e.Text(percent, 2), "%"), "part", e.Say(partGone(potState(e))), "doubt", form.WithUnit(e.Text(doubt, 2), "%"))
		}
		return percent, doubt
	}
	percent = e.Value(measured)
	if percent > total {
		e.Refuse(measured, "shared.shrunk-too-far",
			"percent", form.WithUnit(e.Text(percent, 4), "%"), "total", form.WithUnit(e.Text(total, 4), "%"))
	}
	return percent, barsDoubt
}

// potState returns the state that was chosen; fresh when none was.
func potState(e *form.Evaluation) shrinkage.State {
	switch e.Word("state") {
	case "leather-hard":
		return shrinkage.LeatherHard
	case "bone-dry":
		return shrinkage.BoneDry
	case "bisque":
		return shrinkage.Bisque
	}
	return shrinkage.Fresh
}

// partGone words the part of its whole shrinkage that a clay has behind it.
func partGone(state shrinkage.State) string {
	switch state {
	case shrinkage.LeatherHard:
		return "shared.quarter"
	case shrinkage.BoneDry:
		return "shared.half"
	}
	return "shared.seven-twelfths"
}

// shrinks lets the clay that was chosen stand in for the number of an input:
// what is known of it becomes that input's value, and is said beside the
// choice.
func shrinks(e *form.Evaluation, percent, clay string) {
	id := e.Word(clay)
	if id == "" {
		return
	}
	for _, body := range e.Settings.Bodies {
		if body.ID != id {
			continue
		}
		e.Stand(percent, body.Shrinkage)
		text := form.WithUnit(e.Text(body.Shrinkage, 4), "%")
		e.Answer.Read = append(e.Answer.Read, form.Phrase{Input: clay, Text: e.Say("shared.shrinks", "percent", text)})
		if body.Cone == "" {
			e.Note("shared.known", "percent", text, "clay", body.Name)
		} else {
			e.Note("shared.known-at-cone", "percent", text, "clay", body.Name, "cone", body.Cone)
		}
	}
}
