package proof

import (
	"fmt"

	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// A drawing stands in each page that shows it, as often as it is shown there. So
// a few lines can ask for a page that no phone loads, and a few such pages for
// more than there is of memory.
const (
	mostDrawn    = 1 << 20  // bytes of drawings in one page
	mostDrawnAll = 48 << 20 // in all pages together
)

// checkDrawn reports the first drawing of a page that is too much there, and the
// first of the course that is too much in all.
func checkDrawn(pages []*Page) finding.List {
	var found finding.List
	all := 0
	for _, page := range pages {
		here := 0
		text := source.New(page.File, page.Source)
		for i, ref := range page.Document.Refs {
			if ref.Kind != markup.PictureRef || page.Targets[i].Picture == nil {
				continue
			}
			size := len(page.Targets[i].Picture.SVG)
			if here <= mostDrawn && here+size > mostDrawn {
				text.Report(ref.Offset, finding.PictureSize, fmt.Sprintf("up to this one, the drawings of this page hold more than %d KiB", mostDrawn>>10), "Show fewer, or draw with fewer points.")
			}
			if all <= mostDrawnAll && all+size > mostDrawnAll {
				text.Report(ref.Offset, finding.PictureSize, fmt.Sprintf("up to this one, the drawings of all pages hold more than %d MiB", mostDrawnAll>>20), "Show fewer, or draw with fewer points.")
			}
			here, all = here+size, all+size
		}
		found = append(found, text.Found...)
	}
	return found
}
