package preview

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"github.com/fsnotify/fsnotify"
)

// watching starts watcher on a new folder and waits until it is ready.
func watching(t *testing.T, watcher func(context.Context, string, chan<- struct{})) (root string, saves chan struct{}) {
	t.Helper()
	root = filepath.Join(t.TempDir(), "content")
	must(t, os.MkdirAll(filepath.Join(root, "units", "slip"), 0o755))
	must(t, os.WriteFile(filepath.Join(root, "units", "slip", "unit.md"), []byte("a"), 0o644))
	ctx, cancel := context.WithCancel(context.Background())
	saves, done := make(chan struct{}, 1), make(chan struct{})
	go func() {
		watcher(ctx, root, saves)
		close(done)
	}()
	t.Cleanup(func() {
		cancel()
		<-done
	})
	saved(t, saves, "at the start")
	return root, saves
}

func saved(t *testing.T, saves <-chan struct{}, what string) {
	t.Helper()
	select {
	case <-saves:
	case <-time.After(10 * time.Second):
		t.Fatalf("%s: no save was noticed", what)
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func TestSavesAreNoticed(t *testing.T) {
	watchers := map[string]func(context.Context, string, chan<- struct{}){
		"told by the system": func(ctx context.Context, root string, saves chan<- struct{}) {
			if err := listenForChanges(ctx, root, saves); ctx.Err() == nil {
				panic(err)
			}
		},
		"looked for": poll,
	}
	for name, watcher := range watchers {
		t.Run(name, func(t *testing.T) {
			root, saves := watching(t, watcher)
			at := func(p string) string { return filepath.Join(root, filepath.FromSlash(p)) }

			must(t, os.WriteFile(at("units/slip/unit.md"), []byte("bb"), 0o644))
			saved(t, saves, "file written")

			must(t, os.WriteFile(at("units/slip/unit.md~"), []byte("ccc"), 0o644))
			must(t, os.Rename(at("units/slip/unit.md~"), at("units/slip/unit.md")))
			saved(t, saves, "file written beside and moved over")

			must(t, os.MkdirAll(at("units/wash/deep"), 0o755))
			saved(t, saves, "folder made")

			must(t, os.WriteFile(at("units/wash/deep/a.md"), []byte("d"), 0o644))
			saved(t, saves, "file in a new folder")

			must(t, os.Rename(at("units/wash"), at("units/size")))
			saved(t, saves, "folder renamed")

			must(t, os.WriteFile(at("units/size/deep/a.md"), []byte("eeeee"), 0o644))
			saved(t, saves, "file in the renamed folder")

			must(t, os.RemoveAll(at("units/size")))
			saved(t, saves, "folder removed")
		})
	}
}

// What editors keep beside a file, and a change of rights, are not saves.
func TestQuietChanges(t *testing.T) {
	root, saves := watching(t, func(ctx context.Context, root string, saves chan<- struct{}) {
		_ = listenForChanges(ctx, root, saves)
	})
	must(t, os.WriteFile(filepath.Join(root, ".unit.md.swp"), nil, 0o644))
	must(t, os.WriteFile(filepath.Join(root, "#unit.md#"), nil, 0o644))
	must(t, os.WriteFile(filepath.Join(root, "unit.md~"), nil, 0o644))
	must(t, os.Chmod(filepath.Join(root, "units", "slip", "unit.md"), 0o600))
	select {
	case <-saves:
		t.Error("a save was noticed")
	case <-time.After(5 * maxDelay):
	}
	must(t, os.WriteFile(filepath.Join(root, "unit.md"), nil, 0o644))
	saved(t, saves, "a real one after them")
}

// A folder that goes away, as when another branch of the lessons is fetched,
// is looked for until it comes again.
func TestFolderThatGoesAndComes(t *testing.T) {
	root, saves := watching(t, func(ctx context.Context, root string, saves chan<- struct{}) {
		watch(ctx, root, saves, &saying{to: io.Discard})
	})
	must(t, os.Rename(root, root+"-away"))
	saved(t, saves, "folder gone")
	must(t, os.Rename(root+"-away", root))
	saved(t, saves, "folder back")
}

// An editor's many steps are one save, which is told when it pauses; one that
// never pauses is told of all the same.
func TestOneSaveWaitsForAPause(t *testing.T) {
	for _, c := range []struct {
		name        string
		steps       int
		every, want time.Duration
	}{
		{"one step", 1, time.Millisecond, debounce},
		{"ten steps", 10, 10 * time.Millisecond, 9*10*time.Millisecond + debounce},
		{"without a pause", 30, 10 * time.Millisecond, maxDelay},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				w := &fsnotify.Watcher{Events: make(chan fsnotify.Event, c.steps), Errors: make(chan error)}
				var editor sync.WaitGroup
				editor.Go(func() {
					for range c.steps {
						w.Events <- fsnotify.Event{Name: "/content/home.md", Op: fsnotify.Write}
						time.Sleep(c.every)
					}
				})
				start := time.Now()
				must(t, oneSave(t.Context(), w, "/content"))
				if took := time.Since(start); took != c.want {
					t.Errorf("told after %v, want %v", took, c.want)
				}
				editor.Wait()
			})
		})
	}
}

func TestOneSaveGivesUpOnAnError(t *testing.T) {
	w := &fsnotify.Watcher{Events: make(chan fsnotify.Event), Errors: make(chan error, 1)}
	broken := errors.New("no more watches")
	w.Errors <- broken
	if err := oneSave(t.Context(), w, "/content"); err != broken {
		t.Errorf("error %v", err)
	}
}

// TestTooManyChangesAtOnce wants what the system was too busy to tell to be
// noticed all the same, and folders that came meanwhile to be followed.
func TestTooManyChangesAtOnce(t *testing.T) {
	root := t.TempDir()
	w, err := fsnotify.NewWatcher()
	must(t, err)
	defer w.Close()
	must(t, follow(w, root))
	unseen := filepath.Join(root, "units", "slip")
	must(t, os.MkdirAll(unseen, 0o755))
	for range cap(w.Events) + 2 { // whatever was told of them is lost
		select {
		case <-w.Events:
		case <-time.After(debounce):
		}
	}
	go func() { w.Errors <- fsnotify.ErrEventOverflow }()
	ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
	defer cancel()
	must(t, oneSave(ctx, w, root))
	if followed := w.WatchList(); !slices.Contains(followed, unseen) {
		t.Errorf("only these are followed: %q", followed)
	}
}
