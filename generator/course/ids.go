package course

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// unique keeps the ids of one kind of thing apart: by id, where each was
// first written.
type unique map[string]source.Value

// add notes an id; a repeated one is reported and answered with false, and so
// is an empty one, which was reported already.
func (u unique) add(v source.Value, id string) bool {
	if id == "" {
		return false
	}
	first, repeated := u[id]
	if !repeated {
		u[id] = v
		return true
	}
	if v.Inherited() && !first.Inherited() {
		v, first = first, v // the course's file is where it can be mended
	}
	v.Report(finding.RepeatedName, fmt.Sprintf("`%s` is already in %s", id, first.Line()), "Give each its own.")
	return false
}

// addWord is add for words, whose capital letters do not count.
func (u unique) addWord(v source.Value, word string) bool { return u.add(v, strings.ToLower(word)) }

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

// sorted lists the ids.
func (u unique) sorted() []string { return slices.Sorted(maps.Keys(u)) }

// named is an id in a list, with the place where it was written.
type named struct {
	id string
	source.Value
}

// readNames reads a list of ids, each once. A file's name with its ".md" is
// taken for what is meant.
func readNames(v source.Value) []named {
	var names []named
	seen := map[string]bool{}
	items := v.List()
	if items != nil && len(items) == 0 {
		v.Report(finding.MissingKey, v.Called()+" is empty", "Name at least one, on a line of its own after a hyphen.")
	}
	for _, item := range items {
		id, file := strings.CutSuffix(item.Text(), ".md")
		if file {
			item.Report(finding.IDForm, fmt.Sprintf("`%s.md` has the ending of its file", id), "Write `"+id+"` alone.")
		} else {
			item.CheckID(id)
		}
		switch {
		case id == "":
		case seen[id]:
			item.Report(finding.RepeatedName, fmt.Sprintf("`%s` is in this list a second time", id), "Name it once.")
		default:
			seen[id] = true
			names = append(names, named{id, item})
		}
	}
	return names
}
