package press

import (
	"slices"

	"slipbook/generator/course"
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
	Kind string // key of its words
	Name string
	Said bool // a house rule: the pair beside it is already the changed one
	course.Pair
}

// exceptions lists what changes the pair of a medium, or else of a technique,
// in a state.
func (p *Press) exceptions(medium, technique, state string) []exception {
	var all []exception
	for _, e := range p.table.Exceptions {
		pair, here := e.On[state]
		if here && e.Medium == medium && e.Technique == technique {
			all = append(all, exception{exceptionKinds[e.Kind], e.Name, e.Kind == ofHouse, pair})
		}
	}
	return all
}

// goesWith says whether a technique is for a medium.
func goesWith(t course.Technique, medium string) bool {
	return len(t.With) == 0 || slices.Contains(t.With, medium)
}
