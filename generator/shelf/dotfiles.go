package shelf

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
)

// dotCopier makes the dot files of the old tree stand in the new one too, so
// that a server never sees a moment without its access rules.
type dotCopier struct {
	from, to string   // the two trees
	seen     snapshot // what was copied, as it was in from
}

// copy copies a dot file, or a dot folder with all that is in it. Plain files
// are linked; symbolic links are made anew and not followed.
func (c *dotCopier) copy(name string) error {
	from, to := filepath.Join(c.from, name), filepath.Join(c.to, name)
	info, err := os.Lstat(from)
	if errors.Is(err, fs.ErrNotExist) {
		return nil // removed meanwhile
	}
	if err != nil {
		return err
	}
	c.seen[name] = info
	switch {
	case info.IsDir():
		return c.folder(name, info.Mode())
	case info.Mode()&fs.ModeSymlink != 0:
		target, err := os.Readlink(from)
		if err != nil {
			return err
		}
		return os.Symlink(target, to)
	}
	if err = link(from, to); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// folder makes the folder with all that is in it. Its own mode comes last, for
// it may forbid writing.
func (c *dotCopier) folder(name string, mode fs.FileMode) error {
	to := filepath.Join(c.to, name)
	if err := os.Mkdir(to, 0o700); err != nil {
		return err
	}
	if err := c.entries(name); err != nil {
		return err
	}
	return os.Chmod(to, mode)
}

// entries copies what is in one folder into another that exists.
func (c *dotCopier) entries(name string) error {
	entries, err := os.ReadDir(filepath.Join(c.from, name))
	if err != nil {
		return err
	}
	for _, e := range entries {
		if err := c.copy(path.Join(name, e.Name())); err != nil {
			return err
		}
	}
	return nil
}
