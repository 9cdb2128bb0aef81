package shelf

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// stuck stands for a folder that the system does not let be moved.
func stuck(said error) swapper {
	return func(w work, path string) (bool, error) {
		return false, &os.LinkError{Op: "rename", Old: string(w), New: path, Err: said}
	}
}

func TestAFolderThatCannotBeMovedIsUpdatedWhereItStands(t *testing.T) {
	for _, said := range []error{syscall.EBUSY, syscall.EXDEV, syscall.EPERM, syscall.EACCES} {
		t.Run(said.Error(), func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "public")
			must(t, publish(dir, text(map[string]string{"index.html": "old", "gone/a.html": "old", "assets/x-1": "1", "slip/a": "file", "same.html": "s"})))
			put(t, dir, map[string]string{".htaccess": "deny", "gone/.mine": "1"})
			before, err := os.Stat(dir)
			must(t, err)
			files := map[string][]byte{"same.html": []byte("s"), "assets/x-2": []byte("2")}
			for name, data := range pages {
				files[name] = data
			}
			changes, err := replace(context.Background(), dir, students(files), lastSteps{flush, stuck(said)})
			must(t, err)
			after, err := os.Stat(dir)
			must(t, err)
			if !changes.InPlace || !os.SameFile(before, after) {
				t.Errorf("in place: %v, the same folder: %v", changes.InPlace, os.SameFile(before, after))
			}
			same(t, tree(t, dir), map[string]string{
				"index.html": "home", "slip/": "", "slip/index.html": "slip", "slip/a/": "", "slip/a/b.html": "b", "same.html": "s",
				"assets/": "", "assets/x-1": "1", "assets/x-2": "2", "gone/": "", "gone/.mine": "1", ".htaccess": "deny",
				Marker: "students, 6 files",
			})
			noLitter(t, parent, "public")
		})
	}
}

func TestOtherTroubleDoesNotTouchTheFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	must(t, publish(dir, text(map[string]string{"index.html": "old"})))
	before := tree(t, dir)
	_, err := replace(context.Background(), dir, students(pages), lastSteps{flush, stuck(syscall.EIO)})
	if err == nil || !contains(err.Error(), "was left as it was", "input/output error") {
		t.Errorf("error %v", err)
	}
	same(t, tree(t, dir), before)
}

// compared makes the files of an edition in a work folder in parent, and returns the
// plan for a target with that folder.
func compared(t *testing.T, parent string, of *target, e Edition) (*plan, work) {
	t.Helper()
	names, err := order(e.Names)
	must(t, err)
	e.Names = names
	m := &maker{parent: parent, path: of.path}
	p, err := m.compare(context.Background(), of, e)
	must(t, err)
	w, err := m.work(e)
	must(t, err)
	return p, w
}

// TestOrderInPlace watches each step of an update: at every moment all pages
// that stand there are whole and have the shared files they ask for.
func TestOrderInPlace(t *testing.T) {
	root := t.TempDir()
	edition := func(n int) map[string][]byte {
		return text(map[string]string{
			"index.html": fmt.Sprint("assets/x-", n), "a.html": fmt.Sprint("assets/x-", n), "zz.txt": fmt.Sprint(n),
			fmt.Sprint("assets/x-", n): "x", fmt.Sprintf("only-%d.html", n): fmt.Sprint("assets/x-", n),
		})
	}
	dir := filepath.Join(root, "public")
	must(t, publish(dir, edition(1)))
	target, err := inspect(dir, dir, Students)
	must(t, err)
	e := students(edition(2))
	p, w := compared(t, root, target, e)
	if want := []string{"assets/x-2", "a.html", "index.html", "only-2.html", "zz.txt"}; !slices.Equal(p.put, want) {
		t.Errorf("written in the order %q, want %q", p.put, want)
	}
	for stop := range len(p.put) + 1 {
		part := *p
		part.put, part.drop = p.put[:stop], nil
		if stop < len(p.put) {
			part.next = target.marker.during(p.next) // as a killed run leaves it
		} else {
			part.drop = p.drop
		}
		must(t, update{root: dir, from: w.tree(), next: w.next(), keep: true}.run(target, &part))
		stands := tree(t, dir)
		for name, data := range stands {
			if strings.HasSuffix(name, ".html") && stands[data] != "x" {
				t.Errorf("after %d files %s asks for %s, which is not there", stop, name, data)
			}
		}
		if err := Check(dir, Students); err != nil {
			t.Errorf("after %d files the next publish would say: %v", stop, err)
		}
	}
	must(t, publish(dir, edition(3)))
}

// A run that was killed in the middle of an update is completed by the next.
func TestAHalfUpdatedFolderIsCompleted(t *testing.T) {
	for stop := range 4 {
		dir := filepath.Join(t.TempDir(), "public")
		must(t, publish(dir, text(map[string]string{"index.html": "old", "gone.html": "old", "assets/x": "x"})))
		target, err := inspect(dir, dir, Students)
		must(t, err)
		p, w := compared(t, dir, target, students(pages))
		part := *p
		part.put, part.drop, part.next = p.put[:stop], nil, target.marker.during(p.next)
		must(t, update{root: dir, from: w.tree(), next: w.next()}.run(target, &part))
		must(t, publish(dir, pages))
		want := map[string]string{"assets/": "", "assets/x": "x", Marker: "students, 4 files"}
		for name, data := range planted {
			if name != Marker {
				want[name] = data
			}
		}
		same(t, tree(t, dir), want)
	}
}

// An update that fails in the middle leaves a marker by which the next publish
// knows the files of both editions.
func TestAFailedUpdateIsKnown(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	must(t, publish(dir, text(map[string]string{"a.html": "old", "b.html": "old", "gone.html": "old"})))
	target, err := inspect(dir, dir, Students)
	must(t, err)
	e := students(text(map[string]string{"a.html": "new", "b.html": "new", "c.html": "new"}))
	p, w := compared(t, dir, target, e)
	must(t, os.Remove(filepath.Join(w.tree(), "b.html")))
	u := update{root: dir, from: w.tree(), next: w.next()}
	if err := u.run(target, p); !errors.Is(err, os.ErrNotExist) {
		t.Fatalf("error %v", err)
	}
	w.remove()
	same(t, tree(t, dir), map[string]string{"a.html": "new", "b.html": "old", "gone.html": "old", Marker: "students, 4 files"})
	must(t, publish(dir, pages))
	same(t, tree(t, dir), planted)
}

func TestInPlaceLeavesTheFirstFormatAlone(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	put(t, dir, map[string]string{Marker: firstFormat, "index.html": "old"})
	before := tree(t, dir)
	_, err := replace(context.Background(), dir, students(pages), lastSteps{flush, stuck(syscall.EBUSY)})
	if _, ok := errors.AsType[*Refusal](err); !ok || !strings.Contains(err.Error(), "empty it and publish again") {
		t.Errorf("error %v", err)
	}
	same(t, tree(t, dir), before)
}
