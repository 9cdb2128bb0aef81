// Package shelf puts named bytes into a folder on disk, all or nothing. It
// exists because a half-written handbook on a live web server is worse than an
// old one, and because a mistyped folder must not cost anybody their files.
//
// The way of one publish: the folder is looked at (ground.go), the new tree is
// written beside it under a name of its own (tree.go), the folder's dot files
// join it (carry.go), it is made safe on the disk, and one step puts it where
// the old tree was (swap.go). Whatever fails before that step leaves the old
// tree as it was.
//
// Two things the compiler cannot check: nothing here follows a symbolic link
// below the folder, and nothing is removed but folders that this package made
// or that bear its marker.
package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Replace writes files, by slash-separated address, so that dir holds exactly
// them, its own dot files from before, and the marker of a publish. Folders
// are made with mode 0755 and files with 0644 whatever the umask, because a
// web server reads them; a dir that was there keeps its own mode.
//
// dir may be absent, empty but for dot files, or bear the marker of an earlier
// publish; a symbolic link to such a folder stands for it. Anything else is
// left alone and the error is a *Refusal. After any other error the old tree
// stands unchanged and nothing is left beside it, unless the words say
// otherwise and where.
func Replace(dir string, files map[string][]byte) error {
	return replace(dir, files, lastSteps{flush, swap})
}

// swapper puts the tree fresh where old stands, and says where the old tree is
// now. After an error old stands as before, but for *stranded.
type swapper func(fresh, old string) (spent string, err error)

// lastSteps are what the finished tree goes through: it is made safe on the
// disk, and only then put in the old one's place.
type lastSteps struct {
	flush func(root string) error
	swap  swapper
}

// replace is Replace with the last steps given, so that tests can let them fail.
func replace(dir string, files map[string][]byte, last lastSteps) error {
	names, err := order(files)
	if err != nil {
		return err
	}
	g, err := survey(dir)
	if err != nil {
		return err
	}
	parent := filepath.Dir(g.path)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return fmt.Errorf("the folder %q, in which the handbook should stand, could not be made: %w", parent, plain(err))
	}
	fresh, err := os.MkdirTemp(parent, ".slipbook-new-")
	if err != nil {
		return fmt.Errorf("nothing could be written in %q: %w; the new handbook is made there before it takes its place, so that folder must be writable", parent, plain(err))
	}
	if err := fill(fresh, names, files, g, last.flush); err != nil {
		_ = os.RemoveAll(fresh) // the first error is the one to act on
		return fmt.Errorf("the new handbook could not be written, and %q was left as it was: %w", g.path, plain(err))
	}
	spent, err := place(fresh, g, last.swap)
	if err != nil {
		_ = os.RemoveAll(fresh)
		return misplaced(g.path, err)
	}
	settle(parent)
	if err := os.RemoveAll(spent); err != nil {
		return fmt.Errorf("the new handbook stands in %q, but the folder %q with the old one could not be removed: %w; remove it by hand", g.path, spent, plain(err))
	}
	return nil
}

// fill makes fresh the finished tree, safe on the disk: pages, marker, and the
// dot files of the folder it will replace.
func fill(fresh string, names []string, files map[string][]byte, g ground, flush func(root string) error) error {
	if err := plant(fresh, names, files); err != nil {
		return err
	}
	if err := mark(fresh); err != nil {
		return err
	}
	for _, name := range g.kept {
		if err := carry(filepath.Join(g.path, name), filepath.Join(fresh, name)); err != nil {
			return err
		}
	}
	if err := os.Chmod(fresh, g.mode); err != nil {
		return err
	}
	return flush(fresh)
}

// place puts the fresh tree where the ground is and says where the old one is
// now: nowhere, when there was none.
func place(fresh string, g ground, swap swapper) (spent string, err error) {
	if g.absent {
		return "", os.Rename(fresh, g.path)
	}
	return swap(fresh, g.path)
}

// misplaced says why the new tree did not get to path.
func misplaced(path string, err error) error {
	if lost, ok := errors.AsType[*stranded](err); ok {
		return fmt.Errorf("the new handbook could not take the place of %q: %w; the old one stands whole in %q: rename that folder back by hand", path, lost, lost.aside)
	}
	return fmt.Errorf("the new handbook could not take its place, and %q was left as it was: %w; when that folder is a mounted disk, choose a folder inside it", path, plain(err))
}

// plain drops the path and the operation from an error of the operating system
// where the sentence around it already says them.
func plain(err error) error {
	switch e := err.(type) {
	case *fs.PathError:
		return fmt.Errorf("%s: %w", e.Path, e.Err)
	case *os.LinkError:
		return e.Err
	}
	return err
}
