package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
)

// The words of safety are worked out a second time here, from the course's
// table as it was loaded and from nothing else: a plan is read as a student
// reads it, by the words of its rows.

// keepOff is what is said of what must not touch food.
const keepOff = "Keep it off every surface that food, drink or lips touch."

// instructorDoes is how the words of a step begin that is not the student's.
const instructorDoes = "The instructor does this step, and you watch. "

// bench is a table with what the test wants to find in it.
type bench struct {
	d     *course.Decoration
	media []course.Medium // products and recipe cards too, each whole
	base  map[string]string
}

// newBench makes a medium of its own of each product and recipe card.
func newBench(d *course.Decoration) *bench {
	b := &bench{d: d, media: slices.Clone(d.Media), base: map[string]string{}}
	for _, m := range d.Media {
		b.base[m.ID] = m.ID
	}
	for _, e := range d.Exceptions {
		m, there := d.FindMedium(e.Medium)
		if !there || e.Kind != "product" && e.Kind != "recipe" {
			continue
		}
		own := *m
		own.ID, own.Name, own.Hides = e.ID, e.Name, e.Hides
		own.Hazards = append(slices.Clone(m.Hazards), e.Hazards...)
		own.Who = strictest(m.Who, e.Who)
		if e.Fixed != "" {
			own.Fixed = e.Fixed
		}
		own.On = map[string]course.Pair{}
		for state, pair := range m.On {
			own.On[state] = pair
			if p, differs := e.On[state]; differs {
				own.On[state] = p
			}
		}
		b.media = append(b.media, own)
		b.base[e.ID] = e.Medium
	}
	return b
}

// people from free to strict, with what a plan calls them.
var people = []struct {
	who   course.Who
	words string
}{
	{course.Student, "you"},
	{course.WithInstructor, "you, with the instructor beside you"},
	{course.Instructor, "the instructor; you watch"},
}

func rank(who course.Who) int {
	return max(0, slices.IndexFunc(people, func(p struct {
		who   course.Who
		words string
	}) bool {
		return p.who == who
	}))
}

func strictest(one, other course.Who) course.Who {
	if rank(one) > rank(other) {
		return one
	}
	return other
}

// medium finds a medium by the name that a plan calls it by.
func (b *bench) medium(name string) *course.Medium {
	name, _, _ = strings.Cut(name, " with "+b.metalWord())
	for i := range b.media {
		if strings.EqualFold(b.media[i].Name, name) {
			return &b.media[i]
		}
	}
	return nil
}

// techniques finds techniques by their names, with a comma between; a name may
// hold one itself. It returns none when some name is not known.
func (b *bench) techniques(names string) []*course.Technique {
	var all []*course.Technique
	for names != "" {
		var q *course.Technique
		for i := range b.d.Techniques {
			one := &b.d.Techniques[i]
			rest, ok := strings.CutPrefix(names, strings.ToLower(one.Name))
			if ok && (rest == "" || strings.HasPrefix(rest, ", ")) && (q == nil || len(one.Name) > len(q.Name)) {
				q = one
			}
		}
		if q == nil {
			return nil
		}
		all = append(all, q)
		names = strings.TrimPrefix(names[len(q.Name):], ", ")
	}
	return all
}

// state finds a state by its name, or by that of one of its parts.
func (b *bench) state(name string) string {
	for _, s := range b.d.States {
		if strings.EqualFold(s.Name, name) || slices.ContainsFunc(s.Parts, func(p course.Part) bool { return strings.EqualFold(p.Name, name) }) {
			return s.ID
		}
	}
	return ""
}

// coat is a coat that a plan has laid on.
type coat struct {
	m       *course.Medium
	loose   bool
	covered bool
	unfired bool // a glaze
	onGlaze bool // it went on a glaze, fired or not
	row     int
}

// walk follows a plan over the pot, row by row.
type walk struct {
	*bench
	t     *testing.T
	wish  wish
	coats []coat
	row   int
	cares []course.Care // of what the row rests on
	pairs []course.Pair
	laid  *course.Medium // by this row
	wait  string         // of what the row works
	below []course.Pair  // of what is laid on over what no firing has fixed
}

