package markup

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"

	"slipbook/generator/finding"
)

// The handbook's own blocks, by the word after their opening fence.
const (
	cautionBlock    = "caution"
	askedBlock      = "asked"
	teachingBlock   = "teaching"
	calculatorBlock = "calculator"
	questionBlock   = "question"
	stagesBlock     = "stages"
)

// withYAML are the blocks whose body is YAML.
var withYAML = []string{calculatorBlock, questionBlock, stagesBlock}

// withMarkdown are the blocks whose body is Markdown.
var withMarkdown = []string{cautionBlock, askedBlock, teachingBlock}

// known lists what may stand after an opening fence, for a finding.
func known() string {
	return strings.Join(slices.Concat(withMarkdown, withYAML, languages), ", ")
}

// makeSamples colours the code samples and prints all fences that are not one
// of the handbook's blocks.
func (p *page) makeSamples() {
	for _, n := range p.indented {
		replace(n, sampleHTML("", lines(n, p.Source)))
	}
	for _, n := range p.fences {
		if !p.closed[n] {
			p.find(position(n), finding.FenceEnd, "this fence is never closed",
				"Write a line of at least as many of the same signs under it; around other fences use more signs than they do.")
		}
		kind := string(n.Language(p.Source))
		switch {
		case slices.Contains(withYAML, kind):
			continue
		case kind != "" && !slices.Contains(languages, kind):
			p.find(n.Info.Segment.Start, finding.FenceKind, fmt.Sprintf("%q is neither a block of the handbook nor a known language", kind),
				"Known are "+known()+"; plain text needs no word.")
			kind = ""
		case strings.TrimSpace(string(infoOf(n, p.Source))) != kind:
			p.find(n.Info.Segment.Start+len(kind)+1, finding.BlockWords, fmt.Sprintf("words after the language %q", kind), "Take them out; a sample has no heading.")
		}
		replace(n, sampleHTML(kind, lines(n, p.Source)))
	}
}

// makeBlocks reads the blocks with a body of YAML and lets the theme print them.
func (p *page) makeBlocks() {
	for _, n := range p.fences {
		kind := string(n.Language(p.Source))
		if !slices.Contains(withYAML, kind) {
			continue
		}
		b := Block{
			Kind:   kind,
			Words:  strings.TrimSpace(strings.TrimPrefix(string(infoOf(n, p.Source)), kind)),
			Offset: n.Info.Segment.Start,
		}
		if around := within(n); around != nil {
			p.find(b.Offset, finding.BlockPlace, fmt.Sprintf("%s inside %s", named[kind], named[around.kind]), "Put it after the other block.")
			remove(n)
			continue
		}
		ok := false
		switch kind {
		case calculatorBlock:
			b.Fill, ok = p.calculator(&b, n)
		case questionBlock:
			b.Ask, ok = p.question(&b, n)
		case stagesBlock:
			b.Part, ok = p.stages(&b, n)
		}
		if !ok {
			remove(n)
			continue
		}
		p.print(n, b)
	}
}

// named says what a block is called in a sentence.
var named = map[string]string{
	cautionBlock: "a caution", askedBlock: "what students ask", teachingBlock: "a note for teaching",
	calculatorBlock: "a calculator", questionBlock: "a question", stagesBlock: "a part of the chart",
}

// within gives the container that a node stands in; nil where it stands in
// none.
func within(n ast.Node) *container {
	for n = n.Parent(); n != nil; n = n.Parent() {
		if c, ok := n.(*container); ok {
			return c
		}
	}
	return nil
}

// makeContainers prints the blocks of Markdown, whose bodies are finished by
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
		b := Block{Kind: n.kind, Words: n.words, Offset: n.infoAt, HTML: p.html(body)}
		if b.Apart = b.HTML; holdsMark(body) {
			b.Apart = p.printed(gathered, body)
		}
		p.print(n, b)
	}
}

// What the opening line of a container must say beside its word, and what its
// body is for.
var (
	containerWords = map[string]string{askedBlock: "Write the question on the same line: asked Can I glaze over pencil?"}
	containerBody  = map[string]string{
		cautionBlock:  "Write between its fences what to take care of, and why.",
		askedBlock:    "Write the answer between its fences.",
		teachingBlock: "Write between its fences what the instructor prepares and shows.",
	}
)

// checkContainer reports what is wrong with a block of Markdown as a whole.
func (p *page) checkContainer(n *container) {
	if !n.isClosed {
		p.find(position(n), finding.FenceEnd, fmt.Sprintf("%s is never closed", named[n.kind]),
			"Write a line of at least as many of the same signs under it; around other fences use more signs than they do.")
	}
	around := within(n)
	switch do := containerWords[n.kind]; {
	case around != nil:
		p.find(n.infoAt, finding.BlockPlace, fmt.Sprintf("%s inside %s", named[n.kind], named[around.kind]), "Put it after the other one.")
		remove(n)
		return
	case do != "" && n.words == "":
		p.find(n.infoAt, finding.BlockWords, fmt.Sprintf("%s without a question", named[n.kind]), do)
	case n.kind == teachingBlock && n.words != "":
		p.find(n.infoAt+len(n.kind)+1, finding.BlockWords, "words after “teaching”", "Write them in the body.")
	}
	if n.FirstChild() == nil {
		p.find(n.infoAt, finding.BlockBody, fmt.Sprintf("%s without words", named[n.kind]), containerBody[n.kind])
	}
}

// print asks the theme for a block's HTML and puts it in the block's place.
func (p *page) print(n ast.Node, b Block) {
	p.numbers[b.Kind]++
	b.Number = p.numbers[b.Kind]
	switch b.Kind {
	case cautionBlock:
		p.doc.Cautions++
	case askedBlock:
		p.doc.Asked = append(p.doc.Asked, Asked{b.Words, b.Apart, b.Number})
	case teachingBlock:
		p.doc.Teaching = append(p.doc.Teaching, b.HTML)
	case questionBlock:
		p.doc.Questions++
	case stagesBlock:
		p.doc.Stages = append(p.doc.Stages, *b.Part)
	case calculatorBlock:
		if !slices.Contains(p.doc.Calculators, b.Words) {
			p.doc.Calculators = append(p.doc.Calculators, b.Words)
		}
	}
	html, problems := p.around.Block(p.Page, b)
	for _, f := range problems {
		p.find(f.Offset, f.Rule, f.Text, f.Do)
	}
	made := &madeBlock{html: html}
	if !bytes.Equal(b.Apart, b.HTML) {
		b.HTML = b.Apart
		made.apart = func() []byte {
			html, _ := p.around.Block(p.Page, b) // what is wrong with it is known
			return html
		}
	}
	n.Parent().ReplaceChild(n.Parent(), n, made)
}

// noWords reports words after the name of a block that takes none.
func (p *page) noWords(b *Block, do string) bool {
	if b.Words == "" {
		return true
	}
	p.find(b.Offset+len(b.Kind)+1, finding.BlockWords, fmt.Sprintf("words after “%s”", b.Kind), do)
	return false
}

// infoOf gives a fence's info string.
func infoOf(n *ast.FencedCodeBlock, source []byte) []byte {
	if n.Info == nil {
		return nil
	}
	return n.Info.Segment.Value(source)
}

// lines gives the body of a code block.
func lines(n ast.Node, source []byte) []byte {
	var b bytes.Buffer
	for i := range n.Lines().Len() {
		line := n.Lines().At(i)
		b.Write(line.Value(source))
	}
	return b.Bytes()
}
