//go:build unix

package main

import (
	"errors"
	"fmt"
	"slices"

	"slipbook/testdata/mutations/table"
)

// enough is how many of a hundred changes have to be noticed.
const enough = 90

// tally counts changes.
type tally struct{ noticed, all int }

// result is what became of the changes.
type result struct {
	rooms     map[string]*tally
	all, safe tally
	failures  []error
}

// add prints what became of one change and counts it.
func (r *result) add(m table.Mutant, noticed bool, err error) {
	word := "NOT NOTICED"
	switch {
	case err != nil:
		word = "ERROR"
		r.failures = append(r.failures, err)
	case noticed:
		word = "noticed"
	}
	fmt.Printf("%-12s %s%s\n", word, m.Name, mark(m))
	if err != nil {
		return
	}
	if r.rooms == nil {
		r.rooms = map[string]*tally{}
	}
	if r.rooms[m.Room()] == nil {
		r.rooms[m.Room()] = &tally{}
	}
	r.rooms[m.Room()].count(noticed)
	r.all.count(noticed)
	if m.Safety {
		r.safe.count(noticed)
	}
}

// count counts one change.
func (t *tally) count(noticed bool) {
	t.all++
	if noticed {
		t.noticed++
	}
}

// end prints the numbers, and returns an error where they are not good enough.
func (r *result) end() error {
	var rooms []string
	for room := range r.rooms {
		rooms = append(rooms, room)
	}
	slices.Sort(rooms)
	fmt.Println()
	for _, room := range rooms {
		fmt.Printf("%3d of %3d  %s\n", r.rooms[room].noticed, r.rooms[room].all, room)
	}
	fmt.Printf("%3d of %3d  in all\n%3d of %3d  about safety\n", r.all.noticed, r.all.all, r.safe.noticed, r.safe.all)
	failures := r.failures
	if r.all.noticed*100 < r.all.all*enough {
		failures = append(failures, fmt.Errorf("fewer than %d in a hundred are noticed: a test is missing where it says NOT NOTICED", enough))
	}
	if r.safe.noticed < r.safe.all {
		failures = append(failures, errors.New("a change that is about safety is not noticed"))
	}
	return errors.Join(failures...)
}
