//go:build !wasip1

package main

import (
	"bytes"
	"context"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"

	"slipbook/calculators/catalog"
	"slipbook/calculators/catalog/catalogtest"
	"slipbook/calculators/form"
	"slipbook/calculators/stage/stagetest"
	"slipbook/calculators/words"
)

// reactor is the built module, running under wazero.
type reactor struct {
	t      *testing.T
	module api.Module
}

func start(t *testing.T) *reactor {
	t.Helper()
	return run(t, built(t))
}

// built builds the module as the generator does.
func built(t *testing.T) []byte {
	t.Helper()
	file := filepath.Join(t.TempDir(), "calculators.wasm")
	build := exec.Command("go", "build", "-buildmode=c-shared", "-trimpath", "-ldflags=-s -w",
		"-gcflags=all=-d=variablemakethreshold=0", "-gcflags=runtime=-l -d=variablemakethreshold=0", "-gcflags=slipbook/...=-l -d=variablemakethreshold=0",
		"-o", file, ".")
	build.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm", "GOEXPERIMENT=none")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("building the reactor: %v\n%s", err, out)
	}
	code, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return code
}

// run starts a built module.
func run(t *testing.T, code []byte) *reactor {
	t.Helper()
	ctx := context.Background()
	runtime := wazero.NewRuntime(ctx)
	t.Cleanup(func() { runtime.Close(ctx) })
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	module, err := runtime.InstantiateWithConfig(ctx, code, wazero.NewModuleConfig().WithStartFunctions("_initialize"))
	if err != nil {
		t.Fatal(err)
	}
	return &reactor{t, module}
}

func (r *reactor) call(name string, n int) int32 {
	r.t.Helper()
	result, err := r.module.ExportedFunction(name).Call(context.Background(), uint64(uint32(n)))
	if err != nil {
		r.t.Fatalf("%s(%d): %v", name, n, err)
	}
	return int32(result[0])
}

// send writes bytes into the buffer and calls an export with their number.
func (r *reactor) send(name string, request []byte) int32 {
	r.t.Helper()
	if !r.module.Memory().Write(uint32(r.call("reserve", len(request))), request) {
		r.t.Fatal("the buffer lies outside the memory")
	}
	return r.call(name, len(request))
}

// received copies the first n bytes of the buffer.
func (r *reactor) received(n int32) []byte {
	r.t.Helper()
	answer, ok := r.module.Memory().Read(uint32(r.call("reserve", 0)), uint32(n))
	if !ok {
		r.t.Fatal("the answer lies outside the memory")
	}
	return bytes.Clone(answer)
}

// TestSameBits sends 1,500 random requests to each calculator, good and bad,
// in three courses' styles and both kinds of English, and wants the native
// answer to the last bit.
func TestSameBits(t *testing.T) {
	r := start(t)
	random := rand.New(rand.NewPCG(7, 2026))
	for n, style := range []string{"decimal=.&measures=metric", "decimal=%2C&measures=us", "decimal=.&measures=imperial"} {
		settings, err := form.Configure([]byte(style))
		if err != nil {
			t.Fatal(err)
		}
		settings.Table, settings.Bodies = stagetest.Table(), catalogtest.Bodies
		settings.Words = words.In(words.Languages()[n%len(words.Languages())])
		if n := r.send("configure", []byte(settings.Encode())); n != 0 {
			t.Fatalf("configure: %s", r.received(-n))
		}
		for _, c := range catalog.All() {
			good := 0
			for range 500 {
				request := catalogtest.Any(random, c)
				native := catalog.Respond([]byte(request), settings)
				if !bytes.Contains(native, []byte("error.")) {
					good++
				}
				if got := r.received(r.send("work", []byte(request))); !bytes.Equal(got, native) {
					t.Fatalf("%s\nwasm   %s\nnative %s", request, got, native)
				}
			}
			if good < 215 {
				t.Errorf("%s: only %d good requests, the generator is too wild", c.Name, good)
			}
		}
	}
}

// TestReactorBounds tries what no page would do.
func TestReactorBounds(t *testing.T) {
	r := start(t)
	for _, n := range []int{-1, 1<<20 + 1, 1 << 30} {
		if got := r.call("reserve", n); got != 0 {
			t.Errorf("reserve(%d) = %d, want 0", n, got)
		}
	}
	for _, n := range []int{-5, 1 << 25} {
		if got := r.received(r.call("work", n)); !bytes.Contains(got, []byte("error.calculator=")) {
			t.Errorf("work(%d): %s", n, got)
		}
		if got := r.call("configure", n); got >= 0 {
			t.Errorf("configure(%d) = %d, want a message", n, got)
		}
	}
	if n := r.send("configure", []byte("decimal=x")); n >= 0 {
		t.Error("a bad setting was taken")
	}
	long := bytes.Repeat([]byte("a"), 1<<17)
	if got := r.received(r.send("work", long)); !bytes.Contains(got, []byte("error.calculator=")) {
		t.Errorf("a long request: %s", got)
	}
	// It still answers afterwards, once it has words.
	plain := form.Plain()
	plain.Words = words.In(words.Default)
	if n := r.send("configure", []byte(plain.Encode())); n != 0 {
		t.Fatalf("configure: %s", r.received(-n))
	}
	request := []byte("calculator=slip-density&mass=" + strconv.Itoa(150))
	if got := r.received(r.send("work", request)); !bytes.Equal(got, catalog.Respond(request, plain)) {
		t.Errorf("afterwards: %s", got)
	}
}

// TestReactorHoldsNoProse looks into the built module for every sentence of the
// words: they travel beside it, and none may come back with the code.
func TestReactorHoldsNoProse(t *testing.T) {
	code := built(t)
	looked := 0
	for _, language := range words.Languages() {
		w := words.In(language)
		for _, id := range w.IDs() {
			if strings.HasPrefix(id, "quantity.jug.") || strings.HasPrefix(id, "quantity.measure.") {
				continue // names of units, which people type
			}
			for _, piece := range pieces(w.Text(id)) {
				if looked++; bytes.Contains(code, []byte(piece)) {
					t.Errorf("%s holds %q of %s", "the reactor", piece, id)
				}
			}
		}
	}
	if looked < 1000 {
		t.Errorf("only %d pieces were looked for", looked)
	}
	if !bytes.Contains(code, []byte("slip-density")) {
		t.Error("not even names are found: this test looks at the wrong place")
	}
}

// pieces are the parts of a sentence between its fill-ins that are long enough
// to be nobody else's.
func pieces(sentence string) []string {
	var long []string
	for _, piece := range regexp.MustCompile(`\{[^}]*\}`).Split(sentence, -1) {
		piece = strings.TrimSpace(piece)
		if len(piece) >= 10 && strings.Contains(piece, " ") {
			long = append(long, piece)
		}
	}
	return long
}
