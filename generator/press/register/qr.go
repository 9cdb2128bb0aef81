package register

import (
	"fmt"
	"strings"

	qr "github.com/piglig/go-qr"
)

// qrMargin is the white around a QR code that ISO/IEC 18004 asks for, in modules.
const qrMargin = 4

// qrView is a QR code as a square of SVG: a module is a unit wide.
type qrView struct {
	Side int    // with its white margin
	Path string // the dark modules
}

// qrCode draws the QR code (ISO/IEC 18004) of a text, a run of dark modules a path.
// Its correction is the standard's M: a splash of slip may cover a seventh of it.
func qrCode(text string) (*qrView, error) {
	code, err := qr.EncodeText(text, qr.Medium)
	if err != nil {
		return nil, fmt.Errorf("the QR code of %q: %w", text, err)
	}
	var path strings.Builder
	for y := range code.Size() {
		for x := 0; x < code.Size(); x++ {
			from := x
			for x < code.Size() && code.Module(x, y) {
				x++
			}
			if x > from {
				fmt.Fprintf(&path, "M%d %dh%dv1h-%dz", from+qrMargin, y+qrMargin, x-from, x-from)
			}
		}
	}
	return &qrView{code.Size() + 2*qrMargin, path.String()}, nil
}
