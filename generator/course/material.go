package course

import (
	"slices"
	"strings"
	"sync"

	"slipbook/generator/source"
)

// Material is something that a recipe is weighed or poured from: the studio's own
// tub, or what the program says of all of its kind.
type Material struct {
	ID    string
	Is    string // id of the program's entry that it lies over; may be empty
	Own   bool   // the studio's; false: the program's, of which nobody here has read a sheet
	Name  string // as on the tub
	What  string // what it is, in a sentence or two
	Role  string // what it does in a mix
	Form  string // powder, liquid, paste or solid
	CAS   []string
	Sheet Sheet
	Class Class
	Care  // its hazards, and who may open the tub

	Wear     []string
	Storage  string
	Spill    string
	Waste    string
	FirstAid string

	Density     float64  // g/mL, of the dry powder or of the liquid; 0: not said
	Quartz      string   // percent by mass, none or unknown; may be empty
	QuartzBy    bool     // the sheet of this tub says so, not the program of all of its kind
	Metals      []string // words for metals in it
	HighestCone string   // above it the colour is lost; may be empty
	SpoiledBy   []string // what in a clear spoils its colour
	Holds       []string // of a clear: what it holds
	Batch       string   // that is in use, as on the tub; may be empty
	SheetSays   string   // of the program's entries: what to look for on the supplier's sheet

	Spots Spots
}

// Sheet is the supplier's safety data sheet that an entry was taken from. Its
// dates are of ISO 8601, "2026-09-01".
type Sheet struct {
	Supplier string
	Date     string // of the sheet itself
	ReadBy   string
	Read     string
	Review   string // it is read again by then
	Invented bool   // made up, to be read in class
	Spots    Spots  // nil where no sheet is named
}

// Class is how a sheet classes a material, in the codes of the GHS.
type Class struct {
	Says        string // yes, no or unclear; empty where nothing is said
	Signal      string // Danger, Warning or none
	Pictograms  []string
	Statements  []string // hazard statements, H-codes
	Precautions []string // precautionary statements, P-codes
}

// Classed says how sheets class.
const (
	Classed     = "yes"
	NotClassed  = "no"
	ClassedOpen = "unclear" // the page sends the reader to the sheet
)

// materialForms are the forms of what stands on a shelf.
var materialForms = []string{"powder", "liquid", "paste", "solid"}

// materialsBase is the program's own list of materials.
const materialsBase = "materials.yaml"

// genericKeys are those of the program's own entries; a class is never among
// them, since it belongs to one supplier's product.
var genericKeys = []string{"id", "name", "what", "role", "form", "cas", "density", "hazards", "quartz", "metals", "sheet-says"}

// materialKeys are those of the studio's entries.
var materialKeys = append(slices.DeleteFunc(slices.Clone(genericKeys), func(key string) bool { return key == "id" || key == "sheet-says" }),
	"is", "sheet", "classified", "signal", "pictograms", "statements", "precautions",
	"who", "wear", "storage", "spill", "waste", "first-aid", "highest-cone", "spoiled-by", "holds", "batch")

// genericMaterials reads the program's own list, once.
var genericMaterials = sync.OnceValue(func() map[string]source.Value {
	entries := map[string]source.Value{}
	for _, item := range readOwn(materialsBase).root.Key("materials").List() {
		entries[item.PlainID()] = item
	}
	return entries
})

// materials reads the register: the studio's own entries, each over what the
// program says of its kind, and then the program's own.
func (l *loader) materials() {
	kinds := unique{}
	for id, item := range genericMaterials() {
		kinds[id] = item
	}
	l.course.Materials = readStock(l, materialsFolder, "name: River ball clay", func(id string, root source.Value) *Material {
		return l.material(id, root, kinds)
	})
	for _, id := range kinds.sorted() {
		f := kinds[id].Fields(genericKeys...)
		m := l.readMaterial(id, f, false)
		m.SheetSays = f.Get("sheet-says").Text()
		l.course.GenericMaterials = append(l.course.GenericMaterials, m)
	}
}

