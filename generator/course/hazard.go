package course

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"slipbook/calculators/stage"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// cautionWords is how many words fit where a hazard is told in short: on a
// card, in a plan, on a label.
const cautionWords = 12

// How much fits beside a verdict on the chart.
const (
	mostMarks = 2
	markWords = 2 // each
)

// hazards reads what can hurt somebody, and where work is done.
func (l *loader) hazards() {
	root := l.overBase(hazardsFile, "hazards:")
	f := root.Merged(keepsBase, "hazards", "places")
	yes(f.Get(keepsBase))
	d := l.course.Decoration
	places := unique{}
	for _, item := range f.Get("places").Entries() {
		f := item.Merged("id", "name")
		id := f.Need("id", "id: booth")
		p := Place{ID: id.ID(), Name: f.Need("name", "name: in the spray booth").Text()}
		if places.add(id, p.ID) {
			d.Places = append(d.Places, p)
		}
	}
	l.hazardIDs, l.hazardsRead = unique{}, !root.Absent()
	for _, item := range f.Get("hazards").Entries() {
		l.hazard(item, places)
	}
	if n := len(d.Hazards); n > stage.MostHazards {
		f.Get("hazards").Report(finding.ValueForm, fmt.Sprintf("there are %d hazards; the planner counts to %d", n, stage.MostHazards), "Put those together that call for the same.")
		d.Hazards = d.Hazards[:stage.MostHazards]
	}
}

// hazard reads one hazard.
func (l *loader) hazard(item source.Value, places unique) {
	f := item.Merged("id", "title", "harm", "do", "short", "mark", "wear", "place", "lesson", "health", "until-wet")
	id := f.Need("id", "id: mist")
	h := Hazard{
		ID:     id.ID(),
		Title:  f.Need("title", "title: Spray mist").Text(),
		Harm:   f.Need("harm", "harm: It carries fine dust deep into the lungs.").Text(),
		Do:     f.Need("do", "do: Spray in the booth alone, with its fan on.").Text(),
		Short:  f.Need("short", "short: Booth, fan on, fitted respirator.").Text(),
		Mark:   readMark(f.Get("mark")),
		Wear:   f.Get("wear").Texts(),
		Place:  places.known(f.Get("place"), "place"),
		Health: yes(f.Need("health", "health: yes")),

		Dry:      !f.Get("until-wet").Absent(),
		UntilWet: f.Get("until-wet").Texts(),
	}
	h.checkUntilWet(f.Get("until-wet"))
	noneLess(f.Get("wear"), "wear")
	if v := f.Get("health"); !h.Health && v.Below().Says("yes") {
		v.Report(finding.CareLess, "`health: no` takes away that this harms", "Take `health` away, or give what is harmless here an id of its own.")
	}
	if n := len(strings.Fields(h.Short)); n > cautionWords {
		f.Get("short").Report(finding.ValueForm, fmt.Sprintf("`short` has %d words; a card or a plan has room for %d", n, cautionWords), "Say it shorter; the rest belongs in `do`.")
	}
	if lesson := f.Get("lesson"); !lesson.Absent() {
		h.Lesson = path.Clean(lesson.Text())
		l.taught = append(l.taught, lesson)
	}
	if l.hazardIDs.add(id, h.ID) {
		l.course.Decoration.Hazards = append(l.course.Decoration.Hazards, h)
	}
}

// checkUntilWet reports what comes off again though nobody put it on.
func (h Hazard) checkUntilWet(v source.Value) {
	for _, w := range h.UntilWet {
		if !slices.Contains(h.Wear, w) {
			v.Report(finding.ValueForm, fmt.Sprintf("`until-wet` names %q, which is not among `wear`", w), "Write there what of `wear` comes off again once all of it is wet, word for word.")
		}
	}
}

// readMark reads the words for a hazard where there is room for no more.
func readMark(v source.Value) []string {
	marks := v.Texts()
	if len(marks) > mostMarks {
		v.Report(finding.ValueForm, fmt.Sprintf("`mark` has %d words; beside a verdict there is room for %d", len(marks), mostMarks), "Keep those that say what to do, such as `mark: [mask, gloves]`.")
	}
	for _, mark := range marks {
		if len(strings.Fields(mark)) > markWords {
			v.Report(finding.ValueForm, fmt.Sprintf("`%s` is too long for a mark on the chart", mark), fmt.Sprintf("Say it in %d words at most; the rest belongs in `short`.", markWords))
		}
	}
	return marks
}

// findTaught makes sure that the lessons that hazards name, and the page of first
// aid, are there. It comes
// after the pages. Of a lesson whose file is there and that no list names,
// somebody else has told.
func (l *loader) findTaught(known bool) {
	if len(l.course.Units) == 0 {
		known = false
	}
	for _, v := range l.taught {
		file := path.Clean(v.Text())
		if _, there := l.course.FindPage(file); there || file == "." {
			continue
		}
		if known && (!source.Exists(l.fsys, file) || path.Ext(file) != ".md") {
			v.Report(finding.UnknownName, fmt.Sprintf("there is no page %s", file), source.Meant(file, l.pathsFrom("course"))+"Write the path of a lesson as the content folder has it, such as `units/safety/dust.md`.")
		}
		if l.course.FirstAid == file {
			l.course.FirstAid = ""
		}
		for i := range l.course.Decoration.Hazards {
			if h := &l.course.Decoration.Hazards[i]; h.Lesson == file {
				h.Lesson = ""
			}
		}
	}
}

// untaught warns of hazards that lead to no lesson.
func (l *loader) untaught() {
	var ids []string
	for _, h := range l.course.Decoration.Hazards {
		if h.Lesson == "" {
			ids = append(ids, h.ID)
		}
	}
	if len(ids) == 0 {
		return
	}
	text := "no lesson is named for these hazards: "
	if !source.Exists(l.fsys, hazardsFile) {
		text = "there is no hazards.yaml, so no lesson is named for these hazards: "
	}
	l.report(hazardsFile, finding.HazardLesson, text+strings.Join(ids, ", "), "Write for each an entry such as `{id: "+ids[0]+", lesson: units/safety/dust.md}` under `hazards` in hazards.yaml.")
}
