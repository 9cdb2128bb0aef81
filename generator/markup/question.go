package markup

import (
	"fmt"

	"github.com/yuin/goldmark/ast"
	"go.yaml.in/yaml/v4"
)

// questionHelp shows what a question looks like.
const questionHelp = "A question has “ask:” and “answers:”, each answer “text:”, “because:” and, where it is right, “right: true”."

// question reads a self-check question.
func (p *page) question(b *Block, n *ast.FencedCodeBlock) (*Question, bool) {
	if !p.noWords(b, "Write them after “ask:” in the body.") {
		return nil, false
	}
	in, ok := p.readBody(n)
	if !ok {
		return nil, false
	}
	if in.root == nil {
		in.find(b.Offset, "a question without a body", questionHelp)
		return nil, false
	}
	q := new(Question)
	var answers *yaml.Node
	in.mapping(in.root, "a question", func(key, value *yaml.Node) {
		switch key.Value {
		case "ask":
			q.Ask, _ = in.text(key, value)
		case "answers":
			answers = value
			q.Answers = in.answers(key, value)
		default:
			in.find(in.at(key), fmt.Sprintf("a question has no %q", key.Value), questionHelp)
		}
	})
	if q.Ask == "" && !in.fault {
		in.find(in.at(in.root), "a question that asks nothing", "Write “ask:” and the question after it.")
	}
	if answers == nil && !in.fault {
		in.find(in.at(in.root), "a question without answers", questionHelp)
	}
	return q, !in.fault
}

// answers reads the list of answers: two or more, at least one of them right.
func (b *body) answers(key, list *yaml.Node) []Choice {
	if list.Kind != yaml.SequenceNode {
		b.find(b.at(list), "“answers” is a list", "Begin each answer with “- text:” on a line of its own.")
		return nil
	}
	var all []Choice
	right, before := false, b.fault
	for _, n := range list.Content {
		c := b.answer(n)
		right = right || c.Right
		all = append(all, c)
	}
	switch {
	case len(all) < 2:
		b.find(b.at(key), "a question with fewer than two answers", "Add an answer that is often given and wrong, with the reason why it is.")
	case !right && b.fault == before:
		b.find(b.at(key), "no answer of this question is right", "Write “right: true” under the one that is.")
	}
	return all
}

// answer reads one answer.
func (b *body) answer(n *yaml.Node) Choice {
	var c Choice
	before := b.fault
	b.fault = false
	b.mapping(n, "an answer, “text:” and “because:”", func(key, value *yaml.Node) {
		switch key.Value {
		case "text":
			c.Text, _ = b.text(key, value)
		case "because":
			c.Because, _ = b.text(key, value)
		case "right":
			c.Right = b.truth(value)
		default:
			b.find(b.at(key), fmt.Sprintf("an answer has no %q", key.Value), questionHelp)
		}
	})
	switch {
	case b.fault:
	case c.Text == "":
		b.find(b.at(n), "an answer without its text", "Write “text:” and the answer after it.")
	case c.Because == "":
		b.find(b.at(n), "an answer without its reason", "Write “because:” and why it is right or wrong.")
	}
	b.fault = b.fault || before
	return c
}

// truth reads true or false.
func (b *body) truth(n *yaml.Node) bool {
	if n.Kind != yaml.ScalarNode || n.Value != "true" && n.Value != "false" {
		b.find(b.at(n), "“right” is true or false", "Write “right: true” under a right answer; leave the line out under a wrong one.")
		return false
	}
	return n.Value == "true"
}
