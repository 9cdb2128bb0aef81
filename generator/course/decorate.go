package course

import (
	"net/url"
	"slices"
	"strings"

	"slipbook/calculators/form"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

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
	digest := l.digest(settingsFile, hazardsFile, tableFile)
	if sound.has(digest) {
		return
	}
	// A script writes a space as %20, which is longer than a plus sign.
	table := strings.ReplaceAll(url.QueryEscape(l.course.Decoration.Table().Encode()), "+", "%20")
	if _, err := form.Configure([]byte(l.course.Answers().Encode() + "&table=" + table)); err != nil {
		root.Report(finding.TableSize, "the calculators cannot take this decoration table with the course's clays and scales: "+err.Error(),
			"Leave out products and recipes that differ in nothing from their medium, and say the rest in fewer words.")
		return
	}
	sound.keep(digest, nil)
}

// onGlaze reports whether there are media that have a firing of their own on the
// fired glaze.
func (t *table) onGlaze() bool {
	return slices.ContainsFunc(t.Media, func(m Medium) bool { return m.Kind == onGlazeKind })
}
