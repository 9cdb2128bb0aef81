package shelf

import (
	"bytes"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// untouched is how old a folder must be to count as a leftover when no lock
// tells that nobody is at work in it.
const untouched = 24 * time.Hour

// clearLeftovers removes what killed runs left in parent and, of an update in
// place, in path itself. Whoever calls it has both locked; if that was not
// possible, alone is false and only what is old counts. What cannot be cleared
// does no harm and is tried again the next time.
func clearLeftovers(parent, path string, alone bool) {
	for _, dir := range []string{parent, path} {
		entries, err := os.ReadDir(dir)
		if err != nil {
			continue
		}
		for _, e := range entries {
			w := work(filepath.Join(dir, e.Name()))
			if e.IsDir() && strings.HasPrefix(e.Name(), workPrefix) && (alone || w.older(untouched)) {
				w.clear(dir == path)
			}
		}
	}
}

// older reports whether a work folder has not been touched for a time.
func (w work) older(than time.Duration) bool {
	info, err := os.Lstat(string(w))
	return err == nil && time.Since(info.ModTime()) > than
}

// clear removes one leftover, inside the folder that it was for or beside it.
func (w work) clear(inside bool) {
	name, err := os.ReadFile(w.owner())
	switch {
	case errors.Is(err, fs.ErrNotExist):
		w.clearUnnamed()
		return
	case err != nil:
		return
	case inside:
		w.remove()
		return
	}
	path := filepath.Join(filepath.Dir(string(w)), filepath.Base(string(name)))
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		_ = os.Rename(w.old(), path) // killed between two renames: the old tree goes back
	}
	if w.tookPlace(path) && errors.Join(salvage(w.tree(), path), salvage(w.old(), path)) != nil {
		return // somebody's files are in it
	}
	if _, err := os.Lstat(w.old()); errors.Is(err, fs.ErrNotExist) {
		w.remove()
	}
}

// clearUnnamed removes a leftover that does not say what it was for: one of a
// run killed at its very beginning, or of a slipbook that had no locks. That
// may be at work still, and its trees that were moved aside are all there is
// of a handbook.
func (w work) clearUnnamed() {
	if os.Remove(string(w)) != nil && w.older(time.Hour) && !strings.HasSuffix(string(w), "-old") {
		_ = removeTree(string(w))
	}
}

// tookPlace reports whether the new tree of a leftover came to stand at path.
func (w work) tookPlace(path string) bool {
	planned, err := os.ReadFile(w.marker())
	if err != nil {
		return false
	}
	now, err := os.ReadFile(filepath.Join(path, Marker))
	return err == nil && bytes.Equal(planned, now)
}

// salvage takes a tree apart of which path has taken the place: files that
// its marker lists are removed, and dot files that path lacks, or has older,
// are moved there.
func salvage(tree, path string) error {
	if _, err := os.Lstat(tree); err != nil {
		return ignoreAbsent(err)
	}
	m := readMarker(tree)
	switch {
	case m == nil:
		m = &marker{files: map[string]listed{}} // it held nothing but dot files
	case m.files == nil:
		_, err := setAside(tree, path)
		return err
	}
	v, err := take(tree, m)
	if err != nil {
		return err
	}
	was := snapshot(v.files)
	for name := range was {
		s, err := stateOf(filepath.Join(tree, filepath.FromSlash(name)), nil, m.files[name].digests)
		if err != nil || s == byHand {
			delete(was, name)
		}
	}
	was.addFolders(tree, slices.Collect(maps.Keys(m.files))...) // also those whose files are gone already
	return merge{from: tree, to: path, was: was, there: snapshot{}}.run()
}
