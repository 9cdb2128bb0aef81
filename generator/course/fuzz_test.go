package course

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf8"

	"slipbook/generator/finding"
)

// inRange makes sure that each finding points into its text.
func inRange(t *testing.T, text string, found finding.List) {
	t.Helper()
	lines := strings.Split(text, "\n")
	for _, f := range found {
		if f.Line < 1 || f.Line > len(lines) || f.Column < 1 || f.Column > utf8.RuneCountInString(lines[f.Line-1])+1 {
			t.Errorf("%q: outside of the text: %s", text, f)
		}
		if f.Text == "" || f.Do == "" {
			t.Errorf("%q: without words: %s", text, f)
		}
	}
}

// FuzzHead reads a page with any opening block: whatever stands in it, offsets
// stay and findings point into the file.
func FuzzHead(f *testing.F) {
	for _, head := range []string{
		"---\ntitle: Größe\n---\nText\n", "---\r\ntitle: x\r\n---\r\n", "---\n", "--- \n---\n---\n", "", "text",
		"---\ntitle: [a, {b: c}]\nteaches: x\ndate: 2026-13-01\n---\n", "---\ntitle: |\n  a\n  b\nx: &a *a\n---\n",
		"---\nbefore: [unit.md, ../x.md, /x.md]\ntimeRequired: PT1H\nmedium: x\n---\n", "---\n\"\\q\"\n---\n",
		"---\na: b\u2028c: d\n...\ne: f\n---\n", "---\n- a\n- b\n---\n", "---\n? a\n: b\n<<: {c: d}\n---\n", "---\ntitle: 'x\n---\n", "\ufeff---\n",
		"---\nneeds:\n\t- x\n---\n", "---\ntitle: a\ntitle: b\n---\n",
	} {
		f.Add(head)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l := &loader{listed: map[string]listing{}, fsys: fstest.MapFS{"home.md": {Data: []byte(text)}}, course: &Course{Decoration: &Decoration{Media: []Medium{{ID: "slip"}}}}}
		l.pages(nil, true)
		for _, s := range l.open {
			l.found = append(l.found, s.Found...)
		}
		inRange(t, text, l.found)
		source := string(l.course.Home.Source)
		switch {
		case len(source) != len(text) && len(l.found) == 0:
			t.Errorf("%q: source of %d bytes, file of %d", text, len(source), len(text))
		case source != "" && !strings.HasSuffix(text, strings.TrimLeft(source, " \r\n\t")):
			t.Errorf("%q: source does not end as the file does: %q", text, source)
		}
	})
}

// FuzzDrawing reads any text as a drawing: what is given out is well-formed
// XML of the elements allowed, and reads as itself again.
func FuzzDrawing(f *testing.F) {
	for _, svg := range []string{
		svgStart + `<path class="clay" d="M 1 2"/><text x="1">a &amp; <tspan>b</tspan></text></svg>`,
		svgStart + `<g transform="scale(2)"><title>x</title></g></svg>`, svgStart + `<g a="1"b='2'/></svg>`, svgStart + `<text><![CDATA[<]]></text></svg>`,
		svgStart, `<svg/>`, `<?xml version="1.0" encoding="x"?>`, `<!DOCTYPE a [<!ENTITY b "c">]>`, `</svg>`, "<a b=\"\n\"/>", svgStart + "</svg>x", `<s:svg xmlns:s="http://www.w3.org/2000/svg"/>`,
	} {
		f.Add(svg)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, found := drawn(text)
		inRange(t, text, found)
		if (p == nil) != (len(found) > 0) {
			t.Fatalf("%q: picture %v, findings %v", text, p, found)
		}
		if p == nil {
			return
		}
		if len(p.Files) > 0 {
			onlyOutline(t, p)
			return
		}
		if p.Width < 1 || p.Width > largest || p.Height < 1 || p.Height > largest {
			t.Errorf("%q: %d x %d", text, p.Width, p.Height)
		}
		onlyShapes(t, p.SVG)
		standing := bytes.Replace(p.SVG, []byte("<svg "), []byte(`<svg xmlns="`+svgSpace+`" `), 1)
		again, found := drawn(string(standing))
		if again == nil || !bytes.Equal(again.SVG, p.SVG) {
			t.Errorf("%q: read again: %v %v", p.SVG, again, found)
		}
	})
}

func onlyShapes(t *testing.T, svg []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return
		}
		if err != nil {
			t.Fatalf("%s: %v", svg, err)
		}
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Local == "svg" {
			continue
		}
		if shapes[start.Name.Local] == nil {
			t.Errorf("%s: holds %s", svg, start.Name.Local)
		}
		for _, a := range start.Attr {
			if shapes[start.Name.Local][a.Name.Local] == nil && everyShape[a.Name.Local] == nil {
				t.Errorf("%s: holds %s", svg, a.Name.Local)
			}
		}
	}
}

