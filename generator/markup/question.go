package markup

import (
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// questionHelp shows what a question looks like.
const questionHelp = "A question has “ask:” and “answers:”, each answer “text:”, “because:” and, where it is right, “right: true”."

// question reads a self-check question.
func (p *page) question(b *Block, in *body) bool {
	if !p.noWords(b, "Write them after “ask:” in the body.") {
		return false
	}
	if !in.read("the question") {
		return false
	}
	if in.root.Absent() {
		p.find(b.Offset, finding.BlockBody, "a question without a body", questionHelp)
		return false
	}
	f := in.root.Fields("ask", "answers")
	q := &Question{Ask: f.Need("ask", "ask: Why does slip flake off bisque?").Text()}
	q.Answers = in.answers(f.Need("answers", "answers: [{text: …, because: …, right: true}, {text: …, because: …}]"))
	b.Ask = q
	return in.sound()
}

// answers reads the list of answers: two or more, at least one of them right.
func (b *body) answers(v source.Value) []Choice {
	var all []Choice
	right, before := false, b.p.text.Reported()
	items := v.List()
	for _, item := range items {
		c := readAnswer(item)
		right = right || c.Right
		all = append(all, c)
	}
	switch {
	case b.p.text.Reported() > before || v.Absent():
	case len(all) < 2:
		v.Report(finding.BlockBody, "a question with fewer than two answers", "Add an answer that is often given and wrong, with the reason why it is.")
	case !right:
		v.Report(finding.BlockBody, "no answer of this question is right", "Write “right: true” under the one that is.")
	}
	return all
}

// readAnswer reads one answer.
func readAnswer(v source.Value) Choice {
	f := v.Fields("text", "because", "right")
	return Choice{
		Text:    f.Need("text", "text: It has shrunk already.").Text(),
		Because: f.Need("because", "because: Slip shrinks as it dries, and bisque does not.").Text(),
		Right:   f.Get("right").Choice("true", "false") == "true",
	}
}
