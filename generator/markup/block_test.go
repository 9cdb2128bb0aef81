package markup

import (
	"reflect"
	"strings"
	"testing"
)

// blocks reads a page and returns the blocks in it, without their pieces.
func blocks(t *testing.T, source string) []Block {
	t.Helper()
	var all []Block
	for _, b := range read(t, source).Blocks {
		bare := *b
		bare.Pieces = nil
		all = append(all, bare)
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
	if all := read(t, source).Named(StagesBlock); len(all) != 2 {
		t.Errorf("the document names %d of them", len(all))
	}
}

func TestCautionBlock(t *testing.T) {
	source := "````caution Dust in *air*\nSee [x], [y].\n\n[y]: ../../home.md\n\n```batch\nClay 5\n```\n\n- b[^n]\n````\n\n1. c\n\n   ~~~caution\n   d\n     e\n   ~~~\n\n[x]: ../wash/strength.md\n\n[^n]: Wet it.\n"
	got := read(t, source).Blocks
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
	if html := string(setBare(first.Pieces, true)); html != want {
		t.Errorf("got  %q\nwant %q", html, want)
	}
	if html := string(setBare(second.Pieces, true)); html != "<p>d\ne</p>\n" {
		t.Errorf("second caution: %q", html)
	}
}

// TestCautionEndsWhereOthersSeeIt compares where a caution ends with where
// goldmark's own fence of the same form ends.
func TestCautionEndsWhereOthersSeeIt(t *testing.T) {
	for _, body := range []string{"a\n```\nb", "a\n\n    ```\n```\nb", "- a\n```\nb", "> a\n```\nb", "# a\n  ````  \nb", "````x\na\n```\nb", "a\n``` x\n```\nb", "\ta\n```\nb"} {
		fence := string(read(t, "```text\n"+body).HTML)
		_, after, _ := strings.Cut(fence, "</pre>\n")
		d, _ := whole("```caution\n" + body)
		_, got, _ := strings.Cut(string(d.HTML), "</section>\n")
		if got != after || got == "" {
			t.Errorf("body %q: after the caution %q, after a fence %q", body, got, after)
		}
	}
}

// TestBodyFindings holds what can be wrong inside the fences of calculators and
// questions against its words and its place.
func TestBodyFindings(t *testing.T) {
	tests := []struct{ name, source, want string }{
		{"a recipe without a name", "```recipe\n```", "1:4 block-words: a recipe without its name | Write the name on the same line: recipe white-slip."},
		{"two recipes", "```recipe white blue\n```", `1:11 block-words: "white blue" is not the name of one recipe | Write one name; inputs go into the body, one “name: value” a line.`},
		{"no name", "```calculator\n```", "1:4 block-words: a calculator without its name | Write the name on the same line: calculator slip-density."},
		{"two names", "```calculator slip density\n```", `1:15 block-words: "slip density" is not the name of one calculator | Write one name; inputs go into the body, one “name: value” a line.`},
		{"no mapping", "```calculator x\n- a\n```",
			"2:1 value-kind: this is a list, but the calculator wants a set of keys with values | Write each key on a line of its own, as `key: value`."},
		{"list as a value", "- ```calculator x\n  ü: [a, b]\n  ```",
			"2:6 value-kind: this is a list, but `ü` wants one line of text | Write the text right after the colon; in double quotes if it starts with a sign like [ or {."},
		{"no value", "> ```calculator x\n> a:\n> b: 1\n> ```",
			"2:5 missing-key: `a` is empty | Write one line of text, or take the key out if it can be left out."},
		{"input twice", "> - ```calculator x\n>   a: 1\n>   a: 2\n>   ```",
			"3:5 repeated-key: `a` stands here a second time | Keep one of the two; the other has its value in line 2."},
		{"no YAML", "- > ```calculator x\n  > a: 1\n  >  ü: ö: 2\n  > ```",
			"3:7 yaml-form: there is a second colon in this line, or the line does not start where its neighbours do | Put a value that has a colon in it in double quotes, and start keys of one kind in the same column."},
		{"quote never closed", "```calculator x\na: \"1\nb: 2\n```",
			"2:4 yaml-form: the quotation that opens here is not closed, or has a backslash in it that means nothing | Close it with the same quotation mark; write a backslash inside double quotes twice."},
		{"two documents", "```calculator x\na: 1\n---\nb: 2\n```",
			"3:1 yaml-form: a second document of YAML starts here | Write everything as one document: take out the line --- or ... before this."},
		{"name that is a list", "```calculator x\n? [a]\n: 1\n```",
			"2:3 yaml-form: this stands where a key should | Write `key: value`, the key being one word."},
		{"value taken from elsewhere", "```calculator x\na: &b 1\nc: *b\n```",
			"2:4 yaml-form: `&b` gives this value a name, which the handbook does not use | Take `&b` out; if the ampersand is meant, put the value in double quotes.\n" +
				"3:4 yaml-form: `*b` stands for words written elsewhere | Write the words out here; if the asterisk is meant, put the value in double quotes."},
		{"words after question", "```question Why?\n```", "1:13 block-words: words after “question” | Write them after “ask:” in the body."},
		{"words after stages", "```stages slip\n```", "1:11 block-words: words after “stages” | Write what to show into the body, for example “medium: coloured-slip”."},
		{"empty stages", "- ```stages\n  # nothing\n  ```",
			"1:6 block-body: a stages block that names nothing | It names what to show, one a line: “medium: coloured-slip”, “state: leather-hard”, “technique: trailing”; one of them is enough."},
		{"stages that name nothing", "```stages\n{}\n```",
			"1:4 block-body: a stages block that names nothing | It names what to show, one a line: “medium: coloured-slip”, “state: leather-hard”, “technique: trailing”; one of them is enough."},
		{"stages that are a list", "```stages\n- wet\n```",
			"2:1 value-kind: this is a list, but the stages block wants a set of keys with values | Write each key on a line of its own, as `key: value`."},
		{"unknown name in stages", "```stages\nmedium: a\nstaet: wet\n```",
			"3:1 unknown-key: `staet` is not a key that is known here | Did you mean `state`? The keys are: medium, state, technique."},
		{"two states", "```stages\nstate: [wet, bisque]\n```",
			"2:8 value-kind: this is a list, but `state` wants one line of text | Write the text right after the colon; in double quotes if it starts with a sign like [ or {."},
		{"state twice", "```stages\nstate: wet\nstate: bisque\n```",
			"3:1 repeated-key: `state` stands here a second time | Keep one of the two; the other has its value in line 2."},
		{"empty question", "```question\n```", "1:4 block-body: a question without a body | " + questionHelp},
		{"question that is text", "```question\nWhy\n```",
			"2:1 value-kind: this is one line of text, but the question wants a set of keys with values | Write each key on a line of its own, as `key: value`."},
		{"unknown name", "```question\naks: Why?\nanswers: 3\n```",
			"2:1 missing-key: `ask` is missing | Write a line such as `ask: Why does slip flake off bisque?`.\n" +
				"2:1 unknown-key: `aks` is not a key that is known here | Did you mean `ask`? The keys are: ask, answers.\n" +
				"3:10 value-kind: this is one line of text, but `answers` wants a list | Write each item on a line of its own below the key, after a hyphen and a space."},
		{"asks nothing", "```question\nanswers: [{text: a, because: b, right: true}, {text: a, because: b}]\n```",
			"2:1 missing-key: `ask` is missing | Write a line such as `ask: Why does slip flake off bisque?`."},
		{"no answers", "```question\nask: Why?\n```",
			"2:1 missing-key: `answers` is missing | Write a line such as `answers: [{text: …, because: …, right: true}, {text: …, because: …}]`."},
		{"one answer", "```question\nask: Why?\nanswers:\n- {text: a, because: b, right: true}\n```",
			"4:1 block-body: a question with fewer than two answers | Add an answer that is often given and wrong, with the reason why it is."},
		{"none right", "```question\nask: Why?\nanswers:\n- {text: a, because: b}\n- {text: c, because: d, right: false}\n```",
			"4:1 block-body: no answer of this question is right | Write “right: true” under the one that is."},
		{"parts missing", "> ```question\n> ask: Why?\n> answers:\n> - text: a\n>   right: true\n> - because: c\n> ```",
			"4:5 missing-key: `because` is missing | Write a line such as `because: Slip shrinks as it dries, and bisque does not.`.\n" +
				"6:5 missing-key: `text` is missing | Write a line such as `text: It has shrunk already.`."},
		{"wrong kinds", "```question\nask: Why?\nanswers:\n- {text: [a], because: b, right: yes}\n- c\n- {text: a, because: b, hint: d}\n```",
			"4:10 value-kind: this is a list, but `text` wants one line of text | Write the text right after the colon; in double quotes if it starts with a sign like [ or {.\n" +
				"4:34 value-form: `right` cannot be `yes` | Write one of: true, false.\n" +
				"5:3 value-kind: this is one line of text, but an item of `answers` wants a set of keys with values | Write each key on a line of its own, as `key: value`.\n" +
				"6:25 unknown-key: `hint` is not a key that is known here | The keys are: text, because, right."},
		{"marks of Markdown", "> ```question\n> ask: Why **China** [clay](glossary:china-clay)?\n> answers:\n> - text: \"a: `b` and `c`\" # **d**\n>   right: true\n>   because: >\n>     See ![the\n>     jar](x.svg).\n> - {text: a * b, because: \"\\x2a*\"}\n> ```",
			"2:12 plain-words: `ask` is printed as it stands, and has the marks of words in bold type | Write plain words, without **.\n" +
				"2:22 plain-words: `ask` is printed as it stands, and has the marks of a link or a picture | Write plain words here; links and pictures belong into the text around the block.\n" +
				"4:15 plain-words: `text` is printed as it stands, and has the marks of code | Write plain words, without `; what has to stand out may stand in “quotation marks”.\n" +
				"7:11 plain-words: `because` is printed as it stands, and has the marks of a link or a picture | Write plain words here; links and pictures belong into the text around the block.\n" +
				"9:28 plain-words: `because` is printed as it stands, and has the marks of words in bold type | Write plain words, without **."},
		{"marks beside other faults", "```question\nask: \"[a](b)\"\nanswers: []\n```",
			"2:7 plain-words: `ask` is printed as it stands, and has the marks of a link or a picture | Write plain words here; links and pictures belong into the text around the block.\n" +
				"3:10 block-body: a question with fewer than two answers | Add an answer that is often given and wrong, with the reason why it is."},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d, findings := whole(test.source)
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
	asked, teaching := d.Named(AskedBlock), d.Named(TeachingBlock)
	if len(asked) != 1 || asked[0].Words != "Can I glaze over *pencil*?" || apart(asked[0].Pieces) != "<p>Yes, see <a href=\"../wash/strength.html\">x</a>.</p>\n" {
		t.Errorf("asked %+v", asked)
	}
	if len(teaching) != 1 || !strings.Contains(apart(teaching[0].Pieces), "<dt>Prepare</dt>") {
		t.Errorf("teaching %+v", teaching)
	}
	if got := under(d, "What to look for"); got != "a <em>b</em>|c|d|" {
		t.Errorf("items %q", got)
	}
	if got := under(d, "What goes wrong"); got != "It peels: Too dry, 8\u00a0g.|It runs: Too wet.|" {
		t.Errorf("pairs %q", got)
	}
}

// apart sets pieces as other pages take them.
func apart(pieces []Piece) string { return string(setBare(pieces, false)) }

// under returns what is gathered under a heading.
func under(d *parsed, heading string) string {
	var b strings.Builder
	for _, h := range d.Headings {
		if h.Text != heading {
			continue
		}
		for _, item := range h.Items {
			b.WriteString(apart(d.In(item)) + "|")
		}
		for _, p := range h.Pairs {
			b.WriteString(apart(d.In(p.Term)) + ": " + apart(d.In(p.Means)) + "|")
		}
	}
	return b.String()
}

// TestFigure wants a link to a filled-in calculator to keep its request and its
// words.
func TestFigure(t *testing.T) {
	d := read(t, "[60 *mL*](calculator:slip-density?mass=174.5+g&volume=100)")
	if r := d.Refs[0]; r.Kind != FigureRef || r.To != "slip-density?mass=174.5+g&volume=100" || r.Words != "60 mL" {
		t.Errorf("%+v", r)
	}
	if made := d.Made(); len(made) != 1 || made[0] != "calculator:slip-density" {
		t.Errorf("made %q", made)
	}
}

// TestHeadingInABlockGathersNothing wants a list in a caution to stay there.
func TestHeadingInABlockGathersNothing(t *testing.T) {
	d := read(t, "## A\n\n```caution\n### What to look for\n\n- x\n```\n")
	if got := under(d, "What to look for"); got != "" {
		t.Errorf("gathered %q", got)
	}
}
