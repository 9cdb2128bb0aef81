package markup

import (
	"fmt"
	"strings"
	"testing"

	"slipbook/generator/finding"
)

// told lists the passages of a page: kind, place and words; * marks those in a
// footnote, ! those for the instructor.
func told(source string) string {
	d, _ := whole(source)
	lines := finding.NewLines([]byte(source))
	var b strings.Builder
	for _, p := range d.Prose.Passages {
		line, column := lines.At(p.Offset)
		b.WriteString([...]string{"words", "heading", "title", "caption", "picture", "question"}[p.Kind])
		if p.Note {
			b.WriteByte('*')
		}
		if p.Teaching {
			b.WriteByte('!')
		}
		fmt.Fprintf(&b, " %d:%d %s\n", line, column, strings.ReplaceAll(d.Prose.Text[p.Start:p.End], string(Thing), "¤"))
	}
	return b.String()
}

func TestPassages(t *testing.T) {
	tests := []struct{ name, source, want string }{
		{"paragraphs", "One *two*\nthree.\n\n> Four  \n> five\\.\n", "words 1:1 One two three.\nwords 4:3 Four five.\n"},
		{"lists", "- One\n  two\n- 1. Three\n\n     Four\n", "words 1:3 One two\nwords 3:6 Three\nwords 5:6 Four\n"},
		{"headings", "## One `x` {#y}\n\nTwo\n---\n", "heading 1:4 One ¤\nheading 3:1 Two\n"},
		{"definitions", "One\ntwo\n: Three\n", "words 1:1 One\nwords 2:1 two\nwords 3:3 Three\n"},
		{"table", "| One | *Two* |\n|---|---|\n| | Three \\| 3 |\n", "words 1:3 One\nwords 1:9 Two\nwords 3:5 Three | 3\n"},
		{"links", "[One *two*](../../home.md) <https://example.org> [three]\n\n[three]: ../../home.md\n", "words 1:1 One two ¤ three\n"},
		{"typography", "\"It's\" -- so...\n", "words 1:1 “It’s” – so…\n"},
		{"entities", "5 &times; 6 &amp; \\& & &nosuch; \\n\n", "words 1:1 5 × 6 & & & &nosuch; \\n\n"},
		{"samples", "One.\n\n    two\n\n```yaml\nthree: 4\n```\n", "words 1:1 One.\n"},
		{"footnote", "One[^a] two.\n\n[^a]: Three\n    four.\n", "words 1:1 One two.\nwords* 3:7 Three four.\n"},
		{"picture alone", "![One \"two\"](../../pictures/jar.svg \"Three & four\")\n", "words 1:1 ¤\npicture 1:1 One “two”\ncaption 1:38 Three & four\n"},
		{"picture in a line", "One ![jar](../../pictures/jar.svg) two\n", "words 1:1 One ¤ two\npicture 1:5 jar\n"},
		{"caption by reference", "![One][a]\n\n[a]: ../../pictures/jar.svg 'Two'\n", "words 1:1 ¤\npicture 1:1 One\ncaption 3:30 Two\n"},
		{"caution", "- ```caution a & b\n  One.\n\n  Two.\n  ```\n", "title 1:14 a & b\nwords 2:3 One.\nwords 4:3 Two.\n"},
		{"asked and teaching", "```asked Why?\nOne.\n```\n\n```teaching\nTwo\n: Three\n```\n\nFour\n", "title 1:10 Why?\nwords 2:1 One.\nwords! 6:1 Two\nwords! 7:3 Three\nwords 10:1 Four\n"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := told(test.source); got != test.want {
				t.Errorf("got:\n%swant:\n%s", got, test.want)
			}
		})
	}
}

func TestPassagesOfQuestions(t *testing.T) {
	tests := []struct{ name, body, want string }{
		{"plain", "ask: One?\nanswers:\n  - text: Two\n    right: true\n    because: Three\n      four.\n  - because: Five: six\n    text: text\n",
			"question 2:6 One?\nquestion 4:11 Two\nquestion 6:14 Three four.\nquestion 8:14 Five: six\nquestion 9:11 text\n"},
		{"quoted", "ask: \"One: two?\"\nanswers:\n- text: 'It''s'\n  because: x\n", "question 2:6 \"One: two?\"\nquestion 4:9 'It''s'\nquestion 5:12 x\n"},
		{"folded", "ask: >-\n  One\n\n  two?\nanswers: []\n", "question 3:3 One two?\n"},
		{"on one line", "ask: One?\nanswers: [{text: Two, right: true, because: Three}, {text: Four, because: Five}]\n",
			"question 2:6 One?\nquestion 3:18 Two\nquestion 3:45 Three}, \nquestion 3:60 Four\nquestion 3:75 Five}]\n"},
		{"broken", "ask:\n- - [\nbecause: \ntext:x\n", "question 3:1 - - [\nquestion 5:1 text:x\n"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := told("```question\n" + test.body + "```\n"); got != test.want {
				t.Errorf("got:\n%swant:\n%s", got, test.want)
			}
		})
	}
	const inQuote = "> 1. ```question\n>    ask: One\n>      two?\n>    ```\n"
	if got := told(inQuote); got != "question 2:11 One two?\n" {
		t.Errorf("in a quote: %s", got)
	}
}