// FuzzYAML reads any text as one of the YAML files.
func FuzzYAML(f *testing.F) {
	sheets := []string{settingsFile, hazardsFile, tableFile, glossaryFile}
	for _, text := range []string{
		"title: x\nlanguage: en\nstudio: {name: y}\nunits: [a]\n", "states:\n  - {id: wet}\nmedia:\n  - {id: a, states: {wet: {verdict: never}}}\n",
		"media:\n  - {id: a, kind: clay, best: wet, words: [b], states: {wet: {verdict: yes, reason: c}}}\ntechniques:\n  - {id: d, with: [a]}\nover:\n  - {under: a, above: [a, a], unless: [d], verdict: yes, reason: e}\n" +
			"transitions:\n  - {id: f, move: dry, from: wet, to: bone-dry}\nexceptions:\n  - {id: g, kind: house, name: h, medium: a, states: {wet: {verdict: risky, reason: i, fault: j, remedy: k}}}\n" +
			"  - {id: l, kind: recipe, name: m, medium: a, hides: yes, best: wet}\n  - {id: n, kind: body, body: o, medium: a, states: {wet: {verdict: never}}}\n",
		"base: no\nleave-out: [a]\nstates:\n  - {id: leather-hard, words: [a], parts: [{id: soft, name: a, tell: b}]}\nfiring: {name: a, hazards: [b]}\nmetals: {words: [lead], who: student}\nphrases: [{words: [x], layers: y, ask: z}]\n" +
			"techniques:\n  - {id: d, name: e, works: takes, wait: f, states: {all: {only: [a], verdict: yes, part: soft, others: {only: [b], verdict: never, others: {}}}}}\nover:\n  - {under: all, above: all, verdict: yes, fired: yes}\n",
		"media:\n  - {id: engobe, words: [luster], states: {wet: {verdict: never}, all: {verdict: yes, hazards: [x]}}}\n  - engobe\ntechniques: [{id: combing, with: [], states: {}}]\nleave-out: [engobe, wax, engobe]\nover: [{under: wax, above: all, verdict: never}]\n",
		"base: no\nplaces: [{id: a, name: b}, {id: a}]\nhazards:\n  - {id: c, title: d, harm: e, do: f, short: g, wear: [h], place: a, lesson: ../x.md, health: yes}\n", "hazards: [{id: mist, lesson: units/a/b.md}, mist, {id: mist}]\nplaces: x\n",
		"terms:\n  - {id: a, word: b, means: c, see: [a, b]}\n", "bodies: [{shrinkage: 1e9}]\n", "- a\n", "a: &b [*b]\n", "units: *x\n", "%YAML 1.1\n", "a: !!binary x\n", "[", "{? a}",
	} {
		for kind := range sheets {
			f.Add(text, uint8(kind))
		}
	}
	f.Fuzz(func(t *testing.T, text string, kind uint8) {
		file := sheets[int(kind)%len(sheets)]
		c, found := new(Reader).Load(fstest.MapFS{settingsFile: {}, file: {Data: []byte(text)}})
		var here finding.List
		for _, f := range found {
			if f.File == file {
				here = append(here, f)
			}
		}
		inRange(t, text, here)
		if c.Decoration == nil || c.Language == "" || c.Measures == "" {
			t.Errorf("%q: not usable: %+v", text, c)
		}
		_ = c.Decoration.Table().Encode()
	})
}

// FuzzClasses reads any text as the classes of a studio with one recipe and one
// material: findings point into the file, and what is read names only what is there.
func FuzzClasses(f *testing.F) {
	for _, text := range []string{
		"classes:\n  - {id: a, title: A, people: 16, when: 2027-02-03, lesson: home.md, mix: [{recipe: slip, each: 60 mL}], tubs: [clay]}\n",
		"classes:\n  - id: index\n    people: 0.5\n    when: 2027-13-01\n    with: me\n    mix: {recipe: slip}\n", "classes: []\n", "classes: {a: b}\n", "- a\n", "classes:\n  - a\n  -\n",
		"classes:\n  - {mix: [{recipe: [slip], litres: 1e9}, {recipe: slip, each: 1, litres: 1}, slip], tubs: clay, put-out: x}\n", "classes:\n  - {id: a, lesson: ../x.md}\n  - {id: a, lesson: /}\n", "\ufeffclasses:\n\t- x\n",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l := &loader{listed: map[string]listing{}, fsys: fstest.MapFS{classesFile: {Data: []byte(text)}},
			course: &Course{Recipes: []*Recipe{{ID: "slip"}}, Materials: []*Material{{ID: "clay"}}, Home: &Page{File: "home.md"}}}
		l.sessions(true)
		for _, s := range l.open {
			l.found = append(l.found, s.Found...)
		}
		inRange(t, text, l.found)
		for _, s := range l.course.Sessions {
			if len(s.Tubs) != len(s.TubSpots) || s.People < 0 || s.People > mostPeople || s.Date != "" && s.When != "" || s.Lesson != "" && s.Lesson != "home.md" {
				t.Errorf("%q: %+v", text, s)
			}
			for _, m := range s.Mix {
				if m.Recipe != "slip" || m.Litres < 0 || m.Litres > MostLitres {
					t.Errorf("%q: %+v", text, m)
				}
			}
		}
	})
}