// read takes the row's words apart and gathers the rows of the table that it
// rests on. What the pot is like afterwards is kept.
func (w *walk) read(row map[string]string) {
	w.cares, w.pairs, w.laid, w.wait, w.below = nil, nil, nil, "", nil
	state := w.state(row["state"])
	title := row["title"]
	if title != "Bisque fire" && title != "Harden on" && title != "Fire" && title != "On-glaze fire" {
		w.loose()
	}
	switch {
	case strings.HasPrefix(title, "Put on "):
		w.lay(strings.TrimPrefix(title, "Put on "), state)
	case strings.HasPrefix(title, "Work the coat of "):
		name, way, _ := strings.Cut(strings.TrimPrefix(title, "Work the coat of "), ": ")
		m := w.medium(name)
		if m == nil {
			w.t.Fatalf("no medium is called %q", name)
		}
		w.cares = append(w.cares, m.Care)
		w.metal(m)
		w.ways(way, m, state)
		w.wait = w.begins(way, m, state)
	case strings.HasPrefix(title, "Work the clay: "):
		w.ways(strings.TrimPrefix(title, "Work the clay: "), nil, state)
	case strings.HasPrefix(title, "Peel off "):
		w.peel()
	case row["what"] == w.d.Firing.Drying: // which loose says
	case row["what"] == w.d.Firing.Name:
		w.cares = append(w.cares, w.d.Firing.Care)
		w.fire(func(m *course.Medium) bool { return m.Kind == "on-glaze" })
	default:
		w.move(strings.TrimPrefix(row["what"], instructorDoes), state)
	}
}

// loose adds what the coats call for that are not fixed by a firing, where they
// are on-glaze colour, where a student does not lay them on alone, or where a
// metal is named of them.
func (w *walk) loose() {
	for _, c := range w.coats {
		if c.loose && (c.m.Kind == "on-glaze" || c.m.Kind == "powder" || c.m.Who != "" && c.m.Who != course.Student) {
			w.cares = append(w.cares, c.m.Care)
		}
		if c.loose || c.unfired && !c.covered {
			w.metal(c.m)
		}
	}
}

// peel adds what the resists call for that are peeled off, and takes them off.
func (w *walk) peel() {
	w.coats = slices.DeleteFunc(w.coats, func(c coat) bool {
		if c.m.Fixed == course.Peeled {
			w.cares = append(w.cares, c.m.Care)
		}
		return c.m.Fixed == course.Peeled
	})
}

// metal adds what a metal that the wish names calls for.
func (w *walk) metal(m *course.Medium) {
	if w.wish.metal == m.ID && m.ID != "" {
		w.cares = append(w.cares, w.d.Metals.Care)
	}
}

// ways adds what each of some ways of working calls for.
func (w *walk) ways(names string, m *course.Medium, state string) {
	all := w.techniques(names)
	if len(all) == 0 {
		w.t.Fatalf("no technique is called %q", names)
	}
	for _, q := range all {
		w.way(q, m, state)
	}
}

// way adds what a way of working calls for.
func (w *walk) way(q *course.Technique, m *course.Medium, state string) {
	base := ""
	if m != nil {
		base = w.base[m.ID]
	}
	p := q.On[state].For(base)
	w.cares, w.pairs = append(w.cares, q.Care, p.Care), append(w.pairs, p)
}

// begins is when the table says to begin with a way that takes away.
func (w *walk) begins(way string, m *course.Medium, state string) string {
	q := w.techniques(way)[0]
	for _, c := range q.On[state] {
		if len(c.Only) == 0 || slices.Contains(c.Only, w.base[m.ID]) {
			return cmp.Or(c.Wait, q.Wait)
		}
	}
	return ""
}

// lay adds what laying a medium on calls for: "underglaze: paper stencil,
// brushing".
func (w *walk) lay(what, state string) {
	name, ways, _ := strings.Cut(what, ": ")
	m := w.medium(name)
	if m == nil {
		w.t.Fatalf("no medium is called %q", name)
	}
	w.laid = m
	w.cares, w.pairs = append(w.cares, m.Care, m.On[state].Care), append(w.pairs, m.On[state])
	if ways != "" {
		w.ways(ways, m, state)
	}
	w.metal(m)
	for _, under := range w.coats {
		for _, o := range w.d.Overs {
			meets := !under.covered && (under.loose || o.Fired) && (!w.wish.apart || w.added(m))
			if meets && o.Under == w.base[under.m.ID] && o.Above == w.base[m.ID] {
				w.cares, w.pairs = append(w.cares, o.Care), append(w.pairs, o.Pair)
				if under.loose && under.m.Kind != "resist" {
					w.below = append(w.below, o.Pair)
				}
			}
		}
	}
	if m.Kind == "glaze" {
		for i := range w.coats {
			w.coats[i].covered = w.coats[i].covered || w.coats[i].m.Kind != "resist" && (!w.wish.apart || w.added(m))
		}
	}
	w.coats = append(w.coats, coat{m: m, loose: m.Kind != "glaze", unfired: m.Kind == "glaze", onGlaze: state == "unfired-glaze" || state == "glaze-fired", row: w.row})
}

// added reports whether a glaze is one that nobody wished for.
func (w *walk) added(m *course.Medium) bool {
	return m.Kind == "glaze" && !slices.ContainsFunc(w.wish.layers, func(l layer) bool { return l.id() == m.ID })
}

