//go:build !carried

package assets

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"slipbook/generator/keep"
)

// A release build carries the finished calculators and needs no Go where it
// runs: "go generate ./generator/assets" writes carried.bin beside this file,
// then "go build -tags carried -trimpath ./generator" takes it in.
//
//go:generate go run ./carry carried.bin

// Calculators compiles the calculators to WebAssembly and returns them gzipped.
// The result is kept in the user's folder for such things, under a digest of
// the sources and the Go version, so that only a change costs a compilation.
// It works inside a checkout of slipbook, from any folder of it.
func Calculators() ([]byte, error) {
	here, err := os.Getwd()
	if err != nil {
		return nil, fmt.Errorf("compiling the calculators: %w", err)
	}
	root, err := moduleRoot(here)
	if err != nil {
		return nil, err
	}
	version, err := goVersion(root)
	if err != nil {
		return nil, err
	}
	digest, err := digestOf(os.DirFS(root), version)
	if err != nil {
		return nil, fmt.Errorf("compiling the calculators: %w", err)
	}
	return keep.Or(keep.Folder("calculators"), digest, fewKept, func() ([]byte, error) {
		wasm, err := compile(root)
		if err != nil {
			return nil, err
		}
		return pack(untraced(joined(wasm)))
	})
}

// fewKept keeps some compiled sets of calculators: enough to go to and fro between a
// few versions, little enough not to fill a disk.
func fewKept(entries int, _ int64) bool { return entries <= 8 }

// moduleRoot walks up from a folder to the one that holds slipbook's go.mod.
func moduleRoot(from string) (string, error) {
	for dir := from; ; dir = filepath.Dir(dir) {
		mod, err := os.ReadFile(filepath.Join(dir, "go.mod"))
		if err == nil && bytes.HasPrefix(mod, []byte("module slipbook\n")) {
			return dir, nil
		}
		if dir == filepath.Dir(dir) {
			return "", fmt.Errorf("the calculators cannot be compiled: %s is not inside a checkout of slipbook. "+
				"Run slipbook from its checkout, or use a release build, which carries them", from)
		}
	}
}

// goVersion asks the Go tool for its version, which decides the bytes.
func goVersion(root string) (string, error) {
	cmd := exec.Command("go", "env", "GOVERSION")
	cmd.Dir = root
	out, err := cmd.Output()
	if errors.Is(err, exec.ErrNotFound) {
		return "", errors.New("the calculators cannot be compiled: there is no go command on the PATH. " +
			"Install Go, or use a release build, which carries them")
	}
	if err != nil {
		return "", fmt.Errorf("asking Go for its version: %w", err)
	}
	return strings.TrimSpace(string(out)), nil
}

// flags build the reactor small and the same everywhere. Inlining is off where
// it makes the download larger, in the runtime and in the calculators; the rest
// of the standard library has so many functions of one line that it makes it
// smaller there. Slices of a length that only the run shows get no room on the
// stack beforehand, which costs code at every append. An answer takes far less
// than the time between two keys either way. The last pattern that fits a
// package counts.
var flags = []string{
	"-buildmode=c-shared", "-trimpath", "-buildvcs=false", "-ldflags=-s -w",
	"-gcflags=all=" + noRoom, "-gcflags=runtime=-l " + noRoom, "-gcflags=slipbook/...=-l " + noRoom,
}

// noRoom switches off the room on the stack ("go tool compile -d help").
const noRoom = "-d=variablemakethreshold=0"

// environment is the Go switches that the reactor is built under, the same on
// every machine. Without Go's experiments, some of which are on by default, the
// older garbage collector is taken in, which is smaller; for heaps of a few
// megabytes it is as good.
var environment = []string{"GOOS=wasip1", "GOARCH=wasm", "GOFLAGS=", "GOWASM=", "GOEXPERIMENT=none", "GOWORK=off", "CGO_ENABLED=0"}

// compile builds the reactor with fixed flags and switches, so that every
// machine gets the same bytes.
func compile(root string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "slipbook-")
	if err != nil {
		return nil, fmt.Errorf("compiling the calculators: %w", err)
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "calculators.wasm")
	cmd := exec.Command("go", append(append([]string{"build"}, flags...), "-o", out, "./calculators/wasm")...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), environment...)
	if said, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("compiling the calculators: %w\n%s", err, bytes.TrimSpace(said))
	}
	wasm, err := os.ReadFile(out)
	if err != nil {
		return nil, fmt.Errorf("compiling the calculators: %w", err)
	}
	return wasm, nil
}
