package stage

import (
	"errors"

	"slipbook/calculators/letters"
)

// Understood is what was made of a text that somebody typed.
type Understood struct {
	Layers []Layer
	Read   []string // how words were read that were not written so: "“underglase” is read as underglaze"
	Left   []string // words that were left out, as typed
	Odd    []string // of them, those that are no colour, number or other word that changes nothing
	Chosen string   // the same in the table's own words, as choosers write it; empty where they hold less
}

// Layers understands layers in a person's words, separated by commas, plus signs
// or the words then and and: "blue slip by stencil, then wash wiped back, clear
// glaze dipped". Each part names a medium and how it is put on and worked; a
// part without a medium is a further way of working the layer before it, or at
// the beginning, work on the clay itself. "A over B" lays A on B. What is left
// out is told. An error says which words were not understood.
func (t *Table) Layers(text string) (Understood, error) {
	r := &reader{t: t}
	for _, part := range parted(text) {
		if err := r.part(plain(part)); err != nil {
			return Understood{}, err
		}
	}
	if len(r.Layers) > MostLayers || len(t.acts(r.Layers)) > mostActs {
		return Understood{}, t.refuse("refuse.too-many-layers")
	}
	r.Chosen = r.chosen()
	return r.Understood, nil
}

// Coats understands what is on a pot already, as Layers does. Each may be said
// to be fixed or loose; unsaid, a pot that was fired has fixed what bisque heat
// fixes, and a finished one all but on-glaze colour.
func (t *Table) Coats(text string, state int) ([]Coat, Understood, error) {
	r := &reader{t: t, already: true}
	for _, part := range parted(text) {
		if err := r.part(plain(part)); err != nil {
			return nil, Understood{}, err
		}
	}
	if len(r.Layers) > MostLayers {
		return nil, Understood{}, t.refuse("refuse.too-many-coats")
	}
	var coats []Coat
	for i, layer := range r.Layers {
		if layer.Medium < 0 {
			continue
		}
		coat, err := r.coat(i, state)
		if err != nil {
			return nil, Understood{}, err
		}
		coats = append(coats, coat)
	}
	r.Chosen = r.chosen()
	return coats, r.Understood, nil
}

// coat is a layer on a pot in a state. Unsaid, on-glaze colour is loose, since
// nobody can tell, and on a finished pot all else is fixed.
func (r *reader) coat(i, state int) (Coat, error) {
	t := r.t
	m := &t.Media[r.Layers[i].Medium]
	loose := r.saidLoose.has(i)
	said := loose || r.saidFixed.has(i)
	switch {
	case m.Kind == OnGlaze && !t.finishedIn(state):
		return Coat{}, t.refuse("refuse.on-glaze-coat", "medium", m.Name)
	case m.Kind == Glaze && said && loose && t.finishedIn(state):
		return Coat{}, t.refuse("refuse.unfired-glaze")
	case said && !loose && !t.finishedIn(state) && m.Kind == Powder && (m.Fixed == Loose || r.Layers[i].Metal != ""):
		return Coat{}, t.refuse("refuse.raw-metal", "medium", m.Name)
	case said:
	case m.Kind == OnGlaze:
		loose = true
	case t.finishedIn(state):
		loose = false
	default:
		loose = !t.firedIn(state) || m.Fixed != Fixed || m.Kind == Resist
	}
	return Coat{r.Layers[i].Medium, loose, r.Layers[i].Metal}, nil
}

// StateSaid is the id of the state that a person's words name, with the part
// before it where one is said, "stiff-leather-hard"; empty where they name none.
func (t *Table) StateSaid(text string) string {
	words := plain(text)
	for _, s := range t.States {
		for _, phrase := range append([]string{s.Name, s.ID}, s.Words...) {
			if len(words) > 0 && begins(words, phrase) == len(words) {
				return s.ID
			}
			for _, p := range s.Parts {
				if len(words) > 1 && words[0] == p.ID && begins(words[1:], phrase) == len(words)-1 {
					return p.ID + "-" + s.ID
				}
			}
		}
	}
	return ""
}

// firedIn reports whether clay in a state has been fired.
func (t *Table) firedIn(state int) bool {
	for _, tr := range t.Transitions {
		if (tr.Move == Dry || tr.Move == Bisque) && tr.From == state || tr.Move == Dry && tr.To == state {
			return false
		}
	}
	return true
}

// finishedIn reports whether a pot in a state has had its last firing.
func (t *Table) finishedIn(state int) bool {
	for _, tr := range t.Transitions {
		if tr.Move == Fire && tr.To == state {
			return true
		}
	}
	return false
}