// move adds what a transition calls for, if the row is one, and does it.
func (w *walk) move(name, state string) {
	i := slices.IndexFunc(w.d.Transitions, func(tr course.Transition) bool { return tr.Name == name && tr.From == state })
	if i < 0 {
		return // it dries, or stiffens
	}
	tr := w.d.Transitions[i]
	w.cares = append(w.cares, tr.Care)
	switch tr.Move {
	case "bisque", "harden":
		w.fire(func(m *course.Medium) bool { return m.Fixed == course.FixedYes })
	case "fire":
		w.fire(func(*course.Medium) bool { return true })
	case "strip":
		w.coats = nil
	}
}

// fire fixes what a firing fixes, and burns resists off.
func (w *walk) fire(fixes func(*course.Medium) bool) {
	if i := slices.IndexFunc(w.coats, func(c coat) bool { return c.m.Fixed == course.Peeled }); i >= 0 {
		w.t.Errorf("%s meets a firing", w.coats[i].m.Name)
	}
	w.coats = slices.DeleteFunc(w.coats, func(c coat) bool { return c.m.Kind == "resist" })
	for i := range w.coats {
		w.coats[i].loose = w.coats[i].loose && !fixes(w.coats[i].m)
		w.coats[i].unfired = w.coats[i].unfired && !fixes(w.coats[i].m)
	}
}

// want is what the row has to say, from what it rests on.
type want struct {
	cautions, wear, places []string
	who, lesson            string
}

func (w *walk) want() (all want) {
	who := course.Student
	named := map[string]bool{}
	for _, c := range w.cares {
		who = strictest(who, c.Who)
		for _, id := range c.Hazards {
			named[id] = true
		}
	}
	all.who = people[rank(who)].words
	for _, h := range w.d.Hazards {
		if !named[h.ID] {
			continue
		}
		all.cautions = append(all.cautions, h.Short)
		for _, piece := range h.Wear {
			if !slices.Contains(all.wear, piece) {
				all.wear = append(all.wear, piece)
			}
		}
		if p, there := w.d.FindPlace(h.Place); there && !slices.Contains(all.places, p.Name) {
			all.places = append(all.places, p.Name)
		}
		if all.lesson == "" && h.Lesson != "" {
			all.lesson = strings.TrimSuffix(strings.TrimPrefix(h.Lesson, "units/"), ".md") + ".html"
		}
	}
	return all
}

// check holds one row to what the table says.
func (w *walk) check(row map[string]string) error {
	w.read(row)
	want := w.want()
	caution := strings.TrimSpace(strings.TrimSuffix(row["caution"], keepOff))
	for _, c := range [][3]string{
		{"caution", caution, strings.Join(want.cautions, " ")},
		{"wear", row["wear"], strings.Join(want.wear, ", ")},
		{"place", row["place"], strings.Join(want.places, "; ")},
		{"who", row["who"], want.who},
		{"lesson", row["lesson"], want.lesson},
	} {
		if c[1] != c[2] {
			return fmt.Errorf("%s: %s is %q, want %q", row["title"], c[0], c[1], c[2])
		}
	}
	if w.wait != "" && row["wait"] != w.wait {
		return fmt.Errorf("%s: begin %q, want %q", row["title"], row["wait"], w.wait)
	}
	if err := w.bare(row); err != nil {
		return err
	}
	if want.who == people[2].words && w.laid != nil && !strings.HasPrefix(row["what"], instructorDoes) {
		return fmt.Errorf("%s: the words do not say that the instructor works", row["title"])
	}
	for _, p := range w.pairs {
		if p.Verdict == course.Never {
			return fmt.Errorf("%s: the table says never: %s", row["title"], p.Reason)
		}
	}
	return nil
}

// bare makes sure that a row over loose colour says how that is spared, and not
// what is good for bare ground; and that only bare ground is dried as such.
func (w *walk) bare(row map[string]string) error {
	if row["action"] == "dry" && row["what"] != w.d.Firing.Drying {
		for _, c := range w.coats {
			if c.m.Kind == "on-glaze" && c.loose {
				return fmt.Errorf("%s dries as bare clay does: %s", c.m.Name, row["what"])
			}
		}
	}
	for _, p := range w.below {
		on := w.laid.On[w.state(row["state"])]
		if !strings.Contains(row["trouble"], p.Remedy) || on.Verdict == course.Yes && on.Remedy != "" && strings.Contains(row["trouble"], on.Remedy) {
			return fmt.Errorf("%s over loose colour: %s", row["title"], row["trouble"])
		}
	}
	return nil
}

// offFood are the rows whose medium must be kept off what touches food: no
// medium for food, or one that ends without a glaze over it on a glazed pot. A
// resist is burned off, and a glaze is its own surface.
func (w *walk) offFood() map[int]bool {
	rows := map[int]bool{}
	for _, c := range w.coats {
		onTop := c.m.Kind != "glaze" && !c.covered && (!w.wish.bare || c.onGlaze)
		rows[c.row] = w.wish.food && c.m.Kind != "resist" && (!c.m.Food || onTop)
	}
	return rows
}
