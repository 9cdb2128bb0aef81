package press

import (
	"slices"

	"slipbook/generator/course"
)

// fate is one pair of the decoration table told in full: what becomes of a
// medium in a state, of a way of working, of one colour on another.
type fate struct {
	ID      string // of its place on the page; may be empty
	Name    string
	Address string         // where the name leads; may be empty
	Word    course.Verdict // said beside the name; empty where the heading over it says it
	Best    bool           // preferred here
	course.Pair
	Waits      []string // techniques with which it must wait for a firing
	Instead    *link    // the state that the medium prefers, when it is another
	InsteadKey string   // of the words before it
	Same       []link   // what looks the same and may go on here
	Exceptions []exception
}

// Physics reports whether nothing gets round this verdict.
func (f fate) Physics() bool { return f.Verdict == course.Never && f.Rule == "physics" }

// Trade reports whether potters do not do this, with an exception that the
// reason names.
func (f fate) Trade() bool { return f.Verdict == course.Never && f.Rule == "trade" }

// House reports whether this verdict is a rule of the studio.
func (f fate) House() bool { return f.Verdict == course.Never && f.Rule == "house" }

// line is one pair of the table in a word and a few more.
type line struct {
	Name    string         // of what it is about
	Address string         // where it is told in full, relative to the page
	Verdict course.Verdict // empty where the table says nothing
	Short   string
	Best    bool
}

// worse gives the worse of two verdicts; where the table does not say one of
// them, it says nothing.
func worse(a, b course.Verdict) course.Verdict {
	if a == "" || b == "" {
		return ""
	}
	order := []course.Verdict{course.Yes, course.Label, course.Risky, course.Never}
	return order[max(slices.Index(order, a), slices.Index(order, b))]
}

// shortReason is why, in at most six words; of a pair that has no short reason,
// the whole one.
func shortReason(p course.Pair) string {
	if p.Short == "" {
		return p.Reason
	}
	return p.Short
}

// mediumIn is a medium in a state as a line. to is the page it stands on.
func mediumIn(m course.Medium, s course.State, to string) line {
	pair := m.On[s.ID]
	return line{m.Name, relative(to, stateAddress(s.ID)+"#"+m.ID), pair.Verdict, shortReason(pair), m.Best == s.ID}
}

// mannerIn is a technique, for some media, in a state as a line.
func mannerIn(m manner, s course.State, to string) line {
	pair := m.on[s.ID]
	return line{m.name, relative(to, stateAddress(s.ID)+"#"+wayID(m.id)), pair.Verdict, shortReason(pair), m.best == s.ID && pair.Verdict != course.Never}
}

// techniqueIn is a technique for one medium in a state as a line.
func techniqueIn(t course.Technique, m course.Medium, s course.State, to string) line {
	return mannerIn(manner{t.ID, t.Name, t.Best, map[string]course.Pair{s.ID: t.On[s.ID].For(m.ID)}}, s, to)
}

// wayID is where a technique stands on a state's page; media have the bare ids.
func wayID(technique string) string { return "way." + technique }

// named gives a line another name: that of the state it is about.
func named(l line, name string) line {
	l.Name = name
	return l
}
