// Package photo makes of a picture as a phone or a scanner wrote it the files that
// a page shows: upright, in a few widths, without what tells where, when and with
// what it was taken. It exists so that whoever writes a lesson can put a photo of
// 12 or 50 million points into the folder, and whoever reads it on a phone loads
// what the phone can show.
//
// The rules the compiler cannot check: the same bytes give the same files on every
// machine, so sums are of whole numbers; nothing is made larger than it was; what
// is read is not trusted, so sizes are looked at before anything is decoded, and
// what is decoded at once is bounded by the memory that it takes (Lab). Whoever
// changes what is made of a picture counts edition up.
package photo

import (
	"crypto/sha256"
	"errors"
	"image"
)

// ErrDamaged is the error for a picture that breaks off, or whose parts do not fit
// together.
var ErrDamaged = errors.New("damaged")

// Widths of the files, in points. The words of a page stand in a column of 34 rem,
// 544 CSS pixels: the smallest is for a screen that has a point for each of them,
// the largest for one that has two, and for phones that have three for each of the
// 360 that are left beside the margins; the middle one is for phones that have two.
var widths = []int{Column, Column * 3 / 2, Column * 2}

// Column is how wide a page shows a picture at most, in CSS pixels.
const Column = 544

// Bounds of one picture.
const (
	MostPoints = 64_000_000 // a phone's largest camera makes 50 million
	mostSide   = 30_000
	MostMemory = 320 << 20 // bytes that decoding takes
)

// Head is what a picture says of itself before its points are read.
type Head struct {
	Kind          string // "jpeg", "png", "gif", "webp", "heic", "avif"; empty for none of them
	Width, Height int    // as it lies in the file
	Memory        int64  // bytes that it takes to make its files, beside its own
	Progressive   bool   // a JPEG that is held in memory several times over
}

// Points is how many points it has.
func (h Head) Points() int { return h.Width * h.Height }

// TooLarge reports whether it is beyond the bounds in points.
func (h Head) TooLarge() bool {
	return h.Width > mostSide || h.Height > mostSide || h.Points() > MostPoints
}

// Version is one of the files made of a picture.
type Version struct {
	Width, Height int    // in points, as shown
	Ending        string // of its name: ".jpg"
	Sum           [sha256.Size]byte
	Size          int // bytes
}

// Made is what is made of a picture.
type Made struct {
	Width, Height int       // CSS pixels at which it is shown at most
	Points        int       // of the source
	Versions      []Version // narrowest first, at least one
	files         [][]byte
}

// add adds a file, narrowest first.
func (m *Made) add(ending string, w, h int, data []byte) {
	m.Versions = append([]Version{{w, h, ending, sha256.Sum256(data), len(data)}}, m.Versions...)
	m.files = append([][]byte{data}, m.files...)
}

// shown notes at which size the picture is shown, from that of the whole.
func (m *Made) shown(w, h int) {
	m.Width = min(w, Column)
	m.Height = heightOf(m.Width, w, h)
}

// heightOf is the height of a picture of w by h points made so wide.
func heightOf(width, w, h int) int { return max(1, (2*h*width+w)/(2*w)) }

// widthsOf are the widths to be made of a picture of some width, widest first: its own
// where it is narrower than the widest, and no two that are nearly the same.
func widthsOf(w int) []int {
	all := []int{min(w, widths[len(widths)-1])}
	for i := len(widths) - 1; i >= 0; i-- {
		if 5*all[len(all)-1] >= 6*widths[i] {
			all = append(all, widths[i])
		}
	}
	return all
}

// decodable is a picture taken apart, ready to be decoded.
type decodable struct {
	kind    string
	up      int
	profile []byte // nil for none
	whole   []byte // to be published as it is; nil where it must be made anew
	decode  func() (image.Image, error)
}
