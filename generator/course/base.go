package course

import (
	"embed"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// The program's own table: what is common practice of the trade, whatever the
// studio. A course's files hold only what is different in theirs.
//
//go:embed base/decoration.yaml base/hazards.yaml
var ownTable embed.FS

// keepsBase is the key with which a course's file leaves the program's own
// table out.
const keepsBase = "base"

// overBase reads a YAML file of the course that lies over the program's own
// file of the same name. The course may do without it. Of a file that cannot be
// read, it returns an absent value.
func (l *loader) overBase(path, example string) value {
	var root value
	if _, err := fs.Stat(l.fsys, path); err == nil {
		root = l.sheet(path, example)
	} else {
		none := &source{path: path}
		l.open = append(l.open, none)
		root = value{sheet: &sheet{source: none}, node: &yaml.Node{Kind: yaml.MappingNode}}
	}
	if root.absent() {
		return root
	}
	if root.fieldNamed(keepsBase).says("no") {
		return root
	}
	below := ownFiles[path]()
	root.base = &below.root
	l.course.Decoration.program = append(l.course.Decoration.program, below.texts)
	return root
}

// ownFile is a file of the program's own table, read.
type ownFile struct {
	root  value
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
	own := ownFile{readSheet(&source{path: "base/" + path, text: text}, text, 0), map[string]bool{}}
	if own.root.absent() {
		panic("the program's own " + path + " is broken") // a test reads it
	}
	own.gather(own.root.node)
	return own
}

// gather notes the texts of a piece of YAML.
func (o *ownFile) gather(n *yaml.Node) {
	if n.Kind == yaml.ScalarNode {
		o.texts[strings.Join(strings.Fields(n.Value), " ")] = true
	}
	for _, c := range n.Content {
		o.gather(c)
	}
}

// FromProgram reports whether a text stands in the program's own table, where
// no course can change a word of it but by saying the whole row anew.
func (d *Decoration) FromProgram(text string) bool {
	return d != nil && slices.ContainsFunc(d.program, func(t map[string]bool) bool { return t[text] })
}

// fieldNamed returns the value at a key without looking at the others.
func (v value) fieldNamed(key string) value {
	if v.isA(yaml.MappingNode) {
		for i := 0; i+1 < len(v.node.Content); i += 2 {
			if v.node.Content[i].Value == key {
				return value{sheet: v.sheet, node: v.node.Content[i+1], name: key, seat: v.seat}
			}
		}
	}
	return value{sheet: v.sheet, name: key}
}

// says reports whether a value is this word.
func (v value) says(word string) bool { return v.isA(yaml.ScalarNode) && v.node.Value == word }

// merged takes a mapping apart as fields does. The keys that it has not are
// those of the program's own table; to those that both have, it leaves what
// lies beneath.
func (v value) merged(known ...string) fields {
	f := v.fields(known...)
	if v.base == nil || !v.base.isA(yaml.MappingNode) {
		return f
	}
	for i := 0; i+1 < len(v.base.node.Content); i += 2 {
		key := v.base.node.Content[i].Value
		below := value{sheet: v.base.sheet, node: v.base.node.Content[i+1], name: key, seat: &v}
		own, there := f.byKey[key]
		if !there {
			f.byKey[key] = below
			continue
		}
		own.base = &below
		f.byKey[key] = own
	}
	return f
}

// entries returns the items of a list whose items have ids: those of the
// program's own table in their order, each with what the course says over it,
// then those that are the course's alone.
func (v value) entries() []value {
	own := v.list()
	if v.base == nil {
		return own
	}
	var all []value
	for _, below := range v.base.list() {
		id := below.fieldNamed("id").node.Value
		i := slices.IndexFunc(own, func(item value) bool { return item.plainID() == id })
		if i < 0 {
			all = append(all, below)
			continue
		}
		own[i].base = &below
		all = append(all, own[i])
		own = slices.Delete(own, i, i+1)
	}
	return append(all, own...)
}

// plainID is what stands at the key id, unchecked.
func (v value) plainID() string {
	if id := v.fieldNamed("id"); id.isA(yaml.ScalarNode) {
		return id.node.Value
	}
	return ""
}

// readLeftOut reads the ids of media and techniques of the program's own table
// that this course does without.
func (t *table) readLeftOut(f fields) {
	there := unique{}
	for _, key := range []string{"media", "techniques"} {
		v := f.get(key)
		if v.base != nil {
			v = *v.base
		}
		if v.seat == nil {
			continue
		}
		for _, item := range v.list() {
			there[item.plainID()] = item
		}
	}
	t.leftOut = map[string]bool{}
	for _, item := range f.get("leave-out").list() {
		id := item.text()
		if _, known := there[id]; !known && id != "" {
			item.report(finding.UnknownName, "the program's own table has no medium or technique `"+id+"`", meant(id, there.sorted())+"Name one that it has, or take this out.")
		}
		t.leftOut[id] = true
	}
}

// without reports whether a value of the program's own table names something
// that the course leaves out.
func (t *table) without(v value, id string) bool { return v.seat != nil && t.leftOut[id] }

// count notes whose a row of the table is. about is what the row is about.
func (o *Origin) count(v value, about string) {
	if v.seat != nil {
		o.Program++
		return
	}
	o.Course++
	if about != "" && !slices.Contains(o.Names, about) {
		o.Names = append(o.Names, about)
	}
}
