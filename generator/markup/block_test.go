package markup

import (
	"bytes"
	"reflect"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
)

// catch keeps the blocks that the theme was asked to print.
type catch struct {
	around
	blocks *[]Block
}

func (c catch) Block(_ *course.Page, b Block) ([]byte, []Problem) {
	*c.blocks = append(*c.blocks, b)
	return []byte("<hr>\n"), nil
}

// blocks reads a page and gives the blocks in it.
func blocks(t *testing.T, source string) []Block {
	t.Helper()
	var all []Block
	if _, findings := Parse(lesson(source), catch{blocks: &all}); len(findings) > 0 {
		t.Fatalf("findings where none should be:\n%s", said(findings))
	}
	return all
}

func TestCalculatorBlock(t *testing.T) {
	source := "- a\n\n  > ```calculator  slip-density\n  > mass: 1.50\n  > date: 2026-01-01 # as typed\n  > größe: 0777\n  > \"yes\": 'no'\n  > sum: 1 745 g\n  > ```\n"
	got := blocks(t, source)
	at := func(s string) int { return strings.Index(source, s) }
	want := []Block{{Kind: "calculator", Words: "slip-density", Number: 1, Offset: at("calculator"), Fill: []Setting{
		{"mass", "1.50", at("mass"), at("1.50")},
		{"date", "2026-01-01", at("date"), at("2026")},
		{"größe", "0777", at("größe"), at("0777")},
		{"yes", "no", at(`"yes"`), at("'no'")},
		{"sum", "1 745 g", at("sum"), at("1 745")},
	}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestCalculatorBlockMayBeEmpty(t *testing.T) {
	for _, source := range []string{"```calculator slip-density\n```", "```calculator slip-density\n# nothing\n\n```"} {
		if got := blocks(t, source); len(got) != 1 || got[0].Fill != nil {
			t.Errorf("%q gives %+v", source, got)
		}
	}
}

func TestQuestionBlock(t *testing.T) {
	source := "```question\nask: Why is the empty jar weighed first?\nanswers:\n  - text: So that its weight can be taken away\n    right: true\n    because: The scale shows jar and slip together.\n" +
		"  - text: To see whether it is clean\n    because: >\n      A dirty jar\n      shows to the eye.\n  - {text: \"1.50\", right: false, because: 2026}\n```\n"
	got := blocks(t, source)
	want := []Block{{Kind: "question", Number: 1, Offset: 3, Ask: &Question{
		Ask: "Why is the empty jar weighed first?",
		Answers: []Choice{
			{"So that its weight can be taken away", true, "The scale shows jar and slip together."},
			{"To see whether it is clean", false, "A dirty jar shows to the eye."},
			{"1.50", false, "2026"},
		},
	}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestStagesBlock(t *testing.T) {
	source := "> ```stages\n> technique: trailing # on slip\n> medium: \"coloured-slip\"\n> ```\n\n```stages\nstate: wet\n```\n"
	at := func(s string) int { return strings.Index(source, s) }
	want := []Block{
		{Kind: "stages", Number: 1, Offset: at("stages"), Part: &Part{
			Medium:    Name{"coloured-slip", at(`"coloured`)},
			Technique: Name{"trailing", at("trailing")},
		}},
		{Kind: "stages", Number: 2, Offset: strings.LastIndex(source, "stages"), Part: &Part{State: Name{"wet", at("wet")}}},
	}
	if got := blocks(t, source); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	d := read(t, source)
	if !reflect.DeepEqual(d.Stages, []Part{*want[0].Part, *want[1].Part}) {
		t.Errorf("the document keeps %+v", d.Stages)
	}
}

func TestCautionBlock(t *testing.T) {
	source := "````caution Dust in *air*\nSee [x], [y].\n\n[y]: ../../home.md\n\n```batch\nClay 5\n```\n\n- b[^n]\n````\n\n1. c\n\n   ~~~caution\n   d\n     e\n   ~~~\n\n[x]: ../wash/strength.md\n\n[^n]: Wet it.\n"
	got := blocks(t, source)
	if len(got) != 2 {
		t.Fatalf("%d blocks, want 2", len(got))
	}
	first, second := got[0], got[1]
	if first.Words != "Dust in *air*" || first.Number != 1 || first.Offset != 4 || second.Words != "" || second.Number != 2 {
		t.Errorf("got %+v and %+v", first, second)
	}
	want := "<p>See <a href=\"../wash/strength.html\">x</a>, <a href=\"../index.html\">y</a>.</p>\n" +
		"<pre class=\"sample\" tabindex=\"0\"><code>Clay <span class=\"hl-number\">5</span>\n</code></pre>\n" +
		"<ul>\n<li>b<sup id=\"note.1.from.1\"><a href=\"#note.1\" class=\"note-mark\" role=\"doc-noteref\">1</a></sup></li>\n</ul>\n"
	if string(first.HTML) != want {
		t.Errorf("got  %q\nwant %q", first.HTML, want)
	}
	if string(second.HTML) != "<p>d\ne</p>\n" {
		t.Errorf("second caution: %q", second.HTML)
	}
}

// TestCautionEndsWhereOthersSeeIt compares where a caution ends with where
// goldmark's own fence of the same form ends.
func TestCautionEndsWhereOthersSeeIt(t *testing.T) {
	for _, body := range []string{"a\n```\nb", "a\n\n    ```\n```\nb", "- a\n```\nb", "> a\n```\nb", "# a\n  ````  \nb", "````x\na\n```\nb", "a\n``` x\n```\nb", "\ta\n```\nb"} {
		fence := string(read(t, "```text\n"+body).HTML)
		_, after, _ := strings.Cut(fence, "</pre>\n")
		d, _ := Parse(lesson("```caution\n"+body), around{})
		_, got, _ := strings.Cut(string(d.HTML), "</section>\n")
		if got != after || got == "" {
			t.Errorf("body %q: after the caution %q, after a fence %q", body, got, after)
		}
	}
}

// TestBodyFindings holds what can be wrong inside the fences of calculators and
// questions against its words and its place.
func TestBodyFindings(t *testing.T) {
	const shape = questionHelp
	tests := []struct{ name, source, want string }{
		{"no name", "```calculator\n```", "1:4 block-words: a calculator without its name | Write the name on the same line: calculator slip-density."},
		{"two names", "```calculator slip density\n```", `1:15 block-words: "slip density" is not the name of one calculator | Write one name; inputs go into the body, one “name: value” a line.`},
		{"no mapping", "```calculator x\n- a\n```", "2:1 block-body: here should stand inputs, one “name: value” a line | " + yamlHelp},
		{"list as a value", "- ```calculator x\n  ü: [a, b]\n  ```", `2:6 block-body: "ü" is one text, not a list or a group of names | Write it on one line, with quotes around it if it begins with a sign.`},
		{"no value", "> ```calculator x\n> a:\n> b: 1\n> ```", `2:5 block-body: "a" has nothing after it | Write the value after the colon, or take the line out.`},
		{"input twice", "> - ```calculator x\n>   a: 1\n>   a: 2\n>   ```", `3:5 block-body: "a" stands twice | Keep one of the two lines.`},
		{"no YAML", "- > ```calculator x\n  > a: 1\n  >  ü: ö: 2\n  > ```", "3:7 block-body: the body is no YAML: mapping values are not allowed in this context | " + yamlHelp},
		{"quote never closed", "```calculator x\na: \"1\nb: 2\n```", "2:4 block-body: the body is no YAML: found unexpected end of stream | " + yamlHelp},
		{"two documents", "```calculator x\na: 1\n---\nb: 2\n```", "1:4 block-body: the body is no YAML: expected single document, found multiple | " + yamlHelp},
		{"name that is a list", "```calculator x\n? [a]\n: 1\n```", "2:3 block-body: a name that is no plain word | " + yamlHelp},
		{"value taken from elsewhere", "```calculator x\na: &b 1\nc: *b\n```", `3:4 block-body: "c" is one text, not a list or a group of names | Write it on one line, with quotes around it if it begins with a sign.`},
		{"words after question", "```question Why?\n```", "1:13 block-words: words after “question” | Write them after “ask:” in the body."},
		{"words after stages", "```stages slip\n```", "1:11 block-words: words after “stages” | Write what to show into the body, for example “medium: coloured-slip”."},
		{"empty stages", "- ```stages\n  # nothing\n  ```", "1:6 block-body: a stages block without a body | " + stagesHelp},
		{"stages that name nothing", "```stages\n{}\n```", "2:1 block-body: a stages block that names nothing | " + stagesHelp},
		{"stages that are a list", "```stages\n- wet\n```", "2:1 block-body: here should stand what to show of the decoration table | " + yamlHelp},
		{"unknown name in stages", "```stages\nmedium: a\nstaet: wet\n```", `3:1 block-body: a stages block has no "staet" | ` + stagesHelp},
		{"two states", "```stages\nstate: [wet, bisque]\n```", `2:8 block-body: "state" is one text, not a list or a group of names | Write it on one line, with quotes around it if it begins with a sign.`},
		{"state twice", "```stages\nstate: wet\nstate: bisque\n```", `3:1 block-body: "state" stands twice | Keep one of the two lines.`},
		{"empty question", "```question\n```", "1:4 block-body: a question without a body | " + shape},
		{"question that is text", "```question\nWhy\n```", "2:1 block-body: here should stand a question | " + yamlHelp},
		{"unknown name", "```question\naks: Why?\nanswers: 3\n```", `2:1 block-body: a question has no "aks" | ` + shape + "\n3:10 block-body: “answers” is a list | Begin each answer with “- text:” on a line of its own."},
		{"asks nothing", "```question\nanswers: [{text: a, because: b, right: true}, {text: a, because: b}]\n```", "2:1 block-body: a question that asks nothing | Write “ask:” and the question after it."},
		{"no answers", "```question\nask: Why?\n```", "2:1 block-body: a question without answers | " + shape},
		{"one answer", "```question\nask: Why?\nanswers:\n- {text: a, because: b, right: true}\n```",
			"3:1 block-body: a question with fewer than two answers | Add an answer that is often given and wrong, with the reason why it is."},
		{"none right", "```question\nask: Why?\nanswers:\n- {text: a, because: b}\n- {text: c, because: d, right: false}\n```",
			"3:1 block-body: no answer of this question is right | Write “right: true” under the one that is."},
		{"parts missing", "> ```question\n> ask: Why?\n> answers:\n> - text: a\n>   right: true\n> - because: c\n> ```",
			"4:5 block-body: an answer without its reason | Write “because:” and why it is right or wrong.\n6:5 block-body: an answer without its text | Write “text:” and the answer after it."},
		{"wrong kinds", "```question\nask: Why?\nanswers:\n- {text: [a], because: b, right: yes}\n- c\n- {text: a, because: b, hint: d}\n```",
			"4:10 block-body: \"text\" is one text, not a list or a group of names | Write it on one line, with quotes around it if it begins with a sign.\n" +
				"4:34 block-body: “right” is true or false | Write “right: true” under a right answer; leave the line out under a wrong one.\n" +
				"5:3 block-body: here should stand an answer, “text:” and “because:” | " + yamlHelp + "\n" +
				"6:25 block-body: an answer has no \"hint\" | " + shape},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d, findings := Parse(lesson(test.source), around{})
			findings.Sort()
			if got := strings.TrimSuffix(said(findings), "\n"); got != test.want {
				t.Errorf("got:\n%s\nwant:\n%s", got, test.want)
			}
			if strings.Contains(string(d.HTML), "<section") {
				t.Errorf("a block with faults was printed: %s", d.HTML)
			}
		})
	}
}

// TestGathered wants what is gathered from lessons elsewhere to be kept.
func TestGathered(t *testing.T) {
	d := read(t, "```caution Dust\nWet it.\n```\n\n```asked Can I glaze over *pencil*?\nYes, see [x](../wash/strength.md).\n```\n\n```teaching\nPrepare\n: Ten tiles.\n```\n\n"+
		"## What to look for\n\n- a *b*\n- c\n\n### More\n\n- d\n\n## What goes wrong\n\nIt peels\n: Too dry, 8 g.\n\nIt runs\n: Too wet.\n\n## Other\n\n- e\n")
	if len(d.Asked) != 1 || d.Asked[0].Ask != "Can I glaze over *pencil*?" || string(d.Asked[0].HTML) != "<p>Yes, see <a href=\"../wash/strength.html\">x</a>.</p>\n" {
		t.Errorf("asked %+v", d.Asked)
	}
	if len(d.Teaching) != 1 || !strings.Contains(string(d.Teaching[0]), "<dt>Prepare</dt>") {
		t.Errorf("teaching %q", d.Teaching)
	}
	if got := string(bytes.Join(d.Looks, []byte("|"))); got != "a <em>b</em>|c|d" {
		t.Errorf("looks %q", got)
	}
	want := []Fault{{[]byte("It peels"), []byte("Too dry, 8\u00a0g.")}, {[]byte("It runs"), []byte("Too wet.")}}
	if !slices.EqualFunc(d.Faults, want, func(a, b Fault) bool { return string(a.Seen) == string(b.Seen) && string(a.Means) == string(b.Means) }) {
		t.Errorf("faults %q", d.Faults)
	}
}

// TestSum wants a link to a filled-in calculator to lead there, and a number
// that the calculator does not give to be found.
func TestSum(t *testing.T) {
	d := read(t, "[60 mL](calculator:slip-density?mass=174.5+g&volume=100)")
	if want := "calculators/slip-density.html?mass=174.5+g&amp;volume=100"; !strings.Contains(string(d.HTML), want) {
		t.Errorf("%s lacks %s", d.HTML, want)
	}
	_, findings := Parse(lesson("[70 mL](calculator:slip-density?mass=1) [1](calculator:none?a=b)"), around{})
	want := "1:1 sum-disagrees: 7 is no answer | Write 8.\n1:41 link-target: link to \"calculator:none\": there is no such calculator | Write the name of a calculator; “slipbook calc” lists them.\n"
	if got := said(findings); got != want {
		t.Errorf("got %s", got)
	}
}
