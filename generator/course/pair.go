package course

import (
	"cmp"
	"fmt"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// everyState is the key of a pair for each state that has none of its own.
const everyState = "all"

// eachState hands out what an entry called name says of each state. Each must
// be there, by itself or by `all`.
func (t *table) eachState(v source.Value, name string, take func(id string, cell source.Value)) {
	f := v.Merged(append([]string{everyState}, stateIDs...)...)
	for _, id := range stateIDs {
		cell, every := f.Get(id), f.Get(everyState)
		if !every.Absent() && (cell.Absent() || cell.Inherited() && !every.Inherited()) {
			if !cell.Absent() {
				every = every.Over(cell)
			}
			cell = every
		}
		switch {
		case !cell.Absent():
			take(id, cell)
		case v.IsMapping():
			v.Report(finding.TablePair, fmt.Sprintf("%s says nothing about the state `%s`", cmp.Or(name, "this"), id), "Add a line such as `"+id+": {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.")
		}
	}
}

// readPairs reads what a medium called name says of each state.
func (t *table) readPairs(v source.Value, name string) map[string]Pair {
	on := map[string]Pair{}
	t.eachState(v, name, func(id string, cell source.Value) {
		if p := t.readPair(cell.Fields(pairKeys...), id, t.careBelow(cell)); p.Verdict != "" {
			on[id] = p
			t.Origin.count(cell, name)
		}
	})
	return on
}

var pairKeys = []string{"verdict", "rule", "short", "reason", "fault", "remedy", "ask", "part", "hazards", "who"}

// readPair reads a verdict and its words from among the keys of f, in a state
// or, with an empty one, apart from states. below is what the program's own
// table says of safety in its place.
func (t *table) readPair(f source.Fields, state string, below Care) Pair {
	p := Pair{
		Verdict: Verdict(f.NeedFor(finding.TablePair, "verdict", "verdict: yes").Choice(string(Yes), string(Label), string(Risky), string(Never))),
		Rule:    f.Get("rule").Choice(physics, trade, house),
		Reason:  f.NeedFor(finding.TablePair, "reason", "reason: Slip and clay shrink together.").Text(),
		Ask:     f.Get("ask").Text(),
		Part:    t.readPart(f.Get("part"), state),
		Care:    t.readCare(f, below),
	}
	p.Short = readShort(f, p.Reason)
	if p.Verdict == Yes || p.Verdict == "" {
		p.Fault, p.Remedy = f.Get("fault").Text(), f.Get("remedy").Text()
	} else {
		p.Fault = f.NeedFor(finding.TablePair, "fault", "fault: It flakes off.").Text()
		p.Remedy = f.NeedFor(finding.TablePair, "remedy", "remedy: Use underglaze instead.").Text()
	}
	rule := f.Get("rule")
	switch {
	case p.Verdict == Never && rule.Absent():
		f.Of.Report(finding.TablePair, "a `never` does not say what it rests on", "Add `rule: physics` if nothing gets round it, `rule: trade` if potters do not and the reason names the exception, or `rule: house` if an instructor may allow it.")
	case p.Verdict != Never && p.Verdict != "" && !rule.Absent():
		rule.Report(finding.TablePair, fmt.Sprintf("`rule` belongs to `never` alone, and this is `%s`", p.Verdict), "Take `rule` out, or change the verdict.")
		p.Rule = ""
	}
	return p
}

// readShort reads the reason as the chart prints it. A reason that fits there
// need not be said twice.
func readShort(f source.Fields, reason string) string {
	v := f.Get("short")
	if v.Absent() {
		n := len(strings.Fields(reason))
		if n <= shortWords {
			return reason
		}
		f.Of.Report(finding.TablePair, fmt.Sprintf("`reason` has %d words, and there is no `short` for the chart", n), fmt.Sprintf("Add `short` with the reason in at most %d words.", shortWords))
		return ""
	}
	short := v.Text()
	if n := len(strings.Fields(short)); n > shortWords {
		v.Report(finding.ValueForm, fmt.Sprintf("`short` has %d words; the chart has room for %d", n, shortWords), "Say it shorter; the rest belongs in `reason`.")
	}
	return short
}

// readBest reads the state a medium or a technique likes best; it must be one
// where it may be done, as verdict knows.
func readBest(v source.Value, verdict func(state string) Verdict) string {
	id := v.Choice(stateIDs...)
	if id != "" && verdict(id) == Never {
		v.Report(finding.TablePair, fmt.Sprintf("`best` names `%s`, where the verdict is `never`", id), "Name a state where it may go on, or change the verdict.")
		return ""
	}
	return id
}

var cellKeys = append([]string{"only", "others", "wait"}, pairKeys...)

// careBelow is what the program's own table says of safety in the place of a
// pair or cell of the course, all its cases together.
func (t *table) careBelow(v source.Value) Care {
	var care Care
	for below := v.Below(); below.IsMapping(); below = below.Key("others") {
		care = care.with(t.readCare(below.Fields(cellKeys...), Care{}))
	}
	return care
}

// readPart reads the part of a state that a medium or technique wants there.
func (t *table) readPart(v source.Value, state string) string {
	if v.Absent() {
		return ""
	}
	s, there := t.FindState(state)
	if !there || len(s.Parts) == 0 {
		v.Report(finding.UnknownName, fmt.Sprintf("the state `%s` has no parts", state), "Take `part` out.")
		return ""
	}
	var ids []string
	for _, p := range s.Parts {
		ids = append(ids, p.ID)
	}
	return v.Choice(ids...)
}
