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
	words := unique{}
	for _, item := range v.entries() {
		f := item.merged("id", "name", "short", "tell", "between", "words", "parts")
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
		s.Words = readStateWords(f, s.Name, words)
		s.Parts = readParts(f.get("parts"), s.ID)
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

// readStateWords reads what a person may call a state. No two states share a
// word.
func readStateWords(f fields, name string, taken unique) []string {
	taken.addWord(f.get("name"), name)
	var words []string
	for _, item := range f.get("words").list() {
		if word := item.text(); plainWord(item, word) && taken.addWord(item, word) {
			words = append(words, word)
		}
	}
	return words
}

// partIDs are the parts of leather-hard, in the order in which clay passes
// through them.
var partIDs = []string{"soft", "firm", "stiff"}

// parted is the only state that has parts.
const parted = "leather-hard"

// readParts reads the parts of a state. They stand all three or not at all.
func readParts(v value, state string) []Part {
	if v.absent() {
		return nil
	}
	if state != parted {
		v.report(finding.UnknownKey, fmt.Sprintf("the state `%s` has no parts", state), "Take `parts` out; only `"+parted+"` has them.")
		return nil
	}
	var parts []Part
	for _, item := range v.entries() {
		f := item.merged("id", "name", "tell")
		parts = append(parts, Part{
			ID:   f.need("id", "id: soft").choice(partIDs...),
			Name: f.need("name", "name: Soft leather-hard").text(),
			Tell: f.need("tell", "tell: A thumb leaves a dent.").text(),
		})
	}
	for i, id := range partIDs {
		if len(parts) != len(partIDs) || parts[i].ID != id {
			v.report(finding.ValueForm, "the parts are not soft, firm and stiff, in this order", "Write the three of them: "+strings.Join(partIDs, ", ")+".")
			return nil
		}
	}
	return parts
}
