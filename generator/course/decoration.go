package course

// Decoration is the table of media by clay state: decoration.yaml. Every pair
// of a medium and a state has a verdict and its reason; the pages' clay-state
// strip, the state pages, the chart and the planner all come from it.
type Decoration struct {
	States      []State  // in the order a pot passes through them
	Media       []Medium // in the order the table prints them
	Techniques  []Technique
	Overs       []Over
	Transitions []Transition
	Exceptions  []Exception
	Firing      string // what to do in an on-glaze firing, a sentence
}

// State is a state of the clay or its surface.
type State struct {
	ID      string // "leather-hard"
	Name    string // "Leather-hard"
	Tell    string // how to tell, for a student with a pot in hand
	Short   string // at most six words, under its drawing
	Between string // what to do when the pot is between this state and the next; may be empty
}

// Medium is something that is put on.
type Medium struct {
	ID    string
	Name  string
	About string          // one sentence
	Words []string        // what a student may type for it beside its name, lower case
	Kind  string          // "clay", "colour", "powder", "glaze" or "on-glaze": how it behaves between firings
	Look  string          // media of one look may stand in for each other in a plan; may be empty
	Heat  int             // of on-glaze media: their firings go from the largest to the smallest
	Food  bool            // may be on a food surface: under a tested glaze, or being one
	Hides bool            // an opaque glaze
	Best  string          // id of the state preferred when several are allowed
	On    map[string]Pair // by state, with the rules of the house in it
}

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
	Rule    string // for Never: "physics" or "house"
	Short   string // the reason in at most six words, for the chart
	Reason  string // never empty
	Fault   string // the usual fault; empty only for Yes
	Remedy  string // what then; empty only for Yes
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

// Technique is a way of putting on a medium or of working it.
type Technique struct {
	ID    string
	Name  string
	About string
	Words []string        // what a student may type for it: "by stencil", "wiped back"
	With  []string        // ids of the media it is for; empty = all
	Best  string          // id of the preferred state; may be empty
	On    map[string]Pair // by state, with the rules of the house in it
}

// Over is what may lie on what while the under one is not yet fired.
type Over struct {
	Under, Above string   // ids of media
	Unless       []string // ids of techniques with which it must wait until the under one is fired on
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
	Best      string          // of a product or recipe: id of the state it likes best; empty = as its medium
	On        map[string]Pair // only the states that differ
}
