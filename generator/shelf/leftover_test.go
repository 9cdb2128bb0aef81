package shelf

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// killed publishes and stops dead at the moment that at names, as a run does
// that is killed: nothing is cleared up.
func killed(t *testing.T, dir string, files map[string][]byte, at string, swapping swapper) {
	t.Helper()
	type dead struct{}
	defer func() {
		if p := recover(); p != nil {
			if _, ok := p.(dead); !ok {
				panic(p)
			}
		}
	}()
	flushes, swaps := 0, 0
	die := func(now string) {
		if now == at {
			panic(dead{})
		}
	}
	_, err := replace(context.Background(), dir, students(files), lastSteps{func(string) error {
		if flushes++; flushes == 1 {
			die("staged")
		} else {
			die("updated")
		}
		return nil
	}, func(w work, path string) (bool, error) {
		if at == "between two renames" {
			must(t, os.Rename(path, w.old()))
			die(at)
		}
		back, err := swapping(w, path)
		if swaps++; swaps == 1 {
			die("swapped")
		} else {
			die("swapped back")
		}
		return back, err
	}})
	t.Fatalf("it was not killed at %q: %v", at, err)
}

func TestLeftoversAreCleared(t *testing.T) {
	for _, c := range []struct {
		at   string
		swap swapper
	}{
		{"staged", swap}, {"swapped", swap}, {"updated", swap}, {"swapped back", swap},
		{"staged", twoRenames}, {"swapped", twoRenames}, {"between two renames", twoRenames},
	} {
		for _, old := range []map[string]string{nil, {"index.html": "old", "gone/a.html": "old"}} {
			t.Run(c.at, func(t *testing.T) {
				parent := t.TempDir()
				dir := filepath.Join(parent, "public")
				must(t, os.Mkdir(dir, 0o755))
				if old != nil {
					published(t, dir, old)
				}
				put(t, dir, map[string]string{".git/x": "1", ".htaccess": "deny"})
				killed(t, dir, text(map[string]string{"index.html": "killed", "killed/a.html": "k", "assets/k": "k"}), c.at, c.swap)
				if c.at != "between two renames" {
					put(t, dir, map[string]string{".after": "2", ".git/after": "2"})
				}
				must(t, publish(dir, pages))
				noLitter(t, parent, "public")
				want := map[string]string{".git/": "", ".git/x": "1", ".htaccess": "deny"}
				if c.at != "between two renames" {
					want[".after"], want[".git/after"] = "2", "2"
				}
				for name, data := range planted {
					want[name] = data
				}
				got := tree(t, dir)
				delete(got, "assets/")
				delete(got, "assets/k") // of the edition before, when that came to stand
				want[Marker] = got[Marker]
				same(t, got, want)
			})
		}
	}
}

// A run that is killed while it takes the old tree apart leaves folders whose files are
// gone. They are as much slipbook's as the files were.
func TestEmptiedFoldersOfAKilledRunAreRemoved(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	published(t, dir, map[string]string{"index.html": "old", "gone/deep/a.html": "old"})
	killed(t, dir, pages, "swapped", twoRenames)
	emptied, err := filepath.Glob(filepath.Join(parent, workPrefix+"*", "*", "gone", "deep", "a.html"))
	if err != nil || len(emptied) != 1 {
		t.Fatal("the old tree is not where this test looks for it", emptied, err)
	}
	must(t, os.Remove(emptied[0]))
	must(t, publish(dir, pages))
	same(t, tree(t, dir), planted)
	noLitter(t, parent, "public")
}

// Dot files that somebody made between a swap and the end of a killed run stand
// in the old tree alone.
func TestDotFilesOfAKilledRunAreSaved(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	published(t, dir, map[string]string{"index.html": "old", "gone/a.html": "old"})
	put(t, dir, map[string]string{".git/x": "1"})
	held, err := os.OpenRoot(filepath.Join(dir, ".git"))
	must(t, err)
	defer held.Close()
	killed(t, dir, text(map[string]string{"index.html": "killed"}), "swapped", swap)
	must(t, held.WriteFile("late", []byte("2"), 0o644))
	must(t, publish(dir, pages))
	if got := tree(t, dir); got[".git/late"] != "2" || got[".git/x"] != "1" {
		t.Errorf("in the folder: %v", got)
	}
	noLitter(t, parent, "public")
}

