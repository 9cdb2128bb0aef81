package shelf

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// TestModesWhateverTheUmask publishes as somebody whose new files are for
// nobody else, and wants the web server to read all of the handbook all the
// same, and what is copied to keep its own mode.
func TestModesWhateverTheUmask(t *testing.T) {
	parent := t.TempDir()
	put(t, parent, map[string]string{"copied": "x"})
	must(t, os.Chmod(filepath.Join(parent, "copied"), 0o664))
	info, err := os.Stat(filepath.Join(parent, "copied"))
	must(t, err)

	before := unix.Umask(0o077)
	defer unix.Umask(before)
	must(t, publish(filepath.Join(parent, "public"), pages))
	must(t, copyFile(filepath.Join(parent, "copied"), filepath.Join(parent, "copy"), info))
	for name, want := range map[string]fs.FileMode{
		"public":                 fs.ModeDir | 0o755,
		"public/slip":            fs.ModeDir | 0o755,
		"public/slip/a":          fs.ModeDir | 0o755,
		"public/index.html":      0o644,
		"public/slip/index.html": 0o644,
		"public/" + Marker:       0o644,
		"copy":                   0o664,
	} {
		info, err := os.Stat(filepath.Join(parent, name))
		must(t, err)
		if info.Mode() != want {
			t.Errorf("%s has mode %v, want %v", name, info.Mode(), want)
		}
	}
}
