package course

import (
	"fmt"
	"io/fs"
	"strings"

	"slipbook/generator/finding"
)

const glossaryFile = "glossary.yaml"

// glossary reads the words that are explained once. A course may do without.
func (l *loader) glossary() {
	if _, err := fs.Stat(l.fsys, glossaryFile); err != nil {
		return
	}
	ids, used := unique{}, unique{}
	var sees [][]value
	root := l.sheet(glossaryFile, "terms:")
	for _, item := range root.fields("terms").need("terms", "terms:").list() {
		f := item.fields("id", "word", "also", "means", "see")
		id, word := f.need("id", "id: bisque"), f.need("word", "word: bisque")
		t := Term{
			ID:    id.id(),
			Word:  word.text(),
			Means: f.need("means", "means: Clay that has been fired once, without glaze.").text(),
		}
		used.addWord(word, t.Word)
		for _, other := range f.get("also").list() {
			if w := other.text(); used.addWord(other, w) {
				t.Also = append(t.Also, w)
			}
		}
		if ids.add(id, t.ID) {
			l.course.Glossary = append(l.course.Glossary, t)
			sees = append(sees, f.get("see").list())
		}
	}
	for i := range l.course.Glossary {
		l.course.Glossary[i].See = readSee(l.course.Glossary[i].ID, sees[i], ids)
	}
}

// addWord is add for words, of which capital letters do not count.
func (u unique) addWord(v value, word string) bool { return u.add(v, strings.ToLower(word)) }

// readSee reads the ids of the other terms that a term speaks of.
func readSee(id string, items []value, ids unique) []string {
	var see []string
	for _, item := range items {
		other := item.text()
		switch _, known := ids[other]; {
		case other == "":
		case other == id:
			item.report(finding.UnknownName, fmt.Sprintf("`see` of `%s` names itself", id), "Name another term, or take this out.")
		case !known:
			item.report(finding.UnknownName, fmt.Sprintf("no term has the id `%s`", other), meant(other, ids.sorted())+"Name the id of a term in this file.")
		default:
			see = append(see, other)
		}
	}
	return see
}
