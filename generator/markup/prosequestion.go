package markup

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
)

// question reads the texts of a question from the lines of its body. Their
// YAML is read elsewhere; the lines alone say what the texts are and where, and
// cost a tenth of a second reading. Quotes around a text stay.
func (r *reader) question(n *ast.FencedCodeBlock) {
	start, offset := -1, 0
	for i := range n.Lines().Len() {
		seg := n.Lines().At(i)
		line := bytes.TrimRight(seg.Value(r.source), " \t\r\n")
		at := seg.Start - seg.Padding // Value begins with as many spaces
		for len(line) > 0 {
			key, value, end := questionPart(line)
			if key != "" && start >= 0 {
				r.end(QuestionLine, start, offset)
				start = -1
			}
			if key == "ask" || key == "text" || key == "because" {
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
		r.end(QuestionLine, start, offset)
	}
}

// The keys of a question and its answers, what stands before one on its line,
// and how one looks behind another.
var (
	questionKeys = [...]string{"ask", "text", "because", "right", "answers"}
	keysBehind   = [...]string{", text: ", "{text: ", ", because: ", "{because: ", ", right: ", "{right: ", ", answers: "}
)

const beforeKey = " \t-{[,"

// questionPart finds the first key of a line in the body of a question, and
// where its value begins and ends; a line that goes on with the value before it
// has no key.
func questionPart(line []byte) (key string, value, end int) {
	value = len(line) - len(bytes.TrimLeft(line, beforeKey))
	for _, word := range questionKeys {
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
		for _, next := range keysBehind {
			if i := bytes.Index(line[value:end], []byte(next)); i >= 0 {
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
