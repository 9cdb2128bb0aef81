package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strconv"
)

// swapper puts a work folder's tree where the folder path stands. When the
// system can exchange two folders in one step, the old tree is then where the
// new one was, and may be exchanged back; otherwise it was moved to the work's
// old place. After an error path stands as before, but for *failedRollback.
type swapper func(w work, path string) (back bool, err error)

// lastSteps are what the finished tree goes through: it is made safe on the
// disk, and only then put in the old one's place.
type lastSteps struct {
	flush func(root string) error
	swap  swapper
}

// takePlace puts the finished tree where the target is, and removes what is no
// longer needed. After an error the old tree stands where it did, unless the error
// says otherwise.
func (w work) takePlace(t *target, p *plan, s *staged, last lastSteps) error {
	if t.absent {
		if err := os.Rename(w.tree(), t.path); err != nil {
			w.remove()
			return misplaced(t.path, err)
		}
		syncFolder(filepath.Dir(t.path))
		w.remove()
		return nil
	}
	back, err := last.swap(w, t.path)
	if err != nil {
		if _, lost := errors.AsType[*failedRollback](err); !lost {
			w.remove()
		}
		return misplaced(t.path, err)
	}
	syncFolder(filepath.Dir(t.path))
	if err := w.clearAway(t, p, s, last, back); err != nil {
		return fmt.Errorf("the new handbook stands in %q, but not all of the old one could be cleared away: %w", t.path, plain(err))
	}
	w.remove()
	return nil
}

// clearAway takes apart the tree that is no longer needed: the new one, when the
// old folder could be brought up to date and put back, and else the old one.
func (w work) clearAway(t *target, p *plan, s *staged, last lastSteps, back bool) (err error) {
	old := w.old()
	if back {
		old = w.tree()
	}
	if t.marker != nil && t.marker.files == nil {
		p.changes.Aside, err = setAside(old, t.path)
		return err
	}
	if back {
		if before, err := w.goBack(t, p, last); err == nil {
			return merge{from: w.tree(), to: t.path, was: s.fresh, there: before}.run()
		}
	}
	return merge{from: old, to: t.path, was: t.ours(old, s.dots), there: s.fresh}.run()
}

// goBack brings the old folder, which is out of sight in the work's tree, up to
// date with the new one that stands in its place, and exchanges the two again.
// Servers that hold the old folder then see the new edition, file by file, and
// its dot files are where they always were. After an error the new folder
// stands where it does; only those servers have to be started again. The snapshot
// is of the old folder just after the exchange: what is in it was written before
// whatever has come into the new one since.
func (w work) goBack(t *target, p *plan, last lastSteps) (before snapshot, err error) {
	if before, err = everything(w.tree()); err != nil {
		return nil, err
	}
	u := update{root: w.tree(), from: t.path, next: w.next(), keep: true}
	if err := u.run(t, p); err != nil {
		return nil, err
	}
	if err := last.flush(w.tree()); err != nil {
		return nil, err
	}
	_, err = last.swap(w, t.path)
	syncFolder(filepath.Dir(t.path))
	return before, err
}

// ours is what of the old tree, which now stands at root, need not be kept when
// it is taken apart: the files as they were compared, their folders, the marker,
// and the dot files as they were copied.
func (t *target) ours(root string, dots snapshot) snapshot {
	all := snapshot{}
	maps.Copy(all, t.files)
	maps.Copy(all, dots)
	all.addFolders(root)
	return all
}

// setAside moves the old tree to a name of its own beside the new one, because
// nobody can tell what of it is slipbook's.
func setAside(old, path string) (string, error) {
	for n := 1; ; n++ {
		aside := path + "-before"
		if n > 1 {
			aside += "-" + strconv.Itoa(n)
		}
		if _, err := os.Lstat(aside); errors.Is(err, fs.ErrNotExist) {
			return aside, os.Rename(old, aside)
		}
	}
}

// misplaced explains why the new tree did not get to path.
func misplaced(path string, err error) error {
	if lost, ok := errors.AsType[*failedRollback](err); ok {
		return fmt.Errorf("the new handbook could not take the place of %q: %w; the old one stands whole in %q: publish again, or rename that folder back by hand", path, lost, lost.aside)
	}
	return &notMoved{path, err}
}

// notMoved is the error for a folder whose place cannot be taken.
type notMoved struct {
	path string
	err  error
}

// Error returns the words for a person.
func (n *notMoved) Error() string {
	return fmt.Sprintf("the new handbook could not take its place, and %q was left as it was: %v", n.path, plain(n.err))
}

// Unwrap returns what the system said.
func (n *notMoved) Unwrap() error { return n.err }

// twoRenames puts the work's tree where path is by moving the old tree aside
// first. It serves where no single step can exchange two folders: between its
// two steps nothing stands at path, for as long as a rename takes. When the
// second step fails the first is taken back.
func twoRenames(w work, path string) (back bool, err error) {
	if err := os.Rename(path, w.old()); err != nil {
		return false, err
	}
	if err := os.Rename(w.tree(), path); err != nil {
		if failed := os.Rename(w.old(), path); failed != nil {
			return false, &failedRollback{w.old(), plain(failed)}
		}
		return false, err
	}
	return false, nil
}

// failedRollback is the error for an old tree that was moved aside and could not be
// moved back.
type failedRollback struct {
	aside string
	error
}
