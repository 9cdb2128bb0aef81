package address

import (
	"encoding/base32"
	"maps"
	"path"
	"slices"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// Map is the table of a handbook's addresses. It is only read once it is made;
// goroutines share it.
type Map struct {
	course    *course.Course
	pages     map[string]*course.Page     // by content path
	documents map[string]*markup.Document // likewise
	terms     map[string]bool
	pictures  map[string]string // addresses of the widest file by content path, of those that are not in their pages
}

// New makes the table of a course whose pages have been read, documents in the
// order of Course.Pages. A course that was only partly loaded is accepted.
func New(c *course.Course, documents []*markup.Document) *Map {
	m := &Map{
		course:    c,
		pages:     make(map[string]*course.Page),
		documents: make(map[string]*markup.Document),
		terms:     make(map[string]bool),
		pictures:  make(map[string]string),
	}
	for n, page := range c.Pages() {
		m.pages[page.File], m.documents[page.File] = page, documents[n]
	}
	for _, t := range c.Glossary {
		m.terms[t.ID] = true
	}
	for file, picture := range c.Pictures {
		if n := len(picture.Files); n > 0 {
			m.pictures[file] = OfPicture(picture, picture.Files[n-1])
		}
	}
	return m
}

// Page finds the hand-written page with a content path.
func (m *Map) Page(file string) (*course.Page, bool) {
	page, ok := m.pages[file]
	return page, ok
}

// Picture finds the picture with a content path.
func (m *Map) Picture(file string) (*course.Picture, bool) {
	picture, ok := m.course.Pictures[file]
	return picture, ok
}

// OfPicture returns the address of a file of a picture. The name is made from the
// content, so that a browser may keep the file for ever.
func OfPicture(picture *course.Picture, file course.PictureFile) string {
	name := strings.TrimSuffix(path.Base(picture.Path), path.Ext(picture.Path))
	return "pictures/" + name + "-" + base32.StdEncoding.EncodeToString(file.Sum[:5]) + file.Ending
}

// madeIDs lists what made finds with a scheme.
func (m *Map) madeIDs(scheme string) []string {
	var ids []string
	switch scheme {
	case "glossary":
		ids = slices.Sorted(maps.Keys(m.terms))
	case "state":
		if d := m.course.Decoration; d != nil {
			for _, s := range d.States {
				ids = append(ids, s.ID)
			}
		}
	case "calculator":
		for _, c := range catalog.All() {
			ids = append(ids, c.Name)
		}
	case "material":
		for _, material := range m.course.Materials {
			ids = append(ids, material.ID)
		}
	case "recipe":
		for _, r := range m.course.Recipes {
			ids = append(ids, r.ID)
		}
	case "tile":
		for _, t := range m.course.Tiles {
			ids = append(ids, t.Code)
		}
	case "fault":
		for _, f := range m.course.Faults {
			ids = append(ids, f.ID)
		}
	case "leach":
		ids = []string{allReports, mayIEat}
		for _, l := range m.course.Leach {
			ids = append(ids, l.Number)
		}
	}
	return ids
}

// What links of the scheme "leach" name beside the numbers of reports.
const (
	allReports = "reports"
	mayIEat    = "may-i-eat"
)

// made finds what no Markdown file holds.
func (m *Map) made(scheme, id string) (address string, ok bool) {
	switch scheme {
	case "glossary":
		return Term(id), m.terms[id]
	case "state":
		if m.course.Decoration != nil {
			_, ok = m.course.Decoration.FindState(id)
		}
		return State(id), ok
	case "calculator":
		return Calculator(id), catalog.Find(id) != nil
	case "material":
		_, ok = m.course.FindMaterial(id)
		return Material(id), ok
	case "recipe":
		_, ok = m.course.FindRecipe(id)
		return Recipe(id), ok
	case "tile":
		_, ok = m.course.FindTile(id)
		return Tile(id), ok
	case "fault":
		_, ok = m.course.FindFault(id)
		return FaultOn(Faults, id), ok
	case "leach":
		switch id {
		case allReports:
			return Leach, true
		case mayIEat:
			return Eat, true
		}
		_, ok = m.course.FindLeach(id)
		return LeachReport(id), ok
	}
	return "", false
}
