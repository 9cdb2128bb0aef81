package course

import (
	"slices"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// Recipe is a mix that the studio makes: what is weighed, on 100 parts of a base,
// and what it is for.
type Recipe struct {
	ID        string
	Title     string
	About     string
	Medium    string   // id of a medium of the decoration table
	States    []string // ids of the states that it goes on
	Cone      string
	Base      []Share
	Additions []Share
	Water     float64 // parts on 100 of the dry base; 0 where Gravity is said
	Gravity   float64 // the specific gravity that it is mixed to; 0 where Water is said
	Mesh      int     // of the sieve; 0: not said
	Clear     string  // id of the material over it; none where it stays bare
	Food      string  // yes: it may be where food or drink touches; no
	LeachTest string  // number of the report that says that it may be
	Batch     string  // of the bucket that is in use; may be empty
	Keeps     string
	Mixing    []string // what is done, beyond weighing, in order
	Versions  []Version
	Tests     []Test
	Spots     Spots
}

// Share is a material of a recipe: parts of the base, or percent added to it.
type Share struct {
	Material string  // its id
	Amount   float64 // parts, or percent
	Of       string  // of an addition: base, dry or water; empty where nothing is said
	First    bool    // it goes into the water before the powder
	Spots    Spots
}

// Version is what became of a recipe, when, and which tile proves it.
type Version struct {
	Number int
	Date   string // ISO 8601
	By     string
	Change string
	Tile   string // code of a test tile; may be empty
	Spots  Spots
}

// Test is one that was made.
type Test struct{ Date, What, Result string }

// What an addition is a percentage of.
const (
	OfBase  = "base"
	OfDry   = "dry" // the base with what is added dry
	OfWater = "water"
)

// NoClear stands where nothing goes over a colour.
const NoClear = "none"

// mostShares bounds a recipe: the calculators weigh no more.
const mostShares = 12

// recipes reads the studio's recipes.
func (l *loader) recipes() {
	l.course.Recipes = readStock(l, recipesFolder, "title: White slip for cone 6", l.recipe)
}

func (l *loader) recipe(id string, root source.Value) *Recipe {
	f := root.Fields("title", "about", "medium", "states", "cone", "base", "additions", "water", "gravity", "mesh", "clear", "food", "leach-test", "batch", "keeps", "mixing", "versions", "tests")
	r := &Recipe{
		ID:        id,
		Title:     f.Need("title", "title: White slip for cone 6").Text(),
		About:     f.Need("about", "about: A white slip for the studio’s stoneware, to start from.").Text(),
		Medium:    l.medium(f.Need("medium", "medium: coloured-slip")),
		States:    l.statesNamed(f.Need("states", "states: [wet, leather-hard]")),
		Cone:      cone(f.Need("cone", "cone: 6")),
		Base:      readShares(f.Need("base", "base: [{material: river-ball-clay, parts: 100}]"), "parts"),
		Additions: readShares(f.Get("additions"), "percent"),
		Water:     f.Get("water").Number(1, 1000, "how many parts of water go on 100 of the base"),
		Gravity:   f.Get("gravity").Number(1.01, 2.5, "the specific gravity to mix to"),
		Mesh:      whole(f.Get("mesh"), 10, 400, "the mesh of the sieve"),
		Clear:     f.Need("clear", "clear: none").Text(),
		Food:      f.Need("food", "food: no").Choice("yes", "no"),
		LeachTest: f.Get("leach-test").Text(),
		Batch:     f.Get("batch").Text(),
		Keeps:     f.Get("keeps").Text(),
		Mixing:    f.Get("mixing").Texts(),
		Versions:  readVersions(f.Get("versions")),
		Tests:     readTests(f.Get("tests")),
		Spots:     f.Spots(),
	}
	if f.Get("water").Absent() == f.Get("gravity").Absent() && root.IsMapping() {
		root.Report(finding.MissingKey, "a recipe says how much water it takes, once", "Write either `water: 75`, parts on 100 of the dry base, or `gravity: 1.50`.")
	}
	return r
}

// statesNamed reads ids of states.
func (l *loader) statesNamed(v source.Value) (ids []string) {
	known := unique{}
	for _, s := range l.course.Decoration.States {
		known[s.ID] = v
	}
	for _, item := range v.List() {
		if id := known.known(item, "state"); id != "" && !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// readShares reads the materials of a recipe, each once; amount is the key of how
// much of it.
func readShares(v source.Value, amount string) (shares []Share) {
	seen := unique{}
	keys := []string{"material", amount}
	if amount == "percent" {
		keys = append(keys, "of", "first")
	}
	for _, item := range v.List() {
		f := item.Fields(keys...)
		id := f.Need("material", "material: river-ball-clay")
		s := Share{
			Material: id.ID(),
			Amount:   f.Need(amount, amount+": 8").Number(0.001, 1000, "the "+amount),
			Of:       f.Get("of").Choice(OfBase, OfDry, OfWater),
			First:    f.Get("first").Choice("yes", "no") == "yes",
			Spots:    f.Spots(),
		}
		if seen.add(id, s.Material) {
			shares = append(shares, s)
		}
	}
	if len(shares) > mostShares {
		v.Report(finding.ValueForm, "this list has too many materials to weigh in one go", "Make a recipe of some of them, and use the mix as a material of its own.")
	}
	return shares
}

func readVersions(v source.Value) (all []Version) {
	for _, item := range v.List() {
		f := item.Fields("version", "date", "by", "change", "tile")
		all = append(all, Version{
			Number: whole(f.Need("version", "version: 2"), 1, 10_000, "the number of the version"),
			Date:   date(f.Need("date", "date: 2026-09-14")),
			By:     f.Need("by", "by: Marit Olsen").Text(),
			Change: f.Need("change", "change: Two parts more ball clay, since it settled.").Text(),
			Tile:   f.Get("tile").Text(),
			Spots:  f.Spots(),
		})
	}
	return all
}

func readTests(v source.Value) (all []Test) {
	for _, item := range v.List() {
		f := item.Fields("date", "what", "result")
		all = append(all, Test{
			Date:   date(f.Need("date", "date: 2026-09-20")),
			What:   f.Need("what", "what: Ten tiles on each clay, cone 6.").Text(),
			Result: f.Need("result", "result: Holds; no crazing after a week.").Text(),
		})
	}
	return all
}

// FindRecipe finds a recipe.
func (c *Course) FindRecipe(id string) (*Recipe, bool) {
	i := slices.IndexFunc(c.Recipes, func(r *Recipe) bool { return r.ID == id })
	if i < 0 {
		return nil, false
	}
	return c.Recipes[i], true
}

// Newest returns the version with the highest number, wherever it stands; nil while
// none is written down.
func (r *Recipe) Newest() *Version {
	if len(r.Versions) == 0 {
		return nil
	}
	newest := slices.MaxFunc(r.Versions, func(a, b Version) int { return a.Number - b.Number })
	return &newest
}

// NewestNumber returns the number of the newest version; 0 while none is written down.
func (r *Recipe) NewestNumber() int {
	if newest := r.Newest(); newest != nil {
		return newest.Number
	}
	return 0
}

// GoesOn reports whether a recipe is for a state, by its id.
func (r *Recipe) GoesOn(state string) bool { return slices.Contains(r.States, state) }

// MaterialsOf returns the studio's entries of what a recipe is made of, in the order
// of its base and its additions.
func (c *Course) MaterialsOf(r *Recipe) (all []*Material) {
	for _, s := range slices.Concat(r.Base, r.Additions) {
		if m, there := c.FindMaterial(s.Material); there {
			all = append(all, m)
		}
	}
	return all
}

// MixingCare is the safety of mixing a recipe: of its materials, and of its medium.
func (c *Course) MixingCare(r *Recipe) (rows []Care) {
	for _, m := range c.MaterialsOf(r) {
		rows = append(rows, m.Care)
	}
	if medium, there := c.Decoration.FindMedium(r.Medium); there {
		rows = append(rows, medium.Care)
	}
	return rows
}

// Dry returns the additions that are weighed dry, each in percent of the base.
func (r *Recipe) Dry() (shares []Share) {
	over := 0.0
	for _, s := range r.Additions {
		if s.Of == OfBase {
			over += s.Amount
		}
	}
	for _, s := range r.Additions {
		switch s.Of {
		case OfBase:
			shares = append(shares, s)
		case OfDry:
			s.Amount *= 1 + over/100
			shares = append(shares, s)
		}
	}
	return shares
}

// Weighed returns what is weighed dry, in the order in which it goes onto the scale:
// what goes into the water before the powder first.
func (r *Recipe) Weighed() (shares []Share) {
	for _, first := range []bool{true, false} {
		if !first {
			shares = append(shares, r.Base...)
		}
		for _, s := range r.Dry() {
			if s.First == first {
				shares = append(shares, s)
			}
		}
	}
	return shares
}

// Over returns how much is added dry, in percent of the base.
func (r *Recipe) Over() float64 {
	over := 0.0
	for _, s := range r.Dry() {
		over += s.Amount
	}
	return over
}

// InWater returns the additions that are measured by the water.
func (r *Recipe) InWater() (shares []Share) {
	for _, s := range r.Additions {
		if s.Of == OfWater {
			shares = append(shares, s)
		}
	}
	return shares
}
