package shelf

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestAddressesThatCannotBeWritten(t *testing.T) {
	for _, c := range []struct{ name, address, want string }{
		{"empty", "", "relative path"},
		{"the folder itself", ".", "relative path"},
		{"absolute", "/etc/x", "relative path"},
		{"above", "../x.html", "relative path"},
		{"above inside", "slip/../../x.html", "relative path"},
		{"not clean", "slip//x.html", "relative path"},
		{"folder", "slip/", "relative path"},
		{"not UTF-8", "a\xff.html", "relative path"},
		{"backslash", `slip\x.html`, "backslashes"},
		{"zero byte", "a\x00.html", "control"},
		{"line break", "a\n.html", "control"},
		{"disk letter", "c:x.html", "colons"},
		{"marker", Marker, "start with a dot"},
		{"below a dot folder", ".git/x", "start with a dot"},
		{"a dot file", "slip/.htaccess", "start with a dot"},
		{"below a file", "index.html/x", `"index.html" is a file`},
		{"far below a file", "index.html/x/y", `"index.html" is a file`},
	} {
		t.Run(c.name, func(t *testing.T) {
			parent := t.TempDir()
			err := publish(filepath.Join(parent, "public"), map[string][]byte{"index.html": nil, c.address: nil})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q in it", err, c.want)
			}
			noLitter(t, parent)
		})
	}
}
