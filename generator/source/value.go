package source

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// Value is what was written at a key, in a list or in a cell of a table, or a
// whole piece of YAML. The methods that read it report what is wrong and then
// return an empty answer; of an absent value they return the empty answer in
// silence. The zero Value is absent.
type Value struct {
	doc   *document
	node  *yaml.Node // nil: absent, and reported if it was needed
	name  string     // its key, or that of the list it is in; empty for a whole piece of YAML
	item  bool       // it is in a list
	below *Value     // what it lies over (over.go); nil where that is nothing
	above *Value     // of a value that was lain over: what stands around it in the upper file
}

// Absent reports whether nothing was written.
func (v Value) Absent() bool { return v.node == nil }

// isA reports whether the value is of this kind.
func (v Value) isA(kind yaml.Kind) bool { return v.node != nil && v.node.Kind == kind }

// IsText reports whether the value is one text, and finds nothing wrong with it
// when it is not; so do IsList and IsMapping.
func (v Value) IsText() bool { return v.isA(yaml.ScalarNode) }

// IsList reports whether the value is a list.
func (v Value) IsList() bool { return v.isA(yaml.SequenceNode) }

// IsMapping reports whether the value is a set of keys with values.
func (v Value) IsMapping() bool { return v.isA(yaml.MappingNode) }

// Says reports whether the value is this word.
func (v Value) Says(word string) bool { return v.IsText() && v.node.Value == word }

// At returns the value's offset in its file, -1 for an absent one.
func (v Value) At() int {
	if v.Absent() {
		return -1
	}
	return v.doc.place(v.doc.at(v.node))
}

// Report adds a finding about the value. What is wrong with a value of a lower
// file is what the upper one has done to it, and is placed there.
func (v Value) Report(rule *finding.Rule, text, do string) {
	if v.above != nil {
		v.above.Report(rule, text, do)
		return
	}
	v.doc.file.Report(v.At(), rule, text, do)
}

// Spot returns the place of a value, for what only a later stage can find wrong
// with it: of one of a lower file, that around it in the upper one.
func (v Value) Spot() finding.Spot {
	if v.above != nil {
		return v.above.Spot()
	}
	line, column := v.doc.file.Place(v.At())
	return finding.Spot{File: v.doc.file.Path, Line: line, Column: column}
}

// Line says where a value stands, for a finding about another one: "line 12".
func (v Value) Line() string {
	if v.above != nil {
		return "the program's own table"
	}
	line, _ := v.doc.file.Place(v.At())
	return fmt.Sprintf("line %d", line)
}

// is reports whether the value is of this kind, and finds fault when it is of
// another.
func (v Value) is(kind yaml.Kind) bool {
	switch {
	case v.Absent() || v.node.Kind == yaml.AliasNode: // an alias was reported
		return false
	case v.node.Kind == kind:
		return true
	case v.node.ShortTag() == "!!null":
		v.empty(kind)
	default:
		v.Report(finding.ValueKind, fmt.Sprintf("this is %s, but %s wants %s", kindWords[v.node.Kind], v.Called(), kindWords[kind]),
			kindHelp[kind])
	}
	return false
}

func (v Value) empty(kind yaml.Kind) {
	v.Report(finding.MissingKey, v.Called()+" is empty", "Write "+kindWords[kind]+", or take the key out if it can be left out.")
}

var kindWords = map[yaml.Kind]string{
	yaml.ScalarNode:   "one line of text",
	yaml.SequenceNode: "a list",
	yaml.MappingNode:  "a set of keys with values",
}

var kindHelp = map[yaml.Kind]string{
	yaml.ScalarNode:   "Write the text right after the colon; in double quotes if it starts with a sign like [ or {.",
	yaml.SequenceNode: "Write each item on a line of its own below the key, after a hyphen and a space.",
	yaml.MappingNode:  "Write each key on a line of its own, as `key: value`.",
}

// Called returns what a finding calls the value: its key, or what the whole is.
func (v Value) Called() string {
	switch {
	case v.name == "":
		return v.doc.called
	case v.item:
		return "an item of `" + v.name + "`"
	}
	return "`" + v.name + "`"
}

// Text returns the value as one line: line ends and runs of spaces become one
// space. A number or a date is text as it was written.
func (v Value) Text() string {
	if !v.is(yaml.ScalarNode) {
		return ""
	}
	text := oneLine(v.node.Value)
	if text == "" || v.node.ShortTag() == "!!null" {
		v.empty(yaml.ScalarNode)
		return ""
	}
	return text
}

