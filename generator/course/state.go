package course

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// readStates reads the states and makes sure that they are the six, in order.
func readStates(v source.Value) []State {
	var states []State
	seen := unique{}
	words := unique{}
	for _, item := range v.Entries() {
		f := item.Merged("id", "name", "short", "tell", "between", "words", "parts")
		id := f.Need("id", "id: leather-hard")
		s := State{
			ID:      id.Choice(stateIDs...),
			Name:    f.Need("name", "name: Leather-hard").Text(),
			Short:   f.Need("short", "short: cool, dark, firm").Text(),
			Tell:    f.Need("tell", "tell: It lifts without bending.").Text(),
			Between: f.Get("between").Text(),
		}
		if n := len(strings.Fields(s.Short)); n > shortWords {
			f.Get("short").Report(finding.ValueForm, fmt.Sprintf("`short` has %d words; under the drawing is room for %d", n, shortWords), "Say it shorter; the rest belongs in `tell`.")
		}
		if !seen.add(id, s.ID) {
			continue
		}
		s.Words = readStateWords(f, s.Name, words)
		s.Parts = readParts(f.Get("parts"), s.ID)
		if n := len(states); n > 0 && slices.Index(stateIDs, states[n-1].ID) > slices.Index(stateIDs, s.ID) {
			id.Report(finding.ValueForm, fmt.Sprintf("`%s` stands after `%s`, but a pot passes through it before", s.ID, states[n-1].ID), "Order them: "+strings.Join(stateIDs, ", ")+".")
		}
		states = append(states, s)
	}
	for _, id := range stateIDs {
		if _, there := seen[id]; !there && v.IsList() {
			v.Report(finding.MissingKey, fmt.Sprintf("the state `%s` is missing", id), "Add it; the states are: "+strings.Join(stateIDs, ", ")+".")
		}
	}
	return states
}

// readStateWords reads what a person may call a state. No two states share a
// word.
func readStateWords(f source.Fields, name string, taken unique) []string {
	taken.addWord(f.Get("name"), name)
	var words []string
	for _, item := range f.Get("words").List() {
		if word := item.Text(); plainWord(item, word) && taken.addWord(item, word) {
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
func readParts(v source.Value, state string) []Part {
	if v.Absent() {
		return nil
	}
	if state != parted {
		v.Report(finding.UnknownKey, fmt.Sprintf("the state `%s` has no parts", state), "Take `parts` out; only `"+parted+"` has them.")
		return nil
	}
	var parts []Part
	for _, item := range v.Entries() {
		f := item.Merged("id", "name", "tell")
		parts = append(parts, Part{
			ID:   f.Need("id", "id: soft").Choice(partIDs...),
			Name: f.Need("name", "name: Soft leather-hard").Text(),
			Tell: f.Need("tell", "tell: A thumb leaves a dent.").Text(),
		})
	}
	for i, id := range partIDs {
		if len(parts) != len(partIDs) || parts[i].ID != id {
			v.Report(finding.ValueForm, "the parts are not soft, firm and stiff, in this order", "Write the three of them: "+strings.Join(partIDs, ", ")+".")
			return nil
		}
	}
	return parts
}
