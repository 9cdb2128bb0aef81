package course

import (
	"fmt"
	"io/fs"
	"net/url"
	"path"
	"strconv"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// settings reads course.yaml and returns the units that it names; false when
// their list cannot be read, so that nothing is known about them.
func (l *loader) settings() (units []named, ok bool) {
	root := l.yaml(settingsFile, "title: Decorating with slip")
	if root.Absent() {
		return nil, false
	}
	f := root.Fields("title", "description", "language", "law", "measures", "licence", "published-at", "studio", "cones", "sections", "bodies", "scales", "working", "asked-first", "first-aid", "book", "units")
	c := l.course
	c.Title = f.Need("title", "title: Decorating with slip").Text()
	c.Description = f.Get("description").Text()
	c.Licence = f.Get("licence").Text()
	readLanguage(f, c)
	c.Law = f.Get("law").Choice(Laws...)
	if m := f.Get("measures").Choice("metric", "us", "imperial"); m != "" {
		c.Measures = m
	}
	c.PublishedAt = readPublishedAt(f.Get("published-at"))
	studio := f.Need("studio", "studio: {name: Our studio}").Fields("name", "note")
	c.Studio = Studio{studio.Need("name", "name: Our studio").Text(), studio.Get("note").Text()}
	cones := f.Get("cones").Fields("bisque", "glaze")
	c.Cones = HouseCones{cone(cones.Get("bisque")), cone(cones.Get("glaze"))}
	readSections(f.Get("sections").Fields("look", "wrong"), c)
	c.Bodies = readBodies(f.Get("bodies"))
	c.Scales, c.Working = readScales(f.Get("scales")), readWorking(f.Get("working"))
	c.AskedFirst = readAskedFirst(f.Get("asked-first"))
	if aid := f.Get("first-aid"); !aid.Absent() {
		c.FirstAid = path.Clean(aid.Text())
		l.taught = append(l.taught, aid)
	}
	c.BookParts = readBookParts(f.Get("book"))
	list := f.Need("units", "units: [slip]")
	return readNames(list), list.IsList()
}

// BookParts are the parts that the printed book may hold behind the units.
var BookParts = []string{"states", "media", "calculators", "lists"}

// readBookParts reads which of them the book of this course holds; all where nothing is
// said. An empty list is a book of the units alone.
func readBookParts(v source.Value) []string {
	if v.Absent() {
		return BookParts
	}
	parts, seen := []string{}, unique{}
	for _, item := range v.List() {
		if part := item.Choice(BookParts...); seen.add(item, part) {
			parts = append(parts, part)
		}
	}
	return parts
}

// readSections takes the headings of the parts that are gathered from lessons;
// what is left out keeps its English words.
func readSections(f source.Fields, c *Course) {
	c.Sections = Sections{Look: "What to look for", Wrong: "What goes wrong"}
	if look := f.Get("look").Text(); look != "" {
		c.Sections.Look = look
	}
	if wrong := f.Get("wrong").Text(); wrong != "" {
		c.Sections.Wrong = wrong
	}
}

// readAskedFirst reads the questions that stand first among the quick answers, as the
// lessons ask them. Whether one does is known when the lessons were read.
func readAskedFirst(v source.Value) []Asked {
	var all []Asked
	seen := unique{}
	for _, item := range v.List() {
		if words := item.Text(); seen.add(item, words) {
			all = append(all, Asked{words, item.Spot()})
		}
	}
	return all
}

const courseHelp = "A course needs course.yaml (with title, language, studio and units), home.md, decoration.yaml, and a folder units/NAME with a unit.md for each unit."

// noSettings reports an empty folder, or one whose course.yaml is spelt
// otherwise.
func (l *loader) noSettings() {
	s := source.New(settingsFile, nil)
	entries, err := fs.ReadDir(l.fsys, ".")
	text := "there is no course.yaml in this folder"
	if err != nil {
		text = "the folder cannot be read: " + source.Reason(err)
	} else if len(entries) == 0 {
		text = "the folder is empty"
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	advice := courseHelp
	if near := source.Nearest(settingsFile, names); near != "" {
		advice = "Did you mean this to be `" + near + "`? Rename it. " + courseHelp
	}
	s.Report(-1, finding.CourseNeeds, text, advice)
	l.found = append(l.found, s.Found...)
}

func readLanguage(f source.Fields, c *Course) {
	v := f.Need("language", "language: en-GB")
	tag := v.Text()
	switch {
	case tag == "":
		return
	case !languageTag.MatchString(tag):
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not a language tag", tag), "Write one as BCP 47 has it, such as en-GB, de or pt-BR.")
		return
	}
	c.Language, c.Decimal = tag, decimalMark(tag)
	if stands, known := catalog.Speaks(tag); !known {
		v.Report(finding.LanguageWords, fmt.Sprintf("the calculators have no words in `%s`", tag), "They answer in "+stands+". A file for it in calculators/words would give them others.")
	}
}

// readPublishedAt returns an absolute address that ends in a slash, or nothing.
func readPublishedAt(v source.Value) string {
	text := v.Text()
	if text == "" {
		return ""
	}
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Hostname() == "" || u.User != nil || u.RawQuery != "" || u.Fragment != "" {
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not the address of a handbook", text), "Write the whole address of the handbook's home page, such as https://example.org/handbook/.")
		return ""
	}
	return strings.TrimSuffix(u.String(), "/") + "/"
}

// cone returns a cone's number as text: 06 and 6 are far apart.
func cone(v source.Value) string {
	text := v.Text()
	if text == "" {
		return ""
	}
	for n := 1; n <= 22; n++ {
		if text == "0"+strconv.Itoa(n) || n <= 14 && text == strconv.Itoa(n) {
			return text
		}
	}
	v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not a cone", text), "Write one of 022 to 01, or 1 to 14, without the word cone; the nought in front counts.")
	return ""
}

// ConeRank returns the place of a cone from the coolest on: 022 is 0, 01 is 21, 1 is
// 22. It takes what a course may write.
func ConeRank(cone string) int {
	n, _ := strconv.Atoi(cone) // digits alone, by the form
	if strings.HasPrefix(cone, "0") {
		return 22 - n
	}
	return 21 + n
}

func readBodies(v source.Value) []Body {
	var bodies []Body
	seen := unique{}
	for _, item := range v.List() {
		f := item.Fields("id", "name", "shrinkage", "cone")
		id := f.Need("id", "id: white-stoneware")
		b := Body{
			ID:        id.ID(),
			Name:      f.Need("name", "name: White stoneware").Text(),
			Shrinkage: f.Need("shrinkage", "shrinkage: 12").Number(0, 30, "the shrinkage in percent of the fresh length"),
			Cone:      cone(f.Need("cone", "cone: 6")),
		}
		if seen.add(id, b.ID) {
			bodies = append(bodies, b)
		}
	}
	return bodies
}
