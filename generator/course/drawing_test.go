package course

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"slipbook/generator/finding"
)

const (
	svgPen   = `viewBox="0 0 80 100" fill="none" stroke="currentColor" stroke-width="2.5" stroke-linecap="round" stroke-linejoin="round"`
	svgStart = `<svg xmlns="http://www.w3.org/2000/svg" ` + svgPen + `>`
)

// drawn reads a drawing from text.
func drawn(text string) (*Picture, finding.List) {
	p, s := readDrawing(fstest.MapFS{"a.svg": {Data: []byte(text)}}, "a.svg", "en")
	return p, s.Found
}

func TestDrawing(t *testing.T) {
	tests := []struct {
		name, svg, want string
		width, height   int
	}{
		{"empty", svgStart + `</svg>`, `/>`, 80, 100},
		{"everything that is left out", `<?xml version="1.0" encoding="utf-8"?>` + "\n<!-- by hand -->\n" + svgStart + `
  <title>A jar</title>
  <desc>With a <b>line</b></desc>
  <g><!-- nothing --></g>
</svg>
`, `><g/></svg>`, 80, 100},
		{"every shape", svgStart + `<g transform="translate(1 2) rotate( -3 )"><path class="clay" d="M1,2
  l-3e1 4.5z"/><line x1="1" y1="2" x2="3" y2="4"></line><polyline points="1,2 3,4"/><polygon points="1 2 3 4"/><circle cx="1" cy=".5" r="+3."/><ellipse cx="1" cy="2" rx="3" ry="4"/><rect x="1" y="2" width="3" height="4" rx="1" ry="1"/></g></svg>`,
			`><g transform="translate(1 2) rotate( -3 )"><path class="clay" d="M1,2 l-3e1 4.5z"/><line x1="1" y1="2" x2="3" y2="4"/><polyline points="1,2 3,4"/><polygon points="1 2 3 4"/><circle cx="1" cy=".5" r="+3."/><ellipse cx="1" cy="2" rx="3" ry="4"/><rect x="1" y="2" width="3" height="4" rx="1" ry="1"/></g></svg>`, 80, 100},
		{"words", svgStart + `<text class="words fine" x="1" y="2" font-size="22" text-anchor="middle">a &lt; b
  &amp; <tspan dx="1">c</tspan> <![CDATA[<d>]]></text></svg>`,
			`><text class="words fine" x="1" y="2" font-size="22" text-anchor="middle">a &lt; b &amp; <tspan dx="1">c</tspan> &lt;d&gt;</text></svg>`, 80, 100},
		{"a prefix for the name space", `<s:svg xmlns:s="http://www.w3.org/2000/svg" ` + svgPen + `><s:g/></s:svg>`, `><g/></svg>`, 80, 100},
		{"declared as another encoding", `<?xml version="1.0" encoding="latin1"?>` + svgStart + `</svg>`, `/>`, 80, 100},
		{"width and height", strings.Replace(svgStart, ">", ` width="40px" height="50.2">`, 1) + `</svg>`, `/>`, 40, 51},
		{"width in another unit", strings.Replace(svgStart, ">", ` width="4cm" height="5cm">`, 1) + `</svg>`, `/>`, 80, 100},
		{"commas in the viewBox", strings.Replace(svgStart, "0 0 80 100", " -4,0, 80.5 100 ", 1) + `</svg>`, `/>`, 81, 100},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, found := drawn(tt.svg)
			if p == nil {
				t.Fatal(found)
			}
			got := strings.Replace(string(p.SVG), "-4,0, 80.5 100", "0 0 80 100", 1)
			if d := cmp.Diff("<svg "+svgPen+tt.want, got); d != "" {
				t.Error(d)
			}
			if p.Width != tt.width || p.Height != tt.height {
				t.Errorf("%d x %d, want %d x %d", p.Width, p.Height, tt.width, tt.height)
			}
			if p.Files != nil {
				t.Error("a drawing that stands in its page has a file beside it")
			}
		})
	}
}

