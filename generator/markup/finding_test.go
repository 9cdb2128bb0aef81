package markup

import (
	"strings"
	"testing"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// The sentences that stand under several findings.
const (
	sayLink    = linkHelp
	sayPicture = "Put the file into the folder pictures and write the path from this file, for example ../../pictures/jar.svg."
	sayFence   = "Write a line of at least as many of the same signs under it; around other fences use more signs than they do."
	sayHTML    = "Write it in Markdown, or put a \\ before the < if you mean the sign itself."
	sayRow     = "Write a | between the cells, also beside an empty one; write a | that is meant as itself as \\|. An empty line ends the table."
	sayCopied  = "Take it out; it may have come along with copied text."
	sayBracket = "Write [words](address), or \\[ if you mean the bracket itself."
)

// sayKnown lists the words that may stand behind an opening fence.
var sayKnown = "Known are " + strings.Join(append(Kinds(), languages...), ", ") + "; plain text needs no word."

// TestFindings holds everything that can be wrong against its words and its
// place. The words are the interface of this package with the instructor.
func TestFindings(t *testing.T) {
	tests := []struct{ name, source, want string }{
		// Links.
		{"from the root", "[a](/slip/x.md)",
			`1:1 link-target: link to "/slip/x.md": an address that begins with / breaks when the handbook moves to another folder | Write the path from this file to the .md page.`},
		{"broken percent", "[a](x%zz.md)", `1:1 link-target: link to "x%zz.md": a % stands for nothing here | Write %25 for the sign itself.`},
		{"no address", "[a]() and [b](<>)", "1:1 link-target: a link without an address | " + sayLink + "\n1:11 link-target: a link without an address | " + sayLink},
		{"no words", "[](../../home.md)", "1:1 link-words: a link without words | Write what it leads to between the square brackets."},
		{"term without words", "<glossary:bisque>", "1:1 link-words: <glossary:bisque> has no words for the reader | Write [words](glossary:bisque)."},
		{"script", "[a](javascript:alert(1)) <javascript:x>",
			`1:1 link-target: link to "javascript:alert(1)": javascript: is no kind of address that a page may link | ` + sayLink + "\n" +
				`1:26 link-target: link to "javascript:x": javascript: is no kind of address that a page may link | ` + sayLink},
		{"script in entities", "[a](java&#115;cript:x)", `1:1 link-target: link to "javascript:x": javascript: is no kind of address that a page may link | ` + sayLink},
		{"data", "[a](data:text/html,x)", `1:1 link-target: link to "data:text/html,x": data: is no kind of address that a page may link | ` + sayLink},
		{"no server", "[a](https:x)", `1:1 link-target: link to "https:x": the name of the server is missing | ` + sayLink},
		{"no mail address", "[a](mailto:me)", `1:1 link-target: link to "mailto:me": a mail address has a @ | ` + sayLink},
		{"bad address", "[a](http://[x/)", `1:1 link-target: link to "http://[x/": this is no address | ` + sayLink},
		{"link in a link", "[a <https://example.org> b](../../home.md)", "1:4 link-words: a link inside the words of another link | Keep one of the two."},

		// Brackets and definitions.
		{"no definition", "a [b c][d e] f", "1:3 definition: [d e] is defined nowhere | Write the address itself, [b c](address), or a line “[d e]: address” on this page."},
		{"no definition, short", "a [b][] f", "1:3 definition: [b] is defined nowhere | Write the address itself, [b](address), or a line “[b]: address” on this page."},
		{"lone bracket", "mass [g] and\n[ ] box", "1:6 loose-bracket: [g] is neither a link nor a footnote | " + sayBracket + "\n2:1 loose-bracket: [] is neither a link nor a footnote | " + sayBracket},
		{"bracket never closed", "> a [b\n> c\n\nd", "1:5 loose-bracket: a [ that no ] closes | Close it, or write \\[ if you mean the bracket itself."},
		{"round bracket never closed", "- a [b](../../home.md c", "1:5 link-target: the ( after [b] is never closed | Write the ) after the address."},
		{"space in an address", "a [b](my page.md) c",
			"1:3 link-target: what stands in the round brackets after [b] is no address | Write the address without spaces, or between < and >; a title after it stands in \"quotes\". Take a link inside the words away."},
		{"no opening bracket", "a b](../../home.md)", "1:4 loose-bracket: a link without the [ before its words | Write [words](address)."},
		{"no footnote", "a[^b] c", "1:2 definition: the footnote [^b] is written nowhere | Write its text in a paragraph of its own that begins with [^b]: and stands on this page."},
		{"no footnote in a caution in a quote", "> ```caution\n> a[^b] c\n> ```", "2:4 definition: the footnote [^b] is written nowhere | Write its text in a paragraph of its own that begins with [^b]: and stands on this page."},
		{"unused footnote", "a[^b]\n\n[^b]: c\n\n[^d]: e", "5:1 definition: nothing refers to the footnote [^d], or it is written twice | Put [^d] where the note belongs, or take the note out."},
		{"footnote twice", "a[^b]\n\n[^b]: c\n\n[^b]: e", "5:1 definition: nothing refers to the footnote [^b], or it is written twice | Put [^b] where the note belongs, or take the note out."},
		{"unused definition in a list", "- [a]: ../../home.md", "1:3 definition: nothing uses the definition of [a] | Take it out, or write [words][a] where the link belongs."},
		{"definition twice", "[a]\n\n[a]: ../../home.md\n[A]: lesson.md", "4:1 definition: [A] is defined a second time | Take one of the two definitions out; the first one holds."},
		{"definition that is none", "a\n[b]: ../../home.md", "2:1 definition: “[b]:” begins no definition that can be understood | Write it as a line of its own, “[b]: address \"title\"”, after an empty line."},
		{"picture without definition", "a ![b][c]", "1:4 definition: [c] is defined nowhere | Write the address itself, [b](address), or a line “[c]: address” on this page."},

		// HTML.
		{"HTML block", "a\n\n> <div>\n> b\n", "3:3 raw-html: HTML in a page | " + sayHTML},
		{"HTML in a line", "a <br> b\n\n<!-- c -->", "1:3 raw-html: HTML in a page | " + sayHTML + "\n3:1 raw-html: HTML in a page | " + sayHTML},
		{"HTML in a table cell and a caution", "| a |\n|---|\n| <b> |\n\n```caution\n<i>x</i>\n```",
			"3:3 raw-html: HTML in a page | " + sayHTML + "\n6:1 raw-html: HTML in a page | " + sayHTML + "\n6:5 raw-html: HTML in a page | " + sayHTML},

		// What cannot be seen.
		{"references", "12&#x202E;34 &#8203; &zwj;\n\n> [a&rlm;](../../home.md \"&ZeroWidthSpace;\")",
			"1:3 hidden-character: &#x202E; stands for a character, U+202E, that cannot be seen or turns words round | Take it out; where words of both directions meet, put the marks U+200E or U+200F beside them instead, in a course of a language written from right to left.\n" +
				"1:14 hidden-character: &#8203; stands for a character, U+200B, that cannot be seen or turns words round | " + sayCopied + "\n" +
				"1:22 hidden-character: &zwj; stands for a character, U+200D, that cannot be seen or turns words round | " + sayCopied + "\n" +
				"3:5 hidden-character: &rlm; stands for a character, U+200F, that cannot be seen or turns words round | Take it out; only a course of a language written from right to left may have it.\n" +
				"3:27 hidden-character: &ZeroWidthSpace; stands for a character, U+200B, that cannot be seen or turns words round | " + sayCopied},
		{"a reference for a control character", "a &#7; b", "1:3 hidden-character: &#7; stands for a character, U+0007, that cannot be seen or turns words round | " + sayCopied},
		{"references in code, escaped, and for what is seen", "`&#x202E;` \\&zwj; &shy;&eacute;&#169;\n\n    &zwj;\n\n```text\n&zwj;\n```\n\n- ```calculator slip-density\n  mass: 9 &zwj;\n  ```", ""},

		// Pictures.
		{"picture from elsewhere", "![b](https://example.org/x.svg)", `1:1 picture-file: picture "https://example.org/x.svg": this is no path to a picture | ` + sayPicture},
		{"no address for a picture", "![b]()", `1:1 picture-file: picture "": this is no path to a picture | ` + sayPicture},
		{"no words for a picture", "![ ](../../pictures/jar.svg)", "1:1 picture-words: a picture without words for whoever cannot see it | Write between the square brackets what the picture teaches."},
		{"title that is not shown", "a ![b](../../pictures/jar.svg \"c\")", "1:3 picture-words: the title of a picture within a line is not shown | Put the picture in a paragraph of its own, or take the title out."},
		{"picture in a picture", "![a ![b](../../pictures/jar.svg)](../../pictures/jar.svg)", "1:5 picture-words: a picture inside the words of another | Show it by itself."},

		// Headings.
		{"first level", "# Title\n\nTitle\n=====",
			"1:1 heading-level: a heading of the first level inside a page | Begin it with ##; the page's title stands in its opening block.\n" +
				"3:1 heading-level: a heading of the first level inside a page | Begin it with ##; the page's title stands in its opening block."},
		{"level left out", "## A\n\n#### B\n\n#### C\n\n## D", "3:1 heading-level: this heading is of level 4, the one before it of level 2 | Begin it with ###."},
		{"first heading too deep", "### A", "1:1 heading-level: this heading is of level 3, the one before it of level 1 | Begin it with ##."},
		{"no words in a heading", "a\n\n##\n\n- ## {#x}", "3:1 heading-words: a heading without words | Write the heading, or take the # signs out.\n5:3 heading-words: a heading without words | Write the heading, or take the # signs out."},
		{"id twice", "## A {#x}\n\n## B {#x}", `3:8 heading-id: the id "x" stands at two headings of this page | Give one of them another id.`},
		{"bad id", "## A {#x .wide}\n\n## B {#}", `1:8 heading-id: "x .wide" cannot be the id of a heading | Use letters, digits and hyphens: {#x-wide}.` + "\n" +
			`3:8 heading-id: "" cannot be the id of a heading | Use letters, digits and hyphens: {#part}.`},

		// Fences.
		{"unknown word", "> ```mixture x\n> a\n> ```",
			`1:6 fence-kind: "mixture" is neither a block of the handbook nor a known language | ` + sayKnown},
		{"misspelt word, with the use of a footnote inside", "```cuation Dust\na[^b]\n```\n\n[^b]: c\n\n[d]: ../../home.md",
			`1:4 fence-kind: "cuation" is neither a block of the handbook nor a known language | ` + "Did you mean `caution`? " + sayKnown},
		{"words after a language", "```yaml title\n```", `1:9 block-words: words after the language "yaml" | Take them out; a sample has no heading.`},
		{"fence never closed", "a\n\n> ```yaml\n> b: c\n\nd", "3:3 fence-end: this fence is never closed | " + sayFence},
		{"calculator never closed", "a\n\n```calculator slip-density\nmass: 9\n\nb", "3:1 fence-end: a calculator is never closed | " + sayFence},
		{"calculator that takes the next block's end", "a\n\n- ```calculator slip-density\n  mass: 9\n\n  b\n\n  ```question\n  ask: b\n  ```",
			"3:3 fence-end: a calculator is not closed before another fence, in line 8 | Write a line of at least as many of the same signs under it, before that one."},
		{"caution never closed", "~~~caution A\nb\n\nc", "1:1 fence-end: a caution is never closed | " + sayFence},
		{"sample of as many signs in a caution", "```caution\n```yaml\na: b\n```\n```",
			"2:1 fence-end: this fence is never closed | " + sayFence + "\n5:1 fence-end: this fence is never closed | " + sayFence},
		{"empty caution", "```caution A\n\n```", "1:4 block-body: a caution without words | Write between its fences what to take care of, and why."},
		{"blocks in a caution", "````caution\na\n\n```calculator slip-density\n```\n\n- ~~~~~question\n  ~~~~~\n\n~~~caution\nb\n~~~\n````",
			"4:4 block-place: a calculator inside a caution | Put it after the other block.\n7:8 block-place: a question inside a caution | Put it after the other block.\n10:4 block-place: a caution inside a caution | Put it after the other one."},
		{"asked nothing", "```asked\nYes.\n```", "1:4 block-words: what students ask without a question | Write the question on the same line: asked Can I glaze over pencil?"},
		{"asked without an answer", "```asked Why?\n```", "1:4 block-body: what students ask without words | Write the answer between its fences."},
		{"teaching with words behind it", "```teaching Show it\nShow it.\n```", "1:13 block-words: words after “teaching” | Write them in the body."},
		{"a footnote for the instructor alone", "a[^n]\n\n```teaching\nb[^n]\n```\n\n[^n]: c", "4:2 block-place: a footnote in a note for teaching | Students’ pages leave the note out, and would keep the footnote: write its words here."},
		{"a question for the instructor", "````teaching\na\n\n```asked Why?\nb\n```\n````", "4:4 block-place: what students ask inside a note for teaching | Put it after the other one."},

		// Limits.
		{"too deep in one line", strings.Repeat("> ", 51) + "a", "1:101 too-deep: quotes or lists nested more than 50 deep | Take out the > signs and list markers that are too many."},
		{"too deep line by line", ladder(51), "51:101 too-deep: quotes or lists nested more than 50 deep | Take out the > signs and list markers that are too many."},
		{"paragraph too long", "a\n\n" + strings.Repeat("word word\n", 2000), "3:1 too-long: this paragraph or table is longer than 16384 bytes | Divide it with a blank line."},
		{"table too wide", "a\n\n|" + strings.Repeat("b|", 41) + "\n|" + strings.Repeat("-|", 41), "3:1 too-long: a table of more than 40 columns | Divide it into smaller tables."},
		{"rows that do not fit", "> | a | b |\n> |---|--:|\n> | c |\n> | d | e | f |\n> | g \\| h | i\n> |",
			"3:3 table-row: this row has 1 cells, the table has 2 columns | " + sayRow + "\n4:3 table-row: this row has 3 cells, the table has 2 columns | " + sayRow + "\n6:3 table-row: this row has 0 cells, the table has 2 columns | " + sayRow},
		{"rows that fit", "a | b\n--|--\nc | d\n`e\\|f` | g\n", ""},
		{"head that does not fit is no table", "| a |\n|--|--|\n| b | c | d |", ""},
		{"too many brackets", "a\n\n" + strings.Repeat("[x](../../home.md)\n", 501), "3:1 too-long: this paragraph has more than 500 square brackets | Divide it with a blank line."},
		{"too many signs of emphasis", "a\n\n" + strings.Repeat("*x* _y_\n", 251), "3:1 too-long: this paragraph has more than 1000 asterisks and underscores | Divide it with a blank line; write one that is meant as itself as \\* or \\_."},
		{"a line to fill in", strings.Repeat("_", 3000) + " " + strings.Repeat("\\*", 1001), ""},
		{"too many footnotes", strings.Repeat("a[^b]\n\n", 1000) + "[^b]: c", "2001:1 too-long: more than 1000 footnotes and marks of footnotes | Divide the page, or write what the notes say where it belongs."},
		{"indented too far", "- a\n" + strings.Repeat(" ", 201) + "- b", "2:202 too-deep: quotes or lists nested more than 50 deep | Take out the > signs and list markers that are too many."},
		{"line too long", strings.Repeat("[a](b", 4000), "1:1 too-long: this paragraph or table is longer than 16384 bytes | Divide it with a blank line."},
		{"heading too long", "## a" + strings.Repeat("ü", 512), "1:4 too-long: this heading is longer than 1024 bytes | Say it in a few words."},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, findings := whole(test.source)
			findings.Sort()
			want := strings.Split(test.want, "\n")
			got := strings.Split(strings.TrimSuffix(said(findings), "\n"), "\n")
			for i := range max(len(got), len(want)) {
				switch {
				case i >= len(got):
					t.Errorf("missing: %s", want[i])
				case i >= len(want):
					t.Errorf("too much: %s", got[i])
				case got[i] != want[i]:
					t.Errorf("got:  %s\nwant: %s", got[i], want[i])
				}
			}
		})
	}
}

// ladder nests lists one deeper a line.
func ladder(depth int) string {
	var b strings.Builder
	for i := range depth {
		b.WriteString(strings.Repeat("  ", i) + "- a\n")
	}
	return b.String()
}

// TestRulesOfManySigns shows that a long rule is not taken for nested lists.
func TestRulesOfManySigns(t *testing.T) {
	for _, rule := range []string{strings.Repeat("- ", 60), strings.Repeat("* ", 60), strings.Repeat("-", 60)} {
		if got := string(read(t, "a\n\n"+rule+"\n").HTML); got != "<p>a</p>\n<hr>\n" {
			t.Errorf("%q gives %q", rule, got)
		}
	}
}

// TestManyFindings shows that a page reports a bounded number.
func TestManyFindings(t *testing.T) {
	_, findings := whole(strings.Repeat("a <b> [c] [d](e.md)\n\n", 500))
	if want := source.MostFindings + 1; len(findings) != want || findings[want-1].Rule != finding.TooMany {
		t.Errorf("%d findings, want %d", len(findings), want)
	}
}
