package source

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// Fields is a set of keys with values, taken apart, or a row of a table.
type Fields struct {
	Of     Value   // the whole
	values []Value // with their keys as names, each once; few
}

// Pair is one key with its value.
type Pair struct{ Key, Value Value }

// Pairs returns the keys, which are one word each, with their values, in the
// order written. A key that is no word is reported and left out, and so is one
// that stands twice.
func (v Value) Pairs() []Pair {
	if !v.is(yaml.MappingNode) {
		return nil
	}
	pairs := make([]Pair, 0, len(v.node.Content)/2)
	seen := make(map[string]int, len(v.node.Content)/2) // their places in pairs
	for i := 0; i+1 < len(v.node.Content); i += 2 {
		key := Value{doc: v.doc, node: v.node.Content[i], above: v.above}
		word := key.node.Value
		first, repeated := seen[word]
		switch {
		case !key.IsText() || word == "":
			key.Report(finding.YAMLForm, "this stands where a key should", "Write `key: value`, the key being one word.")
		case repeated:
			key.Report(finding.RepeatedKey, fmt.Sprintf("`%s` stands here a second time", word), fmt.Sprintf("Keep one of the two; the other has its value in %s.", pairs[first].Value.Line()))
		default:
			seen[word] = len(pairs)
			pairs = append(pairs, Pair{key, Value{doc: v.doc, node: v.node.Content[i+1], name: word, above: v.above}})
		}
	}
	return pairs
}

// Word returns what a key says, as it was written.
func (p Pair) Word() string { return p.Key.node.Value }

// Fields takes a set of keys apart; those that are not in known are reported,
// and so is a key that stands twice.
func (v Value) Fields(known ...string) Fields {
	f := Fields{Of: v}
	for _, p := range v.Pairs() {
		if word := p.Word(); slices.Contains(known, word) {
			f.values = append(f.values, p.Value)
		} else {
			p.Key.Report(finding.UnknownKey, fmt.Sprintf("`%s` is not a key that is known here", word), Meant(word, known)+"The keys are: "+strings.Join(known, ", ")+".")
		}
	}
	return f
}

// Get returns the value at a key, an absent one if the key is not there.
func (f Fields) Get(key string) Value {
	if i := f.find(key); i >= 0 {
		return f.values[i]
	}
	return Value{doc: f.Of.doc, name: key}
}

// find returns the place of a key's value, below zero where the key is not there.
func (f Fields) find(key string) int {
	return slices.IndexFunc(f.values, func(v Value) bool { return v.name == key })
}

// Spots returns the place of each key's value, by key, and at "" that of the
// whole, which stands for the keys that are not there.
func (f Fields) Spots() map[string]finding.Spot {
	spots := map[string]finding.Spot{"": f.Of.Spot()}
	for _, v := range f.values {
		spots[v.name] = v.Spot()
	}
	return spots
}

// Need returns the value at a key and reports when the key is not there.
// example is what to write, as "key: value". Of a whole that is itself absent
// or of the wrong kind nothing is reported again.
func (f Fields) Need(key, example string) Value {
	return f.NeedFor(finding.MissingKey, key, example)
}

// NeedFor is Need with a rule of the caller's own.
func (f Fields) NeedFor(rule *finding.Rule, key, example string) Value {
	v := f.Get(key)
	switch {
	case !v.Absent() || !f.Of.IsMapping():
	case f.Of.doc.of != nil:
		_, value, _ := strings.Cut(example, ": ")
		f.Of.Report(rule, fmt.Sprintf("this row has nothing in the column `%s`", key), "Write it there, such as `"+value+"`.")
	default:
		f.Of.Report(rule, fmt.Sprintf("`%s` is missing", key), "Write a line such as `"+example+"`.")
	}
	return v
}

// Key returns the value at a key without looking at the others.
func (v Value) Key(key string) Value {
	if v.IsMapping() {
		for i := 0; i+1 < len(v.node.Content); i += 2 {
			if v.node.Content[i].Value == key {
				return Value{doc: v.doc, node: v.node.Content[i+1], name: key, above: v.above}
			}
		}
	}
	return Value{doc: v.doc, name: key}
}
