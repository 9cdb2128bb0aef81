package markup

import (
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"
)

// options are the parts of our goldmark set-up that can be taken out, so that
// the rest can be held against the examples of the CommonMark specification.
type options struct {
	typography bool // curled quotes, dashes, ellipses
	rawXHTML   bool // HTML passes through and empty elements close as in XML, as the specification prints them
	noMarks    bool // the marks of footnotes are left out
}

// handbook is the one goldmark set-up of the program. Goroutines share it: it
// only reads after its first use, and all that belongs to one page travels in
// the page's own parser.Context.
var handbook = newMarkdown(options{typography: true})

// gathered prints what other pages take from a page.
var gathered = newMarkdown(options{typography: true, noMarks: true})

// pageKey finds the page being read in its parser.Context.
var pageKey = parser.NewContextKey()

// pageOf gives the page being read, nil when goldmark runs without one.
func pageOf(pc parser.Context) *page {
	p, _ := pc.Get(pageKey).(*page)
	return p
}

// newMarkdown makes a set-up. Priorities run from low to high; goldmark's own
// stand in its documentation, ours beside each part.
func newMarkdown(o options) goldmark.Markdown {
	set := []goldmark.Option{
		goldmark.WithParser(newParser()),
		goldmark.WithExtensions(
			extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone)),
			extension.DefinitionList,
			extension.NewFootnote(),
		),
		goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(ownRenderer{withMarks: !o.noMarks}, 100))),
	}
	if o.typography {
		set = append(set, goldmark.WithExtensions(typographer()))
	}
	if o.rawXHTML {
		set = append(set, goldmark.WithRendererOptions(html.WithUnsafe(), html.WithXHTML()))
	}
	return goldmark.New(set...)
}

// newParser makes goldmark's own parser with our limits and blocks in it.
func newParser() parser.Parser {
	blocks := []util.PrioritizedValue{
		util.Prioritized(headingParser{parser.NewSetextHeadingParser()}, 100),
		util.Prioritized(parser.NewThematicBreakParser(), 200),
		util.Prioritized(parser.NewListParser(), 300),
		util.Prioritized(parser.NewListItemParser(), 400),
		util.Prioritized(parser.NewCodeBlockParser(), 500),
		util.Prioritized(headingParser{parser.NewATXHeadingParser()}, 600),
		util.Prioritized(containerParser{}, 650), // before the fence it looks like
		util.Prioritized(fenceParser{parser.NewFencedCodeBlockParser()}, 700),
		util.Prioritized(parser.NewBlockquoteParser(), 800),
		util.Prioritized(parser.NewHTMLBlockParser(), 900),
		util.Prioritized(parser.NewParagraphParser(), 1000),
	}
	return parser.NewParser(
		parser.WithBlockParsers(blocks...),
		parser.WithInlineParsers(parser.DefaultInlineParsers()...),
		parser.WithParagraphTransformers(parser.DefaultParagraphTransformers()...),
		parser.WithParagraphTransformers(util.Prioritized(paragraphLimit{}, 50)), // before anything reads the paragraph
		parser.WithASTTransformers(util.Prioritized(unusedNotes{}, 500)),         // before footnotes drops them at 999
	)
}

// typographer sets real characters, so that headings and alternative texts
// carry no entities.
func typographer() goldmark.Extender {
	return extension.NewTypographer(extension.WithTypographicSubstitutions(extension.TypographicSubstitutions{
		extension.LeftSingleQuote:  []byte("‘"),
		extension.RightSingleQuote: []byte("’"),
		extension.LeftDoubleQuote:  []byte("“"),
		extension.RightDoubleQuote: []byte("”"),
		extension.EnDash:           []byte("–"),
		extension.EmDash:           []byte("—"),
		extension.Ellipsis:         []byte("…"),
		extension.LeftAngleQuote:   nil,
		extension.RightAngleQuote:  nil,
		extension.Apostrophe:       []byte("’"),
	}))
}
