package shelf

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// work is the folder in which a publish prepares what it will put in place. In it are
//
//	for     the name of the folder that the work is for
//	marker  the marker of the new tree
//	tree/   the new tree; after the exchange, the old one
//	old/    the old tree, while it is moved by two renames
//	next    a file on its way to its place
type work string

func (w work) tree() string   { return filepath.Join(string(w), "tree") }
func (w work) old() string    { return filepath.Join(string(w), "old") }
func (w work) next() string   { return filepath.Join(string(w), "next") }
func (w work) marker() string { return filepath.Join(string(w), "marker") }
func (w work) owner() string  { return filepath.Join(string(w), "for") }

// remove removes the folder with what this package wrote into it. What says
// how far the work had come goes last: a run may be killed here, too.
func (w work) remove() {
	if removeTree(w.tree()) != nil {
		return
	}
	for _, name := range []string{w.old(), w.next(), w.marker(), w.owner(), string(w)} {
		_ = os.Remove(name)
	}
}

// removeTree removes a folder with all that is in it, also in copies of folders
// that forbid writing.
func removeTree(root string) error {
	_ = filepath.WalkDir(root, func(at string, e fs.DirEntry, _ error) error {
		if e != nil && e.IsDir() {
			_ = os.Chmod(at, 0o700)
		}
		return nil // what cannot be removed says so below
	})
	return os.RemoveAll(root)
}

// newWork makes a folder for work in parent, with an empty tree.
func newWork(parent, path string) (work, error) {
	dir, err := os.MkdirTemp(parent, workPrefix)
	if err != nil {
		return "", &unwritable{parent, err}
	}
	w := work(dir)
	err = errors.Join(os.WriteFile(w.owner(), []byte(filepath.Base(path)), 0o644), os.Mkdir(w.tree(), 0o755))
	if err != nil {
		w.remove()
		return "", fmt.Errorf("nothing could be written in %q: %w", parent, plain(err))
	}
	return w, nil
}

// unwritable is the error for a parent in which no folder can be made.
type unwritable struct {
	parent string
	err    error
}

// Error returns the words for a person.
func (u *unwritable) Error() string {
	return fmt.Sprintf("nothing could be written in %q: %v; the new handbook is made there before it takes its place, so that folder must be writable", u.parent, plain(u.err))
}

// Unwrap returns what the system said.
func (u *unwritable) Unwrap() error { return u.err }

// staged is how things were when the new tree was finished.
type staged struct {
	fresh snapshot // everything in the new tree
	dots  snapshot // the dot files in the old one that were copied
}

// stage completes the new tree, in which what is new stands already: links to what
// stays, marker, and the dot files of the folder it will replace.
func (w work) stage(ctx context.Context, t *target, p *plan) (*staged, error) {
	if err := makeFolders(w.tree(), append(slices.Clone(p.same), t.dots...)); err != nil {
		return nil, err
	}
	err := each(ctx, len(p.same), func(i int) error {
		name := filepath.FromSlash(p.same[i])
		return link(filepath.Join(t.path, name), filepath.Join(w.tree(), name))
	})
	if err != nil {
		return nil, err
	}
	text := p.next.text()
	if err := errors.Join(write(w.marker(), text), write(filepath.Join(w.tree(), Marker), text)); err != nil {
		return nil, err
	}
	dots := &dotCopier{t.path, w.tree(), snapshot{}}
	for _, name := range t.dots {
		if err := errors.Join(dots.copy(name), ctx.Err()); err != nil {
			return nil, err
		}
	}
	if err := os.Chmod(w.tree(), t.mode); err != nil {
		return nil, err
	}
	if t.absent {
		return &staged{}, nil
	}
	fresh, err := everything(w.tree())
	return &staged{fresh, dots.seen}, err
}
