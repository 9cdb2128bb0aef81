package markup

import (
	"strings"

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
	quotes   *quotes // curled quotes, dashes, ellipses; nil leaves the signs as typed
	rawXHTML bool    // HTML passes through and empty elements close as in XML, as the specification prints them; nothing is set as pieces
}

// setups are the goldmark set-ups of the program, one for each language whose
// quotation marks differ, the first for all others. Goroutines share them: they
// only read after their first use, and all that belongs to one page travels in
// the page's own parser.Context.
var setups = makeSetups()

type languageSetup struct {
	language string
	markdown goldmark.Markdown
}

func makeSetups() []languageSetup {
	var all []languageSetup
	for i := range quotesOf {
		all = append(all, languageSetup{quotesOf[i].language, newMarkdown(options{quotes: &quotesOf[i]})})
	}
	return all
}

// setupFor returns the set-up for a page's language: "de-AT" is set as "de".
func setupFor(language string) goldmark.Markdown {
	primary, _, _ := strings.Cut(strings.ToLower(language), "-")
	for _, s := range setups {
		if s.language == primary {
			return s.markdown
		}
	}
	return setups[0].markdown
}

// pageKey finds the page being read in its parser.Context.
var pageKey = parser.NewContextKey()

// pageOf returns the page being read, nil when goldmark runs without one.
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
		goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(ownRenderer{}, 100))),
	}
	if o.quotes != nil {
		set = append(set, goldmark.WithExtensions(o.quotes.typographer()))
	}
	if o.rawXHTML {
		set = append(set, goldmark.WithRendererOptions(html.WithUnsafe(), html.WithXHTML()))
	} else {
		set = append(set, goldmark.WithRendererOptions(renderer.WithNodeRenderers(util.Prioritized(pieceRenderer{}, 100))))
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

// quotes are the quotation marks of a language.
type quotes struct {
	language                string
	left, right             string // “ ”
	leftSingle, rightSingle string // ‘ ’
}

// quotesOf lists them, as the Unicode CLDR has them; languages that are not here
// are set as the first.
var quotesOf = []quotes{
	{"en", "“", "”", "‘", "’"},
	{"de", "„", "“", "‚", "‘"},
	{"es", "«", "»", "“", "”"},
}

// typographer sets real characters, so that headings and alternative texts
// carry no entities.
func (q *quotes) typographer() goldmark.Extender {
	return extension.NewTypographer(extension.WithTypographicSubstitutions(extension.TypographicSubstitutions{
		extension.LeftSingleQuote:  []byte(q.leftSingle),
		extension.RightSingleQuote: []byte(q.rightSingle),
		extension.LeftDoubleQuote:  []byte(q.left),
		extension.RightDoubleQuote: []byte(q.right),
		extension.EnDash:           []byte("–"),
		extension.EmDash:           []byte("—"),
		extension.Ellipsis:         []byte("…"),
		extension.LeftAngleQuote:   nil,
		extension.RightAngleQuote:  nil,
		extension.Apostrophe:       []byte("’"),
	}))
}