// reader makes layers of words.
type reader struct {
	t         *Table
	already   bool
	saidFixed set  // layers that are said to be fixed
	saidLoose set  // and to be loose; of two words the last counts
	joined    bool // a small word such as "then" came before the words of this layer
	Understood
}

// parted cuts a text at what parts layers for certain.
func parted(text string) []string {
	var parts []string
	for text != "" {
		end := letters.IndexAny(text, ",;+/&\n")
		if end < 0 {
			return append(parts, text)
		}
		parts = append(parts, text[:end])
		text = text[end+1:]
	}
	return parts
}

// joiners part layers, or ways of working one.
var joiners = []string{"then", "and", "plus", "next", "before", "afterwards", "followed"}

// reversers lay what stands before them on what stands after them; the second
// list lays it below.
var (
	reversers  = []string{"over", "onto", "atop", "after"}
	forwarders = []string{"under", "underneath", "beneath", "below"}
)

// part understands one part of a text: phrases that stand for whole wishes, and
// else layers joined by small words.
func (r *reader) part(words []string) error {
	if len(words) == 0 {
		return nil
	}
	words = r.t.mended(words, r)
	if i, rest := longest(words, len(r.t.Phrases), func(i int) []string { return r.t.Phrases[i].Words }); i >= 0 {
		return r.phrase(&r.t.Phrases[i], rest)
	}
	within := r.t.within(words)
	from, below := 0, -1 // where the piece begins; the place below what it was said to lie under
	for i := 0; i <= len(words); i++ {
		if i < len(words) && (within[i] || !has(joiners, words[i]) && !has(reversers, words[i]) && !has(forwarders, words[i]) || r.onlyWays(words[from:i])) {
			continue
		}
		before := len(r.Layers)
		r.joined = from > 0 && before > 0
		if err := r.layer(words[from:i]); err != nil {
			return err
		}
		added := len(r.Layers) > before
		if below >= 0 && added {
			r.sink(before, below)
		}
		switch {
		case i == len(words) || !has(reversers, words[i]):
			below = -1
		case below < 0 && added:
			below = before
		}
		from = i + 1
	}
	return nil
}

// onlyWays reports whether some words at the very beginning name ways of
// working alone that need a medium: "scratched and dipped slip" is one layer.
func (r *reader) onlyWays(words []string) bool {
	if len(r.Layers) > 0 {
		return false
	}
	if m, _, _ := r.t.findMedium(words); m >= 0 {
		return false
	}
	q, _, _ := r.t.findTechnique(words)
	return q >= 0 && !r.t.Techniques[q].Bare
}

// sink moves a layer down to a place.
func (r *reader) sink(layer, to int) {
	sunk := r.Layers[layer]
	copy(r.Layers[to+1:layer+1], r.Layers[to:layer])
	r.Layers[to] = sunk
}

// phrase puts the layers in that a phrase stands for, or asks which of its
// meanings is meant. Words beside it belong to the last of them.
func (r *reader) phrase(p *Phrase, rest []string) error {
	if p.Layers == "" {
		return errors.New(p.Ask)
	}
	for _, part := range parted(p.Layers) {
		if err := r.layer(plain(part)); err != nil {
			return err
		}
	}
	r.Read = append(r.Read, r.t.fill("read-as", "typed", p.Words[0], "meant", p.Layers))
	return r.layer(rest)
}

// layer understands the words of one layer, or of further ways of working the
// one before it.
func (r *reader) layer(words []string) error {
	layer := Layer{Medium: -1}
	if refused := without(words, nil, refusals); len(refused) < len(words) {
		return r.t.refuse("refuse.ruled-out", "typed", spoken(words))
	}
	layer.Metal = r.t.metalIn(words)
	for _, w := range words {
		if has(r.t.Metals.Unplanned, w) {
			return r.t.refuse("refuse.unplanned", "typed", w)
		}
	}
	masked := r.t.masked(words)
	medium, at, many := r.t.findMedium(masked)
	said := blanked(words, at, many)
	if medium < 0 && !r.joined {
		medium, at, many = r.t.findMedium(words) // "stiff-brush slip" names a way and a medium
		said = words
	} else if second, _, _ := r.t.findMedium(r.t.withoutName(blanked(masked, at, many), medium)); second >= 0 {
		return r.twoMedia(words, medium, second)
	}
	layer.Medium = medium
	rest, err := r.ways(&layer, said)
	if err != nil {
		return err
	}
	rest = without(blanked(rest, at, many), []string{""}, nil)
	bare := medium < 0 && has(rest, BareClay)
	if bare {
		rest = without(rest, []string{BareClay}, nil)
	}
	rest = r.leftOver(without(r.t.withoutName(rest, medium), []string{""}, nil))
	if medium < 0 && len(layer.Ways) == 0 {
		return r.nothing(words, rest, layer.Metal)
	}
	if medium < 0 {
		return r.further(layer, words, bare)
	}
	for _, q := range layer.Ways {
		if err := r.t.serve(q, medium); err != nil {
			return err
		}
	}
	r.Layers = append(r.Layers, layer)
	return nil
}

