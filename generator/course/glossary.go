package course

import (
	"fmt"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// glossary reads the words that are explained once. A course may do without.
func (l *loader) glossary() {
	if !source.Exists(l.fsys, glossaryFile) {
		return
	}
	ids, used := unique{}, unique{}
	var sees [][]source.Value
	root := l.yaml(glossaryFile, "terms:")
	for _, item := range root.Fields("terms").Need("terms", "terms:").List() {
		f := item.Fields("id", "word", "also", "means", "see")
		id, word := f.Need("id", "id: bisque"), f.Need("word", "word: bisque")
		t := Term{
			ID:    id.ID(),
			Word:  word.Text(),
			Means: f.Need("means", "means: Clay that has been fired once, without glaze.").Text(),
		}
		used.addWord(word, t.Word)
		for _, other := range f.Get("also").List() {
			if w := other.Text(); used.addWord(other, w) {
				t.Also = append(t.Also, w)
			}
		}
		if ids.add(id, t.ID) {
			l.course.Glossary = append(l.course.Glossary, t)
			sees = append(sees, f.Get("see").List())
		}
	}
	for i := range l.course.Glossary {
		l.course.Glossary[i].See = readOthers("see", "term", l.course.Glossary[i].ID, sees[i], ids)
	}
}

// readOthers reads the ids of others of the same kind that an entry names under a key.
func readOthers(key, kind, id string, items []source.Value, ids unique) []string {
	var others []string
	for _, item := range items {
		other := item.Text()
		switch _, known := ids[other]; {
		case other == "":
		case other == id:
			item.Report(finding.UnknownName, fmt.Sprintf("`%s` of `%s` names itself", key, id), fmt.Sprintf("Name another %s, or take this out.", kind))
		case !known:
			item.Report(finding.UnknownName, fmt.Sprintf("no %s has the id `%s`", kind, other), source.Meant(other, ids.sorted())+fmt.Sprintf("Name the id of a %s in this file.", kind))
		default:
			others = append(others, other)
		}
	}
	return others
}
