package table

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
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
	Safety     care.Care     // of medium and state, of technique and state
	Waits      []string      // techniques with which it must wait for a firing
	Instead    *imprint.Link // the state that the medium prefers, when it is another
	InsteadKey string        // of the words before it
	Today      []StandIn     // what may go on now in its place
	Exceptions []exception
	Recipes    int         // on a state's page: how many recipes for it the studio has
	Cited      []citedView // these, where they are few
	Further    string      // the way to them, where they are many
}

// ruleSentences are the keys of the sentences that say what a never rests on.
var ruleSentences = map[string]string{"physics": "never-physics", "trade": "never-trade", "house": "never-house"}

// ruleWords are the keys of the words that say the same beside the verdict.
var ruleWords = map[string]string{"physics": "rule-physics", "trade": "rule-trade", "house": "rule-house"}

// RuleSentence is the key of the sentence that says what a never rests on; empty
// for other verdicts.
func (f fate) RuleSentence() string { return ruleSentences[f.Rule] }

// Line is one pair of the table in a word and a few more.
type Line struct {
	Name    string         // of what it is about
	Address string         // where it is told in full, relative to the page
	Verdict course.Verdict // empty where the table says nothing
	Short   string
	Best    bool
	Basis   string    // key of the words that say what a never rests on; empty for other verdicts
	Safety  care.Care // nothing for a never: nobody does it
	Today   []StandIn // what may go on now in the place of what is risky or never; on some pages
}

// lineOf is a pair of the table as a line, with all that the table says of its
// safety.
func (r *Table) lineOf(at imprint.Place, name string, pair course.Pair, to string, rows ...course.Care) Line {
	l := Line{Name: name, Address: at.To(to), Verdict: pair.Verdict, Short: shortReason(pair), Basis: ruleWords[pair.Rule]}
	if l.Verdict != "" && l.Verdict != course.Never {
		l.Safety = r.Care(at, append(rows, pair.Care)...)
	}
	return l
}

// worse returns the worse of two verdicts; where the table does not say one of
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

// MediumIn is a medium in a state as a line. at is where it stands.
func (r *Table) MediumIn(m course.Medium, s course.State, at imprint.Place) Line {
	l := r.lineOf(at, m.Name, m.On[s.ID], address.State(s.ID)+"#"+m.ID, m.Care)
	l.Best = m.Best == s.ID
	return l
}

// mannerIn is a technique, for some media, in a state as a line; others are rows
// that the line is about beside those of the technique.
func (r *Table) mannerIn(m manner, s course.State, at imprint.Place, others ...course.Care) Line {
	l := r.lineOf(at, m.name, m.on[s.ID], address.State(s.ID)+"#"+wayID(m.id), append(others, m.care)...)
	l.Best = m.best == s.ID && l.Verdict != course.Never
	return l
}

// TechniqueIn is a technique for one medium in a state as a line.
func (r *Table) TechniqueIn(t course.Technique, m course.Medium, s course.State, at imprint.Place) Line {
	return r.mannerIn(mannerOf(t, m.ID, []course.State{s}), s, at, care.Of(m, s.ID)...)
}

// wayID is where a technique stands on a state's page; media have the bare ids.
func wayID(technique string) string { return "way." + technique }

// Named returns a line under another name: that of the state it is about.
func Named(l Line, name string) Line {
	l.Name = name
	return l
}
