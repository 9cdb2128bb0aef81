package markup

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"slipbook/generator/finding"
)

// headingParser is one of goldmark's parsers of headings; it takes the id
// written behind a heading, {#like-this}, off its words. goldmark's own way of
// doing so would let any attribute into the page, and stops at some.
type headingParser struct{ parser.BlockParser }

// writtenID is the id at a heading's end.
var writtenID = regexp.MustCompile(`(^|[ \t])\{#([^{}]*)\}$`)

// Attributes that carry a written id from the parser to checkHeadings.
const (
	idAttribute   = "id"
	idAtAttribute = "id-at" // its offset; never printed, since goldmark prints only what HTML knows
)

// Close takes the id off a finished heading.
func (h headingParser) Close(node ast.Node, reader text.Reader, pc parser.Context) {
	h.BlockParser.Close(node, reader, pc)
	lines := node.Lines()
	if node.Parent() == nil || lines.Len() == 0 {
		return
	}
	last := lines.At(lines.Len() - 1)
	last = last.TrimRightSpace(reader.Source())
	if last.Len() > longestHeading {
		if p := pageOf(pc); p != nil {
			p.find(last.Start, finding.TooLong, fmt.Sprintf("this heading is longer than %d bytes", longestHeading), "Say it in a few words.")
		}
		last.Stop = last.Start + longestHeading
		for !utf8.RuneStart(reader.Source()[last.Stop]) {
			last.Stop--
		}
		lines.Set(lines.Len()-1, last)
		return
	}
	m := writtenID.FindSubmatchIndex(last.Value(reader.Source()))
	if m == nil {
		return
	}
	start := last.Start - last.Padding
	node.SetAttributeString(idAttribute, string(reader.Value(text.NewSegment(start+m[4], start+m[5]))))
	node.SetAttributeString(idAtAttribute, start+m[4])
	last.Stop = start + m[0]
	lines.Set(lines.Len()-1, last)
}

// checkHeadings sets each heading's id and notes it in the document.
func (p *page) checkHeadings() {
	ids := ids{used: make(map[string]bool), next: make(map[string]int)}
	for _, h := range p.headings {
		p.takeWrittenID(h, ids)
	}
	p.doc.ids = ids.used
	level := 1
	for _, h := range p.headings {
		words := plain(h, p.Source)
		if words == "" && !holdsPicture(h) {
			p.find(position(h), finding.HeadingWords, "a heading without words", "Write the heading, or take the # signs out.")
		}
		switch {
		case h.Level == 1:
			p.find(position(h), finding.HeadingLevel, "a heading of the first level inside a page",
				"Begin it with ##; the page's title stands in its opening block.")
		case h.Level > level+1:
			p.find(position(h), finding.HeadingLevel, fmt.Sprintf("this heading is of level %d, the one before it of level %d", h.Level, level),
				fmt.Sprintf("Begin it with %s.", strings.Repeat("#", level+1)))
		}
		level = h.Level
		id, ok := h.AttributeString(idAttribute)
		if !ok {
			id = ids.free(idFor(words))
			h.SetAttributeString(idAttribute, id)
		}
		heading := &Heading{Level: h.Level, ID: id.(string), Text: words, Offset: position(h), Inner: inner(h)}
		p.doc.Headings, p.heads[h] = append(p.doc.Headings, heading), heading
	}
}

// takeWrittenID checks an id written behind a heading and takes away one that
// cannot be used.
func (p *page) takeWrittenID(h *ast.Heading, ids ids) {
	value, ok := h.AttributeString(idAttribute)
	if !ok {
		return
	}
	at, _ := h.AttributeString(idAtAttribute)
	id := value.(string)
	switch {
	case idFor(id) != strings.ToLower(id):
		p.find(at.(int), finding.HeadingID, fmt.Sprintf("%q cannot be the id of a heading", id),
			"Use letters, digits and hyphens: {#"+idFor(id)+"}.")
	case isStepID(id):
		p.find(at.(int), finding.HeadingID, fmt.Sprintf("%q is the id of a step", id), "Give the heading another id; steps are numbered by themselves.")
	case ids.used[id]:
		p.find(at.(int), finding.HeadingID, fmt.Sprintf("the id %q stands at two headings of this page", id), "Give one of them another id.")
	default:
		ids.used[id] = true
		h.RemoveAttributes()
		h.SetAttributeString(idAttribute, id)
		return
	}
	h.RemoveAttributes()
}

// idFor makes an id from words: letters of any script and digits in small
// letters, one hyphen for anything between. Words without either give "part".
// Ids so made never hold the signs . : and _, so a theme may use those in ids of
// its own.
func idFor(words string) string {
	var b strings.Builder
	gap := false
	for _, r := range strings.ToLower(words) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r):
			if gap && b.Len() > 0 {
				b.WriteByte('-')
			}
			gap = false
			b.WriteRune(r)
		case r == '’' || r == '\'':
			// "don't" is one word
		default:
			gap = true
		}
	}
	if b.Len() == 0 {
		return "part"
	}
	return b.String()
}

// ids are the heading ids of one page.
type ids struct {
	used map[string]bool
	next map[string]int // the next number for an id that is taken
}

// free returns id, or id with the first number from 2 that nobody uses yet, and
// marks it as used.
func (i ids) free(id string) string {
	name := id
	for n := max(2, i.next[id]); i.used[name] || isStepID(name); n++ {
		name = id + "-" + strconv.Itoa(n)
		i.next[id] = n + 1
	}
	i.used[name] = true
	return name
}

// holdsPicture reports whether a heading says in a picture what it has no words
// for; the picture's own words are checked with the picture.
func holdsPicture(h *ast.Heading) bool {
	for c := h.FirstChild(); c != nil; c = c.NextSibling() {
		if c.Kind() == ast.KindImage {
			return true
		}
	}
	return false
}

// HasHeading reports whether the page has a heading with this id.
func (d *Document) HasHeading(id string) bool { return d.ids[id] }

// HeadingHelp returns which headings a link to this page may name, as the sentence
// that stands under a finding.
func (d *Document) HeadingHelp() string {
	const most = 8
	if len(d.Headings) == 0 {
		return "That page has no headings; link to the page itself."
	}
	var ids []string
	for _, h := range d.Headings[:min(most, len(d.Headings))] {
		ids = append(ids, "#"+h.ID)
	}
	if len(d.Headings) > most {
		ids = append(ids, "…")
	}
	return "Its headings are " + strings.Join(ids, ", ") + "."
}
