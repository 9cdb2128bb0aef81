//go:build judges

package trial

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// epubcheck is where Debian keeps EPUBCheck. Its command of the same name starts only
// where the system starts Java's archives by themselves.
const epubcheck = "/usr/share/java/epubcheck.jar"

// TestEPUBCheck wants the e-book of both copies to be without an error or a warning.
func TestEPUBCheck(t *testing.T) {
	t.Parallel()
	if _, err := os.Stat(epubcheck); err != nil {
		t.Fatalf("no EPUBCheck to judge with: %v", err)
	}
	for _, h := range []*handbook{published(t), publishedNotes(t)} {
		out, err := exec.Command("java", "-jar", epubcheck, filepath.Join(h.dir, "handbook.epub")).CombinedOutput()
		if err != nil || !strings.Contains(string(out), "0 fatals / 0 errors / 0 warnings") {
			t.Errorf("%s: %v\n%.4000s", h.dir, err, out)
		}
	}
}
