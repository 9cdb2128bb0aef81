package form

import "slipbook/calculators/letters"

// choose settles the groups of alternatives: one side of each may be given.
// Inputs of the other sides are marked unused, so that their defaults do not
// stand in.
func (e *Evaluation) choose() {
	for _, group := range e.groups() {
		members := e.members(group)
		sides := e.givenSides(members)
		switch {
		case len(sides) > 1:
			e.refuseBoth(members)
		case len(sides) == 1:
			e.useOnly(sides[0], members)
		case members[0].Needed && !anyDefault(members):
			e.Refuse(members[0].Name, "form.give-one", "alternatives", e.alternatives(members))
		}
	}
}

func (e *Evaluation) groups() []string {
	var groups []string
	for _, in := range e.Calculator.Inputs {
		if in.Group != "" && !letters.In(groups, in.Group) {
			groups = append(groups, in.Group)
		}
	}
	return groups
}

func (e *Evaluation) members(group string) []*Input {
	var members []*Input
	for i := range e.Calculator.Inputs {
		if e.Calculator.Inputs[i].Group == group {
			members = append(members, &e.Calculator.Inputs[i])
		}
	}
	return members
}

// side names the side of an input; one that stands alone is its own side.
func (in *Input) side() string {
	if in.Side == "" {
		return in.Name
	}
	return in.Side
}

func (e *Evaluation) givenSides(members []*Input) []string {
	var sides []string
	for _, in := range members {
		if e.box(in).text != "" && !letters.In(sides, in.side()) {
			sides = append(sides, in.side())
		}
	}
	return sides
}

// refuseBoth says once, at the first input given, that only one side can be
// used.
func (e *Evaluation) refuseBoth(members []*Input) {
	for _, in := range members {
		if e.box(in).text != "" {
			e.Refuse(in.Name, "form.only-one", "alternatives", e.alternatives(members))
			return
		}
	}
}

// useOnly keeps the inputs of one side, all of which are needed, and marks the
// others unused.
func (e *Evaluation) useOnly(side string, members []*Input) {
	for _, in := range members {
		if in.side() != side {
			e.box(in).unused = true
		} else if e.box(in).text == "" && in.Default == "" {
			e.Missing(in.Name)
		}
	}
}

// alternatives words the sides of a group: "volume, or people with each".
func (e *Evaluation) alternatives(members []*Input) string {
	var words []string
	var sides []string
	for _, in := range members {
		if !letters.In(sides, in.side()) {
			sides = append(sides, in.side())
			words = append(words, e.Settings.Words.Label(e.label(in)))
		} else {
			last := len(words) - 1
			words[last] = e.Say("form.side", "first", words[last], "second", e.Settings.Words.Label(e.label(in)))
		}
	}
	text := words[0]
	for _, w := range words[1:] {
		text = e.Say("form.or", "first", text, "second", w)
	}
	return text
}

func anyDefault(members []*Input) bool {
	for _, in := range members {
		if in.Default != "" {
			return true
		}
	}
	return false
}
