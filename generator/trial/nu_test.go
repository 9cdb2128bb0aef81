//go:build judges

package trial

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// remark is one message of the Nu HTML checker.
type remark struct {
	Type, SubType, URL, Message, Extract string
	LastLine, LastColumn                 int
}

// nu lets the Nu HTML checker judge files, or what is served at addresses;
// everything it says is returned, down to its informations.
func nu(t *testing.T, all []string) []remark {
	t.Helper()
	jar, err := filepath.Abs(root + "/testdata/node_modules/vnu-jar/build/dist/vnu.jar")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(jar); err != nil {
		t.Fatalf("no Nu HTML checker to judge with: %v", err)
	}
	arguments := []string{"-Dnu.validator.servlet.allow-forbidden-hosts=true", // this machine is one
		"-jar", jar, "--stdout", "--exit-zero-always", "--format", "json", "--also-check-css", "--also-check-svg"}
	command := exec.Command("java", append(arguments, all...)...)
	var complaint bytes.Buffer
	command.Stderr = &complaint
	out, err := command.Output()
	if err != nil {
		t.Fatalf("the Nu HTML checker: %v\n%s", err, complaint.String())
	}
	var report struct{ Messages []remark }
	if err := json.Unmarshal(out, &report); err != nil {
		t.Fatalf("the Nu HTML checker wrote no report: %v\n%s%s", err, out, complaint.String())
	}
	return report.Messages
}

// String returns a remark on one line.
func (r remark) String() string {
	return fmt.Sprintf("%s:%d:%d: %s %s: %s | %s", r.URL, r.LastLine, r.LastColumn, r.Type, r.SubType, r.Message,
		strings.Join(strings.Fields(r.Extract), " "))
}

// TestNu judges both copies in one run: to start the checker takes longer than
// many pages.
func TestNu(t *testing.T) {
	t.Parallel()
	h, notes := published(t), publishedNotes(t)
	// Pages go by address: the checker also judges what their policy lets them
	// load. Drawings go by file, where it knows them for drawings.
	var all []string
	for _, address := range append(slices.Clone(h.pages), h.files(t, ".css")...) {
		all = append(all, h.home+address)
	}
	for _, address := range notes.pages {
		if !slices.Contains(h.pages, address) || h.document(t, address).source != notes.document(t, address).source {
			all = append(all, notes.home+address)
		}
	}
	for _, address := range h.files(t, ".svg") {
		all = append(all, filepath.Join(h.dir, filepath.FromSlash(address)))
	}
	for _, r := range nu(t, all) {
		t.Error(r)
	}
}
