//go:build !carried

package assets

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"path/filepath"
	"testing"
)

func TestCalculatorsAreWebAssembly(t *testing.T) {
	packed, err := Calculators()
	if err != nil {
		t.Fatal(err)
	}
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	wasm, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(wasm, []byte("\x00asm\x01\x00\x00\x00")) {
		t.Errorf("starts with % x, want the magic number of WebAssembly", wasm[:min(8, len(wasm))])
	}
	again, err := Calculators()
	if err != nil || !bytes.Equal(packed, again) {
		t.Errorf("the second time gave other bytes (%v)", err)
	}
}

func TestModuleRoot(t *testing.T) {
	root := t.TempDir()
	inner := filepath.Join(root, "a", "b")
	write := func(name, text string) {
		t.Helper()
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(filepath.Join(inner, "go.mod"), "module another\n")
	if _, err := moduleRoot(inner); err == nil {
		t.Error("found a root where there is none")
	} else if want := "the calculators cannot be compiled: " + inner + " is not inside a checkout of slipbook. " +
		"Run slipbook from its checkout, or use a release build, which carries them"; err.Error() != want {
		t.Errorf("error\n got %s\nwant %s", err, want)
	}
	write(filepath.Join(root, "go.mod"), "module slipbook\n\ngo 1.26\n")
	if got, err := moduleRoot(inner); err != nil || got != root {
		t.Errorf("from a folder below: %q, %v; want %q", got, err, root)
	}
}
