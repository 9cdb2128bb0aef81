package desk

import "unicode/utf8"

// What a box says at the most that takes half the width of a phone, in letters. With
// more, two side by side would be as high as one under the other.
const (
	pairedLabel = 34
	pairedHelp  = 90
	pairedUnit  = 4
)

// pair marks the boxes that stand two to a row on a phone: neighbours of which each is
// one number, with little said of it. Those of a group stand in it, each side by itself.
func pair(choices []Choice) {
	var last *Box
	for _, c := range choices {
		for _, side := range c.Sides {
			if c.Several() {
				last = nil
			}
			for n := range side {
				last = pairNext(last, &side[n])
			}
		}
		if c.Several() {
			last = nil
		}
	}
}

// pairNext pairs a box with the one before it, if that is short and has no other yet.
// It returns the box that the next one may be paired with.
func pairNext(last, b *Box) *Box {
	switch {
	case !b.short():
		return nil
	case last == nil:
		return b
	}
	last.Paired, b.Paired = true, true
	return nil
}

// short reports whether a box can be half as wide as a phone.
func (b *Box) short() bool {
	return len(b.Values) == 1 && !b.List && !b.Words && b.Choices == nil && b.Finds == "" && len(b.Unit) <= pairedUnit &&
		utf8.RuneCountInString(b.Label) <= pairedLabel && utf8.RuneCountInString(b.Help) <= pairedHelp
}