func TestProseKnowsLinks(t *testing.T) {
	p := read(t, "[ ](state:bisque)\n\nA [*bisque* pot](glossary:bisque), [b](state:bisque)\n").Prose
	var got []string
	for _, l := range p.Links {
		got = append(got, p.Text[l.Start:l.End]+" > "+l.To)
	}
	if want := "[bisque pot > glossary:bisque b > state:bisque]"; fmt.Sprint(got) != want {
		t.Errorf("got %v, want %s", got, want)
	}
}

func TestProseKnowsSteps(t *testing.T) {
	for source, want := range map[string]bool{
		"a\n": false, "- a\n": false, "1. a\n": true, "- 1. a\n": true, "> 1) a\n": true,
		"```caution A\n1. a\n```\n": false, "```teaching\n1. a\n```\n": false, "a[^b]\n\n[^b]:\n    1. c\n": false,
	} {
		if got := read(t, source).Prose.Steps; got != want {
			t.Errorf("%q: steps %v, want %v", source, got, want)
		}
	}
}

func TestWhatCautionsGuard(t *testing.T) {
	const caution = "```caution A\nb. c.\n```\n\n"
	tests := []struct {
		name, source string
		want         bool
	}{
		{"a step", caution + "1. d\n", true},
		{"the end", "1. d\n\n" + caution, false},
		{"the next part", "## A\n\n" + caution + "## B\n\nd\n", false},
		{"a part of its own part", "## A\n\n" + caution + "### B\n\nd\n", true},
		{"an empty part of its own part", "## A\n\n" + caution + "### B\n\n## C\n\nd\n", false},
		{"a higher part", "## A\n\n### B\n\n" + caution + "## C\n\nd\n", false},
		{"before all parts", caution + "## A\n\nd\n", true},
		{"another caution", caution + "```caution B\nb\n```\n\n", false},
		{"another caution and a step", caution + "```caution B\nb\n```\n\nd\n", true},
		{"a question", caution + "```question\nask: d\nanswers:\n- {text: e, because: f, right: true}\n- {text: g, because: h}\n```\n", false},
		{"a note for teaching and a footnote", "a[^a]\n\n" + caution + "```teaching\nd\n```\n\n[^a]: e\n", false},
		{"an answer", caution + "```asked Why?\nd\n```\n", true},
		{"a calculator", caution + "```calculator slip-density\n```\n", true},
		{"the rest of its step", "1. a\n\n   " + strings.ReplaceAll(caution, "\n", "\n   ") + "\n   d\n", true},
		{"the next step", "1. a\n\n   " + strings.ReplaceAll(caution, "\n", "\n   ") + "\n2. d\n", true},
		{"no step after it", "## A\n\n1. a\n\n   " + strings.ReplaceAll(caution, "\n", "\n   ") + "\n\n## B\n\nd\n", false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d, _ := whole(test.source)
			if got := d.Prose.Cautions[0]; got.Guards != test.want || got.Title != "A" || got.Last-got.First != 1 {
				t.Errorf("%+v, want Guards %v", got, test.want)
			}
		})
	}
}

// FuzzProse shows that each place of the prose is one of the file, and that a
// letter in the prose is the letter in the file. Entities are the exception.
func FuzzProse(f *testing.F) {
	for _, seed := range []string{
		"One *two*\n> three\\. `four` five\n", "\"a\" 'b' c -- d...\n\n- e\n\tf\n", "| a | b \\| c |\n|---|---|\n| d |\n", "![a \"b\"](../../pictures/jar.svg \"c\nd\") e\n",
		"> - ```caution Dust\n>   a\n>\t b\n>   ```\n\nc[^d]\n\n[^d]: e\n", "```question\nask: \"a\n  b\"\nanswers:\n- {text: b, because: c, right: true}\n```\n", "~~~question\n\task: >\n\t  a\n\n~~~\n",
		"a\r\nb\r\n\r\nC\r\n: d\r\n", "[a\\]](b.md 'c') [d]\n\n[d]: <e f> (g\nh)\n", "## \\# a #\n\nü *ä*\\\nß &nbsp", "\x00\xff[\xfe](\x80)\n", "-\n\n  a\n1.\tb\n", "![](a \"a\")![b](a)",
		"[0\\0](00 '0'![d]\n\n[d]:00 (00A)", "![B]![][B]\n\n[B]:0 \"0A\"",
		"[0\\0](00 '0'![d]\n\n[d]:00 (00A)", "![a][b] ![c](d 'e')\n\n[b]: f \"Gh\"\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		d, _ := whole(string(source))
		if d.Prose == nil {
			return // nested too deep
		}
		end := 0
		for _, p := range d.Prose.Passages {
			if p.Start < end || p.End <= p.Start || p.End > len(d.Prose.Text) || p.Offset < 0 || p.Offset > len(source) {
				t.Fatalf("%+v stands outside", p)
			}
			end = p.End
		}
		for i := range len(d.Prose.Text) {
			at, c := d.Prose.Offset(i), d.Prose.Text[i]
			if at < 0 || at > len(source) {
				t.Fatalf("%d stands at %d", i, at)
			}
			if letter(c) && c < 0x80 && !strings.Contains(string(source), "&") && (at == len(source) || source[at] != c) {
				t.Fatalf("%q at %d of the prose, offset %d of the file", c, i, at)
			}
		}
	})
}