func TestDrawingFindings(t *testing.T) {
	in := func(shapes string) string { return svgStart + "\n" + shapes + "</svg>" }
	tests := []struct{ name, svg, want string }{
		{"no svg", "", "1:1: there is no svg element in this file"},
		{"words alone", "hello", "1:1: there is no svg element in this file; 1:1: words stand outside a text element"},
		{"another root", `<html/>`, "1:1: the file does not start with an svg element"},
		{"no name space", `<svg ` + svgPen + `/>`, "1:1: the file does not start with an svg element"},
		{"a second root", svgStart + "</svg>\n<g/>", "2:1: a second element follows the svg element"},
		{"no viewBox", strings.Replace(svgStart, "viewBox", "width", 1) + `</svg>`, "1:1: the svg element has no viewBox of four numbers"},
		{"viewBox of nothing", strings.Replace(svgStart, "80 100", "0 100", 1) + `</svg>`, "1:1: the svg element has no viewBox of four numbers"},
		{"viewBox too large", strings.Replace(svgStart, "80 100", "80 100000", 1) + `</svg>`, "1:1: the svg element has no viewBox of four numbers"},
		{"viewBox in hexadecimal", strings.Replace(svgStart, "80 100", "0x50 100", 1) + `</svg>`, "1:1: the svg element has no viewBox of four numbers"},
		{"another pen", strings.Replace(svgStart, `"2.5"`, `"3"`, 1) + `</svg>`, `1:1: the svg element must say stroke-width="2.5"`},
		{"little of a pen", `<svg xmlns="http://www.w3.org/2000/svg" stroke="currentColor" viewBox="0 0 1 1"/>`, `1:1: the svg element must say fill="none"; 1:1: the svg element must say stroke-linecap="round"; ` +
			`1:1: the svg element must say stroke-linejoin="round"; 1:1: the svg element must say stroke-width="2.5"`},
		{"an id on the root", strings.Replace(svgStart, ">", "\n id='a'>", 1) + `</svg>`, "2:2: the attribute `id` cannot stand on `svg`"},
		{"script", in(`<script>alert(1)</script>`), "2:1: a drawing cannot hold the element `script`"},
		{"style", in(`<style>g{}</style>`), "2:1: a drawing cannot hold the element `style`"},
		{"picture in the drawing", in(`<image href="a.png"/>`), "2:1: a drawing cannot hold the element `image`"},
		{"foreign element", in(`<g xmlns="urn:x"/>`), "2:1: a drawing cannot hold the element `g`"},
		{"id", in(`<path id="a" d="M0 0"/>`), "2:7: the attribute `id` cannot stand on `path`"},
		{"style attribute", in(`<path d="M0 0" style="fill:red"/>`), "2:16: the attribute `style` cannot stand on `path`"},
		{"event", in("<path\n  d = 'M0 0'\n  onclick=\"x()\"/>"), "4:3: the attribute `onclick` cannot stand on `path`"},
		{"no space between attributes", in(`<path d="M0 0"fill="red"/>`), "2:15: the attribute `fill` cannot stand on `path`"},
		{"link", in(`<g xmlns:x="http://www.w3.org/1999/xlink" x:href="#a"/>`), "2:4: the attribute `x` cannot stand on `g`; 2:43: the attribute `href` cannot stand on `g`"},
		{"attribute of another shape", in(`<circle d="M0 0" r="1"/>`), "2:9: the attribute `d` cannot stand on `circle`"},
		{"attribute twice", in(`<circle r="1" r="2"/>`), "2:15: the attribute `r` stands twice"},
		{"class", in(`<path class="clay red" d="M0 0"/>`), "2:7: `class` of `path` cannot be `clay red`"},
		{"unit", in(`<circle r="1mm"/>`), "2:9: `r` of `circle` cannot be `1mm`"},
		{"not a number", in(`<circle r="NaN"/>`), "2:9: `r` of `circle` cannot be `NaN`"},
		{"path with other letters", in(`<path d="M0 0 url(x)"/>`), "2:7: `d` of `path` cannot be `M0 0 url(x)`"},
		{"a reference for what cannot be seen", svgStart + `<text x="1">1&#x202E;2</text></svg>`, "1:174: this character, U+202E, turns the direction of the words behind it"},
		{"long value", in(`<path d="` + strings.Repeat("k", 100) + `"/>`), "2:7: `d` of `path` cannot be `" + strings.Repeat("k", 40) + "…`"},
		{"transform", in(`<g transform="perspective(1)"/>`), "2:4: `transform` of `g` cannot be `perspective(1)`"},
		{"words outside text", in("<g>\n  Größe</g>"), "3:3: words stand outside a text element"},
		{"shape in a shape", in(`<path d="M0 0"><g/></path>`), "2:16: the element `g` cannot stand inside `path`"},
		{"tspan outside text", in(`<tspan>x</tspan>`), "2:1: the element `tspan` cannot stand inside `svg`"},
		{"doctype", "<!DOCTYPE svg>\n" + in(""), "1:1: a drawing has no `<!DOCTYPE` or other declaration"},
		{"instruction", in(`<?php x ?>`), "2:1: a drawing has no `<?php`"},
		{"entity", in(`<text>&nbsp;</text>`), "2:13: this is not well-formed XML: invalid character entity &nbsp;"},
		{"not closed", svgStart + "\n<g>", "2:4: this is not well-formed XML: unexpected EOF"},
		{"closed otherwise", in("<g></path>"), "2:11: this is not well-formed XML: element <g> closed by </path>"},
		{"declared as another encoding", `<?xml version="1.0" encoding="latin1"?>` + in(`<b/>`), "2:1: a drawing cannot hold the element `b`"},
		{"nested too deep", in(strings.Repeat("<g>", 60) + strings.Repeat("</g>", 60)), "2:151: the groups of the drawing are nested too deep"},
		{"a habit is named once", in(strings.Repeat("<g id='a'/>\n", 5000)), "2:4: the attribute `id` cannot stand on `g`"},
		{"not text", "\xff", "1:1: this is not UTF-8 text"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, found := drawn(tt.svg)
			if p != nil {
				t.Error("a faulty drawing is given out")
			}
			found.Sort()
			var got []string
			for _, f := range found {
				got = append(got, fmt.Sprintf("%d:%d: %s", f.Line, f.Column, f.Text))
				if f.Do == "" {
					t.Errorf("%q says nothing to do", f.Text)
				}
			}
			if d := cmp.Diff(tt.want, strings.Join(got, "; ")); d != "" {
				t.Error(d)
			}
		})
	}
}
