package shelf

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestWhatComesMeanwhileStays writes, rewrites and removes dot files and others
// at each moment of a publish, and wants each to be there afterwards as it was
// left.
func TestWhatComesMeanwhileStays(t *testing.T) {
	// write does what others may do at one moment, called by its name.
	write := func(t *testing.T, dir, when string) {
		put(t, dir, map[string]string{"." + when: when, ".git/" + when: when, ".git/new-" + when + "/x": when, ".git/index": when, ".git/rewritten": when})
		_ = os.Remove(filepath.Join(dir, ".git/lock-"+when))
	}
	for name, swapping := range map[string]swapper{"one step": swap, "two renames": twoRenames} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "public")
			must(t, publish(dir, text(map[string]string{"index.html": "old", "gone/a.html": "old"})))
			put(t, dir, map[string]string{".git/index": "first", ".git/lock-staged": "x", ".git/lock-swapped": "x", ".git/stays": "x"})
			flushes := 0
			steps := lastSteps{func(root string) error {
				if flushes++; flushes == 1 {
					write(t, dir, "staged")
				}
				return nil
			}, func(w work, path string) (bool, error) {
				back, err := swapping(w, path)
				if flushes == 1 {
					write(t, dir, "swapped")
				}
				return back, err
			}}
			_, err := replace(context.Background(), dir, students(pages), steps)
			must(t, err)
			want := map[string]string{".git/": "", ".git/index": "swapped", ".git/rewritten": "swapped", ".git/stays": "x"}
			for _, when := range []string{"staged", "swapped"} {
				maps.Copy(want, map[string]string{"." + when: when, ".git/" + when: when, ".git/new-" + when + "/": "", ".git/new-" + when + "/x": when})
			}
			maps.Copy(want, planted)
			same(t, tree(t, dir), want)
			noLitter(t, parent, "public")
		})
	}
}

func TestForeignFilesThatComeMeanwhile(t *testing.T) {
	t.Run("before the swap", func(t *testing.T) {
		parent := t.TempDir()
		dir := filepath.Join(parent, "public")
		must(t, publish(dir, text(map[string]string{"index.html": "old"})))
		_, err := replace(context.Background(), dir, students(pages), lastSteps{func(string) error {
			put(t, dir, map[string]string{"thesis.txt": "years", "index.html": "by hand"})
			return nil
		}, swap})
		if _, ok := errors.AsType[*Refusal](err); !ok || !strings.Contains(err.Error(), `meanwhile, and nothing was published: "index.html", "thesis.txt"`) {
			t.Errorf("error %v", err)
		}
		same(t, tree(t, dir), map[string]string{"thesis.txt": "years", "index.html": "by hand", Marker: "students, 1 files"})
		noLitter(t, parent, "public")
	})
	for name, meddle := range map[string]func(t *testing.T, page string){
		"a page that is removed": func(t *testing.T, page string) { must(t, os.Remove(page)) },
		"a page that is another one of the same size and time": func(t *testing.T, page string) {
			info, err := os.Stat(page)
			must(t, err)
			must(t, os.WriteFile(page+"~", []byte("odl"), 0o644))
			must(t, os.Chtimes(page+"~", info.ModTime(), info.ModTime()))
			must(t, os.Rename(page+"~", page))
		},
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "public")
			must(t, publish(dir, text(map[string]string{"index.html": "old"})))
			_, err := replace(context.Background(), dir, students(pages), lastSteps{func(string) error {
				meddle(t, filepath.Join(dir, "index.html"))
				return nil
			}, swap})
			if _, ok := errors.AsType[*Refusal](err); !ok || !strings.Contains(err.Error(), `nothing was published: "index.html"`) {
				t.Errorf("error %v", err)
			}
			noLitter(t, parent, "public")
		})
	}
	t.Run("after it", func(t *testing.T) {
		parent := t.TempDir()
		dir := filepath.Join(parent, "public")
		must(t, publish(dir, text(map[string]string{"index.html": "old"})))
		first := true
		_, err := replace(context.Background(), dir, students(pages), lastSteps{flush, func(w work, path string) (bool, error) {
			back, err := swap(w, path)
			if first {
				first = false
				put(t, dir, map[string]string{"thesis.txt": "years", "photos/a": "pot"})
			}
			return back, err
		}})
		must(t, err)
		want := map[string]string{"thesis.txt": "years", "photos/": "", "photos/a": "pot"}
		maps.Copy(want, planted)
		same(t, tree(t, dir), want)
		noLitter(t, parent, "public")
	})
}

