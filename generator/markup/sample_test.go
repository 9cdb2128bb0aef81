package markup

import (
	"io/fs"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/alecthomas/chroma/v2"

	"slipbook/themes"
)

// tag finds the spans of coloured code.
var tag = regexp.MustCompile(`<span class="hl-([a-z]+)">|</span>`)

// shown prints coloured code with its classes in round marks, so that a test
// reads well: ⟨number:50⟩.
func shown(language, code string) string {
	html := string(sampleHTML(language, []byte(code)))
	html = strings.TrimSuffix(strings.TrimPrefix(html, `<pre class="sample" tabindex="0"><code>`), "</code></pre>\n")
	return tag.ReplaceAllStringFunc(html, func(s string) string {
		if s == "</span>" {
			return "⟩"
		}
		return "⟨" + tag.FindStringSubmatch(s)[1] + ":"
	})
}

func TestSamples(t *testing.T) {
	tests := []struct{ name, language, code, want string }{
		{"listing", "batch", "# White slip, dry\nBall clay       50\nChina clay   12.5 %\nPotash feldspar F4  25 parts # sieved\nTotal    100\n+ Cobalt stain   8\n",
			"⟨note:# White slip, dry⟩\nBall clay       ⟨number:50⟩\nChina clay   ⟨number:12.5⟩ ⟨unit:%⟩\nPotash feldspar F4  ⟨number:25⟩ ⟨unit:parts ⟩⟨note:# sieved⟩\n⟨word:Total    ⟩⟨number:100⟩\n⟨sign:+⟩ Cobalt stain   ⟨number:8⟩\n"},
		{"listing without amounts", "batch", "Frit 3134\nClay + sand\n<b>\n", "Frit ⟨number:3134⟩\nClay + sand\n&lt;b&gt;\n"},
		{"yaml", "yaml", "tare: 62.4 g\nright: true # yes\n- {text: \"a: b\", n: -1}\n",
			"⟨name:tare⟩⟨sign::⟩ 62.4 g\n⟨name:right⟩⟨sign::⟩ ⟨word:true⟩ ⟨note:# yes⟩\n⟨sign:-⟩ ⟨sign:{⟩⟨name:text⟩⟨sign::⟩ ⟨text:&quot;a: b&quot;⟩⟨sign:,⟩ ⟨name:n⟩⟨sign::⟩ ⟨number:-1⟩⟨sign:}⟩\n"},
		{"markdown", "markdown", "## Stir\n\n- a *b* [c](d.md)\n```caution Dust\n`x`\n```\n",
			"⟨head:## Stir⟩\n\n⟨sign:-⟩ a ⟨head:*b*⟩ ⟨name:[c](d.md)⟩\n⟨word:```caution Dust⟩\n⟨text:`x`⟩\n⟨word:```⟩\n"},
		{"shell", "shell", "slipbook calc slip-density mass=174.5 --json | less # x\necho \"$HOME\" $A\n",
			"⟨word:slipbook⟩ calc slip-density mass=174.5 ⟨name:--json⟩ ⟨sign:|⟩ less ⟨note:# x⟩\n⟨word:echo⟩ ⟨text:&quot;$HOME&quot;⟩ ⟨text:$A⟩\n"},
		{"text", "text", "a: \"b\" & 50\n", "a: &quot;b&quot; &amp; 50\n"},
		{"no language", "", "a: 50\n", "a: 50\n"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := shown(test.language, test.code); got != test.want {
				t.Errorf("got:\n%s\nwant:\n%s", got, test.want)
			}
		})
	}
}

// TestSamplesKeepTheirText shows that no lexer loses, adds or changes a byte.
func TestSamplesKeepTheirText(t *testing.T) {
	odd := "# \n\n+ + 1,5 %% \t釉薬 5 g\n\"'`~<>&[](){}|$-- -a --- : , - 1e5 #\nTotal\nSUM 5\n\\\x00\ufeff\n```\n"
	for _, language := range languages {
		html := string(sampleHTML(language, []byte(odd)))
		html = strings.TrimSuffix(strings.TrimPrefix(html, `<pre class="sample" tabindex="0"><code>`), "</code></pre>\n")
		if got, want := tag.ReplaceAllString(html, ""), escape(odd); got != want {
			t.Errorf("%s\ngot:  %q\nwant: %q", language, got, want)
		}
	}
}

