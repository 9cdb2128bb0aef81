package words

// Error is a refusal by the id of its sentence, for whoever has the words.
type Error struct {
	ID    string
	Fills []string // names of fill-ins, each with its text after it
}

// NewError makes the refusal of that id. fills are names of fill-ins, each with
// its text after it.
func NewError(id string, fills ...string) error { return Error{id, fills} }

// Error returns the id: what a person reads has to be looked up.
func (e Error) Error() string { return e.ID }
