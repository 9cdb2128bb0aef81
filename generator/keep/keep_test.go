package keep

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// most is how many entries these tests keep.
const most = 8

func few(entries int, _ int64) bool { return entries <= most }

// counter is a build that counts its runs.
func counter(runs *atomic.Int32, gives string) func() ([]byte, error) {
	return func() ([]byte, error) { runs.Add(1); return []byte(gives), nil }
}

func mustKeep(t *testing.T, dir, digest string, build func() ([]byte, error), want string) {
	t.Helper()
	got, err := Or(dir, digest, few, build)
	if err != nil || string(got) != want {
		t.Fatalf("got %q, %v; want %q", got, err, want)
	}
}

func TestKeptIsBuiltOnce(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "not", "made", "yet")
	var runs atomic.Int32
	mustKeep(t, dir, "one", counter(&runs, "wasm"), "wasm")
	mustKeep(t, dir, "one", counter(&runs, "never"), "wasm")
	mustKeep(t, dir, "two", counter(&runs, "other"), "other")
	if runs.Load() != 2 {
		t.Errorf("%d builds for two digests, want 2", runs.Load())
	}
}

func TestDamagedEntriesAreBuiltAgain(t *testing.T) {
	for _, tt := range []struct {
		name   string
		damage func([]byte) []byte
	}{
		{"cut short", func(b []byte) []byte { return b[:len(b)-1] }},
		{"empty", func([]byte) []byte { return nil }},
		{"a byte changed", func(b []byte) []byte { b[0] ^= 1; return b }},
		{"the sum changed", func(b []byte) []byte { b[len(b)-1] ^= 1; return b }},
		{"grown", func(b []byte) []byte { return append(b, 0) }},
	} {
		t.Run(tt.name, func(t *testing.T) {
			dir := t.TempDir()
			var runs atomic.Int32
			mustKeep(t, dir, "one", counter(&runs, "wasm"), "wasm")
			file := filepath.Join(dir, "one")
			entry, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, tt.damage(entry), 0o644); err != nil {
				t.Fatal(err)
			}
			mustKeep(t, dir, "one", counter(&runs, "wasm"), "wasm")
			mustKeep(t, dir, "one", counter(&runs, "wasm"), "wasm")
			if runs.Load() != 2 {
				t.Errorf("%d builds, want 2: first, and after the damage", runs.Load())
			}
		})
	}
}

func TestAFailedBuildIsNotKept(t *testing.T) {
	dir := t.TempDir()
	broken := errors.New("does not compile")
	if _, err := Or(dir, "one", few, func() ([]byte, error) { return nil, broken }); !errors.Is(err, broken) {
		t.Errorf("error %v, want %v", err, broken)
	}
	var runs atomic.Int32
	mustKeep(t, dir, "one", counter(&runs, "wasm"), "wasm")
}

func TestNowhereToKeep(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, dir := range []string{"", filepath.Join(blocked, "below")} {
		var runs atomic.Int32
		mustKeep(t, dir, "one", counter(&runs, "wasm"), "wasm")
		mustKeep(t, dir, "one", counter(&runs, "wasm"), "wasm")
		if runs.Load() != 2 {
			t.Errorf("in %q: %d builds, want 2", dir, runs.Load())
		}
	}
}

func TestManyAtOnce(t *testing.T) {
	dir := t.TempDir()
	var runs atomic.Int32
	var all sync.WaitGroup
	for range 20 {
		all.Go(func() {
			got, err := Or(dir, "one", few, counter(&runs, "wasm"))
			if err != nil || string(got) != "wasm" {
				t.Errorf("got %q, %v", got, err)
			}
		})
	}
	all.Wait()
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 1 {
		t.Errorf("left %v in the folder (%v), want the one entry", entries, err)
	}
}

func TestOldEntriesGo(t *testing.T) {
	dir := t.TempDir()
	var runs atomic.Int32
	for i := range most + 3 {
		digest := fmt.Sprintf("digest-%02d", i)
		mustKeep(t, dir, digest, counter(&runs, digest), digest)
		at := time.Unix(int64(i), 0)
		if err := os.Chtimes(filepath.Join(dir, digest), at, at); err != nil {
			t.Fatal(err)
		}
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != most || entries[0].Name() != "digest-03" {
		t.Errorf("%d entries from %v on, want the newest %d", len(entries), entries[0], most)
	}
}