// Texts returns the items of a list of texts, empty ones left out.
func (v Value) Texts() []string {
	var texts []string
	for _, item := range v.List() {
		if text := item.Text(); text != "" {
			texts = append(texts, text)
		}
	}
	return texts
}

// EachText hands out every text in the value, as one line, however deep.
func (v Value) EachText(take func(text string)) {
	if !v.Absent() {
		eachText(v.node, take)
	}
}

func eachText(n *yaml.Node, take func(text string)) {
	if n.Kind == yaml.ScalarNode {
		take(oneLine(n.Value))
	}
	for _, c := range n.Content {
		eachText(c, take)
	}
}

// EachAt hands out every text at one of some keys, as one line, and the value it
// is, however deep; a list there is a list of them. It reports nothing.
func (v Value) EachAt(keys []string, take func(v Value, text string)) {
	switch {
	case v.IsText() && slices.Contains(keys, v.name):
		take(v, oneLine(v.node.Value))
	case v.IsList():
		for _, item := range v.List() {
			item.EachAt(keys, take)
		}
	case v.IsMapping():
		for i := 0; i+1 < len(v.node.Content); i += 2 {
			Value{doc: v.doc, node: v.node.Content[i+1], name: v.node.Content[i].Value, above: v.above}.EachAt(keys, take)
		}
	}
}

// Choice returns a text that is one of a few words.
func (v Value) Choice(words ...string) string {
	text := v.Text()
	if text == "" || slices.Contains(words, text) {
		return text
	}
	v.Report(finding.ValueForm, fmt.Sprintf("%s cannot be `%s`", v.Called(), text), Meant(text, words)+"Write one of: "+strings.Join(words, ", ")+".")
	return ""
}

var plainNumber = regexp.MustCompile(`^[0-9]{1,9}(\.[0-9]{1,9})?$`)

// Number returns a number from low to high; what says what it is.
func (v Value) Number(low, high float64, what string) float64 {
	text := v.Text()
	if text == "" {
		return 0
	}
	n, err := strconv.ParseFloat(text, 64)
	switch {
	case !plainNumber.MatchString(text) || err != nil:
		v.Report(finding.ValueKind, fmt.Sprintf("`%s` is not a plain number, but %s wants one", text, v.Called()), "Write "+what+" as a number alone, such as 12 or 11.5.")
	case n < low || n > high:
		v.Report(finding.ValueForm, fmt.Sprintf("%s is %s, outside %g to %g", v.Called(), text, low, high), "Write "+what+"; check the decimal point.")
	default:
		return n
	}
	return 0
}

var idForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

const idHelp = "Write small letters a to z, digits, and single hyphens between them, such as `leather-hard`."

// IsID reports whether a text can be an id: small letters, digits, and single
// hyphens between them.
func IsID(text string) bool { return idForm.MatchString(text) }

// ID returns a text that is an id. A wrong one is reported and still returned,
// so that what it names is found.
func (v Value) ID() string {
	text := v.Text()
	v.CheckID(text)
	return text
}

// devices are the names that Windows keeps for itself, with any ending: no file
// there can have one, so neither can anything that names a file.
var devices = regexp.MustCompile(`^(?i:con|prn|aux|nul|com[0-9]|lpt[0-9])$`)

// DeviceHelp says what to do with a name that Windows keeps for itself.
const DeviceHelp = "Give it another name, such as one with a word more: the handbook can then be kept on any computer and memory stick."

// IsDevice reports whether Windows keeps a name for itself.
func IsDevice(name string) bool { return devices.MatchString(name) }

// CheckID reports a text made of the value that is no id.
func (v Value) CheckID(text string) {
	switch {
	case text == "":
	case !IsID(text):
		v.Report(finding.IDForm, fmt.Sprintf("`%s` cannot be an id", text), idHelp)
	case IsDevice(text):
		v.Report(finding.IDForm, fmt.Sprintf("Windows keeps the name `%s` for itself", text), DeviceHelp)
	}
}

// List returns the items, which are called by the list's own key.
func (v Value) List() []Value {
	if !v.is(yaml.SequenceNode) {
		return nil
	}
	items := make([]Value, len(v.node.Content))
	for i, n := range v.node.Content {
		items[i] = Value{doc: v.doc, node: n, name: v.name, item: true, above: v.above}
	}
	return items
}
