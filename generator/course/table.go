package course

import (
	"cmp"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

const tableFile = "decoration.yaml"

// stateIDs are the states of the clay and its surface, in the order in which a
// pot passes through them. Drawings, addresses and the planner go by these.
var stateIDs = []string{"wet", "leather-hard", "bone-dry", "bisque", "unfired-glaze", "glaze-fired"}

// decoration reads the table of media by clay state.
func (l *loader) decoration() {
	if _, err := fs.Stat(l.fsys, tableFile); err != nil {
		l.report(tableFile, finding.CourseNeeds, "there is no decoration.yaml", "Write it, with `states` and `media`: it says what may go on a pot in which state.")
		return
	}
	f := l.sheet(tableFile, "states:").fields("states", "media")
	l.course.Decoration.States = readStates(f.need("states", "states:"))
	seen := unique{}
	for _, item := range f.need("media", "media:").list() {
		f := item.fields("id", "name", "about", "best", "states")
		id := f.need("id", "id: coloured-slip")
		m := Medium{
			ID:    id.id(),
			Name:  f.need("name", "name: Coloured slip").text(),
			About: f.need("about", "about: White clay coloured with stain, thin enough to paint.").text(),
		}
		m.On = readPairs(f.need("states", "states: {wet: {verdict: yes, reason: …}, …}"), m.Name)
		m.Best = readBest(f.need("best", "best: leather-hard"), m.On)
		if seen.add(id, m.ID) {
			l.course.Decoration.Media = append(l.course.Decoration.Media, m)
		}
	}
}

// shortWords is how many words fit under a state's drawing on a phone.
const shortWords = 6

// readStates reads the states and makes sure that they are the six, in order.
func readStates(v value) []State {
	var states []State
	seen := unique{}
	for _, item := range v.list() {
		f := item.fields("id", "name", "short", "tell", "between")
		id := f.need("id", "id: leather-hard")
		s := State{
			ID:      id.choice(stateIDs...),
			Name:    f.need("name", "name: Leather-hard").text(),
			Short:   f.need("short", "short: cool, dark, firm").text(),
			Tell:    f.need("tell", "tell: It lifts without bending.").text(),
			Between: f.get("between").text(),
		}
		if n := len(strings.Fields(s.Short)); n > shortWords {
			f.get("short").report(finding.ValueForm, fmt.Sprintf("`short` has %d words; under the drawing is room for %d", n, shortWords), "Say it shorter; the rest belongs in `tell`.")
		}
		if !seen.add(id, s.ID) {
			continue
		}
		if n := len(states); n > 0 && slices.Index(stateIDs, states[n-1].ID) > slices.Index(stateIDs, s.ID) {
			id.report(finding.ValueForm, fmt.Sprintf("`%s` stands after `%s`, but a pot passes through it before", s.ID, states[n-1].ID), "Order them: "+strings.Join(stateIDs, ", ")+".")
		}
		states = append(states, s)
	}
	for _, id := range stateIDs {
		if _, there := seen[id]; !there && v.isA(yaml.SequenceNode) {
			v.report(finding.MissingKey, fmt.Sprintf("the state `%s` is missing", id), "Add it; the states are: "+strings.Join(stateIDs, ", ")+".")
		}
	}
	return states
}

// readPairs reads what a medium says of each state.
func readPairs(v value, medium string) map[string]Pair {
	on := map[string]Pair{}
	f := v.fields(stateIDs...)
	for _, id := range stateIDs {
		cell := f.get(id)
		if cell.absent() {
			if v.isA(yaml.MappingNode) {
				v.report(finding.TablePair, fmt.Sprintf("%s says nothing about the state `%s`", cmp.Or(medium, "this medium"), id), "Add a line such as `"+id+": {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.")
			}
			continue
		}
		if p := readPair(cell); p.Verdict != "" {
			on[id] = p
		}
	}
	return on
}

func readPair(v value) Pair {
	f := v.fields("verdict", "rule", "reason", "fault", "remedy")
	p := Pair{
		Verdict: Verdict(f.needFor(finding.TablePair, "verdict", "verdict: yes").choice(string(Yes), string(Label), string(Risky), string(Never))),
		Rule:    f.get("rule").choice("physics", "house"),
		Reason:  f.needFor(finding.TablePair, "reason", "reason: Slip and clay shrink together.").text(),
	}
	if p.Verdict == Yes || p.Verdict == "" {
		p.Fault, p.Remedy = f.get("fault").text(), f.get("remedy").text()
	} else {
		p.Fault = f.needFor(finding.TablePair, "fault", "fault: It flakes off.").text()
		p.Remedy = f.needFor(finding.TablePair, "remedy", "remedy: Use underglaze instead.").text()
	}
	rule := f.get("rule")
	switch {
	case p.Verdict == Never && rule.absent():
		v.report(finding.TablePair, "a `never` does not say whether it is physics or a rule of the house", "Add `rule: physics`, or `rule: house` if an instructor may allow it.")
	case p.Verdict != Never && p.Verdict != "" && !rule.absent():
		rule.report(finding.TablePair, fmt.Sprintf("`rule` belongs to `never` alone, and this is `%s`", p.Verdict), "Take `rule` out, or change the verdict.")
		p.Rule = ""
	}
	return p
}

// readBest reads the state a medium likes best; it must be one where the
// medium may go on.
func readBest(v value, on map[string]Pair) string {
	id := v.choice(stateIDs...)
	if id != "" && on[id].Verdict == Never {
		v.report(finding.TablePair, fmt.Sprintf("`best` names `%s`, where the verdict is `never`", id), "Name a state where it may go on, or change the verdict.")
		return ""
	}
	return id
}
