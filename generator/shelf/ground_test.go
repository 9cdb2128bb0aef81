package shelf

import (
	"errors"
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
		}, `such as "thesis.txt"`},
		{"a file", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"docs": "x"})
			return filepath.Join(p, "docs")
		}, "is not a folder"},
		{"the marker is a folder", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"docs/" + Marker + "/x": "", "docs/a": ""})
			return filepath.Join(p, "docs")
		}, `such as "a"`},
		{"a link to nothing", func(t *testing.T, p string) string {
			if err := os.Symlink("nowhere", filepath.Join(p, "docs")); err != nil {
				t.Fatal(err)
			}
			return filepath.Join(p, "docs")
		}, "link to something that is not there"},
		{"no name", func(*testing.T, string) string { return "" }, "has no name"},
		{"the root", func(*testing.T, string) string { return "/" }, "root of the whole disk"},
		{"home", func(t *testing.T, p string) string {
			put(t, p, map[string]string{Marker: "m", "a": ""})
			t.Setenv("HOME", p)
			return p
		}, "home folder"},
		{"above home", func(t *testing.T, p string) string {
			put(t, p, map[string]string{Marker: "m", "ana/a": ""})
			t.Setenv("HOME", filepath.Join(p, "ana"))
			return p
		}, "home folder"},
		{"the working folder", func(t *testing.T, p string) string {
			put(t, p, map[string]string{Marker: "m", "a": ""})
			t.Chdir(p)
			return "."
		}, "working in"},
		{"above the working folder, by a link", func(t *testing.T, p string) string {
			put(t, p, map[string]string{"real/" + Marker: "m", "real/a/b": ""})
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
			for act, err := range map[string]error{"Replace": Replace(dir, pages), "Check": Check(dir)} {
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
	put(t, parent, map[string]string{"marked/" + Marker: "m", "marked/a": "", "empty/.gitkeep": ""})
	before := tree(t, parent)
	for _, dir := range []string{"marked", "empty", "absent", "absent/below"} {
		if err := Check(filepath.Join(parent, dir)); err != nil {
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
