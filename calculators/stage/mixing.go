//go:build !wasm

package stage

// Mixing is what weighing and mixing call for, of which the words of a Medium are
// made where a table is.
type Mixing struct {
	Signal   string   // the graver of the sheets' signal words; may be empty
	Invented bool     // a sheet behind it is made up, for teaching
	Wear     []string // what to put on, each once
	Places   []string // in words: "at the wet table"
	Who      Who
	Shorts   []string // of each hazard what to do
	Metals   []Held   // by recipe
	Unclear  []string // the materials of which the sheet leaves open how they harm
}

// Held is the metals that a recipe holds.
type Held struct {
	Recipe string
	Metals []string
}

// SayMixing words what weighing and mixing call for; empty where nothing does.
func (t *Table) SayMixing(m Mixing) string {
	said := ""
	tell := func(there bool, text string) {
		if there {
			said = join(said, text)
		}
	}
	tell(m.Signal != "" && !m.Invented, t.fill("mix.signal", "signal", m.Signal))
	tell(m.Signal != "" && m.Invented, t.fill("mix.signal-invented", "signal", m.Signal))
	tell(m.Who == WithInstructor, t.fill("mix.beside"))
	tell(m.Who == Instructor, t.fill("mix.instructor"))
	tell(len(m.Wear) > 0, t.fill("mix.wear", "wear", t.listed(m.Wear)))
	tell(len(m.Places) > 0, t.fill("mix.place", "place", t.listed(m.Places)))
	for _, short := range m.Shorts {
		tell(true, short)
	}
	for _, h := range m.Metals {
		tell(true, t.fill("mix.metals", "recipe", t.Words.Quoted([]string{h.Recipe}), "metals", t.listed(h.Metals)))
	}
	tell(len(m.Unclear) > 0, t.fill("mix.unclear", "materials", t.listed(m.Unclear)))
	return said
}

// SayProof words on which tile a recipe was tested; code is empty where it was on none.
func (t *Table) SayProof(code, cone string, failed bool) string {
	switch {
	case code == "":
		return t.fill("mix.untested")
	case failed:
		return t.fill("mix.failed", "tile", code, "cone", cone)
	}
	return t.fill("mix.tested", "tile", code, "cone", cone)
}

// SayTouch words what a sheet says of skin and eyes, which is so when the mix is wet
// as well, and what the sheet wants worn for it.
func (t *Table) SayTouch(statement string, wear []string) string {
	said := t.fill("mix.touch", "statement", statement)
	if len(wear) > 0 {
		said = join(said, t.fill("mix.wear", "wear", t.listed(wear)))
	}
	return said
}

// SayWet words what some recipes still do when they are wet.
func (t *Table) SayWet(recipes []string, said string) string {
	return t.fill("mix.wet", "names", t.Words.Quoted(recipes), "said", said)
}
