package course

import "slices"

// Decoration is the table of media by clay state: the program's own, with
// what decoration.yaml and hazards.yaml of the course change. Every pair of a
// medium and a state has a verdict and its reason; the pages' clay-state strip,
// the state pages, the chart and the planner all come from it.
type Decoration struct {
	States      []State  // in the order a pot passes through them
	Media       []Medium // in the order the table prints them
	Techniques  []Technique
	Overs       []Over
	Transitions []Transition
	Exceptions  []Exception
	Firing      Firing   // what to do in an on-glaze firing
	Hazards     []Hazard // in the order in which pages print them
	Places      []Place
	Metals      Metals
	Phrases     []Phrase
	Origin      Origin

	program []map[string]bool // the texts of the program's own files that the course keeps
}

// Origin counts the rows of the table by who wrote them. A row is one verdict:
// of a medium or technique in a state, of one medium on another, of an
// exception; or a way from state to state.
type Origin struct {
	Program int      // rows of the program's own table that the course leaves as they are
	Course  int      // rows that the course's files say
	Names   []string // of what the course's rows are about, each once, in order
}

// State is a state of the clay or its surface.
type State struct {
	ID      string   // "leather-hard"
	Name    string   // "Leather-hard"
	Tell    string   // how to tell, for a student with a pot in hand
	Short   string   // at most six words, under its drawing
	Between string   // what to do when the pot is between this state and the next; may be empty
	Words   []string // what a person may call it beside its name, lower case
	Parts   []Part   // of leather-hard: soft, firm, stiff, in the order in which clay passes through them
}

// Part is a part of a state, such as soft leather-hard.
type Part struct{ ID, Name, Tell string }

// Who may do something.
type Who string

// The people, from free to forbidden to students. An empty Who is a student.
const (
	Student        Who = "student"
	WithInstructor Who = "with-instructor" // a student, with the instructor beside
	Instructor     Who = "instructor"      // the instructor works, and students watch
)

// Care is what a row of the table says of safety.
type Care struct {
	Hazards []string // ids
	Who     Who      // empty = not said
}

// Medium is something that is put on.
type Medium struct {
	ID    string
	Name  string
	About string          // one sentence
	Words []string        // what a student may type for it beside its name, lower case
	Kind  string          // "clay", "colour", "powder", "glaze", "on-glaze" or "resist": how it behaves between firings
	Look  string          // media of one look may stand in for each other in a plan; may be empty
	Heat  int             // of on-glaze media: their firings go from the largest to the smallest
	Food  bool            // may be on a food surface: under a tested glaze, or being one
	Hides bool            // an opaque glaze
	Fixed Fixing          // of the kinds clay, colour and powder
	Best  string          // id of the state preferred when several are allowed
	On    map[string]Pair // by state, with the rules of the house in it
	Care                  // in every state
}

// Fixing says whether a firing at bisque heat fixes a medium.
type Fixing string

// The answers.
const (
	FixedYes Fixing = "yes"
	FixedNo  Fixing = "no"     // it stays loose until the glaze melts over it
	FixedRub Fixing = "rub"    // it depends on the flux: a rub tells
	Peeled   Fixing = "peeled" // of a resist: it comes off by hand before any firing
)

// Verdict says whether a medium may go on in a state.
type Verdict string

// The verdicts, from allowed to forbidden.
const (
	Yes   Verdict = "yes"
	Label Verdict = "label" // only if the product's label or the studio's recipe card says so
	Risky Verdict = "risky"
	Never Verdict = "never"
)

// Pair is what the table says of one medium in one state.
type Pair struct {
	Verdict Verdict
	Rule    string // for Never: "physics", "trade" (potters do not, the reason names the exception) or "house"
	Short   string // the reason in at most six words, for the chart
	Reason  string // never empty
	Fault   string // the usual fault; empty only for Yes
	Remedy  string // what then; empty only for Yes
	Ask     string // what to ask before it is done; of Label instead of the question to the label; may be empty
	Part    string // in a state with parts: id of the part that it wants; empty = any
	Care           // beside that of the medium or technique
}

// Cell is what the table says of one technique in one state: the first case
// that is for a medium counts.
type Cell []Case

// Case is a pair for some media.
type Case struct {
	Only []string // ids of media; empty = all that no case before is for
	Wait string   // of a technique that takes away: when to begin in this state; empty = as the technique says
	Pair
}

// For returns what a cell says of a medium; the zero Pair where it says
// nothing.
func (c Cell) For(medium string) Pair {
	for _, one := range c {
		if len(one.Only) == 0 || slices.Contains(one.Only, medium) {
			return one.Pair
		}
	}
	return Pair{}
}

// FindTechnique finds the technique with this id.
func (d *Decoration) FindTechnique(id string) (*Technique, bool) {
	for i := range d.Techniques {
		if d.Techniques[i].ID == id {
			return &d.Techniques[i], true
		}
	}
	return nil, false
}

