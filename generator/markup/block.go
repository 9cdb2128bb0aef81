package markup

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// The handbook's own blocks, by the word after their opening fence.
const (
	CautionBlock    = "caution"
	AskedBlock      = "asked"
	TeachingBlock   = "teaching"
	CalculatorBlock = "calculator"
	QuestionBlock   = "question"
	StagesBlock     = "stages"
	RecipeBlock     = "recipe"
	LimitsBlock     = "limits"
)

// blockKind declares one of the handbook's own blocks. Its body is YAML if there
// is something to read it with, else Markdown.
type blockKind struct {
	name  string
	named string                          // in a sentence: "a caution"
	read  func(*page, *Block, *body) bool // reads the YAML; false: it cannot be used, which is reported

	warns    bool // it is a caution: the rules want it right before what it guards
	guarded  bool // a caution before it may guard it
	teaching bool // only the instructor reads it

	prose []string // of YAML: the keys of its body whose texts people read; the rules of wording read them
	other []string // of YAML: the other keys, where a text before them ends
	alone []string // of YAML: those of both that stand only at the begin of a line, since a text may hold such a word and a colon

	wants string // of Markdown: what to write where the words after the name are missing; empty = none are wanted
	bare  string // of Markdown: what to do with words where there should be none; empty = they may stand
	body  string // of Markdown: what to write into an empty body
}

// blockKinds lists the blocks. How each is printed is the press's.
var blockKinds = []blockKind{
	{name: CautionBlock, named: "a caution", warns: true, body: "Write between its fences what to take care of, and why."},
	{name: AskedBlock, named: "what students ask", guarded: true, body: "Write the answer between its fences.",
		wants: "Write the question on the same line: asked Can I glaze over pencil?"},
	{name: TeachingBlock, named: "a note for teaching", teaching: true, body: "Write between its fences what the instructor prepares and shows.",
		bare: "Write them in the body."},
	{name: CalculatorBlock, named: "a calculator", read: (*page).calculator, guarded: true},
	{name: QuestionBlock, named: "a question", read: (*page).question,
		prose: []string{"ask", "text", "because"}, other: []string{"right", "answers"}, alone: []string{"ask"}},
	{name: RecipeBlock, named: "a recipe", read: (*page).recipe, guarded: true},
	{name: LimitsBlock, named: "limits", read: (*page).limits, guarded: true},
	{name: StagesBlock, named: "a part of the chart", read: (*page).stages, guarded: true},
}

// Kinds lists the names of the handbook's own blocks.
func Kinds() []string {
	var names []string
	for _, k := range blockKinds {
		names = append(names, k.name)
	}
	return names
}

// kindOf returns the kind of block with a name, nil where there is none.
func kindOf(name string) *blockKind {
	for i := range blockKinds {
		if blockKinds[i].name == name {
			return &blockKinds[i]
		}
	}
	return nil
}

// kindOf returns the kind of a fence; nil for a sample.
func (p *page) kindOf(n *ast.FencedCodeBlock) *blockKind { return kindOf(string(n.Language(p.Source))) }

// makeSamples colours the code samples and prints all fences that are not one
// of the handbook's blocks.
func (p *page) makeSamples() {
	for _, n := range p.indented {
		replace(n, Piece{HTML: sampleHTML("", lines(n, p.Source))})
	}
	for _, n := range p.fences {
		kind := string(n.Language(p.Source))
		if kindOf(kind) != nil {
			continue
		}
		if !p.closed[n] {
			p.neverClosed(n, "this fence")
		}
		switch {
		case kind != "" && !slices.Contains(languages, kind):
			known := slices.Concat(Kinds(), languages)
			p.doc.Partial = true
			p.find(n.Info.Segment.Start, finding.FenceKind, fmt.Sprintf("%q is neither a block of the handbook nor a known language", kind),
				source.Meant(kind, known)+"Known are "+strings.Join(known, ", ")+"; plain text needs no word.")
			kind = ""
		case strings.TrimSpace(string(infoOf(n, p.Source))) != kind:
			p.find(n.Info.Segment.Start+len(kind)+1, finding.BlockWords, fmt.Sprintf("words after the language %q", kind), "Take them out; a sample has no heading.")
		}
		replace(n, Piece{HTML: sampleHTML(kind, lines(n, p.Source))})
	}
}

