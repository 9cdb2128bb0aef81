package course

import (
	"fmt"
	"io/fs"
	"maps"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

const settingsFile = "course.yaml"

// named is an id in a list, with the place where it was written.
type named struct {
	id string
	value
}

// settings reads course.yaml and gives the units that it names; false when
// their list cannot be read, so that nothing is known about them.
func (l *loader) settings() (units []named, ok bool) {
	root := l.sheet(settingsFile, "title: Decorating with slip")
	if root.absent() {
		return nil, false
	}
	f := root.fields("title", "description", "language", "measures", "licence", "published-at", "studio", "cones", "sections", "bodies", "scales", "working", "units")
	c := l.course
	c.Title = f.need("title", "title: Decorating with slip").text()
	c.Description = f.get("description").text()
	c.Licence = f.get("licence").text()
	readLanguage(f, c)
	if m := f.get("measures").choice("metric", "us", "imperial"); m != "" {
		c.Measures = m
	}
	c.PublishedAt = readPublishedAt(f.get("published-at"))
	studio := f.need("studio", "studio: {name: Our studio}").fields("name", "note")
	c.Studio = Studio{studio.need("name", "name: Our studio").text(), studio.get("note").text()}
	cones := f.get("cones").fields("bisque", "glaze")
	c.Cones = HouseCones{cones.get("bisque").cone(), cones.get("glaze").cone()}
	readSections(f.get("sections").fields("look", "wrong"), c)
	c.Bodies = readBodies(f.get("bodies"))
	c.Scales, c.Working = readScales(f.get("scales")), readWorking(f.get("working"))
	list := f.need("units", "units: [slip]")
	return readNames(list), list.isA(yaml.SequenceNode)
}

// readSections takes the headings of the parts that are gathered from lessons;
// what is left out keeps its English words.
func readSections(f fields, c *Course) {
	c.Sections = Sections{Look: "What to look for", Wrong: "What goes wrong"}
	if look := f.get("look").text(); look != "" {
		c.Sections.Look = look
	}
	if wrong := f.get("wrong").text(); wrong != "" {
		c.Sections.Wrong = wrong
	}
}

const courseHelp = "A course needs course.yaml (with title, language, studio and units), home.md, decoration.yaml, and a folder units/NAME with a unit.md for each unit."

// noSettings reports an empty folder, or one whose course.yaml is spelt
// otherwise.
func (l *loader) noSettings() {
	s := &source{path: settingsFile}
	entries, err := fs.ReadDir(l.fsys, ".")
	text := "there is no course.yaml in this folder"
	if err != nil {
		text = "the folder cannot be read: " + reason(err)
	} else if len(entries) == 0 {
		text = "the folder is empty"
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	advice := courseHelp
	if near := nearest(settingsFile, names); near != "" {
		advice = "Did you mean this to be `" + near + "`? Rename it. " + courseHelp
	}
	s.report(-1, finding.CourseNeeds, text, advice)
	l.found = append(l.found, s.found...)
}

func readLanguage(f fields, c *Course) {
	v := f.need("language", "language: en-GB")
	tag := v.text()
	switch {
	case tag == "":
		return
	case !languageTag.MatchString(tag):
		v.report(finding.ValueForm, fmt.Sprintf("`%s` is not a language tag", tag), "Write one as BCP 47 has it, such as en-GB, de or pt-BR.")
		return
	}
	c.Language, c.Decimal = tag, decimalMark(tag)
}

// readPublishedAt gives an absolute address that ends in a slash, or nothing.
func readPublishedAt(v value) string {
	text := v.text()
	if text == "" {
		return ""
	}
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Hostname() == "" || u.User != nil || u.RawQuery != "" || u.Fragment != "" {
		v.report(finding.ValueForm, fmt.Sprintf("`%s` is not the address of a handbook", text), "Write the whole address of the handbook's home page, such as https://example.org/handbook/.")
		return ""
	}
	return strings.TrimSuffix(u.String(), "/") + "/"
}

// cone gives a cone's number as text: 06 and 6 are far apart.
func (v value) cone() string {
	text := v.text()
	if text == "" {
		return ""
	}
	for n := 1; n <= 22; n++ {
		if text == "0"+strconv.Itoa(n) || n <= 14 && text == strconv.Itoa(n) {
			return text
		}
	}
	v.report(finding.ValueForm, fmt.Sprintf("`%s` is not a cone", text), "Write one of 022 to 01, or 1 to 14, without the word cone; the nought in front counts.")
	return ""
}

func readBodies(v value) []Body {
	var bodies []Body
	seen := unique{}
	for _, item := range v.list() {
		f := item.fields("id", "name", "shrinkage", "cone")
		id := f.need("id", "id: white-stoneware")
		b := Body{
			ID:        id.id(),
			Name:      f.need("name", "name: White stoneware").text(),
			Shrinkage: f.need("shrinkage", "shrinkage: 12").number(0, 30, "the shrinkage in percent of the fresh length"),
			Cone:      f.need("cone", "cone: 6").cone(),
		}
		if seen.add(id, b.ID) {
			bodies = append(bodies, b)
		}
	}
	return bodies
}

// readNames reads a list of ids, each once. A file's name with its ".md" is
// taken for what is meant.
func readNames(v value) []named {
	var names []named
	seen := map[string]bool{}
	items := v.list()
	if items != nil && len(items) == 0 {
		v.report(finding.MissingKey, v.called()+" is empty", "Name at least one, on a line of its own after a hyphen.")
	}
	for _, item := range items {
		id, file := strings.CutSuffix(item.text(), ".md")
		if file {
			item.report(finding.IDForm, fmt.Sprintf("`%s.md` has the ending of its file", id), "Write `"+id+"` alone.")
		} else {
			item.checkID(id)
		}
		switch {
		case id == "":
		case seen[id]:
			item.report(finding.RepeatedName, fmt.Sprintf("`%s` is in this list a second time", id), "Name it once.")
		default:
			seen[id] = true
			names = append(names, named{id, item})
		}
	}
	return names
}

// unique keeps the ids of one kind of thing apart: by id, where each was
// first written.
type unique map[string]value

// add notes an id; a repeated one is reported and answered with false, and so
// is an empty one, which was reported already.
func (u unique) add(v value, id string) bool {
	if id == "" {
		return false
	}
	first, repeated := u[id]
	if !repeated {
		u[id] = v
		return true
	}
	if v.seat != nil && first.seat == nil {
		v, first = first, v // the course's file is where it can be mended
	}
	v.report(finding.RepeatedName, fmt.Sprintf("`%s` is already in %s", id, first.line()), "Give each its own.")
	return false
}

// sorted lists the ids.
func (u unique) sorted() []string { return slices.Sorted(maps.Keys(u)) }
