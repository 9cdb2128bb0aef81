package markup

import (
	"fmt"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// page is one page while it is read.
type page struct {
	Source []byte
	setup  goldmark.Markdown
	doc    *Document
	text   *source.Text // what is wrong with it

	closed    map[ast.Node]bool // fences with their closing fence
	unused    []*xast.Footnote  // footnotes nobody refers to
	explained int               // brackets before this offset belong to something already found
	numbers   map[string]int    // own blocks so far, by kind

	refs   map[ast.Node]*Ref     // of links
	heads  map[ast.Node]*Heading // of headings
	lists  map[ast.Node]*StepList
	steps  map[ast.Node]*Step // of items of lists
	runs   map[ast.Node]*Span // of list items, terms and definitions that other pages may want
	bodies []*Block           // blocks with pieces, in the order in which they were set
	room   *room
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

// Read reads a page: its source, in which the opening block is blank so that
// offsets are those of the file, and its language, an IETF tag. What is wrong
// with the page by itself stands in the document, which is never nil; where a
// part is wrong its pieces leave that part out. What a reader reads comes beside
// it, nil where the page could not be read. Read may be called from many
// goroutines.
func Read(bytes []byte, language string) (*Document, *Prose) {
	p := &page{
		Source:  bytes,
		setup:   setupFor(language),
		doc:     &Document{},
		text:    &source.Text{Bytes: bytes, Language: language},
		closed:  make(map[ast.Node]bool),
		numbers: make(map[string]int),
		refs:    make(map[ast.Node]*Ref),
		heads:   make(map[ast.Node]*Heading),
		lists:   make(map[ast.Node]*StepList),
		steps:   make(map[ast.Node]*Step),
		runs:    make(map[ast.Node]*Span),
	}
	prose := (*Prose)(nil)
	if p.mayBeRead() {
		p.room = rooms.Get().(*room)
		p.room.printed, p.room.ends = p.room.printed[:0], p.room.ends[:0]
		prose = p.readAll()
		rooms.Put(p.room)
	}
	p.doc.Found = p.text.Found
	return p.doc, prose
}

// mayBeRead reports whether reading the page takes bounded time and memory; what
// is wrong with one that may not is reported.
func (p *page) mayBeRead() bool {
	if at, deep := tooDeep(p.Source); deep {
		p.foundTooDeep(at)
		return false
	}
	if at, many := tooManyNotes(p.Source); many {
		p.find(at, finding.TooLong, fmt.Sprintf("more than %d footnotes and marks of footnotes", mostNotes), "Divide the page, or write what the notes say where it belongs.")
		return false
	}
	return true
}

// readAll reads the page, step by step.
func (p *page) readAll() *Prose {
	tree := p.tree()
	p.walk(tree)
	p.checkReferences(tree)
	prose := p.prose(tree)
	p.noteSteps(tree)
	p.checkHeadings()
	p.checkLinks()
	p.makeBacks()
	p.makePictures()
	p.makeSamples()
	p.makeBlocks()
	p.noteSections()
	p.makeContainers()
	p.checkDefinitions()
	p.doc.Pieces = p.set(tree)
	p.finish()
	p.doc.made = madeOf(p.doc.Refs)
	return prose
}

// tree lets goldmark read the page.
func (p *page) tree() ast.Node {
	pc := parser.NewContext()
	pc.Set(pageKey, p)
	return p.setup.Parser().Parse(text.NewReader(p.Source), parser.WithContext(pc))
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
