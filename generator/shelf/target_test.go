package shelf

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestRefusedFoldersAreLeftAlone(t *testing.T) {
	for _, c := range []struct {
		name string
		make func(t *testing.T, parent string) (dir string)
		want string
	}{
		{"files of somebody else", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"docs/thesis.txt": "years", "docs/.hidden": ""})
			return filepath.Join(p, "docs")
		}, `left alone: "thesis.txt";`},
		{"a file", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"docs": "x"})
			return filepath.Join(p, "docs")
		}, "is not a folder"},
		{"the marker is a folder", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"docs/" + Marker + "/x": "", "docs/a": ""})
			return filepath.Join(p, "docs")
		}, `alone: ".slipbook-published", "a";`},
		{"the marker is empty", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"docs/" + Marker: "", "docs/a": ""})
			return filepath.Join(p, "docs")
		}, `alone: ".slipbook-published", "a";`},
		{"the marker is nonsense", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"docs/" + Marker: "mine"})
			return filepath.Join(p, "docs")
		}, `alone: ".slipbook-published";`},
		{"half a marker", func(t *testing.T, p string) string {
			published(t, filepath.Join(p, "docs"), map[string]string{"a": "", "b": ""})
			name := filepath.Join(p, "docs", Marker)
			text, err := os.ReadFile(name)
			must(t, err)
			must(t, os.WriteFile(name, text[:len(text)-60], 0o644))
			return filepath.Join(p, "docs")
		}, `alone: ".slipbook-published", "a", "b";`},
		{"somebody's files among the handbook's", func(t *testing.T, p string) string {
			published(t, filepath.Join(p, "docs"), map[string]string{"a": "", "slip/b": ""})
			put(t, p, map[string]string{"docs/thesis.txt": "years", "docs/slip/c": "mine", "docs/photos/d": "pot", "docs/photos/.x": "", "docs/.keep/e": ""})
			must(t, os.Mkdir(filepath.Join(p, "docs", "empty"), 0o755))
			must(t, os.Symlink("a", filepath.Join(p, "docs", "link")))
			return filepath.Join(p, "docs")
		}, `nothing was published: "empty/", "link", "photos/", "slip/c", "thesis.txt"; move them`},
		{"a page is a folder now", func(t *testing.T, p string) string {
			published(t, filepath.Join(p, "docs"), map[string]string{"a": ""})
			must(t, os.Remove(filepath.Join(p, "docs", "a")))
			put(t, p, map[string]string{"docs/a/b": "mine"})
			return filepath.Join(p, "docs")
		}, `published: "a/"; move`},
		{"very many files of somebody", func(t *testing.T, p string) string {
			published(t, filepath.Join(p, "docs"), map[string]string{"a": ""})
			for i := range 25 {
				put(t, p, map[string]string{fmt.Sprintf("docs/%02d", i): "mine"})
			}
			return filepath.Join(p, "docs")
		}, `"18", "19" and 5 more; move`},
		{"the instructor's copy", func(t *testing.T, p string) string {
			_, err := Replace(context.Background(), filepath.Join(p, "docs"), edition(pages, Instructor))
			must(t, err)
			return filepath.Join(p, "docs")
		}, `holds the instructor's copy, and it was left alone`},
		{"a link to nothing", func(t *testing.T, p string) string {
			if err := os.Symlink("nowhere", filepath.Join(p, "docs")); err != nil {
				t.Fatal(err)
			}
			return filepath.Join(p, "docs")
		}, "link to something that is not there"},
		{"no name", func(*testing.T, string) string { return "" }, "has no name"},
		{"the root", func(*testing.T, string) string { return "/" }, "root of the whole disk"},
		{"home", func(t *testing.T, p string) string {
			published(t, p, map[string]string{"a": ""})
			t.Setenv("HOME", p)
			return p
		}, "home folder"},
		{"above home", func(t *testing.T, p string) string {
			published(t, p, map[string]string{"ana/a": ""})
			t.Setenv("HOME", filepath.Join(p, "ana"))
			return p
		}, "home folder"},
		{"the working folder", func(t *testing.T, p string) string {
			published(t, p, map[string]string{"a": ""})
			t.Chdir(p)
			return "."
		}, "working in"},
		{"above the working folder, by a link", func(t *testing.T, p string) string {
			published(t, filepath.Join(p, "real"), map[string]string{"a/b": ""})
			t.Chdir(filepath.Join(p, "real", "a"))
			if err := os.Symlink("real", filepath.Join(p, "public")); err != nil {
				t.Fatal(err)
			}
			return filepath.Join(p, "public")
		}, "working in"},
	} {
		t.Run(c.name, func(t *testing.T) {
			parent := t.TempDir()
			dir := c.make(t, parent)
			before := tree(t, parent)
			for act, err := range map[string]error{"Replace": publish(dir, pages), "Check": Check(dir, Students)} {
				if _, ok := errors.AsType[*Refusal](err); !ok || !strings.Contains(err.Error(), c.want) {
					t.Errorf("%s: error %v, want a refusal with %q in it", act, err, c.want)
				}
			}
			same(t, tree(t, parent), before)
		})
	}
}

