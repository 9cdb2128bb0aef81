package course

import (
	"embed"
	"slices"
	"sync"

	"slipbook/generator/source"
)

// The program's own table: what is common practice of the trade, whatever the
// studio. A course's files hold only what is different in theirs.
//
//go:embed base/decoration.yaml base/hazards.yaml base/limits.yaml base/materials.yaml
var ownTable embed.FS

// keepsBase is the key with which a course's file leaves the program's own
// table out.
const keepsBase = "base"

// overBase reads a YAML file of the course that lies over the program's own
// file of the same name. The course may do without it. Of a file that cannot be
// read, it returns an absent value.
func (l *loader) overBase(path, example string) source.Value {
	var root source.Value
	if source.Exists(l.fsys, path) {
		root = l.yaml(path, example)
	} else {
		none := source.New(path, nil)
		l.open = append(l.open, none)
		root = none.Empty()
	}
	if root.Absent() {
		return root
	}
	if root.Key(keepsBase).Says("no") {
		return root
	}
	below := ownFiles[path]()
	root = root.Over(below.root)
	l.course.Decoration.program = append(l.course.Decoration.program, below.texts)
	return root
}

// ownFile is a file of the program's own table, read.
type ownFile struct {
	root  source.Value
	texts map[string]bool // every text that stands in it
}

// ownFiles read the program's own table, once and then kept: a course is read
// again at every save, and these never change.
var ownFiles = map[string]func() ownFile{
	tableFile:   sync.OnceValue(func() ownFile { return readOwn(tableFile) }),
	hazardsFile: sync.OnceValue(func() ownFile { return readOwn(hazardsFile) }),
}

func readOwn(path string) ownFile {
	text, err := ownTable.ReadFile("base/" + path)
	if err != nil {
		panic(err) // an embedded file always reads
	}
	own := ownFile{source.New("base/"+path, text).YAML(), map[string]bool{}}
	if own.root.Absent() {
		panic("the program's own " + path + " is broken") // a test reads it
	}
	own.root.EachText(func(text string) { own.texts[text] = true })
	return own
}

// FromProgram reports whether a text stands in the program's own table, where
// no course can change a word of it but by saying the whole row anew.
func (d *Decoration) FromProgram(text string) bool {
	return d != nil && slices.ContainsFunc(d.program, func(t map[string]bool) bool { return t[text] })
}
