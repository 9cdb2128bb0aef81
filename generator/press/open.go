package press

import (
	"fmt"
	"io/fs"
	"slices"

	"slipbook/generator/markup"
	"slipbook/generator/press/book"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/ebook"
	"slipbook/generator/press/register"
	"slipbook/generator/press/setting"
	"slipbook/generator/press/theme"
)

// Open reads a theme from its folder, and wants it to have a template for each kind
// of page, of block and of what is said of safety. A block that the press itself has
// no view of is an error too, since no page with one could be printed.
func Open(folder fs.FS) (*theme.Theme, error) {
	if err := setting.Check(); err != nil {
		return nil, err
	}
	wanted := []string{frameHead, frameTop, frameEnd, book.Kind.Template, book.VolumeKind.Template, desk.StandingPiece, setting.StepPiece, register.LabelPiece}
	for _, kind := range pageKinds {
		wanted = append(wanted, kind.Template)
	}
	t, err := theme.Open(folder, slices.Concat(wanted, ebook.Templates, care.Forms, markup.Kinds()))
	if err != nil {
		return nil, err
	}
	for _, key := range register.Words() {
		if t.Word(key) == "" {
			return nil, fmt.Errorf("theme: words.yaml has no %q, which a poster or a form says", key)
		}
	}
	return t, nil
}
