package markup

import (
	"bytes"
	"fmt"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// page is one page while it is read.
type page struct {
	*course.Page
	around Surroundings
	doc    *Document
	text   *source.Text // what is wrong with it

	closed    map[ast.Node]bool // fences with their closing fence
	unused    []*xast.Footnote  // footnotes nobody refers to
	explained int               // brackets before this offset belong to something already found
	numbers   map[string]int    // own blocks so far, by kind

	found
}

// found is what one walk through the tree gathers for the steps after it,
// since a tree must not change under the walk.
type found struct {
	headings    []*ast.Heading
	links       []ast.Node // *ast.Link, *ast.AutoLink and *xast.FootnoteLink
	backs       []*xast.FootnoteBacklink
	pictures    []*ast.Image
	fences      []*ast.FencedCodeBlock
	indented    []*ast.CodeBlock
	containers  []*container
	definitions []*ast.LinkReferenceDefinition
}

// Parse reads a page and gives what later stages need of it, with everything
// that is wrong in it, in the order of the checks, source.MostFindings at most
// and one that says when there are more. The document is never nil; where a part
// is wrong its HTML leaves that part out. Parse may be called from many
// goroutines.
func Parse(p *course.Page, s Surroundings) (*Document, finding.List) {
	r := &page{
		Page:    p,
		text:    source.New(p.File, p.Source),
		around:  s,
		doc:     &Document{Page: p},
		closed:  make(map[ast.Node]bool),
		numbers: make(map[string]int),
	}
	if at, deep := tooDeep(p.Source); deep {
		r.foundTooDeep(at)
		return r.doc, r.text.Found
	}
	if at, many := tooManyNotes(p.Source); many {
		r.find(at, finding.TooLong, fmt.Sprintf("more than %d footnotes and marks of footnotes", mostNotes), "Divide the page, or write what the notes say where it belongs.")
		return r.doc, r.text.Found
	}
	tree := r.tree()
	r.walk(tree)
	r.checkReferences(tree)
	r.doc.Prose = r.prose(tree)
	r.checkHeadings()
	r.checkDefinitions()
	r.checkLinks()
	r.makeBacks()
	r.makePictures()
	r.makeSamples()
	r.makeBlocks()
	r.makeContainers()
	r.gatherSections()
	r.doc.HTML = bind(r.html(tree))
	return r.doc, r.text.Found
}

// tree lets goldmark read the page. The opening block is blank in the source,
// so offsets in the tree are offsets in the file.
func (p *page) tree() ast.Node {
	pc := parser.NewContext()
	pc.Set(pageKey, p)
	return handbook.Parser().Parse(text.NewReader(p.Source), parser.WithContext(pc))
}

// html prints a tree.
func (p *page) html(tree ast.Node) []byte { return p.printed(handbook, tree) }

// printed prints a tree in one of our set-ups.
func (p *page) printed(setup goldmark.Markdown, tree ast.Node) []byte {
	var b bytes.Buffer
	if err := setup.Renderer().Render(&b, p.Source, tree); err != nil {
		panic(fmt.Sprintf("markup: printing %s into memory failed: %v", p.File, err)) // no renderer here gives an error
	}
	return b.Bytes()
}

// find notes something wrong at an offset of the source.
func (p *page) find(offset int, rule *finding.Rule, text, do string) {
	p.text.Report(offset, rule, text, do)
}

// walk gathers what the later steps work on, and reports what is wrong by being
// there at all.
func (p *page) walk(tree ast.Node) {
	depth, deep := 0, false
	_ = ast.Walk(tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		switch n.Kind() {
		case ast.KindBlockquote, ast.KindListItem, xast.KindDefinitionDescription:
			if !entering {
				depth--
				break
			}
			if depth++; depth > deepest && !deep {
				deep = true
				p.foundTooDeep(position(n))
			}
		}
		if !entering {
			return ast.WalkContinue, nil
		}
		return p.gather(n), nil
	})
}

// gather sorts one node.
func (p *page) gather(n ast.Node) ast.WalkStatus {
	switch n := n.(type) {
	case *ast.Heading:
		p.headings = append(p.headings, n)
	case *ast.Link, *ast.AutoLink, *xast.FootnoteLink:
		p.links = append(p.links, n)
	case *xast.FootnoteBacklink:
		p.backs = append(p.backs, n)
	case *ast.Image:
		if len(p.pictures) == mostPictures {
			p.find(position(n), finding.TooLong, fmt.Sprintf("more than %d pictures on this page", mostPictures), "Divide the page.")
			return ast.WalkSkipChildren
		}
		p.pictures = append(p.pictures, n)
	case *ast.FencedCodeBlock:
		p.fences = append(p.fences, n)
	case *ast.CodeBlock:
		p.indented = append(p.indented, n)
	case *container:
		p.containers = append(p.containers, n)
	case *ast.LinkReferenceDefinition:
		p.definitions = append(p.definitions, n)
	case *ast.HTMLBlock, *ast.RawHTML:
		p.find(position(n), finding.RawHTML, "HTML in a page", "Write it in Markdown, or put a \\ before the < if you mean the sign itself.")
	case *xast.TableCell:
		alignCell(n)
	case *ast.CodeSpan:
		return ast.WalkSkipChildren
	case *ast.Text:
		p.checkBrackets(n)
	}
	return ast.WalkContinue
}

func (p *page) foundTooDeep(at int) {
	p.find(at, finding.TooDeep, fmt.Sprintf("quotes or lists nested more than %d deep", deepest),
		"Take out the > signs and list markers that are too many.")
}
