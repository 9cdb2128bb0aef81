package shelf

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestMarkerListsWhatWasWritten(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	must(t, publish(dir, map[string][]byte{"slip/a b.html": []byte("b"), "index.html": []byte("home"), "assets/x.js": []byte("x")}))
	must(t, publish(dir, map[string][]byte{"slip/a b.html": []byte("b"), "index.html": []byte("new")}))
	text, err := os.ReadFile(filepath.Join(dir, Marker))
	must(t, err)
	_, list, _ := strings.Cut(string(text), "\n\n")
	want := fmt.Sprintf("format 2\ncopy students\nbefore %x assets/x.js\nnow %x index.html\nnow %x slip/a b.html\nend 3\n",
		sha256.Sum256([]byte("x")), sha256.Sum256([]byte("new")), sha256.Sum256([]byte("b")))
	if d := cmp.Diff(want, list); d != "" {
		t.Errorf("the list differs (-want +got):\n%s", d)
	}
	if !strings.HasPrefix(string(text), "This folder was written by \"slipbook publish\"; it is the students' copy.\n") {
		t.Errorf("it begins %.100q", text)
	}
}

func TestMarkerIsReadBack(t *testing.T) {
	for _, copy := range []Copy{Students, Instructor} {
		m := &marker{copy: copy, files: map[string]listed{
			"a.html":      {[]digest{{1}, {2}}, false},
			"assets/x.js": {[]digest{{3}}, true},
		}}
		if d := cmp.Diff(m, parseMarker(m.text()), cmp.AllowUnexported(marker{}, listed{})); d != "" {
			t.Errorf("read back (-want +got):\n%s", d)
		}
	}
	if m := parseMarker([]byte(firstFormat)); m == nil || m.files != nil || m.copy != "" {
		t.Errorf("the first format is read as %v", m)
	}
}

func TestWhatIsNoMarker(t *testing.T) {
	whole := string((&marker{copy: Students, files: map[string]listed{"a.html": {[]digest{{1}}, false}}}).text())
	for name, text := range map[string]string{
		"nothing":                 "",
		"other words":             "mine",
		"the first format, more":  firstFormat + "x",
		"without its end":         strings.TrimSuffix(whole, "end 1\n"),
		"cut in the last line":    strings.TrimSuffix(whole, "\n"),
		"a line too few":          strings.Replace(whole, "end 1", "end 2", 1),
		"something behind":        whole + "x\n",
		"half a digest":           strings.Replace(whole, "01000000", "01", 1),
		"no digest":               strings.Replace(whole, "01000000", "zz000000", 1),
		"an address outside":      strings.Replace(whole, "a.html", "../a.html", 1),
		"an address of dot files": strings.Replace(whole, "a.html", ".git/x", 1),
		"an unknown edition":      strings.Replace(whole, "now ", "soon ", 1),
		"another copy":            strings.Replace(whole, "copy students", "copy nobody", 1),
		"a later format":          strings.Replace(whole, "format 2", "format 3", 1),
	} {
		if text == whole {
			t.Errorf("%s: the case changes nothing", name)
		}
		if parseMarker([]byte(text)) != nil {
			t.Errorf("%s: taken for a marker", name)
		}
	}
	if parseMarker([]byte(whole)) == nil {
		t.Error("the whole is no marker either")
	}
}

func TestAMarkerByLinkIsNone(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, map[string]string{"m": firstFormat})
	must(t, os.Symlink("m", filepath.Join(dir, Marker)))
	if readMarker(dir) != nil {
		t.Error("a link was read as a marker")
	}
}
