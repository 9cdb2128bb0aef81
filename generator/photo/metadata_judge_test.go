//go:build judges

package photo

import (
	"bytes"
	"encoding/binary"
	"image/jpeg"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestNothingIsLeftToRead has an outside tool look for whatever a camera wrote: it
// finds it in the source, and in the files made of it the colours alone.
func TestNothingIsLeftToRead(t *testing.T) {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, corners(1300, 900), nil); err != nil {
		t.Fatal(err)
	}
	source := slices.Concat(b.Bytes()[:2], exif(binary.BigEndian, 6), profileSegment(wide(secret)), segment(0xfe, secret), b.Bytes()[2:])
	if said := read(t, source); !strings.Contains(said, "abc") || !strings.Contains(said, secret) {
		t.Fatalf("the judge finds nothing in the source: %s", said)
	}
	for _, file := range made(t, source).files {
		said := read(t, file)
		for _, no := range []string{"abc", secret, "[EXIF]", "[XMP]", "[IPTC]", "[MakerNotes]", "Comment", "camera"} {
			if strings.Contains(said, no) {
				t.Errorf("it still says %q:\n%s", no, said)
			}
		}
		if !strings.Contains(said, "Red Matrix Column") {
			t.Errorf("the colours are gone:\n%s", said)
		}
	}
}

// read returns all that the judge finds in a file.
func read(t *testing.T, data []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "a.jpg")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("exiftool", "-G", "-a", "-u", file).CombinedOutput()
	if err != nil {
		t.Fatalf("exiftool: %v\n%s", err, out)
	}
	return string(out)
}
