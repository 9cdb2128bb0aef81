package stage

// Recipe is a recipe of the studio's by which a medium is mixed, and what its newest
// version was tested on. Pages are addresses from the home page.
//
// Nothing of what mixing calls for is a rule: weighing powder is other work than
// laying it on wet, so no plan is found or compared by it.
type Recipe struct {
	Name, Page string
	Proof      string // the tile and its cone in words, or that there is none
	Tile       string // its page; empty where there is none
}

func (t *Table) takeRecipe(f *fields) bool {
	m := last(t.Media)
	if m == nil {
		return false
	}
	m.Recipes = append(m.Recipes, Recipe{f.text(), f.text(), f.text(), f.text()})
	return true
}

func (t *Table) takeMixing(f *fields) bool {
	m := last(t.Media)
	if m == nil {
		return false
	}
	m.Mixing = f.text()
	return true
}

func (t *Table) takeWet(f *fields) bool {
	m := last(t.Media)
	if m == nil {
		return false
	}
	m.Wet = append(m.Wet, f.text())
	return true
}

// encode writes what the studio mixes of a medium.
func (m *Medium) encode(w *lines) {
	for _, r := range m.Recipes {
		w.line("recipe", r.Name, r.Page, r.Proof, r.Tile)
	}
	if m.Mixing != "" {
		w.line("mixing", m.Mixing)
	}
	for _, wet := range m.Wet {
		w.line("wet", wet)
	}
}
