package markup

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"
)

// TestHTML holds source against the HTML it gives, where nothing is wrong.
func TestHTML(t *testing.T) {
	tests := []struct{ name, source, want string }{
		{"paragraph with typography", `She said "it's wet" -- and 4 1/2" wide...`,
			"<p>She said “it’s wet” – and 4 1/2&quot; wide…</p>\n"},
		{"heading with letters of any script", "## Größe *und* Maß\n\n### 釉薬",
			"<h2 id=\"größe-und-maß\">Größe <em>und</em> Maß</h2>\n<h3 id=\"釉薬\">釉薬</h3>\n"},
		{"repeated headings", "## Wash\n\n## Wash\n\n## Wash 2\n\n## Wash",
			"<h2 id=\"wash\">Wash</h2>\n<h2 id=\"wash-2\">Wash</h2>\n<h2 id=\"wash-2-2\">Wash 2</h2>\n<h2 id=\"wash-3\">Wash</h2>\n"},
		{"written ids come before made ones", "## Stir\n\n## Once more {#stir}\n\nSet *this* {#not-an-id}\n---",
			"<h2 id=\"stir-2\">Stir</h2>\n<h2 id=\"stir\">Once more</h2>\n<h2 id=\"not-an-id\">Set <em>this</em></h2>\n"},
		{"closing signs and an id in the middle", "## {#a} b ##\n", "<h2 id=\"a-b\">{#a} b</h2>\n"},
		{"heading of signs only", "## ???", "<h2 id=\"part\">???</h2>\n"},
		{"heading from the words of a link", "## The [*bucket*](../wash/strength.md)",
			"<h2 id=\"the-bucket\">The <a href=\"../wash/strength.html\"><em>bucket</em></a></h2>\n"},
		{"page links", "[a](../wash/strength.md) [b](../../home.md) [c](../wash/strength.md#how-strong) [d](lesson.md)",
			"<p><a href=\"../wash/strength.html\">a</a> <a href=\"../index.html\">b</a> <a href=\"../wash/strength.html#how-strong\">c</a> <a href=\"lesson.html\">d</a></p>\n"},
		{"links on the page", "## Größe\n\n[a](#größe) [b](lesson.md#größe) [c](#gr%C3%B6%C3%9Fe)",
			"<h2 id=\"größe\">Größe</h2>\n<p><a href=\"#gr%C3%B6%C3%9Fe\">a</a> <a href=\"#gr%C3%B6%C3%9Fe\">b</a> <a href=\"#gr%C3%B6%C3%9Fe\">c</a></p>\n"},
		{"made places", "[a](glossary:bisque) [b](state:bisque) [c](calculator:slip-density)",
			"<p><a href=\"../glossary.html#bisque\">a</a> <a href=\"../states/bisque.html\">b</a> <a href=\"../calculators/slip-density.html\">c</a></p>\n"},
		{"outside links", "[a](https://example.org/?a=1&b=2 \"T\") <http://example.org> <me@example.org> [m](mailto:me@example.org)",
			"<p><a href=\"https://example.org/?a=1&amp;b=2\" title=\"T\" rel=\"external\">a</a> <a href=\"http://example.org\" rel=\"external\">http://example.org</a> " +
				"<a href=\"mailto:me@example.org\" rel=\"external\">me@example.org</a> <a href=\"mailto:me@example.org\" rel=\"external\">m</a></p>\n"},
		{"reference links", "[a][x], [x] and [x][]\n\n[X]: ../wash/strength.md",
			"<p><a href=\"../wash/strength.html\">a</a>, <a href=\"../wash/strength.html\">x</a> and <a href=\"../wash/strength.html\">x</a></p>\n"},
		{"escaped brackets", `mass \[g\] and ![jar](../../pictures/jar.svg) \[x](y)`,
			"<p>mass [g] and <svg role=\"img\" aria-label=\"jar\" width=\"320\" height=\"200\" viewBox=\"0 0 320 200\"><path d=\"M0 0\"/></svg> [x](y)</p>\n"},
		{"drawing as a plate", "![A jar & *slip*](../../pictures/jar.svg \"The \\\"jar\\\"\")",
			"<figure class=\"plate\">\n<svg role=\"img\" aria-label=\"A jar &amp; slip\" width=\"320\" height=\"200\" viewBox=\"0 0 320 200\"><path d=\"M0 0\"/></svg>\n" +
				"<figcaption>The &quot;jar&quot;</figcaption>\n</figure>\n"},
		{"picture as a file, in a list", "- ![A bucket](../../pictures/bucket.png)",
			"<ul>\n<li>\n<figure class=\"plate\">\n<img src=\"../pictures/bucket-1A2B3C4D.png\" width=\"40\" height=\"30\" alt=\"A bucket\" loading=\"lazy\" decoding=\"async\">\n</figure>\n</li>\n</ul>\n"},
		{"table", "| a | b | c |\n|---|--:|:-:|\n| 1 | 2 | 3 |",
			"<div class=\"sheet\" tabindex=\"0\">\n<table>\n<thead>\n<tr>\n<th scope=\"col\">a</th>\n<th class=\"at-end\" scope=\"col\">b</th>\n<th class=\"at-middle\" scope=\"col\">c</th>\n</tr>\n</thead>\n" +
				"<tbody>\n<tr>\n<td>1</td>\n<td class=\"at-end\">2</td>\n<td class=\"at-middle\">3</td>\n</tr>\n</tbody>\n</table>\n</div>\n"},
		{"definition list", "Bisque\n: fired once", "<dl>\n<dt>Bisque</dt>\n<dd>fired once</dd>\n</dl>\n"},
		{"footnote", "Stir.[^a]\n\n[^a]: At *every* load.",
			"<p>Stir.<sup id=\"note.1.from.1\"><a href=\"#note.1\" class=\"note-mark\" role=\"doc-noteref\">1</a></sup></p>\n" +
				"<div class=\"page-notes\" role=\"doc-endnotes\">\n<ol>\n<li id=\"note.1\">\n<p>At <em>every</em> load.\u00a0<a href=\"#note.1.from.1\" class=\"note-back\" role=\"doc-backlink\" aria-label=\"up from 1\">up 1/1</a></p>\n</li>\n</ol>\n</div>\n"},
		{"footnote of two places", "a[^n] b[^n]\n\n[^n]: c",
			"<p>a<sup id=\"note.1.from.1\"><a href=\"#note.1\" class=\"note-mark\" role=\"doc-noteref\">1</a></sup> " +
				"b<sup id=\"note.1.from.2\"><a href=\"#note.1\" class=\"note-mark\" role=\"doc-noteref\">1</a></sup></p>\n" +
				"<div class=\"page-notes\" role=\"doc-endnotes\">\n<ol>\n<li id=\"note.1\">\n<p>c\u00a0<a href=\"#note.1.from.1\" class=\"note-back\" role=\"doc-backlink\" aria-label=\"up from 1\">up 1/2</a>" +
				"\u00a0<a href=\"#note.1.from.2\" class=\"note-back\" role=\"doc-backlink\" aria-label=\"up from 1\">up 2/2</a></p>\n</li>\n</ol>\n</div>\n"},
		{"plain samples", "    a < b\n\n```\n<c>\n```\n\n```text\nd\n```",
			"<pre class=\"sample\" tabindex=\"0\"><code>a &lt; b\n</code></pre>\n<pre class=\"sample\" tabindex=\"0\"><code>&lt;c&gt;\n</code></pre>\n<pre class=\"sample\" tabindex=\"0\"><code>d\n</code></pre>\n"},
		{"windows line ends", "## A {#b}\r\n\r\n```caution Dust\r\nWet *it*.\r\n```\r\n\r\n[x](#b)\r\n",
			"<h2 id=\"b\">A</h2>\n<section class=\"caution\">\nDust 1|\n<p>Wet <em>it</em>.</p>\n</section>\n<p><a href=\"#b\">x</a></p>\n"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := string(read(t, test.source).HTML); got != test.want {
				t.Errorf("source %q\ngot:  %q\nwant: %q", test.source, got, test.want)
			}
		})
	}
}

