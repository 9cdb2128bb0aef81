package shelf

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"syscall"
)

// fixed reports whether the folder is known not to be movable: something is
// mounted on it.
func (t *target) fixed() bool { return !t.absent && mounted(t.path) }

// immovable reports whether an error of beside means that the folder can only
// be updated where it stands: its parent cannot be written, or the system does
// not let the folder be moved.
func immovable(err error) bool {
	_, parent := errors.AsType[*unwritable](err)
	_, place := errors.AsType[*notMoved](err)
	if !parent && !place {
		return false
	}
	return errors.Is(err, fs.ErrPermission) || errors.Is(err, syscall.EROFS) || place && (errors.Is(err, syscall.EBUSY) || errors.Is(err, syscall.EXDEV))
}

// inPlace updates a folder that cannot be moved. All new files are written into
// a folder inside it first; putting them in their places then takes a moment,
// in which readers may meet pages of both editions, each of them whole and with
// the files it asks for. A run that is killed in that moment leaves such a
// mixture, which the next publish completes.
func inPlace(ctx context.Context, t *target, e Edition, last lastSteps) (*Changes, error) {
	if t.marker != nil && t.marker.files == nil {
		return nil, refuse("the folder %q was written by an earlier slipbook that listed nothing, and it cannot be moved aside; move out what is yours, empty it and publish again", t.path)
	}
	made := &maker{parent: t.path, path: t.path}
	defer made.remove()
	p, err := made.compare(ctx, t, e)
	if err == nil && p.idle {
		return &p.changes, nil
	}
	var w work
	if err == nil {
		w, err = made.work(e)
	}
	if _, closed := errors.AsType[*unwritable](err); closed {
		return nil, fmt.Errorf("neither %q nor the folder that holds it can be written, and it was left as it was: %w", t.path, plain(errors.Unwrap(err)))
	}
	if err != nil {
		return nil, err
	}
	if err := errors.Join(last.flush(w.tree()), ctx.Err(), t.unchanged()); err != nil {
		return nil, unwritten(t.path, err)
	}
	u := update{root: t.path, from: w.tree(), next: w.next()}
	if err := errors.Join(u.run(t, p), last.flush(t.path)); err != nil {
		return nil, fmt.Errorf("the folder %q could not be brought up to date and holds pages of two editions: %w; when that is mended, publish again", t.path, plain(err))
	}
	syncFolder(t.path)
	p.changes.InPlace = true
	return &p.changes, nil
}
