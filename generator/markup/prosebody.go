package markup

import (
	"bytes"
	"slices"

	"github.com/yuin/goldmark/ast"
)

// body reads the texts of a block of YAML from the lines of its body. The YAML is
// read elsewhere; the lines alone say what the texts are and where, and cost a
// tenth of a second reading. Quotes around a text stay.
func (r *reader) body(n *ast.FencedCodeBlock, kind *blockKind) {
	start, offset, keys := -1, 0, kind.keys()
	for i := range n.Lines().Len() {
		seg := n.Lines().At(i)
		line := bytes.TrimRight(seg.Value(r.source), " \t\r\n")
		at := seg.Start - seg.Padding // Value begins with as many spaces
		for len(line) > 0 {
			key, value, end := keys.part(line)
			if key != "" && start >= 0 {
				r.end(BodyLine, start, offset)
				start = -1
			}
			if slices.Contains(kind.prose, key) {
				start = len(r.text)
			}
			if start >= 0 && value < end {
				if len(r.text) == start {
					offset = at + value
				} else {
					r.put([]byte(" "), at+value-1)
				}
				r.put(line[value:end], at+value)
			}
			at, line = at+end, line[end:]
		}
	}
	if start >= 0 {
		r.end(BodyLine, start, offset)
	}
}

// beforeKey is what stands before a key on its line.
const beforeKey = " \t-{[,"

// bodyKeys is what to look for in the lines of a body.
type bodyKeys struct {
	all    []string
	behind [][]byte // how one of them looks behind another on its line
}

func (k *blockKind) keys() bodyKeys {
	keys := bodyKeys{all: slices.Concat(k.prose, k.other)}
	for _, key := range keys.all {
		if !slices.Contains(k.alone, key) {
			keys.behind = append(keys.behind, []byte(", "+key+": "), []byte("{"+key+": "))
		}
	}
	return keys
}

// part finds the first key of a line in a body, and where its value begins and
// ends; a line that goes on with the value before it has no key.
func (k bodyKeys) part(line []byte) (key string, value, end int) {
	value = len(line) - len(bytes.TrimLeft(line, beforeKey))
	for _, word := range k.all {
		after, ok := bytes.CutPrefix(line[value:], []byte(word+":"))
		if ok && (len(after) == 0 || after[0] == ' ') {
			key = word
			value += len(word) + 1
			break
		}
	}
	end = len(line)
	if key == "" {
		value = 0
	} else {
		for _, next := range k.behind {
			if i := bytes.Index(line[value:end], next); i >= 0 {
				end = value + i
			}
		}
	}
	for value < end && (line[value] == ' ' || line[value] == '\t') {
		value++
	}
	if rest := end - value; key != "" && 0 < rest && rest <= 2 && (line[value] == '>' || line[value] == '|') {
		value = end // the sign for a text on the lines below
	}
	return key, value, end
}
