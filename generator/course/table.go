package course

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"strings"

	"slipbook/calculators/form"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

const tableFile = "decoration.yaml"

// stateIDs are the states of the clay and its surface, in the order in which a
// pot passes through them. Drawings, addresses and the planner go by these.
var stateIDs = []string{"wet", "leather-hard", "bone-dry", "bisque", "unfired-glaze", "glaze-fired"}

// decoration reads the table of media by clay state: what the course says over
// the program's own. known says whether course.yaml could be read, so that its
// clay bodies are known.
func (l *loader) decoration(known bool) {
	root := l.overBase(tableFile, "states:")
	f := root.Merged(keepsBase, "leave-out", "states", "media", "techniques", "over", "transitions", "exceptions", "firing", "metals", "phrases")
	yes(f.Get(keepsBase))
	t := &table{Decoration: l.course.Decoration, bodies: l.course.Bodies, bodiesKnown: known, media: unique{}, techniques: unique{}, typed: unique{},
		hazards: l.hazardIDs, hazardsRead: l.hazardsRead}
	t.readLeftOut(f)
	t.States = readStates(f.Need("states", "states:"))
	t.readMedia(f.Need("media", "media:"))
	t.readTechniques(f.Get("techniques"))
	t.readOvers(f)
	t.readTransitions(f)
	t.readExceptions(f.Get("exceptions"))
	t.readMetals(f.Get("metals"))
	t.readPhrases(f.Get("phrases"))
	if firing := f.Get("firing"); !firing.Absent() {
		t.readFiring(firing)
	} else if t.onGlaze() {
		root.Report(finding.MissingKey, "`firing` is missing, and there are on-glaze media", "Write a line such as `firing: {name: Fire it to the cone on its label., who: instructor}`.")
	}
	l.checkPlanner(root)
}

// checkPlanner hands the table to the planner as a page will, and reports one
// that it does not take: there it would only say that it cannot start.
func (l *loader) checkPlanner(root source.Value) {
	if root.Absent() || slices.ContainsFunc(l.open, func(t *source.Text) bool { return t.Found.Stop() }) {
		return
	}
	// A script writes a space as %20, which is longer than a plus sign.
	table := strings.ReplaceAll(url.QueryEscape(l.course.Decoration.Table().Encode()), "+", "%20")
	if _, err := form.Configure([]byte(l.course.Answers().Encode() + "&table=" + table)); err != nil {
		root.Report(finding.TableSize, "the calculators cannot take this decoration table with the course's clays and scales: "+err.Error(),
			"Leave out products and recipes that differ in nothing from their medium, and say the rest in fewer words.")
	}
}

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

// known returns an id that is there, and reports another; what is the kind of
// thing it names. While nothing of that kind could be read, nothing is
// reported.
func (u unique) known(v source.Value, what string) string {
	id := v.Text()
	if _, there := u[id]; there || id == "" {
		return id
	}
	if len(u) > 0 {
		v.Report(finding.UnknownName, fmt.Sprintf("no %s has the id `%s`", what, id), source.Meant(id, u.sorted())+"Write one of: "+strings.Join(u.sorted(), ", ")+".")
	}
	return ""
}
