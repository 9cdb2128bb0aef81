package main

import (
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/course"
)

// layer is one layer of a wish: a medium with its ways of working, or without
// one, the ways of working the clay itself.
type layer struct {
	medium *course.Medium
	ways   []*course.Technique
}

// is reports whether a layer is of a kind of medium.
func (l layer) is(kind string) bool { return l.medium != nil && l.medium.Kind == kind }

// id is that of the layer's medium; "" for the clay itself.
func (l layer) id() string {
	if l.medium == nil {
		return ""
	}
	return l.medium.ID
}

// wish is what a student asks for.
type wish struct {
	state  string // as the calculator's form has it
	layers []layer
	apart  bool
	food   bool
	bare   bool
	metal  string // id of the medium of which a metal is named; empty = none
}

// text is the layers as the choosers of a form write them: "cobalt Underglaze by
// Brushing then Scratching through".
func (w wish) text(metal string) string {
	var parts []string
	for _, l := range w.layers {
		text, by := "clay", " by "
		if l.medium != nil {
			text = l.medium.Name
		}
		if w.metal != "" && w.metal == l.id() {
			text = metal + " " + text
		}
		for _, q := range l.ways {
			text += by + q.Name
			by = " then "
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

// said is the layers as the answer says them back.
func (w wish) said(metal string) string {
	var parts []string
	for _, l := range w.layers {
		var ways []string
		for _, q := range l.ways {
			ways = append(ways, strings.ToLower(q.Name))
		}
		text := strings.Join(ways, ", ")
		if l.medium != nil && text != "" {
			text = " (" + text + ")"
		}
		if w.metal != "" && w.metal == l.id() {
			text = " with " + metal + text
		}
		if l.medium != nil {
			text = strings.ToLower(l.medium.Name) + text
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ") + "."
}

// yesOrNo is a choice of the form.
func yesOrNo(is bool, yes, no string) string {
	if is {
		return yes
	}
	return no
}

// plan asks for a plan as a student does.
func (b *bench) plan(s form.Settings, w wish) *form.Answer {
	return catalog.Solve("stage-plan", []form.Setting{
		{Name: "state", Text: w.state},
		{Name: "layers", Text: w.text(b.metalWord())},
		{Name: "places", Text: yesOrNo(w.apart, "different", "same")},
		{Name: "food", Text: yesOrNo(w.food, "yes", "no")},
		{Name: "finish", Text: yesOrNo(w.bare, "bare", "glazed")},
	}, s)
}

// metalWord is a word for a metal that is no part of what a medium is called.
func (b *bench) metalWord() string {
	var called []string
	for _, m := range b.media {
		called = append(called, strings.ToLower(m.Name), strings.Join(m.Words, " "))
	}
	i := slices.IndexFunc(b.d.Metals.Words, func(w string) bool {
		return !strings.Contains(strings.Join(called, " "), w) && !slices.Contains(b.d.Metals.NeverFood, w)
	})
	return b.d.Metals.Words[i]
}

// states are the choices of the form for the state of the pot.
func states() []string {
	var all []string
	for _, c := range catalog.In("en-GB").Find("stage-plan").Input("state").Choices {
		all = append(all, c.ID)
	}
	return all
}

// serving are the techniques that are for a medium.
func (b *bench) serving(m *course.Medium) []*course.Technique {
	var all []*course.Technique
	for i := range b.d.Techniques {
		if q := &b.d.Techniques[i]; len(q.With) == 0 || slices.Contains(q.With, b.base[m.ID]) {
			all = append(all, q)
		}
	}
	return all
}

// single are all layers of one medium, worked in one way or in none, and all
// ways of working the clay itself.
func (b *bench) single() []layer {
	var all []layer
	for i := range b.media {
		m := &b.media[i]
		all = append(all, layer{medium: m})
		for _, q := range b.serving(m) {
			all = append(all, layer{m, []*course.Technique{q}})
		}
	}
	for i := range b.d.Techniques {
		if q := &b.d.Techniques[i]; q.Bare {
			all = append(all, layer{ways: []*course.Technique{q}})
		}
	}
	return all
}

// worked are all layers of one medium that is laid on in one way and then
// worked in another.
func (b *bench) worked() []layer {
	var all []layer
	for i := range b.media {
		m := &b.media[i]
		for _, lays := range b.serving(m) {
			for _, takes := range b.serving(m) {
				if !lays.Takes && takes.Takes {
					all = append(all, layer{m, []*course.Technique{lays, takes}})
				}
			}
		}
	}
	return all
}

// everywhere are all wishes of one of some layers.
func everywhere(layers []layer) []wish {
	var all []wish
	for _, l := range layers {
		for _, state := range states() {
			for _, food := range []bool{true, false} {
				for _, bare := range []bool{true, false} {
					if !bare || !l.is("glaze") { // which the form refuses
						all = append(all, wish{state: state, layers: []layer{l}, food: food, bare: bare})
					}
				}
			}
		}
	}
	return all
}

// each takes one of every n wishes.
func each(n int, wishes []wish) []wish {
	var some []wish
	for i := 0; i < len(wishes); i += n {
		some = append(some, wishes[i])
	}
	return some
}

// twoLayers are some wishes of two layers, the same each time.
func (b *bench) twoLayers(n int) []wish {
	random := rand.New(rand.NewPCG(8, 15))
	all, layers, from := []wish(nil), b.single(), states()
	for len(all) < n {
		w := wish{state: from[random.IntN(len(from))], food: random.IntN(2) == 0, bare: random.IntN(4) == 0, apart: random.IntN(3) == 0}
		w.layers = []layer{layers[random.IntN(len(layers))], layers[random.IntN(len(layers))]}
		one, two := w.layers[0], w.layers[1]
		if one.medium == two.medium || w.bare && (one.is("glaze") || two.is("glaze")) {
			continue
		}
		if random.IntN(3) == 0 {
			w.metal = w.layers[random.IntN(2)].id()
		}
		all = append(all, w)
	}
	return all
}

// demoTable is the decoration table of the demo course.
func demoTable(t *testing.T) *course.Decoration {
	t.Helper()
	c, found := new(course.Reader).Load(os.DirFS("../content"))
	if len(found) > 0 {
		t.Fatal(found)
	}
	return c.Decoration
}

func settingsOf(d *course.Decoration) form.Settings { return form.Settings{Table: d.Table()} }

// rowsOf are an answer's rows by the names of their columns.
func rowsOf(a *form.Answer) []map[string]string {
	var all []map[string]string
	for _, cells := range a.Rows {
		row := map[string]string{}
		for i, c := range catalog.In("en-GB").Find("stage-plan").Columns {
			row[c.Name] = cells[i].Text
		}
		all = append(all, row)
	}
	return all
}

// output is an output of an answer in words.
func output(a *form.Answer, name string) string {
	for _, o := range a.Outputs {
		if o.Name == name {
			return o.Text
		}
	}
	return ""
}

// tally counts what a sweep over many wishes met.
type tally struct {
	plans, conflicts, keptOff, notFood, carried, risky int
	rests                                              map[string]int // by what the rule that was blamed rests on
	cautions                                           map[string]int // by the sentence, of hazards
}

// sweep asks for a plan of every wish and holds each to the table.
func (b *bench) sweep(t *testing.T, wishes []wish) tally {
	t.Helper()
	met := tally{rests: map[string]int{}, cautions: map[string]int{}}
	s := settingsOf(b.d)
	for _, w := range wishes {
		a := b.plan(s, w)
		if len(a.Errors) > 0 {
			t.Fatalf("%q is refused: %v", w.text(b.metalWord()), a.Errors)
		}
		if said := output(a, "wish"); !strings.Contains(said, w.said(b.metalWord())) {
			t.Fatalf("%q was asked for, planned is %q", w.said(b.metalWord()), said)
		}
		b.hold(t, w, a, &met)
		if t.Failed() {
			t.Fatalf("a %s pot, %s; apart %v, food %v, bare %v", w.state, w.text(b.metalWord()), w.apart, w.food, w.bare)
		}
	}
	return met
}

// hold holds one answer to the table.
func (b *bench) hold(t *testing.T, w wish, a *form.Answer, met *tally) {
	conflict := output(a, "conflict") != ""
	if conflict {
		met.conflicts++
		met.rests[b.blamed(t, w, a)]++
	} else {
		met.plans++
	}
	if len(a.Rows) > 0 {
		b.walked(t, w, a, conflict, met)
	}
	bare := w.food && w.bare && len(a.Rows) > 0
	if said := strings.Contains(a.Headline, "A pot that ends bare is not for food or drink."); said != bare {
		t.Errorf("the headline says that it is not for food: %v, want %v: %s", said, bare, a.Headline)
	} else if said {
		met.notFood++
	}
}

// walked follows the steps of a plan, or of the nearest one that works, whose
// wish is then another.
func (b *bench) walked(t *testing.T, w wish, a *form.Answer, conflict bool, met *tally) {
	if conflict {
		w = b.nearest(t, w, output(a, "nearest"))
	}
	on := &walk{bench: b, t: t, wish: w}
	risky := 0
	for i, row := range rowsOf(a) {
		on.row = i
		if err := on.check(row); err != nil {
			t.Error(err)
			return
		}
		if row["caution"] != "" {
			met.carried++
		}
		if row["risk"] != "" {
			risky++
		}
		for _, caution := range on.want().cautions {
			met.cautions[caution]++
		}
	}
	if len(a.Rows) > 0 && strconv.Itoa(risky) != output(a, "risky") {
		t.Errorf("%d steps are called risky, the answer counts %s", risky, output(a, "risky"))
	}
	met.risky += risky
	off := on.offFood()
	for i, row := range rowsOf(a) {
		said := strings.HasSuffix(row["caution"], keepOff)
		if said != off[i] {
			t.Errorf("%s: %q stands there: %v, want %v", row["title"], keepOff, said, off[i])
		}
		if said {
			met.keptOff++
		}
	}
}

// nearest is the wish that an answer offers instead, read from its words:
// "underglaze (brushing), glaze".
func (b *bench) nearest(t *testing.T, w wish, text string) wish {
	had := w.metal
	w.layers, w.metal = nil, ""
	for text != "" {
		end := strings.Index(text, ", ")
		if open := strings.IndexByte(text, '('); open >= 0 && (end < 0 || open < end) {
			end = strings.IndexByte(text, ')') + 1
		}
		if end < 0 || end >= len(text) {
			end = len(text)
		}
		name, ways, _ := strings.Cut(strings.TrimSuffix(text[:end], ")"), " (")
		l := layer{medium: b.medium(name), ways: b.techniques(ways)}
		if l.medium == nil {
			l.ways = b.techniques(name)
		}
		if l.medium == nil && l.ways == nil {
			t.Fatalf("nothing is called %q", name)
		}
		if strings.HasSuffix(name, " with "+b.metalWord()) {
			w.metal = l.id()
		} else if had != "" && l.id() == had {
			t.Errorf("%q does not say the metal", text)
		}
		w.layers = append(w.layers, l)
		text = strings.TrimPrefix(text[end:], ", ")
	}
	return w
}

// TestEveryPlanCarriesItsHazards plans every medium in every way it can be laid
// on or worked, in none, and laid on and then worked, on a pot in every state, for food or not, glazed or bare,
// and wants each step to carry what the table says of it, word for word.
func TestEveryPlanCarriesItsHazards(t *testing.T) {
	b := newBench(demoTable(t))
	all := everywhere(append(b.single(), b.worked()...))
	if raced { // every tenth: what is said is tried without the detector
		for n := range len(all) / 10 {
			all[n] = all[10*n]
		}
		b.sweep(t, all[:len(all)/10])
		b.sweep(t, b.twoLayers(150))
		return
	}
	met := b.sweep(t, all)
	if len(all) < 8000 || met.plans < 4000 || met.conflicts < 1000 || met.keptOff < 500 || met.notFood < 1000 || met.carried < 15000 || met.risky < 500 {
		t.Errorf("%d wishes: %+v", len(all), met)
	}
	if met = b.sweep(t, b.twoLayers(1500)); met.plans < 500 || met.conflicts < 200 || met.keptOff < 100 {
		t.Errorf("two layers: %+v", met)
	}
}
