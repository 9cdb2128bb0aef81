package course

import (
	"fmt"
	"path"
	"regexp"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// Session is a class that the studio holds: who comes, what is mixed for them the
// evening before, and what is put out. (Class is how a sheet classes a material.)
type Session struct {
	ID     string
	Title  string
	People int      // 1 to 60
	Date   string   // ISO 8601, where a day is said
	When   string   // else, in the studio's own words
	Lesson string   // content path of the lesson that it goes with; empty where that is not there
	Mix    []Mixed  // each recipe once
	Tubs   []string // ids of materials that are put out as they are, each once
	PutOut []string // tools and the like, in the studio's own words
	Firing string   // how much room in the kiln it takes, likewise; may be empty
	With   string   // instructor, where the instructor is in the room; may be empty

	TubSpots []finding.Spot // of Tubs
}

// Mixed is so much of a recipe, mixed for a class: a volume for each, or so many
// litres in all.
type Mixed struct {
	Recipe string  // its id
	Each   string  // a volume as written, "60 mL"; empty where Litres is said
	Litres float64 // 0 where Each is said
	Spots  Spots
}

// mostPeople is how many come to a class, and MostLitres how much of one recipe is
// mixed for them: a course that asks for more has slipped in a unit.
const (
	mostPeople = 60
	MostLitres = 200
)

// mostMixed is how many recipes the sheet of a class has room for on two pages.
const mostMixed = 4

// WithTheInstructor stands where the instructor is in the room.
const WithTheInstructor = "instructor"

// sessions reads the classes, after the lessons that they go with. A course may do
// without. known is false when the list of units could not be read.
func (l *loader) sessions(known bool) {
	if !source.Exists(l.fsys, classesFile) {
		return
	}
	ids := unique{}
	root := l.yaml(classesFile, "classes:")
	for _, item := range root.Fields("classes").Need("classes", "classes:").List() {
		f := item.Fields("id", "title", "people", "when", "with", "lesson", "mix", "tubs", "put-out", "firing")
		id := f.Need("id", "id: first-slips")
		if s := l.session(id, f, known); ids.add(id, s.ID) {
			l.course.Sessions = append(l.course.Sessions, s)
		}
	}
}

func (l *loader) session(id source.Value, f source.Fields, known bool) *Session {
	s := &Session{
		ID:     id.ID(),
		Title:  f.Need("title", "title: First slips").Text(),
		People: whole(f.Need("people", "people: 16"), 1, mostPeople, "how many come"),
		Lesson: l.lessonNamed(f.Need("lesson", "lesson: units/slip/make-slip.md"), known),
		Mix:    l.mix(f.Get("mix")),
		PutOut: f.Get("put-out").Texts(),
		Firing: f.Get("firing").Text(),
		With:   f.Get("with").Choice(WithTheInstructor),
	}
	s.Date, s.When = day(f.Need("when", "when: 2027-02-03"))
	tubs := unique{}
	for _, item := range f.Get("tubs").List() {
		if tub := l.tubNamed(item); tubs.add(item, tub) {
			s.Tubs, s.TubSpots = append(s.Tubs, tub), append(s.TubSpots, item.Spot())
		}
	}
	if s.ID == "index" {
		id.Report(finding.SharedAddress, "`index` is the address of the list of them all", "Name it after what is done in it.")
	}
	return s
}

// dayForm is what looks like a date.
var dayForm = regexp.MustCompile(`^[0-9]{4}-[0-9]`)

// day reads a date, or words in its place.
func day(v source.Value) (iso, words string) {
	if text := v.Text(); !dayForm.MatchString(text) {
		return "", text
	}
	return date(v), ""
}

// lessonNamed reads the content path of a lesson. Of one whose file is there and
// that no list names, somebody else has told.
func (l *loader) lessonNamed(v source.Value, known bool) string {
	if v.Text() == "" {
		return ""
	}
	file := path.Clean(v.Text())
	if _, there := l.course.FindPage(file); there {
		return file
	}
	if known && (!source.Exists(l.fsys, file) || path.Ext(file) != ".md") {
		v.Report(finding.UnknownName, fmt.Sprintf("there is no page %s", file), source.Meant(file, l.pathsFrom("course"))+"Write the path of a lesson as the content folder has it, such as `units/slip/make-slip.md`.")
	}
	return ""
}

// mix reads what is mixed for a class.
func (l *loader) mix(v source.Value) (all []Mixed) {
	seen := unique{}
	for _, item := range v.List() {
		f := item.Fields("recipe", "each", "litres")
		recipe := f.Need("recipe", "recipe: white-slip")
		m := Mixed{
			Recipe: l.recipeID(recipe),
			Each:   f.Get("each").Text(),
			Litres: f.Get("litres").Number(0.05, MostLitres, "how many litres are mixed in all"),
			Spots:  f.Spots(),
		}
		if f.Get("each").Absent() == f.Get("litres").Absent() && item.IsMapping() {
			item.Report(finding.MissingKey, "a class says how much of a recipe it takes, once", "Write either `each: 60 mL`, for every one of them, or `litres: 2`, in all.")
		}
		if seen.add(recipe, m.Recipe) {
			all = append(all, m)
		}
	}
	if len(all) > mostMixed {
		v.Report(finding.ValueForm, fmt.Sprintf("`mix` has %d recipes; the sheet of a class has room for %d", len(all), mostMixed), "Make two classes of it, each with its own sheet.")
	}
	return all
}

// recipeID reads the id of a recipe; of none that is there it is empty.
func (l *loader) recipeID(v source.Value) string {
	if v.Text() == "" {
		return ""
	}
	r, there := l.recipeNamed(v, "Write the recipe in the folder recipes first.")
	if !there {
		return ""
	}
	return r.ID
}

// tubNamed reads the id of a material of the studio's.
func (l *loader) tubNamed(v source.Value) string {
	known := unique{}
	for _, m := range l.course.Materials {
		known[m.ID] = v
	}
	if len(known) == 0 && v.Text() != "" {
		v.Report(finding.UnknownName, "there are no materials", "Write the tub's entry in the folder materials first.")
	}
	return known.known(v, "material")
}
