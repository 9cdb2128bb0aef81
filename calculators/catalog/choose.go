package catalog

// choose settles the groups of alternatives: one side of each may be given.
// Inputs of the other sides are marked unused, so that their defaults do not
// stand in.
func (b *bench) choose() {
	for _, group := range b.groups() {
		members := b.members(group)
		sides := b.givenSides(members)
		switch {
		case len(sides) > 1:
			b.refuseBoth(members)
		case len(sides) == 1:
			b.useOnly(sides[0], members)
		case members[0].Needed && !anyDefault(members):
			b.refuse(members[0].Name, "Give one of these: "+b.alternatives(members)+".")
		}
	}
}

func (b *bench) groups() []string {
	var groups []string
	for _, in := range b.calculator.Inputs {
		if in.Group != "" && !contains(groups, in.Group) {
			groups = append(groups, in.Group)
		}
	}
	return groups
}

func (b *bench) members(group string) []*Input {
	var members []*Input
	for i := range b.calculator.Inputs {
		if b.calculator.Inputs[i].Group == group {
			members = append(members, &b.calculator.Inputs[i])
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

func (b *bench) givenSides(members []*Input) []string {
	var sides []string
	for _, in := range members {
		if b.box(in).text != "" && !contains(sides, in.side()) {
			sides = append(sides, in.side())
		}
	}
	return sides
}

// refuseBoth says once, at the first input given, that only one side can be
// used.
func (b *bench) refuseBoth(members []*Input) {
	for _, in := range members {
		if b.box(in).text != "" {
			b.refuse(in.Name, "Only one of these can be used: "+b.alternatives(members)+". Empty the other.")
			return
		}
	}
}

// useOnly keeps the inputs of one side, all of which are needed, and marks the
// others unused.
func (b *bench) useOnly(side string, members []*Input) {
	for _, in := range members {
		if in.side() != side {
			b.box(in).unused = true
		} else if b.box(in).text == "" && in.Default == "" {
			b.answer.refuse(in.Name, missing(in))
		}
	}
}

// alternatives words the sides of a group: "volume, or people with each".
func (b *bench) alternatives(members []*Input) string {
	var words []string
	var sides []string
	for _, in := range members {
		if !contains(sides, in.side()) {
			sides = append(sides, in.side())
			words = append(words, lowerFirst(in.Label))
		} else {
			words[len(words)-1] += " with " + lowerFirst(in.Label)
		}
	}
	text := words[0]
	for _, w := range words[1:] {
		text += ", or " + w
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
