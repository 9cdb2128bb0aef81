package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// Apart refuses dir when it is the folder other, lies in it, or holds it: a
// handbook written into its own lessons would be read as lessons the next
// time, and lessons inside a published folder would be lost with it. other
// must exist; when it does not, nothing can be lost.
func Apart(dir, other string) error {
	path, err := resolve(dir)
	if err != nil {
		return err
	}
	source, err := filepath.EvalSymlinks(other)
	if err != nil {
		return nil
	}
	if source, err = filepath.Abs(source); err != nil {
		return err
	}
	if within(source, path) || within(path, source) {
		return refuse("the folder %q and the folder of the lessons, %q, lie one in the other, and publishing would cost you one of them; choose a folder elsewhere", dir, other)
	}
	return nil
}

// target is the place where a tree shall stand, and what stands there.
type target struct {
	path   string      // absolute, links resolved
	absent bool        // nothing is there yet
	mode   fs.FileMode // for the new folder
	marker *marker     // nil for an absent or empty folder
	inventory
}

// locate returns the place that dir means, and refuses the places that nobody
// can mean.
func locate(dir string) (path string, err error) {
	if path, err = resolve(dir); err == nil {
		err = refuseUnsafe(dir, path)
	}
	return path, err
}

// inspect looks at path, the folder that the reader calls dir, and decides by
// names whether it may be replaced by a copy.
func inspect(dir, path string, copy Copy) (*target, error) {
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return &target{path: path, absent: true, mode: 0o755}, nil
	}
	if err != nil {
		return nil, fmt.Errorf("the folder %q could not be looked at: %w", dir, plain(err))
	}
	if !info.IsDir() {
		return nil, refuse("%q is not a folder, and it was left alone; choose another name for the folder of the handbook", dir)
	}
	const asItWas = fs.ModePerm | fs.ModeSetgid | fs.ModeSticky
	t := &target{path: path, mode: info.Mode() & asItWas, marker: readMarker(path)}
	if t.inventory, err = take(path, t.marker); err != nil {
		return nil, fmt.Errorf("the folder %q could not be read: %w", dir, plain(err))
	}
	switch {
	case len(t.foreign) > 0 && t.marker == nil:
		return nil, refuse("the folder %q holds files that slipbook did not write, and it was left alone: %s; choose a new or an empty folder, or move those files away first", dir, quoted(t.foreign))
	case len(t.foreign) > 0:
		return nil, refuse("the folder %q holds files that slipbook did not write, and nothing was published: %s; move them out of it, or give them names that start with a dot, and publish again", dir, quoted(t.foreign))
	}
	return t, t.refuseOther(dir, copy)
}

// refuseOther keeps each copy from the other's place.
func (t *target) refuseOther(dir string, copy Copy) error {
	switch {
	case t.marker == nil || t.marker.copy == copy:
		return nil
	case t.marker.files != nil:
		return refuse("the folder %q holds the %s copy, and it was left alone: whoever reads it must not find the %s copy there; choose another folder for that", dir, t.marker.copy.owner(), copy.owner())
	case copy == Instructor:
		return refuse("the folder %q was written by an earlier slipbook, and nothing in it tells whether students read it; choose another folder for the instructor's copy", dir)
	}
	return nil
}

// resolve returns the absolute path of dir with links followed. The part of it
// that is absent stays as written.
func resolve(dir string) (string, error) {
	if dir == "" {
		return "", refuse("the folder for the handbook has no name; choose one, such as \"public\"")
	}
	path, err := filepath.Abs(dir)
	if err != nil {
		return "", fmt.Errorf("the folder %q could not be found: %w", dir, err)
	}
	if info, err := os.Lstat(path); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		target, err := filepath.EvalSymlinks(path)
		if err != nil {
			return "", refuse("%q is a link to something that is not there; remove the link or make the folder that it means", dir)
		}
		return target, nil
	}
	existing, rest := path, ""
	for {
		if real, err := filepath.EvalSymlinks(existing); err == nil {
			return filepath.Join(real, rest), nil
		}
		above := filepath.Dir(existing)
		if above == existing {
			return path, nil
		}
		existing, rest = above, filepath.Join(filepath.Base(existing), rest)
	}
}

// refuseUnsafe refuses the places that nobody can mean, even when they look empty.
func refuseUnsafe(dir, path string) error {
	if path == filepath.Dir(path) {
		return refuse("%q is the root of the whole disk and cannot hold the handbook; choose a folder inside it", dir)
	}
	if home, err := os.UserHomeDir(); err == nil && within(home, path) {
		return refuse("%q holds your home folder and cannot be replaced by the handbook; choose a folder inside it", dir)
	}
	if here, err := os.Getwd(); err == nil && within(here, path) {
		return refuse("%q holds the folder you are working in and cannot be replaced by the handbook; choose a folder inside it, or start from elsewhere", dir)
	}
	return nil
}

// within reports whether path is folder or lies below it. Folders are compared
// as the file system knows them, so that links and the case of letters do not
// hide a match.
func within(path, folder string) bool {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	want, err := os.Stat(folder)
	for at := path; ; at = filepath.Dir(at) {
		if at == folder {
			return true
		}
		if info, failed := os.Stat(at); err == nil && failed == nil && os.SameFile(info, want) {
			return true
		}
		if at == filepath.Dir(at) {
			return false
		}
	}
}

// unchanged returns an error when the folder no longer holds what inspect
// found: somebody changed it meanwhile. New dot files do not count.
func (t *target) unchanged() error {
	if t.absent {
		return nil
	}
	now, err := take(t.path, t.marker)
	if err != nil {
		return err
	}
	var came []string
	for name, info := range now.files {
		if was := t.files[name]; was == nil || !sameState(was, info) {
			came = append(came, name)
		}
	}
	for name := range t.files {
		if now.files[name] == nil {
			came = append(came, name)
		}
	}
	if came = append(came, now.foreign...); len(came) > 0 {
		slices.Sort(came)
		return refuse("somebody else wrote into %q meanwhile, and nothing was published: %s; look at these files and publish again", t.path, quoted(came))
	}
	return nil
}
