//go:build judges

package trial

import (
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// paper is a size of paper, with its shorter and longer sides in points.
type paper struct {
	name          string
	size          chromedp.PaperSize
	short, longer float64
}

// papers are what everything that is meant for paper must fit on.
var papers = []paper{
	{"A4", chromedp.PaperA4, 595, 842},
	{"US Letter", chromedp.PaperLetter, 612, 792},
}

// pdfFacts reads the number of pages, the width and the height from what
// pdfinfo says.
var pdfFacts = regexp.MustCompile(`(?ms)^Pages:\s+(\d+)$.*^Page size:\s+([\d.]+) x ([\d.]+) pts`)

// sheet is a printed document: its file, its number of pages, its size in
// points.
type sheet struct {
	file          string
	pages         int
	width, height float64
}

// print prints the page in the tab on a paper.
func (b *tab) print(p paper, options ...chromedp.PDFOption) sheet {
	b.t.Helper()
	data, err := b.pdf(p, options...)
	if err != nil {
		b.t.Fatal(err)
	}
	file := filepath.Join(b.t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, data, 0o666); err != nil {
		b.t.Fatal(err)
	}
	info, err := exec.Command("pdfinfo", file).Output()
	if err != nil {
		b.t.Fatalf("pdfinfo: %v", err)
	}
	m := pdfFacts.FindSubmatch(info)
	if m == nil {
		b.t.Fatalf("pdfinfo does not tell pages and size:\n%s", info)
	}
	return sheet{file, int(number(b.t, m[1])), number(b.t, m[2]), number(b.t, m[3])}
}

// pdf has the browser print the page. Another engine than Chromium's takes no options.
func (b *tab) pdf(p paper, options ...chromedp.PDFOption) ([]byte, error) {
	if b.driver == nil {
		return chromedp.Run(b.ctx, chromedp.PrintToPDF(append(options, chromedp.PDFPaper(p.size))...))
	}
	const centimetres = 2.54 / 72 // in a point
	return b.driver.print(p.short*centimetres, p.longer*centimetres)
}

// is reports whether the document is on a paper, upright or on its side.
func (s sheet) is(p paper, onItsSide bool) bool {
	width, height := p.short, p.longer
	if onItsSide {
		width, height = height, width
	}
	return math.Abs(s.width-width) <= 1 && math.Abs(s.height-height) <= 1
}

// number reads a number that pdfinfo wrote.
func number(t *testing.T, text []byte) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(string(text), 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// How pdftotext puts words in order.
const (
	asDrawn = "-raw"
	asSeen  = "-layout"
)

// words returns the words of each page, or of the part of it that more options
// name.
func (s sheet) words(t *testing.T, order string, more ...string) []string {
	t.Helper()
	words, err := exec.Command("pdftotext", append(append([]string{order}, more...), s.file, "-")...).Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return strings.Split(strings.TrimSuffix(string(words), "\f"), "\f")
}

// letters drops all but letters and digits, for comparing words that a printer
// may break and hyphenate. Letters that are drawn as one are taken apart.
func letters(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, ligatures.Replace(text))
}

// ligatures are what fonts draw as one sign.
var ligatures = strings.NewReplacer("ﬀ", "ff", "ﬁ", "fi", "ﬂ", "fl", "ﬃ", "ffi", "ﬄ", "ffl")

func TestPagesPrint(t *testing.T) {
	t.Parallel()
	open(t).printsPages(published(t))
}

// asPrinted is a function that returns the words of an element with what paper adds to them: behind a link to
// a lesson stands its number.
const asPrinted = `e => {
	const said = e.cloneNode(true)
	said.querySelectorAll("a[data-number]").forEach(a => a.append(" (" + a.dataset.number + ")"))
	return said.textContent
}`

// printsPages prints a page of each kind that is read in one go, and looks for its
// words on the sheets.
func (b *tab) printsPages(h *handbook) {
	t := b.t
	t.Helper()
	for _, k := range []string{"lesson", "calculator", "state", "unit", "medium", "answers", "faults", "style"} {
		address := h.one(t, k)
		b.visit(h.home + address)
		b.ready()
		said := letters(strings.Join(b.print(papers[0]).words(t, asDrawn), " "))
		headings := ask[[]string](b, `[...document.querySelectorAll("h1, main h2")].filter(e => e.checkVisibility() && !e.closest(".bench")).map(e => e.textContent)`)
		if len(headings) == 0 {
			t.Errorf("%s: has no heading", address)
		}
		first := ask[string](b, `document.querySelector("main p:not(form p)").textContent`)
		folded := ask[[]string](b, `[...document.querySelectorAll(".quick > div > p:not(.from)")].map(`+asPrinted+`)`)
		for _, words := range append(append(headings, first), folded...) {
			if !strings.Contains(said, letters(words)) {
				t.Errorf("%s: the printed sheet lacks %q", address, words)
			}
		}
	}
}

// TestLessonPrintsAsAWorksheet prints a lesson with questions in Chromium and Firefox, on
// both papers: what is said of the choices stands on the last page alone, the choices
// before it, and nothing of what only a screen can use on any page.
func TestLessonPrintsAsAWorksheet(t *testing.T) {
	t.Parallel()
	h := published(t)
	inEachEngine(t, func(t *testing.T, b *tab) {
		if b.t = t; b.driver != nil && !b.driver.prints {
			return // WebKit's server has no command for it
		}
		b.visit(h.home + "slip/coat-a-pot.html")
		b.ready()
		asked := ask[[]string](b, `[...document.querySelectorAll(".question .ask, .question summary")].map(e => e.textContent)`)
		told := ask[[]string](b, `[...document.querySelectorAll(".question .answer p")].map(e => e.textContent)`)
		screen := ask[[]string](b, `[...document.querySelectorAll("[data-go-on], .bench p, .reckon-go")].map(e => e.textContent)`)
		if len(asked) < 8 || len(told) < 6 || len(screen) == 0 {
			t.Fatalf("%d words asked, %d told, %d of the screen: this test looks at the wrong place", len(asked), len(told), len(screen))
		}
		for _, p := range papers {
			pages := b.print(p).words(t, asDrawn)
			last := len(pages) - 1
			sheet, apart := letters(strings.Join(pages[:last], " ")), letters(pages[last])
			for _, words := range asked {
				if !strings.Contains(sheet, letters(words)) {
					t.Errorf("%s: the worksheet lacks %q", p.name, words)
				}
			}
			for _, words := range told {
				if strings.Contains(sheet, letters(words)) || !strings.Contains(apart, letters(words)) {
					t.Errorf("%s: %q stands on the worksheet, or not on the page of the answers", p.name, words)
				}
			}
			for _, words := range screen {
				if words = letters(words); words != "" && strings.Contains(sheet+apart, words) {
					t.Errorf("%s: %q is printed", p.name, words)
				}
			}
		}
	})
}
