package photo

import (
	"bytes"
	"errors"
	"image/jpeg"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
)

// phone is a photo of two widths.
func phone(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, corners(900, 600), nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// allOf returns each file of a photo from a lab, which may have to ask for the photo.
func allOf(t *testing.T, l *Lab, data []byte, n int, asked *atomic.Int32) [][]byte {
	t.Helper()
	var files [][]byte
	for i := range n {
		file, err := l.File(KeyOf(data), i, func() ([]byte, error) { asked.Add(1); return data, nil })
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	return files
}

// TestKeptIsWhatIsFresh wants the files from memory, from the folder of an earlier
// run, after the kept file was damaged or went away, and without a folder, to be
// those that are made fresh.
func TestKeptIsWhatIsFresh(t *testing.T) {
	data, dir := phone(t), filepath.Join(t.TempDir(), "photos")
	h, err := Look(data)
	if err != nil {
		t.Fatal(err)
	}
	fresh := made(t, data)
	if _, err := (&Lab{Folder: dir}).Make(h, data); err != nil {
		t.Fatal(err)
	}
	entry := filepath.Join(dir, name(KeyOf(data)))
	for _, c := range []struct {
		name   string
		before func() error
		folder string
		asked  int32
	}{
		{"kept", func() error { return nil }, dir, 0},
		{"damaged", func() error { return os.WriteFile(entry, []byte("{}\n"), 0o644) }, dir, 1},
		{"kept again", func() error { return nil }, dir, 0},
		{"gone", func() error { return os.Remove(entry) }, dir, 1},
		{"no folder", func() error { return nil }, "", 1},
		{"a folder that cannot be", func() error { return nil }, filepath.Join(entry, "below"), 1},
	} {
		if err := c.before(); err != nil {
			t.Fatal(err)
		}
		var asked atomic.Int32
		got := allOf(t, &Lab{Folder: c.folder}, data, len(fresh.files), &asked)
		if !slices.EqualFunc(got, fresh.files, bytes.Equal) || asked.Load() != c.asked {
			t.Errorf("%s: the photo was asked for %d times, want %d, or the files differ", c.name, asked.Load(), c.asked)
		}
	}
	m, ok := (&Lab{Folder: dir}).Known(KeyOf(data))
	if !ok || !slices.Equal(m.Versions, fresh.Versions) || m.Points != 900*600 {
		t.Errorf("known: %v, %v", m, ok)
	}
}

// TestChangedMeanwhile wants a photo that is another by now to be refused.
func TestChangedMeanwhile(t *testing.T) {
	data := phone(t)
	var l Lab
	_, err := l.File(KeyOf(data), 0, func() ([]byte, error) { return append(slices.Clone(data), 0), nil })
	if err == nil || !strings.Contains(err.Error(), "was changed") {
		t.Error(err)
	}
	gone := errors.New("gone")
	if _, err := l.File(KeyOf(data), 0, func() ([]byte, error) { return nil, gone }); !errors.Is(err, gone) {
		t.Error(err)
	}
}

// TestBudget wants no more memory to be out at once than there is, and what is larger
// to go alone.
func TestBudget(t *testing.T) {
	var b budget
	var out atomic.Int64
	var all sync.WaitGroup
	for i := range 40 {
		size := int64(mostAtOnce/3 - 1)
		if i%10 == 0 {
			size = 2 * mostAtOnce
		}
		all.Go(func() {
			release := b.reserve(size)
			if now := out.Add(size); now > mostAtOnce && now != 2*mostAtOnce {
				t.Errorf("%d bytes are out", now)
			}
			out.Add(-size)
			release()
		})
	}
	all.Wait()
}
