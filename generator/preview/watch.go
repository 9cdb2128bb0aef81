package preview

import (
	"context"
	"errors"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

const (
	debounce = 20 * time.Millisecond  // editors save in several steps: wait until they pause
	maxDelay = 200 * time.Millisecond // but not longer than this
)

// watch sends on saves once when it is ready, and then after every change below
// folder, until ctx ends. When the system cannot tell of changes, it looks for
// them itself.
func watch(ctx context.Context, folder string, saves chan<- struct{}, say *saying) {
	err := listenForChanges(ctx, folder, saves)
	if ctx.Err() != nil {
		return
	}
	say.line("The system does not tell of saves in %q (%v), so they are looked for three times a second.", folder, err)
	poll(ctx, folder, saves)
}

// signal notes that something changed. One note is enough however many
// changes there are before it is read.
func signal(saves chan<- struct{}) {
	select {
	case saves <- struct{}{}:
	default:
	}
}

// listenForChanges lets the system tell of changes. It returns when ctx ends
// or when the system can no longer be relied on.
func listenForChanges(ctx context.Context, folder string, saves chan<- struct{}) error {
	root, err := filepath.EvalSymlinks(folder)
	if err != nil {
		return err
	}
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return err
	}
	defer w.Close()
	if err := follow(w, root); err != nil {
		return err
	}
	for {
		signal(saves)
		if err := oneSave(ctx, w, root); err != nil {
			return err
		}
	}
}

// oneSave waits for a change and until the writing pauses.
func oneSave(ctx context.Context, w *fsnotify.Watcher, root string) error {
	var pause, limit <-chan time.Time
	for {
		var changed bool
		var err error
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-pause:
			return nil
		case <-limit:
			return nil
		case err = <-w.Errors:
			if errors.Is(err, fsnotify.ErrEventOverflow) {
				changed, err = true, follow(w, root) // folders may have come unseen
			}
		case e := <-w.Events:
			changed, err = take(w, root, e)
		}
		if err != nil {
			return err
		}
		if changed {
			pause = time.After(debounce)
		}
		if changed && limit == nil {
			limit = time.After(maxDelay)
		}
	}
}

// take reports whether an event may change the handbook, and follows a folder
// that is new.
func take(w *fsnotify.Watcher, root string, e fsnotify.Event) (changed bool, err error) {
	switch {
	case e.Name == root && e.Has(fsnotify.Remove|fsnotify.Rename):
		return true, errors.New("the folder was moved or removed")
	case e.Op == fsnotify.Chmod || ignored(filepath.Base(e.Name)):
		return false, nil
	case e.Has(fsnotify.Create):
		return true, follow(w, e.Name)
	}
	return true, nil
}

// ignored reports whether a name is one that editors keep beside the file being
// written, or is hidden: no part of a handbook.
func ignored(name string) bool {
	return strings.HasPrefix(name, ".") || strings.HasPrefix(name, "#") || strings.HasSuffix(name, "~")
}

// follow watches name, if it is a folder, and every folder below it. What
// disappears meanwhile is no error: its going is an event of its own.
func follow(w *fsnotify.Watcher, name string) error {
	return filepath.WalkDir(name, func(at string, e fs.DirEntry, err error) error {
		if err == nil && e.IsDir() {
			if at != name && ignored(e.Name()) {
				return fs.SkipDir
			}
			err = w.Add(at)
		}
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		return err
	})
}
