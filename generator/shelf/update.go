package shelf

import (
	"os"
	"path"
	"path/filepath"
	"slices"
)

// update brings a folder up to date file by file: shared files first, then the
// pages that ask for them, and only then what is gone is removed. Each file is
// put in its place by a rename, so that a reader gets the old or the new one.
type update struct {
	root string // the folder
	from string // holds the new files
	next string // a place on the same disk for a file on its way
	keep bool   // from shall keep its files
}

// run does what a plan says. Until it is done the marker lists both editions,
// so that after a sudden end the next publish knows every file.
func (u update) run(t *target, p *plan) error {
	was := t.marker
	if was == nil {
		was = &marker{}
	}
	if err := u.mark(was.during(p.next)); err != nil {
		return err
	}
	inTheWay, later := parted(p)
	if err := u.drop(inTheWay); err != nil {
		return err
	}
	for _, name := range p.put {
		if err := u.put(name); err != nil {
			return err
		}
	}
	if err := u.drop(later); err != nil {
		return err
	}
	return u.mark(p.next)
}

// parted divides the names to be removed: a file that stands where a folder has
// to come, and what lies in a folder where a file has to, go first.
func parted(p *plan) (inTheWay, later []string) {
	folders := map[string]bool{}
	for _, name := range p.put {
		for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
			folders[dir] = true
		}
	}
	for _, name := range p.drop {
		first := folders[name]
		for dir := path.Dir(name); dir != "." && !first; dir = path.Dir(dir) {
			first = slices.Contains(p.put, dir)
		}
		if first {
			inTheWay = append(inTheWay, name)
		} else {
			later = append(later, name)
		}
	}
	return inTheWay, later
}

func (u update) at(name string) string { return filepath.Join(u.root, filepath.FromSlash(name)) }

// mark puts a marker into the folder.
func (u update) mark(m *marker) error {
	_ = os.Remove(u.next)
	if err := write(u.next, m.text()); err != nil {
		return err
	}
	return os.Rename(u.next, u.at(Marker))
}

// put puts one file in its place.
func (u update) put(name string) error {
	if err := makeFolders(u.root, []string{name}); err != nil {
		return err
	}
	from := filepath.Join(u.from, filepath.FromSlash(name))
	if !u.keep {
		return os.Rename(from, u.at(name))
	}
	_ = os.Remove(u.next)
	if err := link(from, u.next); err != nil {
		return err
	}
	return os.Rename(u.next, u.at(name))
}

// drop removes files, and the folders that are empty without them.
func (u update) drop(names []string) error {
	var folders []string
	for _, name := range names {
		if err := ignoreAbsent(os.Remove(u.at(name))); err != nil {
			return err
		}
		for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
			folders = append(folders, dir)
		}
	}
	slices.Sort(folders)
	for _, dir := range slices.Backward(slices.Compact(folders)) { // inner ones first
		_ = os.Remove(u.at(dir)) // not while something is in it
	}
	return nil
}
