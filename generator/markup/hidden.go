package markup

import (
	"fmt"
	"regexp"
	"slices"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

var reference = regexp.MustCompile(`&(?:#[xX][0-9A-Fa-f]{1,6}|#[0-9]{1,7}|[A-Za-z][A-Za-z0-9]{1,31});`)

// checkReferences reports references such as &#x202E; and &zwj; for characters
// that cannot be seen. In code a reference is nothing but itself.
func (p *page) checkReferences(tree ast.Node) {
	found := reference.FindAllIndex(p.Source, -1)
	if found == nil {
		return
	}
	code := codeIn(tree)
	for _, at := range found {
		if p.text.Full() {
			return
		}
		for len(code) > 0 && code[0].Stop <= at[0] {
			code = code[1:]
		}
		if len(code) > 0 && code[0].Start <= at[0] || isEscaped(p.Source, at[0]) {
			continue
		}
		written := p.Source[at[0]:at[1]]
		for _, r := range string(util.ResolveEntityNames(util.ResolveNumericReferences(written))) {
			if _, do := source.Hidden(p.text.Language, r); do != "" {
				p.find(at[0], finding.HiddenCharacter, fmt.Sprintf("%s stands for a character, %U, that cannot be seen or turns words round", written, r), do)
				break
			}
		}
	}
}

// codeIn returns the places of inline code and of the lines of code blocks, in
// the order of the file.
func codeIn(tree ast.Node) []text.Segment {
	var code []text.Segment
	_ = ast.Walk(tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.CodeSpan:
			for c := n.FirstChild(); c != nil; c = c.NextSibling() {
				if t, ok := c.(*ast.Text); ok {
					code = append(code, t.Segment)
				}
			}
			return ast.WalkSkipChildren, nil
		case *ast.CodeBlock, *ast.FencedCodeBlock:
			code = append(code, n.Lines().Sliced(0, n.Lines().Len())...)
		}
		return ast.WalkContinue, nil
	})
	slices.SortFunc(code, func(a, b text.Segment) int { return a.Start - b.Start })
	return code
}
