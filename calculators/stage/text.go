package stage

import (
	"errors"
	"strconv"

	"slipbook/calculators/letters"
)

// A table travels to the page as lines of fields parted by tabs, each line
// beginning with what it is. The order is that of the table; rules follow what
// they belong to. Encode and Decode are each other's inverse for tables whose
// texts hold no tab and no line end.

// mostRows bounds what Decode takes: many times the largest table.
const mostRows = 5000

// Encode writes a table as text.
func (t *Table) Encode() string {
	var b []byte
	line := func(fields ...string) { b = append(append(b, letters.Join(fields, "\t")...), '\n') }
	rule := func(kind string, r Rule, more ...string) {
		line(append([]string{kind, digit(int(r.Verdict)), flag(r.Physics), r.Reason, r.Fault, r.Remedy}, more...)...)
	}
	line("firing", t.Firing)
	for _, s := range t.States {
		line("state", s.ID, s.Name)
	}
	for _, m := range t.Media {
		line("medium", m.ID, m.Base, m.Name, list(m.Words), digit(int(m.Kind)), m.Look, digit(m.Best), digit(m.Heat), flag(m.Food), flag(m.Hides))
		for _, r := range m.On {
			rule("on", r)
		}
	}
	for _, q := range t.Techniques {
		line("technique", q.ID, q.Name, list(q.Words), list(q.With))
		for _, r := range q.On {
			rule("by", r)
		}
	}
	for _, o := range t.Overs {
		rule("over", o.Rule, o.Under, o.Above, list(o.Unless))
	}
	for _, tr := range t.Transitions {
		rule("move", tr.Rule, tr.ID, digit(int(tr.Move)), digit(tr.From), digit(tr.To), tr.Name)
	}
	for _, body := range t.Bodies {
		line("body", body.ID, body.Name)
		for _, c := range body.Changes {
			rule("change", c.Rule, c.Medium, digit(c.State))
		}
	}
	return string(b)
}

// Decode reads what Encode wrote. It refuses a line that it does not know, a
// field that is missing, and a rule for a state that does not exist.
func Decode(text string) (*Table, error) {
	t := &Table{}
	rows := 0
	for _, line := range letters.Split(text, "\n") {
		if line == "" {
			continue
		}
		if rows++; rows > mostRows {
			return nil, errors.New("The decoration table is too long.")
		}
		if !t.take(&fields{rest: letters.Split(line, "\t")}) {
			return nil, errors.New("Line " + strconv.Itoa(rows) + " of the decoration table cannot be read.")
		}
	}
	return t, t.sound()
}

// take adds one line to the table; false when it cannot be read.
func (t *Table) take(f *fields) bool {
	switch f.text() {
	case "firing":
		t.Firing = f.text()
	case "state":
		t.States = append(t.States, State{f.text(), f.text()})
	case "medium":
		t.Media = append(t.Media, Medium{ID: f.text(), Base: f.text(), Name: f.text(), Words: f.list(), Kind: Kind(f.digit(int(OnGlaze))),
			Look: f.text(), Best: f.digit(99), Heat: f.digit(99), Food: f.flag(), Hides: f.flag()})
	case "on":
		return len(t.Media) > 0 && add(&t.Media[len(t.Media)-1].On, f)
	case "technique":
		t.Techniques = append(t.Techniques, Technique{ID: f.text(), Name: f.text(), Words: f.list(), With: f.list()})
	case "by":
		return len(t.Techniques) > 0 && add(&t.Techniques[len(t.Techniques)-1].On, f)
	case "over":
		t.Overs = append(t.Overs, Over{Rule: f.rule(), Under: f.text(), Above: f.text(), Unless: f.list()})
	case "move":
		t.Transitions = append(t.Transitions, Transition{Rule: f.rule(), ID: f.text(), Move: Move(f.digit(int(Fire))), From: f.digit(99), To: f.digit(99), Name: f.text()})
	case "body":
		t.Bodies = append(t.Bodies, Body{ID: f.text(), Name: f.text()})
	case "change":
		if len(t.Bodies) == 0 {
			return false
		}
		body := &t.Bodies[len(t.Bodies)-1]
		body.Changes = append(body.Changes, Change{Rule: f.rule(), Medium: f.text(), State: f.digit(99)})
	default:
		return false
	}
	return f.whole()
}

func add(rules *[]Rule, f *fields) bool {
	*rules = append(*rules, f.rule())
	return f.whole()
}

// sound checks that everything points at a state that exists and that every
// medium and technique has a rule for each.
func (t *Table) sound() error {
	n := len(t.States)
	fits := func(state int) bool { return state < n }
	for _, m := range t.Media {
		if len(m.On) != n || !fits(m.Best) {
			return errors.New("The medium “" + m.Name + "” has not one rule for each state.")
		}
	}
	for _, q := range t.Techniques {
		if len(q.On) != n {
			return errors.New("The technique “" + q.Name + "” has not one rule for each state.")
		}
	}
	for _, tr := range t.Transitions {
		if !fits(tr.From) || !fits(tr.To) {
			return errors.New("The transition “" + tr.ID + "” leads to no state.")
		}
	}
	for _, body := range t.Bodies {
		for _, c := range body.Changes {
			if !fits(c.State) {
				return errors.New("The clay “" + body.Name + "” changes a state that does not exist.")
			}
		}
	}
	return nil
}

// fields takes the fields of a line in order and remembers a fault.
type fields struct {
	rest []string
	bad  bool
}

func (f *fields) text() string {
	if len(f.rest) == 0 {
		f.bad = true
		return ""
	}
	text := f.rest[0]
	f.rest = f.rest[1:]
	return text
}

func (f *fields) digit(most int) int {
	n, err := strconv.Atoi(f.text())
	f.bad = f.bad || err != nil || n < 0 || n > most
	if f.bad {
		return 0
	}
	return n
}

func (f *fields) flag() bool { return f.digit(1) == 1 }

func (f *fields) list() []string {
	text := f.text()
	if text == "" {
		return nil
	}
	return letters.Split(text, "|")
}

func (f *fields) rule() Rule {
	return Rule{Verdict: Verdict(f.digit(int(Never))), Physics: f.flag(), Reason: f.text(), Fault: f.text(), Remedy: f.text()}
}

// whole says whether the line held exactly its fields.
func (f *fields) whole() bool { return !f.bad && len(f.rest) == 0 }

func digit(n int) string { return strconv.Itoa(n) }

func flag(b bool) string {
	if b {
		return "1"
	}
	return "0"
}

func list(words []string) string { return letters.Join(words, "|") }
