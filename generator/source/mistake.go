package source

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// mistake is a usual slip in writing YAML: how the library's message about it
// is known, and what to tell whoever made it.
type mistake struct {
	message string // a part of the library's message
	context string // a part of what it was doing, empty for any
	opening bool   // the place to show is where the construct opened
	text    string
	do      string
}

// mistakes is searched in order. The library's wording may change with its
// version; a test goes through all of these, and an unknown message is still
// reported, in the library's own words.
var mistakes = []mistake{
	{"mapping values are not allowed", "", false, "there is a second colon in this line, or the line does not start where its neighbours do",
		"Put a value that has a colon in it in double quotes, and start keys of one kind in the same column."},
	{"mapping keys are not allowed", "", false, "a value cannot start with a question mark and a space",
		"Put the whole value in double quotes."},
	{"found a tab character", "", false, "this line is indented with a tab",
		"Indent with spaces, two for each step."},
	{"could not find expected ':'", "", true, "this line has no colon after its key",
		"Write `key: value`, with a space after the colon."},
	{"did not find expected ',' or ']'", "", true, "the list that opens here with [ is not closed",
		"Close it with ], and put a comma between its items."},
	{"did not find expected ',' or '}'", "", true, "the keys that open here with { are not closed",
		"Close them with }, and put a comma between them."},
	{"", "quoted scalar", true, "the quotation that opens here is not closed, or has a backslash in it that means nothing",
		"Close it with the same quotation mark; write a backslash inside double quotes twice."},
	{"did not find expected key", "", false, "this does not fit what stands before it",
		"Start the key in the same column as its neighbours, and put a value with quotation marks in it in double quotes altogether."},
	{"did not find expected '-'", "", false, "this does not fit the list before it",
		"Start each item of the list with a hyphen, all in the same column."},
	{"block sequence entries are not allowed", "", false, "a list cannot start here",
		"Put the list on the lines below its key, each item after a hyphen and a space."},
	{"unknown anchor", "", false, "a value cannot start with an asterisk",
		"Put the whole value in double quotes."},
	{"did not find expected alphabetic or numeric character", "", false, "a value cannot start with * or &",
		"Put the whole value in double quotes."},
	{"exceeded max depth", "", false, "lists and keys are nested too deep",
		"Write it flatter; no file of a handbook needs more than a few steps."},
	{"", "block scalar", false, "the sign | or > is followed by something that does not belong there",
		"Start the text on the next line; if the sign is meant, put the value in double quotes."},
	{"", "directive", false, "a line cannot start with %",
		"Take the line out, or put the value in double quotes."},
	{"found incompatible YAML document", "", false, "a line cannot start with %",
		"Take the line out, or put the value in double quotes."},
}

// syntax reports what the library says about YAML that is not well formed.
func (d *document) syntax(e *yaml.LoadError) {
	at := d.offset(e.Mark.Line, e.Mark.Column)
	if strings.Contains(e.Message, "cannot start any token") {
		d.badStart(at)
		return
	}
	for _, m := range mistakes {
		if strings.Contains(e.Message, m.message) && strings.Contains(e.ContextMsg, m.context) {
			if m.opening && e.ContextMark.Line > 0 {
				at = d.offset(e.ContextMark.Line, e.ContextMark.Column)
			}
			d.report(at, finding.YAMLForm, m.text, m.do)
			return
		}
	}
	d.report(at, finding.YAMLForm, "this is not well-formed YAML: "+e.Message,
		"Compare it with the lines around it; a value with unusual signs goes in double quotes.")
}

// badStart reports a character that YAML keeps for itself at the start of a
// value.
func (d *document) badStart(at int) {
	r, _ := utf8.DecodeRune(d.text[min(at, len(d.text)):])
	if r == '\t' {
		d.report(at, finding.YAMLForm, "this line is indented with a tab", "Indent with spaces, two for each step.")
		return
	}
	d.report(at, finding.YAMLForm, "a value cannot start with "+strconv.QuoteRune(r), "Put the whole value in double quotes.")
}