// metalIn is what is harmful as a metal among some words, be it in the name of a
// medium such as "copper carbonate": "cobalt and copper". It is empty where
// nothing is.
func (t *Table) metalIn(words []string) string {
	var metals []string
	for _, w := range words {
		if has(t.Metals.Words, w) {
			metals = union(metals, w)
		}
	}
	return letters.Join(metals, " and ")
}

// withoutName takes the words of a medium's own name out of what was said beside
// it: "red iron oxide wash" is an oxide wash, though wash alone is another.
func (t *Table) withoutName(words []string, medium int) []string {
	if medium < 0 {
		return words
	}
	name := plain(t.Media[medium].Name)
	rest := append([]string(nil), words...)
	for i := range rest {
		if has(name, rest[i]) {
			rest[i] = ""
		}
	}
	return rest
}

// twoMedia takes a resist for a layer of its own, "wash waxed"; other media
// side by side have no order that could be told.
func (r *reader) twoMedia(words []string, first, second int) error {
	a, b := &r.t.Media[first], &r.t.Media[second]
	if a.Kind != Resist && b.Kind != Resist {
		return r.t.refuse("refuse.two-layers", "typed", spoken(words), "first", r.t.lower(a.Name), "second", r.t.lower(b.Name))
	}
	resist := b
	if a.Kind == Resist {
		resist = a
	}
	_, rest := longest(words, 1, func(int) []string { return resist.phrases() })
	if err := r.layer(rest); err != nil {
		return err
	}
	return r.layer(plain(resist.Name))
}

// ways takes the techniques out of some words, in the order in which they were
// said, those that lay on first. Words that it took are left blank.
func (r *reader) ways(layer *Layer, words []string) ([]string, error) {
	type said struct{ at, technique int }
	var found []said
	for {
		q, start, many := r.t.findTechnique(words)
		if q < 0 {
			break
		}
		found = append(found, said{start, q})
		words = blanked(words, start, many)
	}
	for at := range words {
		for _, f := range found {
			if f.at == at && !hasInt(layer.Ways, f.technique) {
				layer.Ways = append(layer.Ways, f.technique)
			}
		}
	}
	if len(layer.Ways) > mostWays {
		return nil, r.t.refuse("refuse.too-many-ways", "typed", spoken(words), "most", digit(mostWays))
	}
	layer.Ways = r.t.layFirst(layer.Ways)
	return words, nil
}

// layFirst puts the ways that lay on before those that take away.
func (t *Table) layFirst(ways []int) []int {
	var sorted []int
	for _, takes := range []bool{false, true} {
		for _, q := range ways {
			if t.Techniques[q].Takes == takes {
				sorted = append(sorted, q)
			}
		}
	}
	return sorted
}

// leftOver looks through what names neither medium nor technique: metals are
// never dropped, small words are dropped in silence, all others are told.
func (r *reader) leftOver(words []string) []string {
	var left []string
	for _, w := range words {
		switch {
		case has(r.t.Metals.Words, w): // which layer.Metal holds
		case r.already && has(fixedWords, w):
			r.sayFixed(true)
		case r.already && has(looseWords, w):
			r.sayFixed(false)
		case !has(small, w) && !has(joiners, w):
			left = append(left, w)
		}
	}
	r.Left = union(r.Left, left...)
	for _, w := range left {
		if !has(colours, w) && !number(w) {
			r.Odd = union(r.Odd, w)
		}
	}
	return left
}

// sayFixed notes what is said of the layer whose words are being read.
func (r *reader) sayFixed(fixed bool) {
	layer := set(1) << len(r.Layers)
	r.saidFixed &^= layer
	r.saidLoose &^= layer
	if fixed {
		r.saidFixed |= layer
	} else {
		r.saidLoose |= layer
	}
}

// words that say of what is on a pot whether a firing has fixed it.
var (
	fixedWords = []string{SaidFixed, "fired", "clean", "hardened"}
	looseWords = []string{SaidLoose, "unfired", "raw", "powdery", "dusty"}
)