func TestLeftoversOfOthersStay(t *testing.T) {
	parent := t.TempDir()
	published(t, filepath.Join(parent, "other"), map[string]string{"a.html": "old"})
	killed(t, filepath.Join(parent, "other"), pages, "swapped", twoRenames)
	put(t, parent, map[string]string{workPrefix + "notes.txt": "a file", workPrefix + "1/index.html": "by an earlier slipbook, at work", workPrefix + "2/a": "x", workPrefix + "3-old/a": "all there is"})
	must(t, os.Mkdir(filepath.Join(parent, workPrefix+"4"), 0o755))
	long := time.Now().Add(-2 * time.Hour)
	for _, name := range []string{"2", "3-old"} {
		must(t, os.Chtimes(filepath.Join(parent, workPrefix+name), long, long))
	}
	must(t, publish(filepath.Join(parent, "public"), pages))
	noLitter(t, parent, workPrefix+"1", workPrefix+"3-old", workPrefix+"notes.txt", "other", "public")
	same(t, tree(t, filepath.Join(parent, "other")), planted)
}

// The folder of a run that is alive is left alone, and its end is waited for.
func TestARunThatIsAliveIsWaitedFor(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	published(t, dir, map[string]string{"index.html": "old"})
	second := make(chan error, 1)
	var during map[string]string
	_, err := replace(context.Background(), dir, students(text(map[string]string{"index.html": "first"})), lastSteps{func(root string) error {
		if during == nil {
			go func() { second <- publish(dir, pages) }()
			time.Sleep(60 * time.Millisecond)
			during = tree(t, root)
		}
		return nil
	}, swap})
	must(t, err)
	must(t, <-second)
	same(t, during, map[string]string{"index.html": "first", Marker: "students, 1 files"})
	same(t, tree(t, dir), planted)
	noLitter(t, parent, "public")
}

func TestWhoWaitsTooLongIsTold(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	published(t, dir, map[string]string{"index.html": "old"})
	before := tree(t, dir)
	was := patience
	patience = 0
	defer func() { patience = was }()
	release, alone, err := lock(context.Background(), filepath.Dir(dir), dir)
	must(t, err)
	defer release()
	if !alone {
		t.Error("the lock does not count")
	}
	err = publish(dir, pages)
	if err == nil || !strings.Contains(err.Error(), "another slipbook has been publishing") {
		t.Errorf("error %v", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	patience = time.Hour
	if _, err := Replace(ctx, dir, students(pages)); err != context.Canceled {
		t.Errorf("whoever gives up waiting is told %v", err)
	}
	same(t, tree(t, dir), before)
}

// A folder around it that cannot be locked keeps nobody else away; one that is
// not there yet needs no lock.
func TestWhatALockIsWorth(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct {
		parent, path string
		alone        bool
	}{{dir, filepath.Join(dir, "absent"), true}, {filepath.Join(dir, "absent"), dir, false}} {
		release, alone, err := lock(context.Background(), c.parent, c.path)
		must(t, err)
		release()
		if alone != c.alone {
			t.Errorf("with %q and %q locked: alone %v", c.parent, c.path, alone)
		}
	}
}

// Without locks only what has not been touched for a day is a leftover.
func TestLeftoversWithoutLocks(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	published(t, dir, map[string]string{"index.html": "old"})
	killed(t, dir, pages, "staged", swap)
	clearLeftovers(parent, dir, false)
	entries, err := os.ReadDir(parent)
	must(t, err)
	if len(entries) != 2 {
		t.Fatalf("%d names are left", len(entries))
	}
	long := time.Now().Add(-25 * time.Hour)
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), workPrefix) {
			must(t, os.Chtimes(filepath.Join(parent, e.Name()), long, long))
		}
	}
	clearLeftovers(parent, dir, false)
	noLitter(t, parent, "public")
}
