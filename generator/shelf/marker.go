package shelf

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Marker is the name of the file by which a later publish knows a folder as
// its own, and each file in it.
const Marker = ".slipbook-published"

// workPrefix begins the name of the folder in which a publish prepares what it
// will put in place. A run that was killed leaves it; the next one finds it by
// this name.
const workPrefix = ".slipbook-new-"

// Copy says whom an edition is for.
type Copy string

// The two copies of a handbook. Neither ever takes the other's place.
const (
	Students   Copy = "students"
	Instructor Copy = "instructor"
)

// digest is the SHA-256 of a file's bytes.
type digest [sha256.Size]byte

// listed is what a marker says of one file.
type listed struct {
	digests []digest // what it holds; while a folder is being updated, what it held and what it will hold
	before  bool     // it is a shared file of the edition before
}

// marker is what stands in the file of that name.
type marker struct {
	copy  Copy              // "" in format 1, which does not say
	files map[string]listed // by address; nil in format 1, which has no list
}

// firstFormat is the whole marker that was written before there were lists.
const firstFormat = `This folder was written by "slipbook publish".
The next publish replaces everything in it, except names that start with a dot.
Change the lessons, not these files. To keep this folder, remove this file:
slipbook then leaves the folder alone.
`

const opening = `This folder was written by "slipbook publish"; it is the %s copy.
The next publish replaces the files listed here, and stops when it finds others,
or one of these that somebody has changed. Names that start with a dot are left
alone. Change the lessons, not these files. To keep this folder, remove this
file: slipbook then leaves the folder alone.

format 2
copy %s
`

// owner names whose a copy is.
func (c Copy) owner() string {
	if c == Instructor {
		return "instructor's"
	}
	return "students'"
}

// text returns the marker as it stands in its file: for people, and below that
// one line for each file, sorted by address. The last line counts them, so
// that half a marker is noticed.
func (m *marker) text() []byte {
	out := fmt.Appendf(nil, opening, m.copy.owner(), m.copy)
	lines := 0
	for _, name := range slices.Sorted(maps.Keys(m.files)) {
		edition := "now"
		if m.files[name].before {
			edition = "before"
		}
		for _, d := range m.files[name].digests {
			out = fmt.Appendf(out, "%s %x %s\n", edition, d, name)
			lines++
		}
	}
	return fmt.Appendf(out, "end %d\n", lines)
}

// parseMarker reads a marker, or returns nil for text that is none.
func parseMarker(text []byte) *marker {
	if string(text) == firstFormat {
		return &marker{}
	}
	for _, copy := range []Copy{Students, Instructor} {
		if list, ok := bytes.CutPrefix(text, fmt.Appendf(nil, opening, copy.owner(), copy)); ok {
			return parseList(copy, string(list))
		}
	}
	return nil
}

// parseList reads the lines of a marker of format 2.
func parseList(copy Copy, list string) *marker {
	m := &marker{copy: copy, files: map[string]listed{}}
	lines := strings.SplitAfter(list, "\n")
	if n := len(lines); n < 2 || lines[n-1] != "" || lines[n-2] != fmt.Sprintf("end %d\n", n-2) {
		return nil
	}
	for _, line := range lines[:len(lines)-2] {
		edition, rest, _ := strings.Cut(strings.TrimSuffix(line, "\n"), " ")
		sum, name, _ := strings.Cut(rest, " ")
		bytes, err := hex.DecodeString(sum)
		if err != nil || len(bytes) != sha256.Size || edition != "now" && edition != "before" || check(name, nil) != nil {
			return nil
		}
		at := m.files[name]
		m.files[name] = listed{append(at.digests, digest(bytes)), edition == "before"}
	}
	return m
}

// readMarker returns the marker of a folder, nil when it has none: a folder or
// a link of that name is not ours, nor is a file that holds anything else.
func readMarker(dir string) *marker {
	name := filepath.Join(dir, Marker)
	if info, err := os.Lstat(name); err != nil || !info.Mode().IsRegular() {
		return nil
	}
	text, err := os.ReadFile(name)
	if err != nil {
		return nil
	}
	return parseMarker(text)
}

// during returns the marker for a folder that is on the way from one list to
// another: both count, so that after a sudden end all files are known as ours.
func (m *marker) during(next *marker) *marker {
	both := &marker{copy: next.copy, files: maps.Clone(next.files)}
	for name, was := range m.files {
		at := listed{both.files[name].digests, was.before} // nothing grows old on the way
		for _, d := range was.digests {
			if !slices.Contains(at.digests, d) {
				at.digests = append(slices.Clone(at.digests), d)
			}
		}
		both.files[name] = at
	}
	return both
}
