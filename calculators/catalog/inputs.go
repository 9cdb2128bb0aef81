package catalog

import (
	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

// solidsDensity is asked by every calculator that reckons dry content.
var solidsDensity = form.Input{
	Name: "solids-density", Label: "How heavy the dry powder is", Help: "Its density in g/mL. Leave 2.6 unless you know better.",
	Kind: quantity.Density, Default: "2.6",
	Low:  form.Limit{End: form.Above, Value: 1, Why: "Powder that is no heavier than water would float. Clay is about 2.6."},
	High: form.Limit{End: form.UpTo, Value: 10, Why: "No ceramic powder is that heavy. Clay is about 2.6, stains about 4.5."},
}

// forPeople, forEach and forSpare ask how much a class needs, beside a volume of the
// whole lot.
var (
	forPeople = form.Input{Name: "people", Label: "People", Help: "How many will use it.", Kind: quantity.Number, Needed: true, Group: "amount", Side: "class", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 1000}}
	forEach   = form.Input{Name: "each", Label: "Amount each", Help: "For one person.", Kind: quantity.Volume, Needed: true, Group: "amount", Side: "class", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}}
	forSpare  = form.Input{Name: "spare", Label: "To spare", Help: "On top, for a class. Not used when you give the whole lot.", Kind: quantity.Percent, Default: "10", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 200}}
)

// stainDensity and fluxDensity are asked by calculators that weigh them.
var (
	stainDensity = form.Input{Name: "stain-density", Label: "How heavy the stain is", Help: "Its density in g/mL. Leave 4.5 unless its sheet gives another.", Kind: quantity.Density, Default: "4.5",
		Low:  form.Limit{End: form.Above, Value: 1, Why: "Powder that is no heavier than water would float. Leave 4.5 unless its sheet gives another."},
		High: form.Limit{End: form.UpTo, Value: 10, Why: "No ceramic powder is that heavy. Leave 4.5 unless its sheet gives another."}}
	fluxDensity = form.Input{Name: "flux-density", Label: "How heavy the flux is", Help: "Its density in g/mL. Leave 2.5 unless its sheet gives another.", Kind: quantity.Density, Default: "2.5",
		Low:  form.Limit{End: form.Above, Value: 1, Why: "Powder that is no heavier than water would float. Leave 2.5 unless its sheet gives another."},
		High: form.Limit{End: form.UpTo, Value: 10, Why: "No ceramic powder is that heavy. Leave 2.5 unless its sheet gives another."}}
)

// volumeWanted gives the volume (mL) that such inputs ask for; where that is
// the whole lot, nothing is spared.
func volumeWanted(e *form.Evaluation) float64 {
	if !e.Has("people") {
		e.Unused("spare", "“To spare” is for a class. You gave the whole lot, so nothing was added.")
		return e.Value("volume")
	}
	return float64(e.Value("people") * e.Value("each") * (1 + e.Value("spare")/100))
}

// sayPeople says how much a class needs in all, and each of it.
func sayPeople(e *form.Evaluation, of string, volume float64) {
	all := e.Amount(volume, "mL", 4, 0, form.Poured)
	people := "each of {people} people"
	if e.Value("people") == 1 {
		people = "one person"
	}
	if e.Value("spare") == 0 {
		e.Note("That is {} of "+of+": {each} for "+people+", and none to spare.", all)
		return
	}
	e.Note("That is {} of "+of+": {each} for "+people+", and {spare} to spare.", all)
}

// The question after the state of a pot, which guesses what it has shrunk so far
// by what its clay shrinks in all.
const potIsNow = "The pot is now"

var potStates = []form.Choice{{ID: "wet", Label: "Fresh"}, {ID: "leather-hard", Label: "Leather-hard"}, {ID: "bone-dry", Label: "Bone dry"}, {ID: "bisque", Label: "Bisque"}}

// saidLoss are other words for these states. How stiff leather-hard clay is
// makes no difference to the guess: it lies within its doubt.
var saidLoss = []form.Said{
	{Words: "leatherhard", ID: "leather-hard"}, {Words: "soft leather-hard", ID: "leather-hard"}, {Words: "firm leather-hard", ID: "leather-hard"}, {Words: "stiff leather-hard", ID: "leather-hard"}, {Words: "cheese-hard", ID: "leather-hard"},
	{Words: "plastic", ID: "wet"}, {Words: "bonedry", ID: "bone-dry"}, {Words: "dry", ID: "bone-dry"}, {Words: "biscuit", ID: "bisque"}, {Words: "bisqued", ID: "bisque"},
	{Words: "greenware", Ask: "Greenware is any clay that was not fired. Say leather-hard if it is cool and dark, bone dry if it is pale all over."},
}

// The question after what a pot has shrunk so far, as bars tell it.
const (
	shrunkSoFar     = "Shrunk so far, if you measured it"
	shrunkSoFarHelp = "Of the fresh length, read off the same bars today. It counts before the state."
)

// noClay is the end of every shrinkage.
var noClay = form.Limit{End: form.UpTo, Value: 50, Why: "No clay shrinks by more than half. Give percent, for example 12."}

// barsDoubt is how sure (%, ±) a loss is that was measured on bars while they
// were soft: half a millimetre in 100.
const barsDoubt = 0.5

// soFar gives what the pot has shrunk so far, in percent of the fresh length,
// and how wrong that may be. What was measured counts before what the state
// makes likely; with neither the clay is fresh. More than the clay shrinks in
// all is refused.
func soFar(e *form.Evaluation, total float64, measured string) (percent, doubt float64) {
	if !e.Has(measured) {
		percent, doubt = shrinkage.SoFar(total, potState(e))
		if percent > 0 {
			e.Note("The state counts as {} shrunk so far, {} of what this clay shrinks in all, and it may be {} more or less. That is common practice; to know, measure your bars again at this state.",
				form.WithUnit(e.Text(percent, 2), "%"), partGone(potState(e)), form.WithUnit(e.Text(doubt, 2), "%"))
		}
		return percent, doubt
	}
	percent = e.Value(measured)
	if percent > total {
		e.Refuse(measured, "The clay cannot have shrunk {} already when it shrinks {} in all. Both are counted on the fresh length.",
			form.WithUnit(e.Text(percent, 4), "%"), form.WithUnit(e.Text(total, 4), "%"))
	}
	return percent, barsDoubt
}

// potState gives the state that was chosen; fresh when none was.
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
		return "a quarter"
	case shrinkage.BoneDry:
		return "half"
	}
	return "seven twelfths"
}

// The choice among the studio's clays, which stands in for the number of the
// input that it is grouped with.
const (
	clayOf     = "Clay of the studio"
	clayOfHelp = "Instead of the number, if yours is one of these."
)

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
		e.Answer.Read = append(e.Answer.Read, form.Phrase{Input: clay, Text: "shrinks " + text})
		if body.Cone == "" {
			e.Note("{} for {} is what this handbook has. Your own bars know better.", text, body.Name)
		} else {
			e.Note("{} for {} is what this handbook has, at cone {}. Your own bars know better.", text, body.Name, body.Cone)
		}
	}
}

// soFarMeans says what stands for a loss so far, where it was not measured.
const soFarMeans = "shrunk so far, % of the fresh length; where it was not measured, S/4 for leather-hard, S/2 for bone dry, 7S/12 for bisque"
