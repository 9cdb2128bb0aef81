//go:build judges

package trial

import (
	"slices"
	"testing"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
	"slipbook/calculators/quantity"
)

// traits names what a calculator's form has that scripts treat otherwise.
func traits(c *engine.Calculator) []string {
	var all []string
	has := func(name string, there bool) {
		if there && !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	has("a table", len(c.Columns) > 0)
	has("steps", c.Steps)
	has("a sheet of outputs", len(c.Weigh) > 0)
	has("a sheet of rows", c.WeighRows)
	has("layers", c.NeedsTable)
	has("a drawing", c.Draw != nil)
	has("what comes next", len(c.Next) > 0)
	has("a hazard of some answers", len(c.MayHurt) > 0)
	for _, in := range c.Inputs {
		has("a list of numbers", in.List && !in.Words)
		has("a list of words", in.List && in.Words)
		has("words", in.Words && !in.List)
		has("choices", len(in.Choices) > 0)
		has("clays", in.Bodies)
		has("units", len(quantity.Units(in.Kind)) > 1)
		has("alternatives", in.Group != "" && in.Side == "")
		has("alternatives of several boxes", in.Side != "")
		has("more boxes", !in.First)
		has("a constant", in.Default != "")
	}
	return all
}

// eachKind runs a test on few calculators that together have every trait, twice where
// two have it: on what all forms do by the same code. What a calculator has of its own
// is tried on each.
func eachKind(t *testing.T, test func(t *testing.T, c *engine.Calculator)) {
	inTurn(t, ofEachKind(), test)
}

// ofEachKind picks, again and again, the first calculator with the most traits that
// fewer than two had before.
func ofEachKind() []*engine.Calculator {
	var picked []*engine.Calculator
	seen := map[string]int{}
	rest := slices.Clone(catalog.In("en-GB"))
	fresh := func(c *engine.Calculator) (n int) {
		for _, name := range traits(c) {
			if seen[name] < 2 {
				n++
			}
		}
		return n
	}
	for len(rest) > 0 {
		best := slices.MaxFunc(rest, func(a, b *engine.Calculator) int { return fresh(a) - fresh(b) })
		if fresh(best) == 0 {
			break
		}
		picked = append(picked, best)
		rest = slices.DeleteFunc(rest, func(c *engine.Calculator) bool { return c == best })
		for _, name := range traits(best) {
			seen[name]++
		}
	}
	return picked
}
