//go:build judges

package trial

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// contents reads every file of a published folder.
func contents(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		files[name], err = os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func TestPublishedTwiceIsTheSame(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	first := filepath.Join(dir, "first")
	if err := publishTo(first, nil); err != nil {
		t.Fatal(err)
	}
	want := contents(t, first)
	built, err := exec.Command("go", "env", "GOCACHE").Output()
	if err != nil {
		t.Fatal(err)
	}
	// Another folder for caches makes the program compile the calculators anew.
	fresh := []string{"XDG_CACHE_HOME=" + filepath.Join(dir, "caches"), "GOCACHE=" + strings.TrimSpace(string(built))}
	cases := []struct {
		name, into string
		variables  []string
	}{
		{"into another folder", filepath.Join(dir, "second"), nil},
		{"over the one before", first, nil},
		{"with nothing kept from before", filepath.Join(dir, "third"), fresh},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if err := publishTo(c.into, c.variables); err != nil {
				t.Fatal(err)
			}
			again := contents(t, c.into)
			for name, data := range want {
				if other, ok := again[name]; !ok || !bytes.Equal(other, data) {
					t.Errorf("%s differs or is missing", name)
				}
			}
			if len(again) != len(want) {
				t.Errorf("%d files instead of %d", len(again), len(want))
			}
		})
	}
}
