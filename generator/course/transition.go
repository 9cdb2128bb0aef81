package course

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// move is what a transition may do: the states it may start from and lead to.
// Clay only dries, and it is fired when it is bone dry: no course can say
// otherwise.
type move struct {
	name     string
	from, to []string
	means    string
}

var moves = []move{
	{"dry", []string{"wet", "leather-hard"}, []string{"leather-hard", "bone-dry"}, "the drying of clay"},
	{"bisque", []string{"bone-dry"}, []string{"bisque"}, "the first firing"},
	{"harden", []string{"bisque"}, []string{"bisque"}, "bisque heat again, to fix colour"},
	{"strip", []string{"unfired-glaze"}, []string{"bisque"}, "the washing off of unfired glaze"},
	{"fire", []string{"bone-dry", "bisque", "unfired-glaze", "glaze-fired"}, []string{"glaze-fired"}, "the glaze firing, a second one, or the last firing of a bare pot"},
}

func moveNames() []string {
	var names []string
	for _, m := range moves {
		names = append(names, m.name)
	}
	return names
}

// readTransitions reads the ways from state to state that put nothing on.
func (t *table) readTransitions(f source.Fields) {
	v := f.Get("transitions")
	items := v.Entries()
	if v.Absent() && f.Of.IsMapping() {
		f.Of.Report(finding.TableMove, "`transitions` is missing", "Write a list of the ways from one state to the next, at least one with each `move`: "+explainMoves()+".")
		return
	}
	seen := unique{}
	for _, item := range items {
		f := item.Merged("id", "move", "from", "to", "name", "reason", "fault", "remedy", "ask", "hazards", "who")
		id := f.Need("id", "id: let-stiffen")
		tr := Transition{
			ID:     id.ID(),
			Move:   f.Need("move", "move: dry").Choice(moveNames()...),
			From:   f.Need("from", "from: wet").Choice(stateIDs...),
			To:     f.Need("to", "to: leather-hard").Choice(stateIDs...),
			Name:   f.Need("name", "name: Let it stiffen until a nail marks it.").Text(),
			Reason: f.Need("reason", "reason: Wet clay sags under a brush.").Text(),
			Fault:  f.Need("fault", "fault: The rim dries first and cracks.").Text(),
			Remedy: f.Need("remedy", "remedy: Cover the rim with plastic.").Text(),
			Ask:    f.Get("ask").Text(),
			Care:   t.readCare(f, Care{}),
		}
		if seen.add(id, tr.ID) && tr.possible(f) {
			t.Origin.count(item, tr.Name)
			t.Transitions = append(t.Transitions, tr)
		}
	}
	// One that is faulty was reported; what it would have led to is not
	// reported on top of it.
	if v.IsList() && len(t.Transitions) == len(items) && !t.missingMoves(v) {
		t.unreached(v)
	}
}

func explainMoves() string {
	var parts []string
	for _, m := range moves {
		parts = append(parts, m.name+" ("+m.means+")")
	}
	return strings.Join(parts, ", ")
}

// possible reports whether a transition is complete and clay can make it; one
// that is complete and impossible is reported.
func (tr *Transition) possible(f source.Fields) bool {
	i := slices.IndexFunc(moves, func(m move) bool { return m.name == tr.Move })
	if i < 0 || tr.From == "" || tr.To == "" {
		return false
	}
	m := moves[i]
	onward := m.name != "dry" || slices.Index(stateIDs, tr.From) < slices.Index(stateIDs, tr.To)
	if slices.Contains(m.from, tr.From) && slices.Contains(m.to, tr.To) && onward {
		return true
	}
	f.Get("to").Report(finding.TableMove, fmt.Sprintf("`%s` cannot lead from `%s` to `%s`", tr.Move, tr.From, tr.To),
		fmt.Sprintf("It means %s, and leads from %s to %s. Clay only dries.", m.means, strings.Join(m.from, " or "), strings.Join(m.to, " or ")))
	return false
}

// missingMoves reports the kinds of move that no transition makes, and the
// glaze that no transition fires, and reports whether there are any.
func (t *table) missingMoves(v source.Value) bool {
	missing := t.glazes() && !slices.ContainsFunc(t.Transitions, Transition.firesGlaze)
	if missing {
		v.Report(finding.TableMove, "no transition fires the unfired glaze", "Add one with `move: fire`, `from: "+glazedState+"` and `to: glaze-fired`.")
	}
	for _, m := range moves {
		if slices.ContainsFunc(t.Transitions, func(tr Transition) bool { return tr.Move == m.name }) {
			continue
		}
		missing = true
		v.Report(finding.TableMove, fmt.Sprintf("no transition has the move `%s`", m.name),
			fmt.Sprintf("Add one: it means %s, and leads from %s to %s.", m.means, strings.Join(m.from, " or "), strings.Join(m.to, " or ")))
	}
	return missing
}

// unreached reports the states that no pot gets to.
func (t *table) unreached(v source.Value) {
	if len(t.States) < len(stateIDs) {
		return // reported already
	}
	reached := map[string]bool{stateIDs[0]: true}
	for grown := true; grown; {
		before := len(reached)
		for _, w := range t.ways() {
			if reached[w[0]] {
				reached[w[1]] = true
			}
		}
		grown = len(reached) > before
	}
	for _, s := range t.States {
		if !reached[s.ID] && (s.ID != glazedState || t.glazes()) {
			v.Report(finding.TableMove, fmt.Sprintf("no pot ever gets to the state `%s`", s.ID), t.leadThere(s.ID))
		}
	}
}

// glazes reports whether the course has glazes. Without one, nobody asks how a pot
// gets to the state of unfired glaze.
func (t *table) glazes() bool {
	return slices.ContainsFunc(t.Media, func(m Medium) bool { return m.Kind == glazeKind })
}

// ways lists from which state to which a pot may go: by a transition, or by
// putting on a glaze.
func (t *table) ways() [][2]string {
	var ways [][2]string
	for _, tr := range t.Transitions {
		ways = append(ways, [2]string{tr.From, tr.To})
	}
	for _, m := range t.Media {
		for _, id := range stateIDs {
			if p, there := m.On[id]; there && m.Kind == glazeKind && p.Verdict != Never {
				ways = append(ways, [2]string{id, glazedState})
			}
		}
	}
	return ways
}

func (t *table) leadThere(state string) string {
	if state == glazedState {
		return "Allow a glaze in a state that comes before it."
	}
	return "Add a transition with `to: " + state + "` from a state that is reached."
}
