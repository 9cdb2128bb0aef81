package house

import (
	"slices"
	"testing"

	"slipbook/testdata/mutations/table"
)

// How many changes there are at least in a table that is not read wrong, and in each
// package that it names.
const (
	fewest        = 100
	fewestOfARoom = 4
)

// TestChangesToTryTheTestsCanBeMade finds changes that the code has outgrown: they
// would be tried no more, and the trial would say so only to whoever starts it.
func TestChangesToTryTheTestsCanBeMade(t *testing.T) {
	all, err := table.Read(root)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < fewest {
		t.Fatalf("only %d changes found: this test looks at the wrong place", len(all))
	}
	var rooms []string
	for _, p := range module(t) {
		rooms = append(rooms, "./"+p.short())
	}
	count := map[string]int{}
	for _, m := range all {
		count[m.Room()]++
		if _, _, err := m.Changed(root); err != nil {
			t.Errorf("%v: change it to what stands there now, or take it out", err)
		}
		for _, name := range m.Packages {
			if !slices.Contains(rooms, name) {
				t.Errorf("%s:%d: %s wants the tests of %s, which is no package", table.File, m.Line, m.Name, name)
			}
		}
	}
	for room, n := range count {
		if n < fewestOfARoom {
			t.Errorf("%s: %d changes in %s, and not %d: one alone says little", table.File, n, room, fewestOfARoom)
		}
	}
}
