package course

import (
	"cmp"
	"fmt"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// readPairs reads what a medium or a technique called name says of each state.
// With all, each state must be there; without, only those that differ.
func readPairs(v value, name string, all bool) map[string]Pair {
	on := map[string]Pair{}
	f := v.fields(stateIDs...)
	for _, id := range stateIDs {
		cell := f.get(id)
		if cell.absent() {
			if all && v.isA(yaml.MappingNode) {
				v.report(finding.TablePair, fmt.Sprintf("%s says nothing about the state `%s`", cmp.Or(name, "this"), id), "Add a line such as `"+id+": {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.")
			}
			continue
		}
		if p := readPair(cell.fields(pairKeys...)); p.Verdict != "" {
			on[id] = p
		}
	}
	return on
}

var pairKeys = []string{"verdict", "rule", "short", "reason", "fault", "remedy"}

// readPair reads a verdict and its words from among the keys of f.
func readPair(f fields) Pair {
	p := Pair{
		Verdict: Verdict(f.needFor(finding.TablePair, "verdict", "verdict: yes").choice(string(Yes), string(Label), string(Risky), string(Never))),
		Rule:    f.get("rule").choice("physics", "house"),
		Reason:  f.needFor(finding.TablePair, "reason", "reason: Slip and clay shrink together.").text(),
	}
	p.Short = readShort(f, p.Reason)
	if p.Verdict == Yes || p.Verdict == "" {
		p.Fault, p.Remedy = f.get("fault").text(), f.get("remedy").text()
	} else {
		p.Fault = f.needFor(finding.TablePair, "fault", "fault: It flakes off.").text()
		p.Remedy = f.needFor(finding.TablePair, "remedy", "remedy: Use underglaze instead.").text()
	}
	rule := f.get("rule")
	switch {
	case p.Verdict == Never && rule.absent():
		f.of.report(finding.TablePair, "a `never` does not say whether it is physics or a rule of the house", "Add `rule: physics`, or `rule: house` if an instructor may allow it.")
	case p.Verdict != Never && p.Verdict != "" && !rule.absent():
		rule.report(finding.TablePair, fmt.Sprintf("`rule` belongs to `never` alone, and this is `%s`", p.Verdict), "Take `rule` out, or change the verdict.")
		p.Rule = ""
	}
	return p
}

// readShort reads the reason as the chart prints it. A reason that fits there
// need not be said twice.
func readShort(f fields, reason string) string {
	v := f.get("short")
	if v.absent() {
		n := len(strings.Fields(reason))
		if n <= shortWords {
			return reason
		}
		f.of.report(finding.TablePair, fmt.Sprintf("`reason` has %d words, and there is no `short` for the chart", n), fmt.Sprintf("Add `short` with the reason in at most %d words.", shortWords))
		return ""
	}
	short := v.text()
	if n := len(strings.Fields(short)); n > shortWords {
		v.report(finding.ValueForm, fmt.Sprintf("`short` has %d words; the chart has room for %d", n, shortWords), "Say it shorter; the rest belongs in `reason`.")
	}
	return short
}

// readBest reads the state a medium or a technique likes best; it must be one
// where it may be done.
func readBest(v value, on map[string]Pair) string {
	id := v.choice(stateIDs...)
	if id != "" && on[id].Verdict == Never {
		v.report(finding.TablePair, fmt.Sprintf("`best` names `%s`, where the verdict is `never`", id), "Name a state where it may go on, or change the verdict.")
		return ""
	}
	return id
}
