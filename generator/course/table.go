package course

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// table is the decoration table being read, with where its things were
// written.
type table struct {
	*Decoration
	bodies      []Body
	bodiesKnown bool
	media       unique          // ids
	techniques  unique          // ids
	typed       unique          // names and words of media, techniques, products and recipes
	hazards     unique          // ids
	hazardsRead bool            // hazards.yaml could be read
	leftOut     map[string]bool // ids of media and techniques of the program's own table
}

// named reads the name and the other words of something that a student may
// type. No two things share one: a wish must mean one thing.
func (t *table) named(f source.Fields, example string) (name string, words []string) {
	v := f.Need("name", example)
	name = v.Text()
	t.typed.addWord(v, name)
	if strings.ContainsAny(name, layerSigns) {
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` holds a sign that parts layers where a student types it", name), "Leave out commas, semicolons and the signs + / and &.")
	}
	for _, item := range f.Get("words").List() {
		if word := item.Text(); plainWord(item, word) && t.typed.addWord(item, word) {
			words = append(words, word)
		}
	}
	return name, words
}

// layerSigns part what a student types into layers.
const layerSigns = ",;+/&"

// namesMedium reports a technique whose name holds that of a medium: whoever
// typed it beside another medium would ask for two layers.
func (t *table) namesMedium(v source.Value, name string) {
	for _, m := range t.Media {
		for _, phrase := range append([]string{m.Name}, m.Words...) {
			if strings.Contains(" "+strings.ToLower(name)+" ", " "+strings.ToLower(phrase)+" ") {
				v.Report(finding.ValueForm, fmt.Sprintf("the name of this technique holds `%s`, which names a medium", phrase), "Leave the medium out of the name; among `words` it may stand.")
				return
			}
		}
	}
}

var typedWords = regexp.MustCompile(`^[\p{L}\p{M}\p{N}]+([ '’-][\p{L}\p{M}\p{N}]+)*$`)

// plainWord reports whether a word can be found in what a student types, and
// adds a finding for one that cannot.
func plainWord(v source.Value, word string) bool {
	switch small := strings.ToLower(word); {
	case word == "":
		return false
	case !typedWords.MatchString(word):
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` cannot be a word that a student types", word), "Use letters, digits, and single spaces, hyphens or apostrophes between them; give each way of saying it an item of its own.")
		return false
	case word != small:
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` has a capital letter", word), "Write `"+small+"`; capital letters do not count when a student types.")
		return false
	}
	return true
}

// readLeftOut reads the ids of media and techniques of the program's own table
// that this course does without.
func (t *table) readLeftOut(f source.Fields) {
	there := unique{}
	for _, key := range []string{"media", "techniques"} {
		v := f.Get(key)
		if below := v.Below(); !below.Absent() {
			v = below
		}
		if !v.Inherited() {
			continue
		}
		for _, item := range v.List() {
			there[item.PlainID()] = item
		}
	}
	t.leftOut = map[string]bool{}
	for _, item := range f.Get("leave-out").List() {
		id := item.Text()
		if _, known := there[id]; !known && id != "" {
			item.Report(finding.UnknownName, "the program's own table has no medium or technique `"+id+"`", source.Meant(id, there.sorted())+"Name one that it has, or take this out.")
		}
		t.leftOut[id] = true
	}
}

// without reports whether a value of the program's own table names something
// that the course leaves out.
func (t *table) without(v source.Value, id string) bool { return v.Inherited() && t.leftOut[id] }

// count notes whose a row of the table is. about is what the row is about.
func (o *Origin) count(v source.Value, about string) {
	if v.Inherited() {
		o.Program++
		return
	}
	o.Course++
	if about != "" && !slices.Contains(o.Names, about) {
		o.Names = append(o.Names, about)
	}
}

// mediumNamed returns the id of a medium that is there, and reports another.
// Of the program's own words about a medium that the course leaves out it
// returns nothing in silence.
func (t *table) mediumNamed(v source.Value) string {
	if v.Inherited() && t.without(v, v.Text()) {
		return ""
	}
	return t.media.known(v, "medium")
}

// techniqueNamed is mediumNamed of a technique.
func (t *table) techniqueNamed(v source.Value) string {
	if v.Inherited() && t.without(v, v.Text()) {
		return ""
	}
	return t.techniques.known(v, "technique")
}
