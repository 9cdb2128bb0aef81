package course

import (
	"cmp"
	"slices"

	"slipbook/calculators/catalog"
	"slipbook/calculators/stage"
)

// Doubt is why a report answers nothing for the pots that are made now.
type Doubt string

// The doubts, in the order in which they are told.
const (
	DoubtInvented     Doubt = "invented"
	DoubtFailed       Doubt = "failed"
	DoubtLimit        Doubt = "limit"        // more lead or cadmium came out than the strictest limit read allows
	DoubtFailedSince  Doubt = "failed-since" // a pot of the same failed on that day or later
	DoubtHeavy        Doubt = "heavy"        // the clear holds lead or cadmium
	DoubtExpired      Doubt = "expired"
	DoubtFuture       Doubt = "future"         // it is dated after the day
	DoubtVersion      Doubt = "version"        // the recipe has a newer one
	DoubtStrength     Doubt = "strength"       // the recipe has more colour, or less
	DoubtClear        Doubt = "clear"          // another clear goes over the recipe
	DoubtCone         Doubt = "cone"           // the recipe is fired to another cone
	DoubtBody         Doubt = "body"           // the clay is fired to another cone
	DoubtBatch        Doubt = "batch"          // another batch is in use
	DoubtNoBatch      Doubt = "no-batch"       // nothing says which batch is in use
	DoubtClearBatch   Doubt = "clear-batch"    // likewise of the clear
	DoubtNoClearBatch Doubt = "no-clear-batch" // likewise
)

// Doubts lists why a report answers nothing on a day (ISO 8601): it holds for the
// identical combination alone, and a day that is not known lets none run out. Without
// a doubt it answers.
func (c *Course) Doubts(l *Leach, today string) []Doubt {
	var all []Doubt
	add := func(doubt Doubt, there bool) {
		if there {
			all = append(all, doubt)
		}
	}
	add(DoubtInvented, l.Invented)
	add(DoubtFailed, !l.Passed)
	add(DoubtLimit, l.Passed && l.overLimit())
	add(DoubtFailedSince, l.Passed && c.failedSince(l))
	add(DoubtHeavy, c.heavy(l))
	add(DoubtExpired, l.Until < today)
	add(DoubtFuture, today != "" && l.Date > today)
	batch := l.Batch
	if r, there := c.FindRecipe(l.Recipe); there {
		add(DoubtVersion, l.Version != r.NewestNumber())
		add(DoubtStrength, l.Percent != c.Strength(r))
		add(DoubtClear, l.Clear != r.Clear)
		add(DoubtCone, l.Cone != r.Cone)
		batch = r.Batch
	} else if m, there := c.FindMaterial(l.Colour); there {
		batch = m.Batch
	}
	i := slices.IndexFunc(c.Bodies, func(b Body) bool { return b.ID == l.Body })
	add(DoubtBody, i < 0 || c.Bodies[i].Cone != l.Cone)
	add(DoubtNoBatch, batch == "" && l.Batch != "")
	add(DoubtBatch, batch != "" && batch != l.Batch)
	if m, there := c.FindMaterial(l.Clear); there {
		add(DoubtNoClearBatch, m.Batch == "")
		add(DoubtClearBatch, m.Batch != "" && m.Batch != l.ClearBatch)
	}
	return all
}

// Strength is how much colour a recipe has, in percent of its base: of all additions
// that are weighed dry and whose materials name a metal, together.
func (c *Course) Strength(r *Recipe) float64 {
	sum := 0.0
	for _, s := range r.Dry() {
		if m, there := c.FindMaterial(s.Material); there && len(m.Metals) > 0 {
			sum += s.Amount
		}
	}
	return sum
}

// FindLeach finds a report.
func (c *Course) FindLeach(number string) (*Leach, bool) {
	i := slices.IndexFunc(c.Leach, func(l *Leach) bool { return l.Number == number })
	if i < 0 {
		return nil, false
	}
	return c.Leach[i], true
}

// Tested returns the report that lets a recipe go where food does, on a day: the one
// that it names, as long as that answers; nil where none does.
func (c *Course) Tested(r *Recipe, today string) *Leach {
	l, there := c.FindLeach(r.LeachTest)
	if r.Food != "yes" || !there || l.Recipe != r.ID || len(c.Doubts(l, today)) > 0 {
		return nil
	}
	return l
}

// Answering lists the reports that answer on a day, the newest first.
func (c *Course) Answering(today string) []*Leach {
	return slices.DeleteFunc(c.NewestLeach(), func(l *Leach) bool { return len(c.Doubts(l, today)) > 0 })
}

// NewestLeach lists all reports, the newest first, those of one day as in the file.
func (c *Course) NewestLeach() []*Leach {
	all := slices.Clone(c.Leach)
	slices.SortStableFunc(all, func(a, b *Leach) int { return cmp.Compare(b.Date, a.Date) })
	return all
}

// IsOf reports whether a tile is of the combination that a report is of: one thing that
// differs, or that the tile does not say, makes it another.
func (c *Course) IsOf(l *Leach, t *Tile) bool {
	r, there := c.FindRecipe(l.Recipe)
	return there && t.Recipe == r.ID && t.Version == l.Version && t.Strength() == l.Percent &&
		t.Clear == l.Clear && t.Body == l.Body && t.Cone == l.Cone && t.Batch == l.Batch && t.Batch != "" &&
		(t.Atmosphere == l.Atmosphere || l.Atmosphere == "")
}

// Planner returns the decoration table as the planner takes it, answering in a
// language, with where the reports of leach tests stand. A plan knows media, and no
// batches: which reports answer it can name, and never say yes.
func (c *Course) Planner(language, today string) *stage.Table {
	t := c.Decoration.Table()
	t.Words = catalog.WordsIn(language)
	var reports []stage.Report
	for _, l := range c.Answering(today) {
		reports = append(reports, stage.Report{Number: l.Number, Until: l.Until})
	}
	t.TellReports(reports)
	return t
}
