package address

import (
	"fmt"
	"iter"
	"maps"
	"net/url"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// Target is what a reference leads to: an address, or a picture that is shown.
type Target struct {
	Address string
	Picture *course.Picture
	Tile    *course.Tile  // what a reference to a tile leads to
	Fault   *course.Fault // what a reference to a fault leads to
}

// Fault says what is wrong with a reference, and what to write instead.
type Fault struct {
	Rule     *finding.Rule
	Text, Do string
}

// Find returns what a reference on a page leads to, or what is wrong with it.
// The words of a filled-in calculator are not looked at: only its page is found.
func (m *Map) Find(page *course.Page, r *markup.Ref) (Target, *Fault) {
	switch r.Kind {
	case markup.MadeRef:
		scheme, id := r.Made()
		return m.findMade(scheme, id, r.To)
	case markup.FigureRef:
		calculator, _ := r.Figure()
		return m.findMade("calculator", calculator, "calculator:"+calculator)
	case markup.PictureRef:
		return m.findPicture(page, r)
	}
	return m.findPage(page, r)
}

// What the made places are called, and what to do when one is not there.
var (
	madeName = map[string]string{"glossary": "term", "state": "clay state", "calculator": "calculator", "material": "material", "recipe": "recipe", "tile": "tile", "fault": "fault", "leach": "page or report of leach tests"}
	madeHelp = map[string]string{
		"glossary":   "Write the id of a term of glossary.yaml.",
		"state":      "Write the id of a state of decoration.yaml.",
		"calculator": "Write the name of a calculator; “slipbook calc” lists them.",
		"material":   "Write the name of a file of the folder materials, without its ending.",
		"recipe":     "Write the name of a file of the folder recipes, without its ending.",
		"tile":       "Write the code of a tile of tiles.csv, such as tile:R7.",
		"fault":      "Write the id of a fault of faults.yaml.",
		"leach":      "Write leach:reports, leach:may-i-eat, or the number of a report of leach.csv.",
	}
)

// findMade finds what no Markdown file holds.
func (m *Map) findMade(scheme, id, written string) (Target, *Fault) {
	address, ok := m.made(scheme, id)
	if !ok {
		meant := source.Meant(id, m.madeIDs(scheme))
		return Target{}, &Fault{finding.LinkTarget, fmt.Sprintf("link to %q: there is no such %s", written, madeName[scheme]), meant + madeHelp[scheme]}
	}
	target := Target{Address: address}
	switch scheme {
	case "tile":
		target.Tile, _ = m.course.FindTile(id)
	case "fault":
		target.Fault, _ = m.course.FindFault(id)
	}
	return target, nil
}

// findPage finds a page, a heading or a step, written as a path from the file of the
// page that refers to it.
func (m *Map) findPage(page *course.Page, r *markup.Ref) (Target, *Fault) {
	bad := func(do, text string, args ...any) (Target, *Fault) {
		return Target{}, &Fault{finding.LinkTarget, fmt.Sprintf(text, args...), do}
	}
	file, heading, _ := r.Path()
	target := page.File
	if file != "" {
		target = path.Join(path.Dir(page.File), file)
	}
	to, ok := m.pages[target]
	switch {
	case target == ".." || strings.HasPrefix(target, "../"):
		return bad("Write the path to a .md page inside it.", "link to %q: this leaves the content folder", r.To)
	case !ok:
		return bad(m.missingHelp(page, target), "link to %q: there is no such page (looked for %s)", r.To, target)
	case heading == "", to.NoText: // what headings the page has is not known
		return Target{Address: to.Address}, nil
	}
	d := m.documents[target]
	if number, ok := markup.StepNumber(heading); ok {
		return findStep(to, d, number, r)
	}
	switch {
	case d.HasHeading(heading):
		return Target{Address: to.Address + "#" + url.PathEscape(heading)}, nil
	case to == page:
		return bad(d.HeadingHelp(), "link to %q: this page has no such heading", r.To)
	default:
		return bad(d.HeadingHelp(), "link to #%s: %s has no such heading", heading, target)
	}
}

// saidStep is the number of a step in the words of a link.
var saidStep = regexp.MustCompile(`(?i)\bsteps?[ \x{a0}](\d+)`)

// findStep finds a step of a page by its number.
func findStep(to *course.Page, d *markup.Document, number int, r *markup.Ref) (Target, *Fault) {
	bad := func(text, do string) (Target, *Fault) {
		return Target{}, &Fault{finding.LinkTarget, fmt.Sprintf("link to %q: ", r.To) + text, do}
	}
	id, last := markup.StepID(number), len(d.Steps)
	said := saidStep.FindStringSubmatch(r.Words)
	switch {
	case !to.Numbered():
		return bad("the steps of "+to.File+" are not numbered through, since it is no lesson at the bench", d.HeadingHelp())
	case last == 0:
		return bad(to.File+" has no steps", d.HeadingHelp())
	case number < 1 || number > last:
		near := markup.StepID(min(max(1, number), last))
		return bad(fmt.Sprintf("%s has no step %d", to.File, number), fmt.Sprintf("Did you mean #%s? Its steps are #%s to #%s.", near, markup.StepID(1), markup.StepID(last)))
	case said != nil && said[1] != strconv.Itoa(number):
		return bad(fmt.Sprintf("its words say step %s, and it leads to step %d", said[1], number), "Write the number of the step that is meant both times.")
	}
	return Target{Address: to.Address + "#" + id}, nil
}

// missingHelp says what to write instead of a path that no page has.
func (m *Map) missingHelp(page *course.Page, target string) string {
	guess := strings.TrimSuffix(target, path.Ext(target)) + ".md"
	if _, ok := m.Page(guess); ok && guess != target {
		return fmt.Sprintf("Write the path to %s.", guess)
	}
	if _, ok := m.Picture(target); ok {
		return "That is a picture; show it with ![what it shows](path)."
	}
	return meant(page, target, maps.Keys(m.pages)) + "Links lead to .md pages that course.yaml and the units list; write the path from this file."
}

// meant begins a piece of advice with the file that was probably meant: one whose
// path is near, or the only one that has the same name elsewhere.
func meant(page *course.Page, target string, files iter.Seq[string]) string {
	sorted := slices.Sorted(files)
	near := source.Nearest(target, sorted)
	if near == "" {
		same := slices.DeleteFunc(sorted, func(file string) bool { return path.Base(file) != path.Base(target) })
		if len(same) != 1 {
			return ""
		}
		near = same[0]
	}
	return fmt.Sprintf("Did you mean `%s`? ", Relative(page.File, near))
}

// findPicture finds a picture, written as a path from the file of the page.
func (m *Map) findPicture(page *course.Page, r *markup.Ref) (Target, *Fault) {
	name, err := url.PathUnescape(r.To)
	file := path.Join(path.Dir(page.File), name)
	picture, ok := m.Picture(file)
	if err != nil || !ok {
		return Target{}, &Fault{finding.PictureFile, fmt.Sprintf("picture %q: there is no such picture (looked for %s)", r.To, file), meant(page, file, maps.Keys(m.course.Pictures)) + markup.PictureHelp}
	}
	return Target{Address: m.pictures[file], Picture: picture}, nil
}