// TestDocument looks at what is kept beside the HTML.
func TestDocument(t *testing.T) {
	d := read(t, strings.Join([]string{
		"## First *part*", "",
		"[s](../wash/strength.md#how), [h](../../home.md), [self](#first-part), [g](glossary:bisque)", "",
		"![jar](../../pictures/jar.svg) and ![jar](../../pictures/jar.svg)", "",
		"```caution", "Wear a mask.", "```", "",
		"```calculator slip-density", "```", "",
		"```calculator slip-density", "```", "",
		"```question", "ask: Why?", "answers:", "- {text: a, because: b, right: true}", "- {text: c, because: d}", "```",
	}, "\n"))
	if h := d.Headings; len(h) != 1 || h[0].Level != 2 || h[0].ID != "first-part" || h[0].Text != "First part" || h[0].Offset != 0 {
		t.Errorf("headings %+v", h)
	}
	var refs []string
	for n, r := range d.Refs {
		if r.Number != n {
			t.Errorf("reference %d has the number %d", n, r.Number)
		}
		refs = append(refs, fmt.Sprintf("%d %s at %d", r.Kind, r.To, r.Offset))
	}
	want := []string{"0 ../wash/strength.md#how at 17", "0 ../../home.md at 47", "0 #first-part at 67", "1 glossary:bisque at 88", "3 ../../pictures/jar.svg at 110", "3 ../../pictures/jar.svg at 145"}
	if !slices.Equal(refs, want) {
		t.Errorf("references %q, want %q", refs, want)
	}
	if len(d.Named(CautionBlock)) != 1 || len(d.Named(QuestionBlock)) != 1 || !slices.Equal(d.Calculators(), []string{"slip-density"}) {
		t.Errorf("blocks %+v, calculators %v", d.Blocks, d.Calculators())
	}
}

