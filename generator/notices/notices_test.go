package notices

import (
	"bytes"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "copy the texts anew from the code that is installed")

// originals names the files of a module that its text is made of, where it is
// not LICENSE alone.
var originals = map[string][]string{
	"github.com/alecthomas/chroma/v2": {"COPYING"},
	"github.com/alecthomas/kong":      {"COPYING"},
	"github.com/dlclark/regexp2/v2":   {"LICENSE", "ATTRIB"},
	"github.com/evanw/esbuild":        {"LICENSE.md"},
	"go.yaml.in/yaml/v4":              {"LICENSE", "NOTICE"},
}

// goSays runs the go command and returns the words that it prints.
func goSays(t *testing.T, env []string, arguments ...string) []string {
	t.Helper()
	c := exec.Command("go", arguments...) // the one that runs this test comes first in its PATH
	c.Dir = "../.."
	c.Env = append(os.Environ(), env...)
	var complaint bytes.Buffer
	c.Stderr = &complaint
	out, err := c.Output()
	if err != nil {
		t.Fatalf("go %s: %v\n%s", strings.Join(arguments, " "), err, complaint.String())
	}
	return strings.Fields(string(out))
}

// original reads the text of a notice where its code is installed.
func original(t *testing.T, n Notice) string {
	t.Helper()
	var dir string
	if n.Module == "std" {
		dir = goSays(t, nil, "env", "GOROOT")[0]
	} else {
		dir = goSays(t, nil, "list", "-m", "-f", "{{.Dir}}", n.Module)[0]
	}
	names := originals[n.Module]
	if names == nil {
		names = []string{"LICENSE"}
	}
	var parts []string
	for _, name := range names {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		var lines []string
		for line := range strings.SplitSeq(string(text), "\n") {
			lines = append(lines, strings.TrimRight(line, " \t\r\f"))
		}
		parts = append(parts, strings.Trim(strings.Join(lines, "\n"), "\n")+"\n")
	}
	return strings.Join(parts, "\n")
}

// TestTextsAreThoseOfTheCode fails when a library came in a newer version with
// other words, and says how to copy them.
func TestTextsAreThoseOfTheCode(t *testing.T) {
	for _, n := range all {
		want := original(t, n)
		if *update {
			if err := os.WriteFile(filepath.Join("texts", n.file+".txt"), []byte(want), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if got := n.Text(); got != want {
			t.Errorf("the text for %s is not the one that comes with it: go test ./generator/notices -update, and read what changed", n.Name)
		}
		if len(n.Text()) < 500 || !strings.Contains(n.Text(), "opyright") {
			t.Errorf("the text for %s is no licence: %.80q", n.Name, n.Text())
		}
	}
}

// TestEveryLibraryHasItsNotice compares the table with what the go command puts
// into the program on any system, and into what readers load.
func TestEveryLibraryHasItsNotice(t *testing.T) {
	const modules = "{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}"
	used := map[string]bool{"std": true}
	for _, system := range []string{"linux", "darwin", "windows"} {
		for _, m := range goSays(t, []string{"GOOS=" + system}, "list", "-deps", "-f", modules, "./generator") {
			used[m] = true
		}
	}
	loaded := goSays(t, []string{"GOOS=wasip1", "GOARCH=wasm"}, "list", "-deps", "-f", modules, "./calculators/wasm")
	for _, n := range all {
		if !used[n.Module] {
			t.Errorf("%s has a notice and is not in the program", n.Name)
		}
		delete(used, n.Module)
		if published := n.Module == "std" || slices.Contains(loaded, n.Module); n.Published != published {
			t.Errorf("%s is said to be loaded by readers: %v; it is: %v", n.Name, n.Published, published)
		}
	}
	for m := range used {
		t.Errorf("%s is in the program and has no notice: add it to notices.go and its text with -update", m)
	}
}

func TestWrite(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out); err != nil {
		t.Fatal(err)
	}
	for _, n := range all {
		if !strings.Contains(out.String(), "== "+n.Name+" ("+n.Module+"), "+n.Licence+"\n\n"+n.Text()) {
			t.Errorf("the notice of %s is missing", n.Name)
		}
	}
}

func TestParagraphsLoseNoWord(t *testing.T) {
	for _, n := range all {
		if got, want := strings.Fields(strings.Join(n.Paragraphs(), " ")), strings.Fields(n.Text()); !slices.Equal(got, want) {
			t.Errorf("%s: %d words of %d", n.Name, len(got), len(want))
		}
	}
}