// TestAWriterInTheFolder is somebody who writes dot files all the time, in the
// folder and in one inside it that is held open.
func TestAWriterInTheFolder(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	must(t, publish(dir, pages))
	must(t, os.Mkdir(filepath.Join(dir, ".git"), 0o755))
	held, err := os.OpenRoot(filepath.Join(dir, ".git"))
	must(t, err)
	defer held.Close()
	done, wrote := make(chan struct{}), make(chan int)
	go func() {
		n := 0
		for ; ; n++ {
			select {
			case <-done:
				wrote <- n
				return
			default:
			}
			for _, err := range []error{
				os.WriteFile(filepath.Join(dir, fmt.Sprintf(".a%d", n)), nil, 0o644),
				os.WriteFile(filepath.Join(dir, ".git", fmt.Sprintf("b%d", n)), nil, 0o644),
				held.WriteFile(fmt.Sprintf("c%d", n), nil, 0o644),
			} {
				if err != nil {
					t.Error(err)
				}
			}
			time.Sleep(100 * time.Microsecond)
		}
	}()
	for i := range 20 {
		must(t, publish(dir, map[string][]byte{"index.html": fmt.Append(nil, i), "slip/index.html": nil}))
	}
	close(done)
	n := <-wrote
	stands := tree(t, dir)
	lost := 0
	for i := range n {
		for _, name := range []string{".a%d", ".git/b%d", ".git/c%d"} {
			if _, ok := stands[fmt.Sprintf(name, i)]; !ok {
				lost++
			}
		}
	}
	if lost > 0 || n == 0 {
		t.Errorf("of 3 x %d files, %d were lost", n, lost)
	}
	noLitter(t, parent, "public")
}

// TestWhoHoldsTheFolderSeesTheNewEdition is a server that was started in the
// folder, or whose disk it is mounted on: it never asks for the folder by name.
func TestWhoHoldsTheFolderSeesTheNewEdition(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	must(t, publish(dir, text(map[string]string{"index.html": "0", "old.html": "old", "assets/x-0": "0"})))
	held, err := os.OpenRoot(dir)
	must(t, err)
	defer held.Close()
	for _, n := range []string{"1", "2", "3"} {
		must(t, publish(dir, text(map[string]string{"index.html": n, "slip/" + n + ".html": n, "assets/x-" + n: n})))
		for _, name := range []string{"index.html", "slip/" + n + ".html", "assets/x-" + n} {
			if data, err := held.ReadFile(name); err != nil || string(data) != n {
				t.Errorf("edition %s: %s holds %q, %v", n, name, data, err)
			}
		}
		if _, err := held.Stat("old.html"); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("edition %s: a page that is gone stands still: %v", n, err)
		}
	}
}

// While something of a tree can be put nowhere, its marker stays: by that the
// next publish knows the rest.
func TestTheMarkerOfATreeGoesLast(t *testing.T) {
	parent := t.TempDir()
	put(t, parent, map[string]string{"from/" + Marker: "m", "from/a.html": "theirs", "from/b.html": "ours", "to/a.html": "ours"})
	was, err := everything(filepath.Join(parent, "from"))
	must(t, err)
	delete(was, "a.html")
	err = merge{from: filepath.Join(parent, "from"), to: filepath.Join(parent, "to"), was: was, there: snapshot{}}.run()
	if err == nil || !strings.Contains(err.Error(), `: "a.html"; move them`) {
		t.Errorf("error %v", err)
	}
	same(t, tree(t, parent), map[string]string{"from/": "", "from/" + Marker: "m", "from/a.html": "theirs", "to/": "", "to/a.html": "ours"})
}
