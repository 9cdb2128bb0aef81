//go:build judges

package trial

import (
	"math/rand/v2"
	"os"
	"testing"
	"time"

	"slipbook/calculators/catalog"
	"slipbook/calculators/catalog/catalogtest"
	engine "slipbook/calculators/form"
	"slipbook/generator/course"
	"slipbook/generator/proof"
)

// settings returns the demo course's own constants, as its pages use them.
func settings(t *testing.T) engine.Settings {
	t.Helper()
	c, findings := new(course.Reader).Load(os.DirFS(root + "/content"))
	if findings.Stop() {
		t.Fatalf("the demo course has errors: %v", findings)
	}
	s := c.PageAnswers()
	s.Table = proof.Table(c, c.Language, time.Now().UTC().Format(time.DateOnly)) // as the program that publishes it
	return s
}

// chance makes requests for one calculator, the same ones in every run.
type chance struct {
	random   *rand.Rand
	calc     *engine.Calculator
	settings engine.Settings
}

// newChance starts the row of requests that belongs to a calculator.
func newChance(c *engine.Calculator, s engine.Settings) *chance {
	seed := uint64(0)
	for _, letter := range []byte(c.Name) {
		seed = 31*seed + uint64(letter)
	}
	return &chance{rand.New(rand.NewPCG(seed, 20)), c, s}
}

// good returns the next request that the calculator can answer.
func (c *chance) good(t *testing.T) []engine.Setting {
	t.Helper()
	for range 1000 {
		given := catalogtest.Sensible(c.random, c.calc)
		if a := catalog.Solve(c.calc.Name, given, c.settings); len(a.Errors) == 0 && len(a.Outputs) > 0 {
			return given
		}
	}
	t.Fatalf("%s: a thousand chance requests, none of them good", c.calc.Name)
	return nil
}
