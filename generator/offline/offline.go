// Package offline writes the service worker with which a phone keeps a handbook, so
// that it opens without a network: the theme's script, and before it the list of what
// was published, each file with its size and digest, parted into what a phone takes
// with the handbook, what it takes with a unit, and what it keeps once somebody asked
// for it.
//
// The rule the compiler cannot check: the same files and the same script give the
// same bytes, and so the same name of the edition; any other file gives another.
package offline

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/base32"
	"encoding/base64"
	"encoding/json"
	"errors"
	"path"
	"slices"
	"strings"
)

const (
	// Most is how many bytes a phone takes without being asked. Of a larger handbook
	// it takes what every unit needs, and the units that its reader chooses.
	Most = 20_000_000
	// MostPictures is how many bytes of these may be photos; the others are kept once
	// they were looked at.
	MostPictures = 5_000_000
	// pictureWidth is the width, in points, of which one file of a picture is taken
	// or the next narrower: it is what a phone asks for.
	pictureWidth = 816
)

// File is a published file.
type File struct {
	Address string // from the handbook's root
	Size    int    // bytes
	Sum     [sha256.Size]byte
}

// Part says what a file is to a phone.
type Part struct {
	Left    string // why no phone takes it, one sentence; empty: phones do
	Unit    string // the only unit whose pages need it; empty: it is of the whole handbook
	Picture string // what it shows, the same of all widths; empty: it is no photo
	Width   int    // of a photo, in points
}

// Worker returns the service worker for files that were published; part tells of each
// what it is to a phone. script defines what is done with the list, which it finds as
// globalThis.edition. page is the address of the page that says what a phone keeps.
func Worker(script []byte, page string, files []File, part func(address string) Part) ([]byte, error) {
	if len(script) == 0 {
		return nil, errors.New("the theme has no scripts/worker.ts, and without it no phone can keep the handbook")
	}
	l := newList(files, part)
	l.Page = page
	text, err := json.Marshal(l)
	if err != nil {
		return nil, err
	}
	all := sha256.Sum256(slices.Concat(text, script))
	l.Name = base32.StdEncoding.EncodeToString(all[:5])
	if text, err = json.Marshal(l); err != nil {
		return nil, err
	}
	return bytes.Join([][]byte{[]byte("globalThis.edition="), text, []byte("\n"), script}, nil), nil
}

// list is what the script is told of an edition.
type list struct {
	Name  string `json:"name"`  // eight letters and digits
	Page  string `json:"page"`  // the page that tells of it
	Whole bool   `json:"whole"` // a phone takes core and all units
	Core  []line `json:"core"`  // what is taken with the handbook
	Units []unit `json:"units"` // what is taken with each unit, by their ids in order
	Rest  []line `json:"rest"`  // what is kept once it was asked for
}

type unit struct {
	ID    string `json:"id"`
	Lines []line `json:"lines"`
}

// line is one file.
type line struct {
	File
	picture int // from 1, the same of all widths of a picture; 0 for what is none
}

// MarshalJSON writes a line as short as it can be: a large handbook has thousands.
func (l line) MarshalJSON() ([]byte, error) {
	all := []any{l.Address, l.Size, Digest(l.Sum)}
	if l.picture > 0 {
		all = append(all, l.picture)
	}
	return json.Marshal(all)
}

// Digest is how the list writes a SHA-256: its first 12 bytes in the base64 of
// addresses. A file that is not the one that was published has one chance in 2^96.
func Digest(sum [sha256.Size]byte) string {
	return base64.RawURLEncoding.EncodeToString(sum[:12])
}

// newList parts files into what is taken when.
func newList(files []File, part func(string) Part) *list {
	files = slices.SortedFunc(slices.Values(files), func(a, b File) int { return strings.Compare(a.Address, b.Address) })
	l := &list{Core: []line{}, Units: []unit{}, Rest: []line{}}
	taken, left := pictures(files, part)
	l.Rest = append(l.Rest, left...)
	size := 0
	for _, f := range files {
		if p := part(f.Address); p.Left == "" && p.Picture == "" {
			size += f.Size
			l.add(line{File: f}, p.Unit)
		}
	}
	for _, p := range taken {
		size += p.Size
		l.add(p, part(p.Address).Unit)
	}
	if l.Whole = size <= Most; !l.Whole {
		l.shorten()
	}
	return l
}

// add lists a file that is taken.
func (l *list) add(f line, of string) {
	if of == "" {
		l.Core = append(l.Core, f)
		return
	}
	n, found := slices.BinarySearchFunc(l.Units, of, func(u unit, id string) int { return strings.Compare(u.ID, id) })
	if !found {
		l.Units = slices.Insert(l.Units, n, unit{ID: of})
	}
	l.Units[n].Lines = append(l.Units[n].Lines, f)
}

// shorten leaves in a large handbook's core what a phone may take without being
// asked: shared files first, then pages, the smallest first, since a calculator or a
// state is worth more at the bench than a long list is.
func (l *list) shorten() {
	turn := func(f line) int {
		if path.Ext(f.Address) == ".html" {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(l.Core, func(a, b line) int { return cmp.Or(turn(a)-turn(b), a.Size-b.Size) })
	size := 0
	for n, f := range l.Core {
		if size += f.Size; size > Most {
			l.Rest = append(l.Rest, l.Core[n:]...)
			l.Core = l.Core[:n]
			return
		}
	}
}

// pictures decides of the photos which are taken: of each one width, the smallest
// files first, as many as there is room for.
func pictures(files []File, part func(string) Part) (taken, left []line) {
	numbers := map[string]int{}
	best := map[int]int{} // by number: the place in all of the width that is taken
	var all []line
	for _, f := range files {
		p := part(f.Address)
		if p.Left != "" || p.Picture == "" {
			continue
		}
		n := numbers[p.Picture]
		if n == 0 {
			n = len(numbers) + 1
			numbers[p.Picture] = n
		}
		all = append(all, line{f, n})
		if at, ok := best[n]; !ok || nearer(p.Width, part(all[at].Address).Width) {
			best[n] = len(all) - 1
		}
	}
	var chosen []line
	for n, f := range all {
		if best[f.picture] == n {
			chosen = append(chosen, f)
		} else {
			left = append(left, f)
		}
	}
	slices.SortStableFunc(chosen, func(a, b line) int { return a.Size - b.Size })
	size := 0
	for _, f := range chosen {
		if size += f.Size; size > MostPictures {
			left = append(left, f)
		} else {
			taken = append(taken, f)
		}
	}
	return taken, left
}

// nearer reports whether a width is nearer to what a phone asks for than another is:
// the widest that is not too wide, else the narrowest.
func nearer(width, than int) bool {
	if (width <= pictureWidth) != (than <= pictureWidth) {
		return width <= pictureWidth
	}
	if width <= pictureWidth {
		return width > than
	}
	return width < than
}
