//go:build judges

package trial

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
)

// cells returns the words of every cell of the chart's table, and of its heads.
const cells = `[...document.querySelectorAll("table.chart :is(th, td)")].map(e => e.textContent.trim()).filter(words => words)`

// onOneSheet prints the chart of a handbook on each paper and looks for one
// page on its side, with the words of every cell.
func onOneSheet(t *testing.T, h *handbook) {
	t.Helper()
	b := open(t)
	b.visit(h.home + "chart.html")
	want := ask[[]string](b, cells)
	for _, p := range papers {
		s := b.print(p)
		if s.pages != 1 {
			t.Errorf("%s: the chart takes %d pages", p.name, s.pages)
		}
		if !s.is(p, true) {
			t.Errorf("%s: the sheet is %g by %g points, want %g by %g", p.name, s.width, s.height, p.longer, p.short)
		}
		said := letters(strings.Join(s.words(t, asDrawn), " "))
		for _, words := range want {
			if !strings.Contains(said, letters(words)) {
				t.Errorf("%s: the sheet lacks %q", p.name, words)
			}
		}
	}
}

func TestChartPrintsOnOneSheet(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	b.visit(h.home + "chart.html")
	if n := len(ask[[]string](b, cells)); n < 6*10 {
		t.Fatalf("the chart has only %d cells with words: this test looks at the wrong place", n)
	}
	onOneSheet(t, h)
}

// printedBars returns the pattern of each verdict's bar, by its word.
const printedBars = `(() => {
	const drawn = {}
	for (const e of document.querySelectorAll("table.chart .bar")) {
		const style = getComputedStyle(e)
		const word = e.querySelector("b").textContent.split(",")[0]
		drawn[word] = style.borderLeftStyle
	}
	return drawn
})()`

// notBlack returns the text on the printed chart that is not black.
const notBlack = `[...document.querySelectorAll("table.chart *, .key *")].filter(e => e.checkVisibility() && e.textContent.trim()
	&& getComputedStyle(e).color !== "rgb(0, 0, 0)").map(e => e.outerHTML.slice(0, 100))`

func TestChartOnPaperNeedsNoColour(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	b.visit(h.home + "chart.html")
	drawn := ask[map[string]string](b, printedBars)
	patterns := map[string]bool{}
	for _, style := range drawn {
		patterns[style] = true
	}
	if len(drawn) != 4 || len(patterns) != 4 {
		t.Errorf("the bars of the verdicts are %v, want four words with a pattern each", drawn)
	}
	for _, e := range ask[[]string](b, notBlack) {
		t.Errorf("not black on paper: %s", e)
	}
}

// entry is one technique of the program's own table, from its id to the next.
var entry = regexp.MustCompile(`(?s)\n  - id: feathering\n.*?\n\n?  - id: `)

// entryName and entryWords are what no two of its entries may share.
var (
	entryName  = regexp.MustCompile(`\n    name: .*`)
	entryWords = regexp.MustCompile(`\n    words: .*`)
)

// TestLongerChartPrintsOnOneSheet adds rows to the table, as an instructor may,
// and prints again.
func TestLongerChartPrintsOnOneSheet(t *testing.T) {
	t.Parallel()
	slipbook, err := program()
	if err != nil {
		t.Fatal(err)
	}
	for _, more := range []int{2, 6, 12} {
		t.Run(fmt.Sprintf("%d rows more", more), func(t *testing.T) {
			dir := t.TempDir()
			if err := os.CopyFS(filepath.Join(dir, "content"), os.DirFS(root+"/content")); err != nil {
				t.Fatal(err)
			}
			addRows(t, filepath.Join(dir, "content", "decoration.yaml"), more)
			to := filepath.Join(dir, "handbook")
			if err := run(nil, slipbook, "publish", "--content", filepath.Join(dir, "content"), "--to", to); err != nil {
				t.Fatal(err)
			}
			h, err := serve(to)
			if err != nil {
				t.Fatal(err)
			}
			onOneSheet(t, h)
		})
	}
}

// addRows writes techniques into a course's table that are feathering under
// other names.
func addRows(t *testing.T, file string, more int) {
	t.Helper()
	table, err := os.ReadFile(root + "/generator/course/base/decoration.yaml")
	if err != nil {
		t.Fatal(err)
	}
	own, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	at := entry.FindIndex(table)
	if at == nil {
		t.Fatal("the program's own table has no feathering with a technique after it")
	}
	end := at[1] - len("\n  - id: ")
	var all strings.Builder
	all.Write(own)
	all.WriteString("\ntechniques:")
	for n := range more {
		words := string(table[at[0]:end])
		words = strings.Replace(words, "id: feathering", fmt.Sprintf("id: feathering-%d", n), 1)
		words = entryName.ReplaceAllString(words, fmt.Sprintf("\n    name: Feathering or marbling number %d", n))
		words = entryWords.ReplaceAllString(words, fmt.Sprintf("\n    words: [feathered %d]", n))
		all.WriteString(words)
	}
	if err := os.WriteFile(file, []byte(all.String()), 0o666); err != nil {
		t.Fatal(err)
	}
}

// TestChartOnAPhone shows that the chart is a list by state on a phone and a
// table on a wide screen, and that a state's first answer needs no sideways
// scrolling.
func TestChartOnAPhone(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	const form = `[!!document.querySelector("table.chart").checkVisibility(), [...document.querySelectorAll(".chart-state")].filter(e => e.checkVisibility()).length].join(" ")`
	for _, c := range []struct {
		width int64
		want  string
	}{{320, "false 6"}, {360, "false 6"}, {768, "false 6"}, {1280, "true 0"}} {
		b.size(c.width, 800)
		b.visit(h.home + "chart.html")
		if got := ask[string](b, form); got != c.want {
			t.Errorf("%d px: table and lists in sight %q, want %q", c.width, got, c.want)
		}
		const low = `[...document.querySelectorAll(".lines a")].filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 47.5).length`
		if n := ask[int](b, low); n > 0 {
			t.Errorf("%d px: %d lines are too low for a wet finger", c.width, n)
		}
	}
}