// TestLanguagesHaveLexers shows that every language but plain text is coloured
// and that no lexer is out of reach.
func TestLanguagesHaveLexers(t *testing.T) {
	for _, language := range languages {
		if _, ok := lexers[language]; ok == (language == "text") {
			t.Errorf("language %s: lexer %v", language, ok)
		}
	}
	if len(lexers) != len(languages)-1 {
		t.Errorf("%d lexers for %d languages", len(lexers), len(languages))
	}
}

// TestLongSamplesStayPlain shows that colouring is bounded.
func TestLongSamplesStayPlain(t *testing.T) {
	for _, size := range []int{longestColoured, longestColoured + 1} {
		code := strings.Repeat("5", size-1) + "\n"
		start := time.Now()
		coloured := strings.Contains(string(sampleHTML("batch", []byte(code))), "<span")
		if coloured != (size <= longestColoured) {
			t.Errorf("%d bytes: coloured %v", size, coloured)
		}
		if took := time.Since(start); took > 20*time.Second {
			t.Errorf("%d bytes took %v", size, took)
		}
	}
}

// TestInksCanBeRead wants a rule for every class of coloured words on light and on
// dark screens, and computes the contrast of each ink with the ground that samples
// stand on as WCAG 2.2 defines it.
func TestInksCanBeRead(t *testing.T) {
	const least = 4.5
	light, dark, ok := strings.Cut(style(t, "sample.css"), "@media screen and (prefers-color-scheme: dark) {")
	grounds := regexp.MustCompile(`--sheet: (#[0-9a-f]{6});`).FindAllStringSubmatch(style(t, "base.css"), -1)
	if !ok || len(grounds) != 2 {
		t.Fatalf("no dark rules, or %d grounds", len(grounds))
	}
	for n, css := range []string{light, dark} {
		ground := chroma.MustParseColour(grounds[n][1])
		for _, i := range inks {
			m := regexp.MustCompile(`\.sample \.` + i.class + ` \{ color: (#[0-9a-f]{6})`).FindStringSubmatch(css)
			if m == nil {
				t.Errorf("no rule for %s", i.class)
				continue
			}
			if c := contrast(chroma.MustParseColour(m[1]), ground); c < least {
				t.Errorf("%s: %s on %s has a contrast of %.2f, less than %.1f", i.class, m[1], ground, c, least)
			}
		}
	}
}

// style returns a style sheet of the theme.
func style(t *testing.T, name string) string {
	t.Helper()
	theme, err := themes.Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	css, err := fs.ReadFile(theme, "styles/"+name)
	if err != nil {
		t.Fatal(err)
	}
	return string(css)
}

// TestContrast checks the ruler: black on white is 21, #777777 on white is 4.48
// (worked example of the WCAG 2 working group: just too little).
func TestContrast(t *testing.T) {
	white := chroma.MustParseColour("#ffffff")
	if c := contrast(chroma.MustParseColour("#000000"), white); math.Abs(c-21) > 1e-9 {
		t.Errorf("black on white: %v", c)
	}
	if c := contrast(chroma.MustParseColour("#777777"), white); math.Abs(c-4.48) > 0.005 {
		t.Errorf("grey on white: %v", c)
	}
}

func contrast(a, b chroma.Colour) float64 {
	l := []float64{luminance(a), luminance(b)}
	slices.Sort(l)
	return (l[1] + 0.05) / (l[0] + 0.05)
}

// luminance is the relative luminance of WCAG 2.2.
func luminance(c chroma.Colour) float64 {
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.Red()) + 0.7152*linear(c.Green()) + 0.0722*linear(c.Blue())
}
