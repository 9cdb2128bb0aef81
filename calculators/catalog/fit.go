package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var slipFit = &Calculator{
	Name:    "slip-fit",
	Title:   "Will this slip stay on?",
	Purpose: "Compares what a slip shrinks with what the pot has left to shrink, and says whether it will stay on.",
	Inputs: []Input{
		{Name: "body", Label: "The clay of the pot shrinks in all", Help: "From fresh to fired, from your own test bars.", Kind: quantity.Percent, Needed: true, First: true, Low: from(0), High: noClay},
		{Name: "state", Label: "State of the pot", Help: "Each counts as a common figure of what it has shrunk so far.", Kind: quantity.Number, Needed: true, Group: "so-far", First: true,
			Choices: []Choice{{"wet", "Wet"}, {"leather-hard", "Leather-hard"}, {"bone-dry", "Bone dry"}, {"bisque", "Bisque"}}},
		{Name: "body-so-far", Label: "Shrunk so far", Help: "Instead of the state, if your own bars tell you: in percent of the fresh length.", Kind: quantity.Percent, Needed: true, Group: "so-far", First: true, Low: from(0), High: noClay},
		{Name: "slip", Label: "The slip shrinks in all", Help: "From bars of it, made of slip stiffened on plaster until it can be rolled.", Kind: quantity.Percent, Needed: true, First: true, Low: from(0), High: noClay},
	},
	Outputs: []Output{
		{Name: "verdict", Label: "The slip", Unit: "1", Text: true},
		{Name: "mismatch", Label: "It ends too short by (with a minus: too long)", Unit: "%", Digits: 2},
		{Name: "remaining", Label: "The pot has left to shrink", Unit: "%", Digits: 3},
	},
	Notes: []string{
		"This counts drying and firing. How slip and pot shrink in cooling is another matter, and shows on a test tile only.",
		"The bands are common practice for a thin coat: from 1 too long to 4.5 too short usually fits, up to 6 is risky, over 6 peels. A thick trailed line peels sooner.",
	},
	Example: Example{
		Case:  "A slip made of the body itself goes on a leather-hard mug; both shrink 12 % in all.",
		Given: []Setting{{"body", "12"}, {"state", "leather-hard"}, {"slip", "12"}},
	},
	Table: Table{
		Caption: "A clay that shrinks 12 % in all: the slip ends too short by, %",
		Down:    "state", Values: []string{"wet", "leather-hard", "bone-dry", "bisque"},
		Across: "slip", AcrossValues: []string{"6 %", "8 %", "9.5 %", "11 %", "12 %", "13 %", "14 %"},
		Show: []string{"mismatch"},
	},
	work: workFit,
	draw: drawFit,
}

// noClay is the end of every shrinkage.
var noClay = upTo(50).because("No clay shrinks by more than half. Give percent, for example 12.")

// gone gives what a pot has shrunk so far (% of the fresh length) in the states
// that slip-fit can be told; common practice, for a clay that shrinks 12 %.
func gone(state string) float64 {
	switch state {
	case "leather-hard":
		return 3
	case "bone-dry":
		return 6
	case "bisque":
		return 7
	}
	return 0
}

// fitWords are the verdicts.
var fitWords = [...]string{
	shrinkage.Lifts: "may lift or shiver",
	shrinkage.Fits:  "usually fits, in a thin coat",
	shrinkage.Risks: "is risky",
	shrinkage.Peels: "peels",
}

func workFit(b *bench) {
	total, state, sofar := b.value("body"), b.word("state"), b.value("body-so-far")
	input := "body-so-far"
	if state != "" {
		sofar, input = gone(state), "state"
	}
	if sofar > total {
		b.refuse(input, "The pot cannot have shrunk {} already when its clay shrinks {body} in all. Give what your own bars say.", withUnit(b.text(sofar, 4), "%"))
		return
	}
	remaining := shrinkage.Remaining(total, sofar)
	mismatch := shrinkage.Mismatch(remaining, b.value("slip"))
	fit := shrinkage.Judge(mismatch)
	b.tell("verdict", fitWords[fit])
	b.set("mismatch", mismatch)
	b.set("remaining", remaining)
	length := "{} too short"
	switch {
	case mismatch == 0:
		length = "as long as the pot"
	case mismatch < 0:
		length, mismatch = "{} too long", -mismatch
	}
	b.headline("This slip would end "+length+": it {verdict}.", withUnit(b.text(mismatch, 2), "%"))
	b.sayFit(fit, state, sofar)
}

func (b *bench) sayFit(fit shrinkage.Fit, state string, sofar float64) {
	switch fit {
	case shrinkage.Lifts:
		b.note("A slip that shrinks less is pushed off by the pot: use one with more ball clay in it, or wait until the pot is drier.")
	case shrinkage.Risks, shrinkage.Peels:
		b.note("Put it on earlier, while the pot has more to shrink, and thinner; or let calcined clay stand in for part of the clay in the slip.")
	}
	if state != "" {
		b.note("The state counts as {} shrunk so far, a common figure for a clay that shrinks 12\u00a0% in all. Your own bars know better.", withUnit(b.text(sofar, 2), "%"))
	}
	if state == "bisque" {
		b.note("No sum makes an ordinary slip hold on bisque: it does not bond to fired clay. Only an engobe made for bisque does.")
	}
}
