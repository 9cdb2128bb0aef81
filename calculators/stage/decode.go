package stage

import (
	"errors"
	"strconv"

	"slipbook/calculators/decimal"
	"slipbook/calculators/letters"
)

// mostRows bounds what Decode takes: many times the largest table.
const mostRows = 5000

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
			return nil, errors.New("table: too long")
		}
		if !t.take(&fields{rest: letters.Split(line, "\t")}) {
			return nil, errors.New("table: line " + strconv.Itoa(rows))
		}
	}
	return t, t.sound()
}

// take adds one line to the table; false when it cannot be read.
func (t *Table) take(f *fields) bool {
	word := f.text()
	for i := range readers {
		if readers[i].word == word {
			return readers[i].read(t, f) && f.whole()
		}
	}
	return false
}

// readers read the lines of a table by the word that they begin with. A line
// that belongs to the one before answers false where there is none.
var readers = [...]struct {
	word string
	read func(*Table, *fields) bool
}{
	{"hazard", func(t *Table, f *fields) bool {
		t.Hazards = append(t.Hazards, Hazard{ID: f.text(), Title: f.text(), Short: f.text(), Wear: f.list(), Place: f.text(), Lesson: f.text(), Health: f.flag()})
		return len(t.Hazards) <= MostHazards
	}},
	{"firing", func(t *Table, f *fields) bool { t.Fire, t.Firing, t.Drying = f.rule(), f.text(), f.text(); return true }},
	{"metals", func(t *Table, f *fields) bool {
		t.Metals = Metals{Rule: f.rule(), Words: f.list(), Unplanned: f.list(), NeverFood: f.list(), NotOver: f.list()}
		return true
	}},
	{"reports", func(t *Table, f *fields) bool { t.Reports = f.text(); return true }},
	{"phrase", func(t *Table, f *fields) bool {
		t.Phrases = append(t.Phrases, Phrase{Words: f.list(), Layers: f.text(), Ask: f.text()})
		return true
	}},
	{"state", func(t *Table, f *fields) bool {
		t.States = append(t.States, State{ID: f.text(), Name: f.text(), Words: f.list()})
		return true
	}},
	{"part", (*Table).takePart},
	{"medium", (*Table).takeMedium},
	{"recipe", (*Table).takeRecipe},
	{"mixing", (*Table).takeMixing},
	{"wet", (*Table).takeWet},
	{"on", (*Table).takeOn},
	{"technique", (*Table).takeTechnique},
	{"cell", (*Table).takeCell},
	{"by", (*Table).takeCase},
	{"over", func(t *Table, f *fields) bool {
		t.Overs = append(t.Overs, Over{Rule: f.rule(), Under: f.text(), Above: f.text(), Unless: f.list(), Fired: f.flag()})
		return true
	}},
	{"move", func(t *Table, f *fields) bool {
		t.Transitions = append(t.Transitions, Transition{Rule: f.rule(), ID: f.text(), Move: Move(f.digit(int(Fire))), From: f.digit(99), To: f.digit(99), Name: f.text()})
		return true
	}},
	{"body", func(t *Table, f *fields) bool {
		t.Bodies = append(t.Bodies, Body{ID: f.text(), Name: f.text()})
		return true
	}},
	{"change", (*Table).takeChange},
}

func (t *Table) takePart(f *fields) bool {
	s := last(t.States)
	if s == nil {
		return false
	}
	s.Parts = append(s.Parts, Part{f.text(), f.text(), f.text()})
	return true
}

func (t *Table) takeMedium(f *fields) bool {
	t.Media = append(t.Media, Medium{ID: f.text(), Base: f.text(), Name: f.text(), Words: f.list(), Kind: Kind(f.digit(int(Resist))), Look: f.text(), Best: f.digit(99),
		Heat: f.digit(99), Food: f.flag(), Hides: f.flag(), Fixed: Fixing(f.digit(int(Peeled))), Hazards: f.hazards(), Who: f.who()})
	return true
}

func (t *Table) takeOn(f *fields) bool {
	m := last(t.Media)
	if m == nil {
		return false
	}
	m.On = append(m.On, f.rule())
	return true
}

func (t *Table) takeTechnique(f *fields) bool {
	t.Techniques = append(t.Techniques, Technique{ID: f.text(), Name: f.text(), Words: f.list(), With: f.list(), Best: f.digit(99) - 1, Coats: f.flag(), Takes: f.flag(), Bare: f.flag(),
		Hazards: f.hazards(), Who: f.who()})
	return true
}

func (t *Table) takeCell(*fields) bool {
	q := last(t.Techniques)
	if q == nil {
		return false
	}
	q.On = append(q.On, nil)
	return true
}

func (t *Table) takeCase(f *fields) bool {
	q := last(t.Techniques)
	if q == nil || len(q.On) == 0 {
		return false
	}
	cell := last(q.On)
	c := Case{Rule: f.rule(), Only: f.list()}
	c.Wait = f.text()
	*cell = append(*cell, c)
	return true
}

func (t *Table) takeChange(f *fields) bool {
	body := last(t.Bodies)
	if body == nil {
		return false
	}
	body.Changes = append(body.Changes, Change{Rule: f.rule(), Medium: f.text(), State: f.digit(99)})
	return true
}

// last is the last of some things; nil when there is none.
func last[T any](list []T) *T {
	if len(list) == 0 {
		return nil
	}
	return &list[len(list)-1]
}

// sound checks that everything points at a state that exists and that every
// medium and technique has a rule for each.
func (t *Table) sound() error {
	n := len(t.States)
	fits := func(state int) bool { return state < n }
	for _, m := range t.Media {
		if len(m.On) != n || !fits(m.Best) {
			return errors.New("table: rules of " + m.Name)
		}
	}
	for _, q := range t.Techniques {
		if len(q.On) != n || !fits(q.Best) {
			return errors.New("table: rules of " + q.Name)
		}
	}
	for _, tr := range t.Transitions {
		if !fits(tr.From) || !fits(tr.To) {
			return errors.New("table: states of " + tr.ID)
		}
	}
	for _, body := range t.Bodies {
		for _, c := range body.Changes {
			if !fits(c.State) {
				return errors.New("table: states of " + body.Name)
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
	n, ok := decimal.Natural(f.text())
	f.bad = f.bad || !ok || n > most
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
	return Rule{Verdict: Verdict(f.digit(int(Never))), Basis: Basis(f.digit(int(House))), Reason: f.text(), Fault: f.text(), Remedy: f.text(), Ask: f.text(),
		Hazards: f.hazards(), Who: f.who(), Part: uint8(f.digit(9))}
}

func (f *fields) who() Who { return Who(f.digit(int(Instructor))) }

func (f *fields) hazards() Hazards {
	n, ok := decimal.Bits(f.text())
	f.bad = f.bad || !ok
	return Hazards(n)
}

// whole reports whether the line held exactly its fields.
func (f *fields) whole() bool { return !f.bad && len(f.rest) == 0 }