// makeBlocks reads the blocks with a body of YAML.
func (p *page) makeBlocks() {
	for _, n := range p.fences {
		kind := p.kindOf(n)
		if kind == nil {
			continue
		}
		b := &Block{
			Kind:   kind.name,
			Words:  strings.TrimSpace(strings.TrimPrefix(string(infoOf(n, p.Source)), kind.name)),
			Offset: n.Info.Segment.Start,
		}
		if around := within(n); around != nil {
			p.find(b.Offset, finding.BlockPlace, fmt.Sprintf("%s inside %s", kind.named, kindOf(around.kind).named), "Put it after the other block.")
			p.leaveOut(n)
			continue
		}
		if !p.ends(n, kind) || !kind.read(p, b, &body{p: p, node: n, kind: kind}) {
			p.leaveOut(n)
			continue
		}
		p.put(n, b)
	}
}

// ends reports whether a block of YAML ends where it should, and says so where it
// does not. One whose closing fence was forgotten goes on to that of the next block,
// and would be said to be wrong there.
func (p *page) ends(n *ast.FencedCodeBlock, kind *blockKind) bool {
	sign := p.Source[position(n)]
	fence := bytes.Repeat([]byte{sign}, 3)
	for i := range n.Lines().Len() {
		line := n.Lines().At(i)
		if bytes.HasPrefix(line.Value(p.Source), fence) {
			next, _ := p.text.Place(line.Start)
			p.find(position(n), finding.FenceEnd, fmt.Sprintf("%s is not closed before another fence, in line %d", kind.named, next),
				"Write a line of at least as many of the same signs under it, before that one.")
			return false
		}
	}
	if !p.closed[n] {
		p.neverClosed(n, kind.named)
	}
	return p.closed[n]
}

// leaveOut takes a block that could not be read from the page.
func (p *page) leaveOut(n ast.Node) {
	p.doc.Partial = true
	remove(n)
}

// neverClosed reports a fence that nothing closes.
func (p *page) neverClosed(n ast.Node, called string) {
	p.doc.Partial = true
	p.find(position(n), finding.FenceEnd, called+" is never closed",
		"Write a line of at least as many of the same signs under it; around other fences use more signs than they do.")
}

// within returns the container that a node stands in; nil where it stands in
// none.
func within(n ast.Node) *container {
	for n = n.Parent(); n != nil; n = n.Parent() {
		if c, ok := n.(*container); ok {
			return c
		}
	}
	return nil
}

// makeContainers sets the blocks of Markdown, in whose bodies all is made by
// now.
func (p *page) makeContainers() {
	for _, n := range p.containers {
		p.checkContainer(n)
	}
	for _, n := range p.containers {
		if n.Parent() == nil {
			continue
		}
		body := ast.NewDocument()
		for c := n.FirstChild(); c != nil; c = n.FirstChild() {
			body.AppendChild(body, c)
		}
		b := &Block{Kind: n.kind, Words: n.words, Offset: n.infoAt, Pieces: p.set(body)}
		p.bodies = append(p.bodies, b)
		p.put(n, b)
	}
}

// checkContainer reports what is wrong with a block of Markdown as a whole.
func (p *page) checkContainer(n *container) {
	kind := kindOf(n.kind)
	if !n.isClosed {
		p.neverClosed(n, kind.named)
	}
	switch around := within(n); {
	case around != nil:
		p.find(n.infoAt, finding.BlockPlace, fmt.Sprintf("%s inside %s", kind.named, kindOf(around.kind).named), "Put it after the other one.")
		p.leaveOut(n)
		return
	case kind.wants != "" && n.words == "":
		p.find(n.infoAt, finding.BlockWords, fmt.Sprintf("%s without a question", kind.named), kind.wants)
	case kind.bare != "" && n.words != "":
		p.find(n.infoAt+len(n.kind)+1, finding.BlockWords, "words after “"+n.kind+"”", kind.bare)
	}
	if n.FirstChild() == nil {
		p.find(n.infoAt, finding.BlockBody, fmt.Sprintf("%s without words", kind.named), kind.body)
	}
}

// put puts a block in its place and numbers it.
func (p *page) put(n ast.Node, b *Block) {
	p.numbers[b.Kind]++
	b.Number = p.numbers[b.Kind]
	p.doc.Blocks = append(p.doc.Blocks, b)
	replace(n, Piece{Block: b})
}

// noWords reports words after the name of a block that takes none.
func (p *page) noWords(b *Block, do string) bool {
	if b.Words == "" {
		return true
	}
	p.find(b.Offset+len(b.Kind)+1, finding.BlockWords, fmt.Sprintf("words after “%s”", b.Kind), do)
	return false
}

// infoOf returns a fence's info string.
func infoOf(n *ast.FencedCodeBlock, source []byte) []byte {
	if n.Info == nil {
		return nil
	}
	return n.Info.Segment.Value(source)
}

// lines returns the body of a code block.
func lines(n ast.Node, source []byte) []byte {
	var b bytes.Buffer
	for i := range n.Lines().Len() {
		line := n.Lines().At(i)
		b.Write(line.Value(source))
	}
	return b.Bytes()
}
