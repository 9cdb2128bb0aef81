package register

import (
	"fmt"
	"html/template"
	"strings"

	qr "github.com/piglig/go-qr"
)

// qrMargin is the white around a QR code that ISO/IEC 18004 asks for, in modules.
const qrMargin = 4

// qrCode draws the QR code (ISO/IEC 18004) of a text, a run of dark modules a path.
// Its correction is the standard's M: a splash of slip may cover a seventh of it.
func qrCode(text string) (template.HTML, error) {
	code, err := qr.EncodeText(text, qr.Medium)
	if err != nil {
		return "", fmt.Errorf("the QR code of %q: %w", text, err)
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
	side := code.Size() + 2*qrMargin
	return template.HTML(fmt.Sprintf(`<svg class="qr" viewBox="0 0 %d %d" shape-rendering="crispEdges" aria-hidden="true"><path fill="#fff" d="M0 0h%dv%dH0z"/><path d="%s"/></svg>`, side, side, side, side, path.String())), nil
}
