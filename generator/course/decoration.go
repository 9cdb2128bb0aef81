package course

// Decoration is the table of media by clay state: decoration.yaml. Every pair
// of a medium and a state has a verdict and its reason; the pages' clay-state
// strip, the state pages and later the planner all come from it.
type Decoration struct {
	States []State  // in the order a pot passes through them
	Media  []Medium // in the order the table prints them
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
	About string // one sentence
	Best  string // id of the state preferred when several are allowed
	On    map[string]Pair
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
	Reason  string // never empty
	Fault   string // the usual fault; empty only for Yes
	Remedy  string // what then; empty only for Yes
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
