package course

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// shortWords is how many words fit under a state's drawing on a phone, and
// into a field of the printed chart.
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