// material reads an entry of the studio's.
func (l *loader) material(id string, root source.Value, kinds unique) *Material {
	is := root.Key("is")
	if kind, there := kinds[kinds.known(is, "entry of the program’s materials")]; there {
		root = root.Over(kind)
	}
	f := root.Merged(materialKeys...)
	m := l.readMaterial(id, f, true)
	m.Is = is.Text()
	m.QuartzBy = !f.Get("quartz").Absent() && !f.Get("quartz").Inherited()
	m.Sheet = readSheet(f.Get("sheet"))
	m.Class = Class{
		Says:        f.Get("classified").Choice(Classed, NotClassed, ClassedOpen),
		Signal:      f.Get("signal").Choice("Danger", "Warning", "none"),
		Pictograms:  f.Get("pictograms").Texts(),
		Statements:  f.Get("statements").Texts(),
		Precautions: f.Get("precautions").Texts(),
	}
	m.Who = Who(f.Get("who").Choice(string(Student), string(WithInstructor), string(Instructor)))
	m.Wear = f.Get("wear").Texts()
	m.Storage, m.Spill = f.Get("storage").Text(), f.Get("spill").Text()
	m.Waste, m.FirstAid = f.Get("waste").Text(), f.Get("first-aid").Text()
	m.HighestCone = cone(f.Get("highest-cone"))
	m.SpoiledBy, m.Holds = lowered(f.Get("spoiled-by")), lowered(f.Get("holds"))
	m.Batch = f.Get("batch").Text()
	return m
}

// readMaterial reads what the studio's entries and the program's have in common.
func (l *loader) readMaterial(id string, f source.Fields, own bool) *Material {
	return &Material{
		ID:      id,
		Own:     own,
		Name:    f.Need("name", "name: River ball clay").Text(),
		What:    f.Need("what", "what: A plastic clay that keeps a slip from settling.").Text(),
		Role:    f.Need("role", "role: plastic clay").Text(),
		Form:    f.Need("form", "form: powder").Choice(materialForms...),
		CAS:     f.Get("cas").Texts(),
		Density: f.Get("density").Number(0.1, 12, "the density in g/mL"),
		Quartz:  readQuartz(f.Get("quartz")),
		Metals:  lowered(f.Get("metals")),
		Care:    Care{Hazards: l.hazardsNamed(f.Get("hazards"), own)},
		Spots:   f.Spots(),
	}
}

// lowered reads a list of words that are compared with others: Zinc is zinc.
func lowered(v source.Value) (words []string) {
	for _, word := range v.Texts() {
		words = append(words, strings.ToLower(word))
	}
	return words
}

// hazardsNamed reads a list of ids of hazards. While hazards.yaml could not be
// read, any will do. Of the program's list those that the course leaves out go
// with them.
func (l *loader) hazardsNamed(v source.Value, own bool) (ids []string) {
	for _, item := range v.List() {
		id := item.Text()
		_, there := l.hazardIDs[id]
		if !there && l.hazardsRead && own && !item.Inherited() {
			l.hazardIDs.known(item, "hazard")
		}
		if (there || !l.hazardsRead) && !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// readQuartz reads how much quartz a sheet names.
func readQuartz(v source.Value) string {
	if text := v.Text(); text == "" || text == "none" || text == "unknown" {
		return text
	}
	if v.Number(0, 100, "how many percent of quartz the sheet names, or none, or unknown,") == 0 {
		return ""
	}
	return v.Text()
}

// readSheet reads which sheet an entry was taken from. What is missing of it, the
// proof says.
func readSheet(v source.Value) Sheet {
	if v.Absent() {
		return Sheet{}
	}
	f := v.Fields("supplier", "date", "read-by", "read", "review", "invented")
	return Sheet{
		Supplier: f.Get("supplier").Text(),
		Date:     date(f.Get("date")),
		ReadBy:   f.Get("read-by").Text(),
		Read:     date(f.Get("read")),
		Review:   date(f.Get("review")),
		Invented: yes(f.Get("invented")),
		Spots:    f.Spots(),
	}
}

// FindMaterial finds a material of the studio's.
func (c *Course) FindMaterial(id string) (*Material, bool) {
	return findMaterial(c.Materials, id)
}

// FindGeneric finds a material in the program's own list.
func (c *Course) FindGeneric(id string) (*Material, bool) {
	return findMaterial(c.GenericMaterials, id)
}

func findMaterial(all []*Material, id string) (*Material, bool) {
	i := slices.IndexFunc(all, func(m *Material) bool { return m.ID == id })
	if i < 0 {
		return nil, false
	}
	return all[i], true
}