// TestPieces wants what depends on anything but the source to be no finished HTML.
func TestPieces(t *testing.T) {
	d := read(t, "## A\n\nb [c](../../home.md) d[^n] ![e](../../pictures/jar.svg)\n\n```caution\n[f](../../home.md)\n```\n\n[^n]: g\n")
	for _, pieces := range [][]Piece{d.Pieces, d.Blocks[0].Pieces} {
		for _, p := range pieces {
			for _, sign := range []string{"href", "src=", " id=", "<h2", "<svg"} {
				if strings.Contains(p.HTML, sign) {
					t.Errorf("%q holds %s", p.HTML, sign)
				}
			}
			set := 0
			for _, is := range []bool{p.HTML != "", p.Ref != nil, p.Block != nil, p.Heading != nil, p.Note != nil} {
				if is {
					set++
				}
			}
			if set != 1 {
				t.Errorf("%+v is %d things", p, set)
			}
		}
	}
}

// TestQuotesOfALanguage wants the quotation marks of the page's language.
func TestQuotesOfALanguage(t *testing.T) {
	for language, want := range map[string]string{"en-US": "“a” ‘b’", "de-AT": "„a“ ‚b‘", "es": "«a» “b”", "tlh": "“a” ‘b’", "": "“a” ‘b’"} {
		d, _ := Read([]byte(`"a" 'b'`), language)
		if got := string(setBare(d.Pieces, true)); got != "<p>"+want+"</p>\n" {
			t.Errorf("%s: %q", language, got)
		}
	}
}

// TestParseTogether reads one page on many goroutines; the race detector and
// equal results show that they share nothing.
func TestParseTogether(t *testing.T) {
	source := "## A\n\n[x][y] \"q\"\n\n[y]: ../../home.md\n\n````caution C\n- b\n\n```batch\nBall clay 50\n```\n````\n"
	want := string(read(t, source).HTML)
	var all sync.WaitGroup
	for range 16 {
		all.Go(func() {
			for range 8 {
				if d, _ := whole(source); string(d.HTML) != want {
					t.Errorf("got %q, want %q", d.HTML, want)
				}
			}
		})
	}
	all.Wait()
}