func TestCheckAcceptsWithoutTouching(t *testing.T) {
	parent := t.TempDir()
	published(t, filepath.Join(parent, "marked"), map[string]string{"a": ""})
	put(t, parent, map[string]string{"old/" + Marker: firstFormat, "old/a": "", "empty/.gitkeep": ""})
	before := tree(t, parent)
	for _, dir := range []string{"marked", "old", "empty", "absent", "absent/below"} {
		if err := Check(filepath.Join(parent, dir), Students); err != nil {
			t.Errorf("%s: %v", dir, err)
		}
	}
	same(t, tree(t, parent), before)
}

func TestApart(t *testing.T) {
	parent := t.TempDir()
	put(t, parent, map[string]string{"course/content/course.yaml": "", "public/.gitkeep": ""})
	if err := os.Symlink("course/content", filepath.Join(parent, "lessons")); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		dir, other string
		apart      bool
	}{
		{"public", "course/content", true},
		{"absent", "course/content", true},
		{"course/contents", "course/content", true},
		{"public", "nowhere", true},
		{"course/content", "course/content", false},
		{"course", "course/content", false},
		{"course/content/public", "course/content", false},
		{"course/content/x/y", "course/content", false},
		{"lessons", "course/content", false},
		{"course/content/public", "lessons", false},
		{"course", "lessons", false},
	} {
		err := Apart(filepath.Join(parent, c.dir), filepath.Join(parent, c.other))
		if _, refused := errors.AsType[*Refusal](err); refused == c.apart || (err != nil) == c.apart {
			t.Errorf("Apart(%q, %q) = %v", c.dir, c.other, err)
		}
	}
}

// TestWithinByAnotherName stands in for a disk on which one folder goes by
// several names, such as one that does not tell capital letters from small ones:
// it is the same folder all the same.
func TestWithinByAnotherName(t *testing.T) {
	parent := t.TempDir()
	put(t, parent, map[string]string{"real/a/b/x": "", "beside/x": ""})
	other := filepath.Join(parent, "other")
	must(t, os.Symlink("real", other))
	for path, want := range map[string]bool{"real": true, "real/a": true, "real/a/b": true, "real/new": true, "beside": false, ".": false} {
		if got := within(filepath.Join(parent, path), other); got != want {
			t.Errorf("%s lies in the folder that is called other: %v, want %v", path, got, want)
		}
	}
}

func TestACopyNeverTakesTheOthersPlace(t *testing.T) {
	for _, c := range []struct {
		old  string
		copy Copy
		want string // in the refusal; empty when there is none
	}{
		{"students", Students, ""}, {"instructor", Instructor, ""},
		{"students", Instructor, "holds the students' copy"}, {"instructor", Students, "holds the instructor's copy"},
		{"first format", Students, ""}, {"first format", Instructor, "nothing in it tells whether students read it"},
		{"empty", Students, ""}, {"empty", Instructor, ""},
	} {
		dir := filepath.Join(t.TempDir(), "docs")
		switch c.old {
		case "empty":
			must(t, os.Mkdir(dir, 0o755))
		case "first format":
			put(t, dir, map[string]string{Marker: firstFormat, "a": "old"})
		default:
			_, err := Replace(context.Background(), dir, edition(pages, Copy(c.old)))
			must(t, err)
		}
		before := tree(t, dir)
		checked := Check(dir, c.copy)
		_, err := Replace(context.Background(), dir, edition(pages, c.copy))
		for _, err := range []error{checked, err} {
			_, refused := errors.AsType[*Refusal](err)
			if refused != (c.want != "") || refused && !strings.Contains(err.Error(), c.want) {
				t.Errorf("%s over %s: %v, want %q", c.copy, c.old, err, c.want)
			}
		}
		if c.want != "" {
			same(t, tree(t, dir), before)
		}
	}
}
