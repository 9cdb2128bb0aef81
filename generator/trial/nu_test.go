//go:build judges

package trial

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
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

// String gives a remark on one line.
func (r remark) String() string {
	return fmt.Sprintf("%s:%d:%d: %s %s: %s | %s", r.URL, r.LastLine, r.LastColumn, r.Type, r.SubType, r.Message,
		strings.Join(strings.Fields(r.Extract), " "))
}

func TestNu(t *testing.T) {
	h := published(t)
	// Pages go by address: the checker also judges what their policy lets them
	// load. Drawings go by file, where it knows them for drawings.
	var served, files []string
	for _, address := range append(h.pages, h.files(t, ".css")...) {
		served = append(served, h.home+address)
	}
	for _, address := range h.files(t, ".svg") {
		files = append(files, filepath.Join(h.dir, filepath.FromSlash(address)))
	}
	for _, r := range append(nu(t, served), nu(t, files)...) {
		t.Error(r)
	}
}
