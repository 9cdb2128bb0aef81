package proof

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

func TestSentences(t *testing.T) {
	tests := []struct {
		name, text string
		want       []string
	}{
		{"nothing", " \t", nil},
		{"one without a stop", " Stir it ", []string{"Stir it"}},
		{"two", "Stir it. Pour it.", []string{"Stir it.", "Pour it."}},
		{"all stops", "Stir! Why? So… And... So", []string{"Stir!", "Why?", "So…", "And...", "So"}},
		{"a small letter goes on", "Wait ... and then. or not", []string{"Wait ... and then. or not"}},
		{"a digit begins", "Wait. 5 minutes.", []string{"Wait.", "5 minutes."}},
		{"quotes and brackets", "“Stir.” (Pour.) “Wait.” 'So.' [Or.]", []string{"“Stir.”", "(Pour.)", "“Wait.”", "'So.'", "[Or.]"}},
		{"a bracket before a small letter", "It is 5 mm. (or so) thick", []string{"It is 5 mm. (or so) thick"}},
		{"a thing begins", "Type it. \uFFFC says so.", []string{"Type it.", "\uFFFC says so."}},
		{"decimal points", "At 1.45 it is 0.5 mm.", []string{"At 1.45 it is 0.5 mm."}},
		{"an address", "See example.org. Then stir.", []string{"See example.org.", "Then stir."}},
		{"abbreviations", "Use a flux, e.g. Borax, i.e. Frit, approx. 5 g (cf. Fig. 3).", []string{"Use a flux, e.g. Borax, i.e. Frit, approx. 5 g (cf. Fig. 3)."}},
		{"no before a number", "See no. 5. No. Stir.", []string{"See no. 5.", "No.", "Stir."}},
		{"etc. may end", "Brushes, etc. Then stir.", []string{"Brushes, etc.", "Then stir."}},
		{"no letter with a capital", "At 4 °C. Then cup A. Then B.", []string{"At 4 °C.", "Then cup A.", "Then B."}},
		{"a colon ends nothing", "So: Stir. Pour", []string{"So: Stir.", "Pour"}},
		{"letters without capitals", "搅拌。 倒。 חכה. עוד.", []string{"搅拌。", "倒。", "חכה.", "עוד."}},
		{"stops alone", "... ?! .", []string{"... ?! ."}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var got []string
			for s := range sentences(test.text) {
				got = append(got, test.text[s.start:s.end])
			}
			if strings.Join(got, "|") != strings.Join(test.want, "|") {
				t.Errorf("got %q, want %q", got, test.want)
			}
		})
	}
	for range sentences("A. B.") {
		break // must not go on
	}
}

func TestWordsOfASentence(t *testing.T) {
	for text, want := range map[string]int{
		"": 0, "Stir it": 2, "8 g": 2, "8\u00a0g": 2, "1 + 4": 2, "1+4": 1, "25 × 40 ÷ 10": 3, "a — b": 2, "a—b": 2, "leather-hard": 1,
		"don’t": 1, "10–20 g": 2, "“Stir” (it)": 2, "\uFFFC and \uFFFC": 1, "½ cup, & °": 1, "größer är": 2, "... – !": 0,
	} {
		n := 0
		for s := range sentences(text) {
			n += s.words
		}
		if n != want {
			t.Errorf("%q: %d words, want %d", text, n, want)
		}
	}
}

// FuzzSentences shows that every word stands in one sentence, in order, and that
// a foreign word is found where it stands.
func FuzzSentences(f *testing.F) {
	for _, seed := range []string{"Stir it. Pour it!", "“A.” (B.) e.g. C no. 5", "... ?! .", "a\xff. \xffB. \u2014", "搅拌。 倒。", "\uFFFC. \uFFFC", "2-meter gray_x.Gray//color"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		for s := range sentences(text) {
			if s.start < end || s.end <= s.start || s.end > len(text) || s.words < 0 || s.words > s.end-s.start {
				t.Fatalf("%+v in %q", s, text)
			}
			if between := strings.Trim(text[end:s.start], " \t\n\r\v\f\u0085\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u2028\u2029\u202f\u205f\u3000—"); between != "" {
				t.Fatalf("%q is in no sentence of %q", between, text)
			}
			if utf8.ValidString(text) && !utf8.ValidString(text[s.start:s.end]) {
				t.Fatalf("%+v cuts a character of %q", s, text)
			}
			end = s.end
			british().check(text[s.start:s.end], func(at int, fault, _ string) {
				if at < 0 || at >= s.end-s.start || !strings.Contains(fault, text[s.start+at:s.start+at+4]) {
					t.Fatalf("%s at %d of %q", fault, at, text[s.start:s.end])
				}
			})
		}
	})
}