// nothing answers words that name neither a medium nor a way of working.
func (r *reader) nothing(words, left []string, metal string) error {
	switch {
	case len(words) == 0 || metal == "" && len(r.Layers) > 0 && len(without(left, colours, nil)) == 0:
		return nil
	case metal != "":
		return r.t.refuse("refuse.metal-alone", "typed", spoken(words))
	case r.t.namesState(words):
		return r.t.refuse("refuse.state-alone", "typed", spoken(words), "media", r.t.mediaNames())
	case len(left) > 0 && len(without(left, colours, nil)) == 0:
		return r.t.refuse("refuse.colour-alone", "typed", spoken(words), "media", r.t.mediaNames())
	}
	if near := r.t.nearest(left); near != "" {
		return r.t.refuse("refuse.no-medium-but", "typed", spoken(words), "near", near, "media", r.t.mediaNames())
	}
	return r.t.refuse("refuse.no-medium", "typed", spoken(words), "media", r.t.mediaNames())
}

// namesState reports whether some of the words say what a pot is now.
func (t *Table) namesState(words []string) bool {
	for k := range words {
		for _, s := range t.States {
			for _, phrase := range append([]string{s.Name, s.ID}, s.Words...) {
				if begins(words[k:], phrase) > 0 {
					return true
				}
			}
		}
	}
	return false
}

// further adds ways of working to the layer before, or works the clay itself
// where there is none and where the clay is named.
func (r *reader) further(layer Layer, words []string, bare bool) error {
	n := len(r.Layers)
	onCoat := n > 0 && r.Layers[n-1].Medium >= 0 && !bare
	for _, q := range layer.Ways {
		if onCoat {
			if err := r.t.serve(q, r.Layers[n-1].Medium); err != nil {
				return err
			}
		} else if !r.t.Techniques[q].Bare {
			return r.t.refuse("refuse.way-alone", "typed", spoken(words), "media", r.t.mediaNames())
		}
	}
	if layer.Metal != "" && !onCoat {
		return r.nothing(words, nil, layer.Metal)
	}
	if n == 0 || bare {
		r.Layers = append(r.Layers, layer)
		return nil
	}
	last := &r.Layers[n-1]
	last.Metal = r.t.metalIn(append(plain(last.Metal), plain(layer.Metal)...))
	for _, q := range layer.Ways {
		if !hasInt(last.Ways, q) {
			last.Ways = append(last.Ways, q)
		}
	}
	last.Ways = r.t.layFirst(last.Ways)
	if len(last.Ways) > mostWays {
		if last.Medium < 0 {
			return r.t.refuse("refuse.too-many-on-clay", "most", digit(mostWays))
		}
		return r.t.refuse("refuse.too-many-on", "medium", r.t.lower(r.t.Media[last.Medium].Name), "most", digit(mostWays))
	}
	return nil
}

// serve checks that a technique is for a medium.
func (t *Table) serve(technique, medium int) error {
	q, m := &t.Techniques[technique], &t.Media[medium]
	if q.serves(m.Base) {
		return nil
	}
	return t.refuse("refuse.not-for-medium", "way", q.Name, "medium", t.lower(m.Name), "ways", t.techniqueNames(medium))
}

// small words may stand anywhere in a layer.
var small = []string{"a", "an", "the", "by", "with", "in", "on", "of", "it", "i", "to", "my", "want", "some", "put", "coat", "coats", "coated", "layer", "layers",
	"thin", "thick", "using", "first", "from", "top", "all", "is", "pot", "for", "through", "into", "at", "out", "up"}

// refusals rule something out, which a wish cannot do.
var refusals = []string{"no", "not", "without", "never", "except", "instead", "don", "unglazed", "free"}

func (m *Medium) phrases() []string    { return append([]string{m.Name}, m.Words...) }
func (q *Technique) phrases() []string { return append([]string{q.Name}, q.Words...) }

// serves reports whether a technique is for a medium, by base id.
func (q *Technique) serves(base string) bool {
	return len(q.With) == 0 || has(q.With, base)
}

// offers reports whether a technique may be done with a medium in some state.
func (q *Technique) offers(base string) bool {
	for _, cell := range q.On {
		if q.serves(base) && cell.For(base).Verdict != Never {
			return true
		}
	}
	return false
}

func (t *Table) mediaNames() string {
	var names []string
	for _, m := range t.Media {
		names = append(names, t.lower(m.Name))
	}
	return t.listed(names)
}

func (t *Table) techniqueNames(medium int) string {
	var names []string
	for i := range t.Techniques {
		if t.Techniques[i].offers(t.Media[medium].Base) {
			names = append(names, t.lower(t.Techniques[i].Name))
		}
	}
	return t.listed(names)
}

// spoken is what was typed, without the words that were taken out of it.
func spoken(words []string) string { return letters.Join(without(words, []string{""}, nil), " ") }

// number reports whether a word is made of digits.
func number(word string) bool {
	for i := range len(word) {
		if word[i] < '0' || word[i] > '9' {
			return false
		}
	}
	return true
}

func hasInt(list []int, n int) bool {
	for _, x := range list {
		if x == n {
			return true
		}
	}
	return false
}
