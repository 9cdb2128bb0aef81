package course

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// value is what stands at a key, or a whole sheet. The methods that read it
// report what is wrong and then give an empty answer, so that reading goes on;
// of an absent value they give the empty answer in silence.
type value struct {
	sheet *sheet
	node  *yaml.Node // nil: absent, and reported if it was needed
	name  string     // its key, or that of the list it is in; empty for a whole sheet
	item  bool       // it is in a list
	base  *value     // what the program's own table has in its place; nil where it has nothing
	seat  *value     // of a value of the program's own table: what stands round it in the course's file
}

func (v value) absent() bool { return v.node == nil }

// isA says whether the value is of this kind, and reports nothing.
func (v value) isA(kind yaml.Kind) bool { return v.node != nil && v.node.Kind == kind }

// at is the value's offset in its file.
func (v value) at() int {
	if v.absent() {
		return -1
	}
	return v.sheet.of(v.node)
}

// report adds a finding about the value. What is wrong with a value of the
// program's own table is what the course's file has done to it, and is placed
// there.
func (v value) report(rule *finding.Rule, text, do string) {
	if v.seat != nil {
		v.seat.report(rule, text, do)
		return
	}
	v.sheet.report(v.at(), rule, text, do)
}

// line says where a value stands, for a finding about another one: "line 12".
func (v value) line() string {
	if v.seat != nil {
		return "the program's own table"
	}
	line, _ := v.sheet.place(v.at())
	return fmt.Sprintf("line %d", line)
}

// is says whether the value is of this kind, and reports when it is another.
func (v value) is(kind yaml.Kind) bool {
	switch {
	case v.absent() || v.node.Kind == yaml.AliasNode: // an alias was reported
		return false
	case v.node.Kind == kind:
		return true
	case v.node.ShortTag() == "!!null":
		v.report(finding.MissingKey, v.called()+" is empty", "Write "+kindWords[kind]+", or take the key out if it can be left out.")
	default:
		v.report(finding.ValueKind, fmt.Sprintf("this is %s, but %s wants %s", kindWords[v.node.Kind], v.called(), kindWords[kind]),
			kindHelp[kind])
	}
	return false
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

func (v value) called() string {
	switch {
	case v.name == "" && v.sheet.base > 0:
		return "the opening block"
	case v.name == "":
		return "the file"
	case v.item:
		return "an item of `" + v.name + "`"
	}
	return "`" + v.name + "`"
}

// text gives the value as one line: line ends and runs of spaces become one
// space. A number or a date is text as it was written.
func (v value) text() string {
	if !v.is(yaml.ScalarNode) {
		return ""
	}
	text := strings.Join(strings.Fields(v.node.Value), " ")
	if text == "" || v.node.ShortTag() == "!!null" {
		v.report(finding.MissingKey, v.called()+" is empty", "Write "+kindWords[yaml.ScalarNode]+", or take the key out if it can be left out.")
		return ""
	}
	return text
}

// choice gives a text that is one of a few words.
func (v value) choice(words ...string) string {
	text := v.text()
	if text == "" || slices.Contains(words, text) {
		return text
	}
	v.report(finding.ValueForm, fmt.Sprintf("%s cannot be `%s`", v.called(), text), meant(text, words)+"Write one of: "+strings.Join(words, ", ")+".")
	return ""
}

var plainNumber = regexp.MustCompile(`^[0-9]{1,9}(\.[0-9]{1,9})?$`)

// number gives a number from low to high.
func (v value) number(low, high float64, what string) float64 {
	text := v.text()
	if text == "" {
		return 0
	}
	n, err := strconv.ParseFloat(text, 64)
	switch {
	case !plainNumber.MatchString(text) || err != nil:
		v.report(finding.ValueKind, fmt.Sprintf("`%s` is not a plain number, but %s wants one", text, v.called()), "Write "+what+" as a number alone, such as 12 or 11.5.")
	case n < low || n > high:
		v.report(finding.ValueForm, fmt.Sprintf("%s is %s, outside %g to %g", v.called(), text, low, high), "Write "+what+"; check the decimal point.")
	default:
		return n
	}
	return 0
}

var kebab = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

const kebabHelp = "Write small letters a to z, digits, and single hyphens between them, such as `leather-hard`."

// id gives a text that is an id. A wrong one is reported and still given, so
// that what it names is found.
func (v value) id() string {
	text := v.text()
	v.checkID(text)
	return text
}

func (v value) checkID(text string) {
	if text != "" && !kebab.MatchString(text) {
		v.report(finding.IDForm, fmt.Sprintf("`%s` cannot be an id", text), kebabHelp)
	}
}

// list gives the items. They are called by the list's own key.
func (v value) list() []value {
	if !v.is(yaml.SequenceNode) {
		return nil
	}
	items := make([]value, len(v.node.Content))
	for i, n := range v.node.Content {
		items[i] = value{sheet: v.sheet, node: n, name: v.name, item: true, seat: v.seat}
	}
	return items
}

// texts gives the items of a list of texts, empty ones left out.
func (v value) texts() []string {
	var texts []string
	for _, item := range v.list() {
		if text := item.text(); text != "" {
			texts = append(texts, text)
		}
	}
	return texts
}

// fields is a mapping taken apart.
type fields struct {
	of    value
	byKey map[string]value
}

// fields takes a mapping apart; keys that are not in known are reported, and
// so is a key that stands twice.
func (v value) fields(known ...string) fields {
	f := fields{v, map[string]value{}}
	if !v.is(yaml.MappingNode) {
		return f
	}
	for i := 0; i+1 < len(v.node.Content); i += 2 {
		key, of := value{sheet: v.sheet, node: v.node.Content[i], seat: v.seat}, v.node.Content[i+1]
		word := key.node.Value
		first, repeated := f.byKey[word]
		switch {
		case key.node.Kind != yaml.ScalarNode:
			key.report(finding.YAMLForm, "this stands where a key should", "Write `key: value`, the key being one word.")
		case !slices.Contains(known, word):
			key.report(finding.UnknownKey, fmt.Sprintf("`%s` is not a key that is known here", word), meant(word, known)+"The keys are: "+strings.Join(known, ", ")+".")
		case repeated:
			key.report(finding.RepeatedKey, fmt.Sprintf("`%s` stands here a second time", word), fmt.Sprintf("Keep one of the two; the other has its value in %s.", first.line()))
		default:
			f.byKey[word] = value{sheet: v.sheet, node: of, name: word, seat: v.seat}
		}
	}
	return f
}

// get gives the value at a key, an absent one if the key is not there.
func (f fields) get(key string) value {
	if v, ok := f.byKey[key]; ok {
		return v
	}
	return value{sheet: f.of.sheet, name: key}
}

// need gives the value at a key and reports when the key is not there.
// example is what to write. Of a mapping that is itself absent or of the wrong
// kind nothing is reported again.
func (f fields) need(key, example string) value {
	return f.needFor(finding.MissingKey, key, example)
}

// needFor is need with a rule of the caller's own.
func (f fields) needFor(rule *finding.Rule, key, example string) value {
	v := f.get(key)
	if v.absent() && f.of.isA(yaml.MappingNode) {
		f.of.report(rule, fmt.Sprintf("`%s` is missing", key), "Write a line such as `"+example+"`.")
	}
	return v
}
