package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
)

// merge takes the tree from apart, of which the tree to has taken the place. A
// file that is still as it was is removed; one that somebody made or wrote to
// meanwhile is moved to its place in to; one that somebody removed meanwhile is
// removed there too.
type merge struct {
	from, to   string
	was, there snapshot // how both trees were before; what is not in them is not ours
	lost       *[]string
}

// run takes the tree apart. The error names what could be put nowhere; it
// stands in from.
func (m merge) run() error {
	m.lost = new([]string)
	m.dropRemoved()
	var err error
	for range 100 { // whoever still writes into from is done sooner or later
		*m.lost = nil
		if err = m.folder("."); err == nil || len(*m.lost) > 0 {
			break
		}
	}
	if len(*m.lost) > 0 {
		slices.Sort(*m.lost)
		return fmt.Errorf("files that came meanwhile stand in %q: %s; move them where they belong and remove that folder", m.from, quoted(*m.lost))
	}
	return err
}

// dropRemoved removes from to the dot files that were in both trees and that
// somebody has removed from from.
func (m merge) dropRemoved() {
	for name, was := range m.there {
		if was.IsDir() || m.was[name] == nil || !dotted(name) {
			continue
		}
		_, err := os.Lstat(m.at(m.from, name))
		if now, failed := os.Lstat(m.at(m.to, name)); errors.Is(err, fs.ErrNotExist) && failed == nil && sameState(was, now) {
			_ = os.Remove(m.at(m.to, name))
		}
	}
}

func (m merge) at(root, name string) string { return filepath.Join(root, filepath.FromSlash(name)) }

// folder empties one folder of from and removes it.
func (m merge) folder(name string) error {
	dir := m.at(m.from, name)
	if info, err := os.Lstat(dir); err == nil && info.Mode().Perm()&0o700 != 0o700 {
		_ = os.Chmod(dir, 0o700) // a copy of a folder that forbids writing
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	marked := false
	for _, e := range entries {
		at := path.Join(name, e.Name())
		if at == Marker {
			marked = true
			continue
		}
		if err := m.entry(at); err != nil {
			return err
		}
	}
	if len(*m.lost) > 0 {
		return nil // the folder is needed still
	}
	if marked { // last: a run that is killed before needs the list again
		if err := m.entry(Marker); err != nil {
			return err
		}
	}
	return os.Remove(dir)
}

// entry deals with one name in from.
func (m merge) entry(name string) error {
	from, to := m.at(m.from, name), m.at(m.to, name)
	info, err := os.Lstat(from)
	if err != nil {
		return ignoreAbsent(err)
	}
	if was := m.was[name]; was != nil && !info.IsDir() && sameState(was, info) {
		return ignoreAbsent(os.Remove(from))
	}
	there, err := os.Lstat(to)
	absent := errors.Is(err, fs.ErrNotExist)
	bothDots := dotted(name) && !info.IsDir() && !absent && !there.IsDir()
	switch {
	case info.IsDir() && (m.was[name] != nil || !absent && there.IsDir()):
		return m.folder(name)
	case absent:
		if err := makeFolders(m.to, []string{name}); err != nil {
			return err
		}
		return ignoreAbsent(os.Rename(from, to))
	case os.SameFile(info, there):
		return ignoreAbsent(os.Remove(from))
	case bothDots && m.newer(name, info, there):
		return ignoreAbsent(os.Rename(from, to))
	case bothDots:
		return ignoreAbsent(os.Remove(from)) // its owner has written it anew in to
	}
	*m.lost = append(*m.lost, name)
	return nil
}

// newer reports whether a dot file in from was written later than that in to. Two
// writes within one tick of the system's clock bear the same time: then to's is
// the later one, for to is where a writer finds the folder by its name.
func (m merge) newer(name string, info, there fs.FileInfo) bool {
	was := m.there[name]
	return was != nil && sameState(was, there) || info.ModTime().After(there.ModTime())
}

// ignoreAbsent drops the error of a name that has gone meanwhile.
func ignoreAbsent(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}
