package table

import (
	"slices"

	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// The kinds of exception, as the decoration table writes them.
const (
	ofProduct = "product"
	ofRecipe  = "recipe"
	ofBody    = "body"
	ofHouse   = "house"
)

// exceptionKinds are the keys of the words for the kinds of exception.
var exceptionKinds = map[string]string{
	ofProduct: "exception-product",
	ofRecipe:  "exception-recipe",
	ofBody:    "exception-body",
	ofHouse:   "exception-house",
}

// exception is what one product, recipe card, clay body or house rule changes
// about one pair of the table.
type exception struct {
	Kind   string // key of its words
	Name   string
	Safety care.Care
	Said   bool // a house rule: the pair beside it is already the changed one
	course.Pair
}

// exceptions lists what changes the pair of a medium, or else of a technique,
// in a state, for a place.
func (r *Table) exceptions(at imprint.Place, medium, technique, state string) []exception {
	var all []exception
	for _, e := range r.Decoration.Exceptions {
		pair, here := e.On[state]
		if here && e.Medium == medium && e.Technique == technique {
			all = append(all, exception{exceptionKinds[e.Kind], e.Name, r.exceptionCare(at, e, pair), e.Kind == ofHouse, pair})
		}
	}
	return all
}

// exceptionCare is the safety of what an exception allows: of a product or
// recipe card, its own as well.
func (r *Table) exceptionCare(at imprint.Place, e course.Exception, pair course.Pair) care.Care {
	if pair.Verdict == course.Never {
		return care.Care{}
	}
	rows := []course.Care{e.Care, pair.Care}
	if m, ok := r.Decoration.FindMedium(e.Medium); ok {
		rows = append(rows, m.Care)
	}
	if t, ok := r.Decoration.FindTechnique(e.Technique); ok {
		rows = append(rows, t.Care)
	}
	return r.Care(at, rows...)
}

// GoesWith reports whether a technique is for a medium.
func GoesWith(t course.Technique, medium string) bool {
	return len(t.With) == 0 || slices.Contains(t.With, medium)
}
