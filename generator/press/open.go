package press

import (
	"io/fs"

	"slipbook/generator/markup"
	"slipbook/generator/press/theme"
)

// The pieces that stand before and after the words of every page; they take the
// page's shell. Of frameHead each page has its own; what frameTop and frameEnd
// print must depend on the kind of page, its folder and its strip alone.
const (
	frameHead = "frame-head"
	frameTop  = "frame-top"
	frameEnd  = "frame-end"
)

// Open reads a theme from its folder, and wants it to have a template for each kind
// of page, of block and of what is said of safety. A block that the press itself has
// no view of is an error too, since no page with one could be printed.
func Open(folder fs.FS) (*theme.Theme, error) {
	if err := checkViews(markup.Kinds(), blockViews()); err != nil {
		return nil, err
	}
	wanted := []string{frameHead, frameTop, frameEnd, bookKind.template, volumeKind.template, "calculator-standing",
		careMark, careWho, careLine, careWhole, careKey, careShort}
	for _, kind := range pageKinds {
		wanted = append(wanted, kind.template)
	}
	return theme.Open(folder, append(wanted, markup.Kinds()...))
}
