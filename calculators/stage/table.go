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

import "slipbook/calculators/words"

// Verdict reports whether something may be done.
type Verdict uint8

// The verdicts, from allowed to forbidden: a larger one is worse.
const (
	Yes Verdict = iota
	Label
	Risky
	Never
)

// Basis says what a verdict of Never rests on.
type Basis uint8

// The bases, from the one that nothing gets round to the one that the
// instructor may lift.
const (
	Physics Basis = iota // nothing gets round it
	Trade                // potters do not, with an exception that the reason names
	House                // a rule of this studio
	Unsaid               // of a conflict alone: no single row of the table forbids it for good
)

// Who may do something.
type Who uint8

// The people, from free to forbidden to students: a larger one is stricter.
const (
	Student        Who = iota
	WithInstructor     // a student, with the instructor beside
	Instructor         // the instructor works, and students watch
)

// Hazards is a set of hazards of the table, by bit.
type Hazards uint64

// MostHazards is how many hazards a table may have.
const MostHazards = 64

// Hazard is one thing that can hurt somebody, in the short form for a plan.
type Hazard struct {
	ID     string
	Title  string
	Short  string   // what to do, at most twelve words
	Wear   []string // what to put on, each in a few words
	Place  string   // where to work, in words; empty = anywhere
	Lesson string   // address of the page that teaches it, from the home page; may be empty
	Health bool     // it makes people ill, at once or in time; a way with one more of these is never offered instead
}

// Rule is one verdict of the table with its words.
type Rule struct {
	Verdict Verdict
	Basis   Basis   // of Never
	Reason  string  // a sentence
	Fault   string  // the usual fault; may be empty for Yes
	Remedy  string  // what then; may be empty for Yes
	Ask     string  // what to ask before this is done, of Label instead of the question to the label; may be empty
	Hazards Hazards // beside those of the medium, the technique or the step
	Who     Who
	Part    uint8  // of a state with parts: the part that it wants, from 1; 0 = any
	Wait    string // of a technique that takes away: when to begin, a sentence; may be empty
}

// Cell is what a technique says of one state: the first case that is for a
// medium counts.
type Cell []Case

// Case is a rule for some media.
type Case struct {
	Only []string // base ids of media; empty = all
	Rule
}

// none answers for a cell that says nothing of a medium.
var none = Rule{Verdict: Never}

// For is the rule of a cell for a medium, by base id.
func (c Cell) For(base string) *Rule {
	for i := range c {
		if len(c[i].Only) == 0 || has(c[i].Only, base) {
			return &c[i].Rule
		}
	}
	return &none
}

// State is a state of the clay or of its surface.
type State struct {
	ID, Name string
	Words    []string // what a person may call it beside its name, lower case
	Parts    []Part   // in the order in which the clay passes through them; of most states none
}

// Part is a part of a state, such as soft leather-hard.
type Part struct{ ID, Name, Tell string }

// Kind tells how a medium behaves between firings.
type Kind uint8

// The kinds of medium.
const (
	Clay    Kind = iota // slip, engobe: part of the pot once the bisque firing is over
	Colour              // underglaze: fixed by a firing at bisque heat
	Powder              // stain and oxide wash: loose until the glaze firing
	Glaze               // makes the surface "unfired glaze"
	OnGlaze             // on the fired glaze, in a firing of its own
	Resist              // keeps the next coat off until a firing burns it away, or until it is peeled off
)

// Fixing reports whether a firing at bisque heat fixes a medium.
type Fixing uint8

// The answers.
const (
	Fixed   Fixing = iota
	Loose          // never: it stays loose until the glaze melts over it
	RubTest        // it depends on the flux; loose until a rub has shown otherwise
	Peeled         // of a Resist: a skin that comes off by hand, before any firing
)

// Medium is something that is put on.
type Medium struct {
	ID      string
	Base    string // of a product or recipe card: the id of the medium it is one of; else its own
	Name    string
	Words   []string // what a person may type for it, lower case; the name is always understood
	Kind    Kind
	Look    string  // media of the same look may stand in for each other; empty = none does
	Best    int     // the preferred state
	Heat    int     // of OnGlaze: firings go from the largest to the smallest
	Food    bool    // may be a food surface once it is under a tested glaze, or is one itself
	Hides   bool    // of Glaze: opaque, so that what lies under it is not seen
	Fixed   Fixing  // of what lies under a glaze, and of a Resist
	Hazards Hazards // in every state
	Who     Who
	Recipes []Recipe // by which the studio mixes it; of most media none
	Mixing  string   // what weighing and mixing them call for, in sentences
	Wet     []string // what such a mix still does to whoever handles it wet, beside Hazards, a text each; steps with the medium say it
	On      []Rule   // by state
}

// Technique is a way of putting on or working a medium.
type Technique struct {
	ID      string
	Name    string
	Words   []string // what a person may type for it: "by stencil", "wiped back"
	With    []string // base ids of the media it is for; empty = all
	Best    int      // the preferred state; -1 = none
	Coats   bool     // it lays on a whole, even coat, as a glaze is put on
	Takes   bool     // it takes away from the coat that is there instead of laying one on
	Bare    bool     // it may be done to the clay itself, without a medium
	Hazards Hazards  // in every state
	Who     Who
	On      []Cell // by state
}

// Over is what the table says of one medium on another while that one is not
// yet fixed by a firing.
type Over struct {
	Under, Above string   // base ids of media
	Unless       []string // techniques with which it is Never until the under one is fixed
	Fired        bool     // it holds though the under one has been fired on, as long as no glaze covers it
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
	Rule            // Reason says why; Fault and Remedy what goes wrong; Ask what to ask before
}

// Metals are the words of what is harmful as a metal: they are never dropped
// from what a person typed.
type Metals struct {
	Words     []string
	Unplanned []string // words of those that no plan is made with
	NeverFood []string // of Words: those that no pot for food or drink may hold
	NotOver   []string // techniques that do not go over a loose coat which a student does not lay on alone
	Rule               // Ask, Hazards and Who count, and Reason, of NotOver
}

// Phrase is a word that stands for a whole wish: "majolica" for a white glaze
// and a wash on it.
type Phrase struct {
	Words  []string
	Layers string // in the words of the table
	Ask    string // instead of Layers, of a word with two meanings: which of them is meant
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
	Words       *words.Table // what plans say; it does not travel with the table
	States      []State
	Media       []Medium
	Techniques  []Technique
	Overs       []Over
	Transitions []Transition
	Bodies      []Body
	Firing      string // the sentence for the on-glaze firing: "Fire it to the cone on its label."
	Drying      string // what happens to on-glaze colour until then, a sentence
	Fire        Rule   // of that firing: Hazards and Who count, and Reason for the drying
	Hazards     []Hazard
	Metals      Metals
	Phrases     []Phrase
	Reports     string // which reports of leach tests answer, in sentences, for pots that are for food; may be empty
}
