// Package stage answers the question a student has at the bench: my pot is in
// this state and I want these layers on it; what may I do, in which order, and
// what must I not do? It knows no ceramics of its own. Every rule is a row of
// the course's decoration table, which an instructor edits; this package only
// searches it. It exists apart from the catalog so that the search can be
// tested against brute force on tables that no pottery ever had.
//
// It is part of the WebAssembly reactor: no fmt, no reflection, no tables of
// Unicode.
package stage

// Verdict says whether something may be done.
type Verdict uint8

// The verdicts, from allowed to forbidden: a larger one is worse.
const (
	Yes Verdict = iota
	Label
	Risky
	Never
)

// Rule is one verdict of the table with its words.
type Rule struct {
	Verdict Verdict
	Physics bool   // of Never: no instructor can loosen it
	Reason  string // a sentence
	Fault   string // the usual fault; may be empty for Yes
	Remedy  string // what then; may be empty for Yes
}

// State is a state of the clay or of its surface.
type State struct{ ID, Name string }

// Kind tells how a medium behaves between firings.
type Kind uint8

// The kinds of medium.
const (
	Clay    Kind = iota // slip, engobe: part of the pot once the bisque firing is over
	Colour              // underglaze: fixed by a firing at bisque heat
	Powder              // stain and oxide wash: loose until the glaze firing
	Glaze               // makes the surface "unfired glaze"
	OnGlaze             // on the fired glaze, in a firing of its own
)

// Medium is something that is put on.
type Medium struct {
	ID    string
	Base  string // of a product or recipe card: the id of the medium it is one of; else its own
	Name  string
	Words []string // what a person may type for it, lower case; the name is always understood
	Kind  Kind
	Look  string // media of the same look may stand in for each other; empty = none does
	Best  int    // the preferred state
	Heat  int    // of OnGlaze: firings go from the largest to the smallest
	Food  bool   // may be a food surface once it is under a tested glaze, or is one itself
	Hides bool   // of Glaze: opaque, so that what lies under it is not seen
	On    []Rule // by state
}

// Technique is a way of putting on or working a medium.
type Technique struct {
	ID    string
	Name  string
	Words []string // what a person may type for it: "by stencil", "wiped back"
	With  []string // ids of the media it is for; empty = all
	On    []Rule   // by state
}

// Over is what the table says of one medium on another while that one is not
// yet fixed by a firing.
type Over struct {
	Under, Above string   // base ids of media
	Unless       []string // techniques with which it is Never until the under one is fixed
	Rule
}

// Move tells what a transition does.
type Move uint8

// The moves between states that put nothing on.
const (
	Dry    Move = iota // clay dries
	Bisque             // the first firing
	Harden             // bisque heat again, to fix colour
	Strip              // unfired glaze washed off a bisque pot
	Fire               // the glaze firing, or the last firing of a bare pot
)

// Transition is a way from one state to another.
type Transition struct {
	ID       string
	Move     Move
	From, To int    // states
	Name     string // what to do, a sentence: "Let it stiffen until a nail marks it."
	Rule            // Reason says why; Fault and Remedy what goes wrong
}

// Body is a clay body with its own exceptions from the table.
type Body struct {
	ID      string
	Name    string
	Changes []Change
}

// Change is the rule of one medium in one state for a body.
type Change struct {
	Medium string // base id
	State  int
	Rule
}

// Table is everything the planner may count on.
type Table struct {
	States      []State
	Media       []Medium
	Techniques  []Technique
	Overs       []Over
	Transitions []Transition
	Bodies      []Body
	Firing      string // the sentence for the on-glaze firing: "Fire it to the cone on its label."
}
