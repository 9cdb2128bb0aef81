//go:build judges

package trial

import (
	"fmt"

	"github.com/chromedp/cdproto/page"
)

// windowWidths are the widths of windows in which no page may be scrolled
// sideways: phones upright and on their side, tablets, pages magnified twice, and
// both sides of each width at which the theme arranges things anew.
var windowWidths = []int64{320, 360, 412, 480, 481, 568, 608, 609, 640, 704, 767, 768, 800, 1023, 1024, 1119, 1120, 1280}

// fewWidths are those at which a page is looked at unfolded, and in large letters.
var fewWidths = []int64{360, 640, 768, 1280}

// largeWidths are those at which a page is looked at with letters twice as large:
// narrow as the narrowest phone, too.
var largeWidths = []int64{320, 360, 640, 768, 1280}

// spacedWidths are those at which it is looked at with wide spacing.
var spacedWidths = []int64{320, 700, 1280}

// spaceWide gives the words of a page as much room as readers may take (WCAG 2.2,
// success criterion 1.4.12); spaceUsual takes it away again.
const (
	spaceWide = `(() => {
		const sheet = new CSSStyleSheet()
		sheet.replaceSync("* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }")
		document.adoptedStyleSheets = [sheet]
		return getComputedStyle(document.querySelector("h1")).letterSpacing !== "normal"
	})()`
	spaceUsual = `(() => { document.adoptedStyleSheets = []; return true })()`
)

// lettersOf makes the letters of the tab as large as a reader may have set them
// in the browser, in pixels; 16 is usual.
func (b *tab) lettersOf(size int64) {
	b.t.Helper()
	call(b, page.SetFontSizes, page.SetFontSizesParams{FontSizes: &page.FontSizes{Standard: size, Fixed: size * 13 / 16}})
	if !b.until(fmt.Sprintf(`getComputedStyle(document.documentElement).fontSize === "%dpx"`, size)) {
		b.t.Fatalf("the letters do not become %d px", size)
	}
}

// fits looks whether the page in the tab can be scrolled sideways in windows of
// some widths.
func (b *tab) fits(what string, widths []int64) {
	b.t.Helper()
	for _, width := range widths {
		b.size(width, 700)
		for _, fault := range ask[[]string](b, widest) {
			b.t.Errorf("%s, %d px: %s", what, width, fault)
		}
	}
}
