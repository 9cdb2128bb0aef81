package stage

import (
	"strconv"

	"slipbook/calculators/letters"
)

// A table travels to the page as lines of fields separated by tabs, each line
// beginning with what it is. The order is that of the table; rules follow what
// they belong to. Encode and Decode are each other's inverse for tables whose
// texts hold no tab and no line end.

// Encode writes a table as text.
func (t *Table) Encode() string {
	w := &lines{}
	t.encodeHazards(w)
	for _, s := range t.States {
		w.line("state", s.ID, s.Name, list(s.Words))
		for _, p := range s.Parts {
			w.line("part", p.ID, p.Name, p.Tell)
		}
	}
	for _, m := range t.Media {
		w.line("medium", m.ID, m.Base, m.Name, list(m.Words), digit(int(m.Kind)), m.Look, digit(m.Best), digit(m.Heat), flag(m.Food), flag(m.Hides), digit(int(m.Fixed)), m.Hazards.text(), digit(int(m.Who)))
		m.encode(w)
		for _, r := range m.On {
			w.rule("on", r)
		}
	}
	for _, q := range t.Techniques {
		w.line("technique", q.ID, q.Name, list(q.Words), list(q.With), digit(q.Best+1), flag(q.Coats), flag(q.Takes), flag(q.Bare), q.Hazards.text(), digit(int(q.Who)))
		for _, cell := range q.On {
			w.line("cell")
			for _, c := range cell {
				w.rule("by", c.Rule, list(c.Only), c.Wait)
			}
		}
	}
	t.encodeMoves(w)
	return string(w.text)
}

// encodeHazards writes what plans warn of, and the words with more meaning
// than one.
func (t *Table) encodeHazards(w *lines) {
	for _, h := range t.Hazards {
		w.line("hazard", h.ID, h.Title, h.Short, list(h.Wear), h.Place, h.Lesson, flag(h.Health))
	}
	w.rule("firing", t.Fire, t.Firing, t.Drying)
	w.rule("metals", t.Metals.Rule, list(t.Metals.Words), list(t.Metals.Unplanned), list(t.Metals.NeverFood), list(t.Metals.NotOver))
	w.line("reports", t.Reports)
	for _, p := range t.Phrases {
		w.line("phrase", list(p.Words), p.Layers, p.Ask)
	}
}

// encodeMoves writes what may lie on what, the transitions and the exceptions
// of clay bodies.
func (t *Table) encodeMoves(w *lines) {
	for _, o := range t.Overs {
		w.rule("over", o.Rule, o.Under, o.Above, list(o.Unless), flag(o.Fired))
	}
	for _, tr := range t.Transitions {
		w.rule("move", tr.Rule, tr.ID, digit(int(tr.Move)), digit(tr.From), digit(tr.To), tr.Name)
	}
	for _, body := range t.Bodies {
		w.line("body", body.ID, body.Name)
		for _, c := range body.Changes {
			w.rule("change", c.Rule, c.Medium, digit(c.State))
		}
	}
}

// lines gathers the text of a table.
type lines struct{ text []byte }

func (w *lines) line(fields ...string) {
	w.text = append(append(w.text, letters.Join(fields, "\t")...), '\n')
}

func (w *lines) rule(kind string, r Rule, more ...string) {
	w.line(append([]string{kind, digit(int(r.Verdict)), digit(int(r.Basis)), r.Reason, r.Fault, r.Remedy, r.Ask, r.Hazards.text(), digit(int(r.Who)), digit(int(r.Part))}, more...)...)
}

// text writes a set of hazards as a number.
func (h Hazards) text() string { return strconv.FormatUint(uint64(h), 10) }

func digit(n int) string { return strconv.Itoa(n) }

func flag(b bool) string {
	if b {
		return "1"
	}
	return "0"
}

func list(words []string) string { return letters.Join(words, "|") }
