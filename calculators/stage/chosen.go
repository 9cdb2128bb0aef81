package stage

// BareClay is the word by which work on the clay itself is named, so that it is
// taken for no further way of working the layer before it.
const BareClay = "clay"

// The words by which what is on a pot is said to be fixed by a firing, or not.
const (
	SaidFixed = "fixed"
	SaidLoose = "loose"
)

// chosen returns what was understood in the table's own words, as the choosers of
// a form write it: "Coloured slip by Pouring then Scratching through, Glaze". It
// is empty where choosers hold less than was typed.
func (r *reader) chosen() string {
	if len(r.Left) > 0 {
		return ""
	}
	text := ""
	for i, layer := range r.Layers {
		if layer.Metal != "" && (layer.Medium < 0 || layer.Metal != r.t.metalIn(plain(r.t.Media[layer.Medium].Name))) || r.already && (layer.Medium < 0 || len(layer.Ways) > 0) {
			return ""
		}
		if i > 0 {
			text += ", "
		}
		text += r.t.Choice(layer)
		if r.saidFixed.has(i) {
			text += " " + SaidFixed
		} else if r.saidLoose.has(i) {
			text += " " + SaidLoose
		}
	}
	return text
}

// Choice writes one layer as the choosers of a form do.
func (t *Table) Choice(layer Layer) string {
	text, by := BareClay, " by "
	if layer.Medium >= 0 {
		text = Tellable(t.Media[layer.Medium].Name)
	}
	for _, q := range layer.Ways {
		text += by + Tellable(t.Techniques[q].Name)
		by = " then "
	}
	return text
}

// Tellable returns a name without what would part layers.
func Tellable(name string) string {
	text := ""
	for _, part := range parted(name) {
		text += part
	}
	return text
}

// Fits reports whether a technique is offered for a medium; -1 is the clay
// itself.
func (t *Table) Fits(technique, medium int) bool {
	q := &t.Techniques[technique]
	if medium < 0 {
		return q.Bare
	}
	return q.serves(t.Media[medium].Base)
}
