// Package shelf puts an edition of the handbook into a folder on disk, all or
// nothing. It exists because a half-written handbook on a live web server is
// worse than an old one, and because a mistyped folder must not cost anybody
// their files.
//
// The way of one publish: the folder is locked (lock.go) and rid of what killed
// runs left (leftover.go); what stands in it is compared with the list in its
// marker (target.go, compare.go), and a file that slipbook did not write stops
// the work. The new tree is written beside the old one (stage.go, write.go),
// with links to the files that did not change and to the folder's dot files
// (dotfiles.go). Then the two are exchanged in one step (swap.go), the old
// folder is brought up to date out of sight (update.go), and exchanged back:
// readers never see a mixture, and a server that holds the folder itself, by a
// mount or as the place it was started in, keeps it. What came into either tree
// meanwhile is moved across, not removed (merge.go). A folder that cannot be
// moved is updated where it stands (place.go).
//
// Two things the compiler cannot check: nothing here follows a symbolic link
// below the folder, and nothing is removed but what this package wrote.
package shelf

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// Check reports, without touching anything, whether Replace would accept dir
// for a copy, as far as names show it. It lets a command refuse before it does
// the work. The error is a *Refusal, or says what could not be read.
func Check(dir string, copy Copy) error {
	path, err := locate(dir)
	if err != nil {
		return err
	}
	_, err = inspect(dir, path, copy)
	return err
}

// Replace writes an edition so that dir holds its files, the shared files of
// the edition before, its own dot files, and the marker that lists all but
// these. New folders have mode 0755 and files 0644 whatever the umask, because
// a web server reads them; a dir that was there keeps its own mode.
//
// dir may be absent, empty but for dot files, or bear the marker of an earlier
// publish; a symbolic link to such a folder stands for it. When it holds
// anything else, a file that was changed by hand, or another copy, it is left
// alone and the error is a *Refusal. After any other error the old tree stands
// unchanged and nothing is left beside it, unless the words say otherwise.
// When ctx ends before the last step, Replace clears up and returns its error;
// after that it finishes.
func Replace(ctx context.Context, dir string, e Edition) (*Changes, error) {
	return replace(ctx, dir, e, lastSteps{flush, swap})
}

// replace is Replace with the last steps given, so that tests can let them fail.
func replace(ctx context.Context, dir string, e Edition, last lastSteps) (*Changes, error) {
	names := e.Names
	if e.Last != "" {
		names = append(slices.Clone(names), e.Last)
	}
	names, err := order(names)
	if err != nil {
		return nil, err
	}
	path, err := locate(dir)
	if err != nil {
		return nil, err
	}
	parent := filepath.Dir(path)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return nil, fmt.Errorf("the folder %q, in which the handbook should stand, could not be made: %w", parent, plain(err))
	}
	release, alone, err := lock(ctx, parent, path)
	if err != nil {
		return nil, err
	}
	defer release()
	clearLeftovers(parent, path, alone)
	t, err := inspect(dir, path, e.Copy)
	if err != nil {
		return nil, err
	}
	e.Names = names
	if t.fixed() {
		return inPlace(ctx, t, e, last)
	}
	changes, err := beside(ctx, t, e, last)
	if !t.absent && immovable(err) {
		return inPlace(ctx, t, e, last)
	}
	return changes, err
}

// beside writes the new tree in the folder's parent and puts it in its place.
func beside(ctx context.Context, t *target, e Edition, last lastSteps) (*Changes, error) {
	made := &maker{parent: filepath.Dir(t.path), path: t.path}
	p, err := made.compare(ctx, t, e)
	if err != nil || p.idle {
		made.remove() // the first error is the one to act on
		return &p.changes, err
	}
	w, err := made.work(e)
	if err != nil {
		return nil, err
	}
	s, err := w.stage(ctx, t, p)
	if err == nil {
		err = errors.Join(last.flush(w.tree()), ctx.Err(), t.unchanged())
	}
	if err != nil {
		w.remove()
		return nil, unwritten(t.path, err)
	}
	if err := w.takePlace(t, p, s, last); err != nil {
		return nil, err
	}
	return &p.changes, nil
}
