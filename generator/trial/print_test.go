//go:build judges

package trial

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// printed prints the page in the tab on A4 paper and gives the words on it.
func (b *tab) printed() string {
	b.t.Helper()
	sheet, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4)))
	if err != nil {
		b.t.Fatal(err)
	}
	file := filepath.Join(b.t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, sheet, 0o666); err != nil {
		b.t.Fatal(err)
	}
	words, err := exec.Command("pdftotext", "-layout", file, "-").Output()
	if err != nil {
		b.t.Fatalf("pdftotext: %v", err)
	}
	return string(words)
}

// letters drops all but letters and digits, for comparing words that a printer
// may break and hyphenate.
func letters(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, text)
}

func TestPagesPrint(t *testing.T) {
	h := published(t)
	b := open(t)
	for _, k := range []string{"lesson", "calculator", "state", "unit"} {
		address := h.one(t, k)
		b.visit(h.home + address)
		b.ready()
		sheet := b.printed()
		said := letters(sheet)
		headings := ask[[]string](b, `[...document.querySelectorAll("h1, main h2")].filter(e => e.checkVisibility()).map(e => e.textContent)`)
		if len(headings) == 0 {
			t.Errorf("%s: has no heading", address)
		}
		for _, heading := range headings {
			if !strings.Contains(said, letters(heading)) {
				t.Errorf("%s: the printed sheet lacks the heading %q:\n%s", address, heading, sheet)
			}
		}
		first := ask[string](b, `document.querySelector("main p").textContent`)
		if !strings.Contains(said, letters(first)) {
			t.Errorf("%s: the printed sheet lacks the paragraph %q:\n%s", address, first, sheet)
		}
	}
}
