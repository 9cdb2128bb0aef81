package shelf

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// inventory is what stands in a folder. Addresses have slashes and are sorted;
// a folder's ends with one.
type inventory struct {
	files   map[string]fs.FileInfo // those that the marker lists, but for the marker itself
	dots    []string               // files and folders whose name starts with a dot, without what is below them
	foreign []string               // everything else; of a folder with nothing of ours below it, the folder alone
}

// take looks through a folder. Without a list, all but dot files is foreign.
func take(root string, m *marker) (inventory, error) {
	v := inventory{files: map[string]fs.FileInfo{}}
	ours := map[string]bool{}
	if m != nil {
		for name := range m.files {
			for dir := path.Dir(name); dir != "." && !ours[dir]; dir = path.Dir(dir) {
				ours[dir] = true
			}
		}
	}
	unlisted := m != nil && m.files == nil // format 1: all of it was ours to replace
	var folder func(dir string) error
	folder = func(dir string) error {
		entries, err := os.ReadDir(filepath.Join(root, filepath.FromSlash(dir)))
		for _, e := range entries {
			name := path.Join(dir, e.Name())
			switch {
			case dir == "." && strings.HasPrefix(e.Name(), workPrefix), dir == "." && e.Name() == Marker && m != nil:
			case dir == "." && e.Name() == Marker:
				v.foreign = append(v.foreign, name)
			case strings.HasPrefix(e.Name(), "."):
				v.dots = append(v.dots, name)
			case unlisted:
			case e.IsDir() && ours[name]:
				err = folder(name)
			default:
				err = v.note(root, m, name, e)
			}
			if err != nil {
				return err
			}
		}
		return err
	}
	err := folder(".")
	slices.Sort(v.dots)
	slices.Sort(v.foreign)
	return v, err
}

// note puts one entry among the files of the list, the dot files or what is
// foreign.
func (v *inventory) note(root string, m *marker, name string, e fs.DirEntry) error {
	if e.Type().IsRegular() && m != nil {
		if _, ok := m.files[name]; ok {
			info, err := e.Info()
			v.files[name] = info
			return err
		}
	}
	if e.IsDir() && m != nil {
		if dots := onlyDots(root, name); len(dots) > 0 {
			v.dots = append(v.dots, dots...)
			return nil
		}
	}
	if e.IsDir() {
		name += "/"
	}
	v.foreign = append(v.foreign, name)
	return nil
}

// onlyDots returns the dot files below a folder that holds nothing else, as
// one does of which the pages are gone; nil for any other folder.
func onlyDots(root, dir string) []string {
	entries, err := os.ReadDir(filepath.Join(root, filepath.FromSlash(dir)))
	if err != nil {
		return nil
	}
	var dots []string
	for _, e := range entries {
		name := path.Join(dir, e.Name())
		below := []string{name}
		if !strings.HasPrefix(e.Name(), ".") {
			if !e.IsDir() {
				return nil
			}
			if below = onlyDots(root, name); below == nil {
				return nil
			}
		}
		dots = append(dots, below...)
	}
	return dots
}