// wording returns what the rules about wording find in a page, whose links and
// pictures need not be there.
func wording(t *testing.T, language, source string) finding.List {
	t.Helper()
	c := &course.Course{Language: language, Home: &course.Page{Kind: course.HomePage, File: "home.md", Address: "index.html", Source: []byte(source)}}
	_, findings := new(Reader).Read(c, nil)
	return slices.DeleteFunc(findings, func(f finding.Finding) bool { return f.Rule.Severity == finding.Error })
}

func TestLongSentences(t *testing.T) {
	long := "Stir" + strings.Repeat(" it", 40) + "."
	short := "Stir" + strings.Repeat(" it", 24) + ".\n"
	const says = " warning: this sentence has 41 words, more than 40 (long-sentence)\n    Make two of it, or leave out what the reader can do without."
	tests := []struct{ name, source, want string }{
		{"paragraph", "Pour. " + long, "1:7:"},
		{"on a later line", "Pour\nit.\n" + long, "3:1:"},
		{"over lines", "> Pour it. Stir\n> " + strings.Repeat("it\n> ", 40), "1:12:"},
		{"emphasis and a link", "Pour. **[Stir](units/slip/unit.md)" + long[4:] + "**", "1:7:"},
		{"quotes", "Pour. \"" + long + "\"", "1:7:"},
		{"list item", "1. " + long, "1:4:"},
		{"definition", "Pour\n: " + long, "2:3:"},
		{"term", long + "\n: Pour", "1:1:"},
		{"table cell", "| a | b |\n|---|---|\n| Pour. | Pour. " + long + " |", "3:17:"},
		{"caption", "![Pour](pictures/jar.svg \"" + long + "\")", "1:27:"},
		{"caution", "```caution Dust\nPour. " + long + "\n```", "2:7:"},
		{"what students ask", "```asked " + long + "\nPour.\n```", "1:10:"},
		{"note for teaching", "```teaching\nPour\n: " + long + "\n```", "3:3:"},
		{"question", "```question\nask: " + long + "\nanswers:\n  - {text: One, right: true, because: It is so.}\n  - {text: Two, because: It is not so.}\n```", "2:6:"},
		{"answer", "```question\nask: Why?\nanswers:\n  - text: >-\n      Pour.\n      " + long + "\n    right: true\n    because: It is so.\n  - {text: Two, because: It is not so.}\n```", "6:7:"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			findings := wording(t, "en-GB", test.source)
			if len(findings) != 1 || findings[0].String() != "home.md:"+test.want+says {
				t.Errorf("got:\n%v\nwant:\nhome.md:%s%s", findings, test.want, says)
			}
		})
	}
	for _, source := range []string{
		short + short, "Pour[^a].\n\n[^a]: " + long, "## " + long, "```text\n" + long + "\n```", "    " + long, "Pour `" + long + "`", "![" + long + "](pictures/jar.svg)", short[:len(short)-2] + "[^a].\n\n[^a]: it",
	} {
		if findings := wording(t, "de", source); len(findings) > 0 {
			t.Errorf("%q: %v", source, findings)
		}
	}
}

// TestShareOfLongSentences: a page bears one long sentence in ten, and one where it has
// fewer than ten; beyond that each of them is named.
func TestShareOfLongSentences(t *testing.T) {
	long := "Stir" + strings.Repeat(" it", 25) + ". "
	for _, test := range []struct{ short, long, want int }{{0, 1, 0}, {0, 2, 2}, {18, 2, 0}, {17, 2, 2}, {27, 3, 0}, {26, 3, 3}} {
		findings := wording(t, "en-GB", strings.Repeat("Stir it. ", test.short)+strings.Repeat(long, test.long))
		if len(findings) != test.want {
			t.Errorf("%d short and %d long sentences: %d findings, want %d: %v", test.short, test.long, len(findings), test.want, findings)
		}
	}
}

func TestManyFindingsOfAPage(t *testing.T) {
	long := "Stir" + strings.Repeat(" it", 40) + ".\n\n"
	if findings := wording(t, "en-GB", strings.Repeat(long, source.MostFindings+50)); len(findings) != source.MostFindings+1 {
		t.Errorf("%d findings, want %d", len(findings), source.MostFindings+1)
	}
}