// FindState finds the state with this id.
func (d *Decoration) FindState(id string) (*State, bool) {
	for i := range d.States {
		if d.States[i].ID == id {
			return &d.States[i], true
		}
	}
	return nil, false
}

// FindMedium finds the medium with this id.
func (d *Decoration) FindMedium(id string) (*Medium, bool) {
	for i := range d.Media {
		if d.Media[i].ID == id {
			return &d.Media[i], true
		}
	}
	return nil, false
}

// FindPlace finds the place with this id.
func (d *Decoration) FindPlace(id string) (*Place, bool) {
	i := slices.IndexFunc(d.Places, func(p Place) bool { return p.ID == id })
	if i < 0 {
		return nil, false
	}
	return &d.Places[i], true
}

// Technique is a way of putting on a medium or of working it.
type Technique struct {
	ID    string
	Name  string
	About string
	Words []string        // what a student may type for it: "by stencil", "wiped back"
	With  []string        // ids of the media it is for; empty = all
	Best  string          // id of the preferred state; may be empty
	Coats bool            // it lays on a whole, even coat, as a glaze is put on
	Takes bool            // it takes away from the coat that is there instead of laying one on
	Bare  bool            // it may be done to the clay itself, without a medium
	Wait  string          // of one that takes away: when to begin, a sentence; may be empty
	On    map[string]Cell // by state, with the rules of the house in it
	Care                  // in every state
}

// Over is what may lie on what, most of it while the under one is not yet
// fired.
type Over struct {
	Under, Above string   // ids of media
	Unless       []string // ids of techniques with which it must wait until the under one is fired on
	Fired        bool     // it holds though the under one has been fired on, as long as no glaze covers it
	Pair
}

// Transition is a way from one state to another that puts nothing on.
type Transition struct {
	ID       string
	Move     string // "dry", "bisque", "harden", "strip" or "fire"
	From, To string // ids of states
	Name     string // what to do, a sentence
	Reason   string
	Fault    string
	Remedy   string
	Ask      string // what to ask before; may be empty
	Care
}

// Firing is an on-glaze firing.
type Firing struct {
	Name    string // what to do, a sentence: "Fire it to the cone on its label."
	Drying  string // what happens to the colour until then, a sentence
	Because string // why; may be empty
	Care
}

// Hazard is one thing that can hurt somebody. It stands once, in hazards.yaml,
// and is named by id everywhere else.
type Hazard struct {
	ID     string
	Title  string
	Harm   string   // what happens, one or two sentences
	Do     string   // what to do, whole
	Short  string   // what to do, in at most twelve words
	Mark   []string // the same in a word or two, beside a verdict on the chart; empty = the title stands there
	Wear   []string // what to put on, each in a few words
	Place  string   // id of the place to work at; may be empty
	Lesson string   // content path of the page that teaches it; may be empty
	Health bool     // it makes people ill, at once or in time

	Dry      bool     // it is of powder alone: what is wet in the bucket no longer has it
	UntilWet []string // what of Wear comes off again when all of it is wet
}

// Place is where something is done.
type Place struct {
	ID   string
	Name string // with its preposition: "in the spray booth with its fan on"
}

// Metals are the words for what is harmful as a metal, with what they call
// for.
type Metals struct {
	Words      []string
	Also       []string // formulas and names of minerals for them, which are understood and not printed
	Unplanned  []string // words of metals that no plan is made with
	RinseApart []string // metals of materials whose rinse water has a first bucket of its own
	NeverFood  []string // of Words and Also: those that no pot for food or drink may hold
	NotOver    []string // techniques that do not go over a loose coat which students do not lay on alone
	Reason     string   // of NotOver
	Ask        string
	Care
}

// Phrase is a word that stands for a whole wish, or that has two meanings.
type Phrase struct {
	Words  []string
	Layers string // what it stands for, in words of the table; or
	Ask    string // the question which of its meanings is meant
}

// Exception changes the table for one product, recipe card or clay body, or
// for the whole house. What a house rule says already stands in Medium.On and
// Technique.On; the others hold for their own product, recipe or body alone.
type Exception struct {
	ID        string
	Kind      string          // "product", "recipe", "body" or "house"
	Name      string          // what a student calls it; of a body: its name in course.yaml
	Body      string          // of a body: its id in course.yaml
	Words     []string        // of a product or recipe: what a student may type for it, lower case
	Medium    string          // id of the medium it is about
	Technique string          // of a house rule about a technique, instead of Medium
	Hides     bool            // of a product or recipe that is a glaze: an opaque one
	Fixed     Fixing          // of a product or recipe: whether bisque heat fixes it; empty = as its medium
	Best      string          // of a product or recipe: id of the state it likes best; empty = as its medium
	On        map[string]Pair // only the states that differ
	Care                      // of a product or recipe: beside that of its medium
}
