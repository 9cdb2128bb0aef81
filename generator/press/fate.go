package press

import (
	"slices"

	"slipbook/generator/address"
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
	Safety     care     // of medium and state, of technique and state
	Waits      []string // techniques with which it must wait for a firing
	Instead    *link    // the state that the medium prefers, when it is another
	InsteadKey string   // of the words before it
	Today      []link   // what may go on now in its place
	Exceptions []exception
}

// ruleSentences are the keys of the sentences that say what a never rests on.
var ruleSentences = map[string]string{"physics": "never-physics", "trade": "never-trade", "house": "never-house"}

// ruleWords are the keys of the words that say the same beside the verdict.
var ruleWords = map[string]string{"physics": "rule-physics", "trade": "rule-trade", "house": "rule-house"}

// RuleSentence is the key of the sentence that says what a never rests on; empty
// for other verdicts.
func (f fate) RuleSentence() string { return ruleSentences[f.Rule] }

// line is one pair of the table in a word and a few more.
type line struct {
	Name    string         // of what it is about
	Address string         // where it is told in full, relative to the page
	Verdict course.Verdict // empty where the table says nothing
	Short   string
	Best    bool
	Basis   string // key of the words that say what a never rests on; empty for other verdicts
	Safety  care   // nothing for a never: nobody does it
	Today   []link // what may go on now in the place of what is risky or never; on some pages
}

// lineOf is a pair of the table as a line, with all that the table says of its
// safety.
func (p *impression) lineOf(at place, name string, pair course.Pair, to string, rows ...course.Care) line {
	l := line{Name: name, Address: at.to(to), Verdict: pair.Verdict, Short: shortReason(pair), Basis: ruleWords[pair.Rule]}
	if l.Verdict != "" && l.Verdict != course.Never {
		l.Safety = p.care(at, append(rows, pair.Care)...)
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

// mediumIn is a medium in a state as a line. at is where it stands.
func (p *impression) mediumIn(m course.Medium, s course.State, at place) line {
	l := p.lineOf(at, m.Name, m.On[s.ID], address.State(s.ID)+"#"+m.ID, m.Care)
	l.Best = m.Best == s.ID
	return l
}

// mannerIn is a technique, for some media, in a state as a line; others are rows
// that the line is about beside those of the technique.
func (p *impression) mannerIn(m manner, s course.State, at place, others ...course.Care) line {
	l := p.lineOf(at, m.name, m.on[s.ID], address.State(s.ID)+"#"+wayID(m.id), append(others, m.care)...)
	l.Best = m.best == s.ID && l.Verdict != course.Never
	return l
}

// techniqueIn is a technique for one medium in a state as a line.
func (p *impression) techniqueIn(t course.Technique, m course.Medium, s course.State, at place) line {
	return p.mannerIn(mannerOf(t, m.ID, []course.State{s}), s, at, careOf(m, s.ID)...)
}

// wayID is where a technique stands on a state's page; media have the bare ids.
func wayID(technique string) string { return "way." + technique }

// named returns a line under another name: that of the state it is about.
func named(l line, name string) line {
	l.Name = name
	return l
}
