package course

import "slipbook/generator/source"

// stateIDs are the states of the clay and its surface, in the order in which a
// pot passes through them. Drawings, addresses and the planner go by these.
var stateIDs = []string{"wet", "leather-hard", "bone-dry", "bisque", "unfired-glaze", "glaze-fired"}

// The kinds of medium, as decoration.yaml writes them.
const (
	clayKind    = "clay"
	colourKind  = "colour"
	powderKind  = "powder"
	glazeKind   = "glaze"
	onGlazeKind = "on-glaze"
	resistKind  = "resist"
)

// What a `never` rests on, as the table writes it.
const (
	physics = "physics"
	trade   = "trade"
	house   = "house"
)

// The kinds of exception, as decoration.yaml writes them.
const (
	productKind = "product"
	recipeKind  = "recipe"
	bodyKind    = "body"
	houseKind   = "house"
)

// yes reads a value that is yes or no.
func yes(v source.Value) bool { return v.Choice("yes", "no") == "yes" }

// shortWords is how many words fit under a state's drawing on a phone, and
// into a field of the printed chart.
const shortWords = 6

// loose reports whether a medium of a kind lies as clay or powder that a firing
// must fix.
func loose(kind string) bool { return kind == clayKind || kind == colourKind || kind == powderKind }

// glazedState is the state that is reached by putting something on instead of
// by a transition.
const glazedState = "unfired-glaze"
