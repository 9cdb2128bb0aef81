package register

import (
	"slices"
	"strconv"

	"slipbook/generator/course"
)

// narrowing is what the wall may be narrowed by: what hangs there, and nothing else.
type narrowing struct{ Bodies, Coats, Clears, Places []offer }

// offer is one thing to choose: as the address has it, and in words.
type offer struct{ Value, Words string }

// narrowing lists bodies and clears in the order in which the course has them, bare
// first, coats by their number, and places in the kiln by the alphabet.
func (r *Register) narrowing() narrowing {
	c, n := r.reading.Course, narrowing{}
	hung := func(has func(t *course.Tile) bool) bool { return slices.ContainsFunc(c.Tiles, has) }
	for _, b := range c.Bodies {
		if hung(func(t *course.Tile) bool { return t.Body == b.ID }) {
			n.Bodies = append(n.Bodies, offer{b.ID, b.Name})
		}
	}
	if hung(func(t *course.Tile) bool { return t.Clear == course.NoClear }) {
		n.Clears = append(n.Clears, offer{course.NoClear, r.Say("wall-no-clear")})
	}
	for _, m := range c.Materials {
		if hung(func(t *course.Tile) bool { return t.Clear == m.ID }) {
			n.Clears = append(n.Clears, offer{m.ID, m.Name})
		}
	}
	var coats []int
	var places []string
	for _, t := range c.Tiles {
		coats, places = append(coats, t.Coats), append(places, t.Place)
	}
	slices.Sort(coats)
	for _, count := range slices.Compact(coats) {
		if count > 0 { // else nobody wrote it down
			n.Coats = append(n.Coats, offer{strconv.Itoa(count), strconv.Itoa(count)})
		}
	}
	slices.Sort(places)
	for _, place := range slices.Compact(places) {
		if place != "" {
			n.Places = append(n.Places, offer{place, place})
		}
	}
	return n
}
