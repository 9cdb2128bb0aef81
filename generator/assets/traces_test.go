//go:build !carried

package assets

import (
	"bytes"
	"context"
	"encoding/binary"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"

	"slipbook/calculators/catalog"
	"slipbook/calculators/catalog/catalogtest"
	"slipbook/calculators/form"
	"slipbook/calculators/stage/stagetest"
	"slipbook/calculators/words"
)

// troubled is testdata/troubles built as the calculators are, but inlined, since
// the runtime finds its way through inlined functions by its tables too.
func troubled(t *testing.T) []byte {
	t.Helper()
	out := filepath.Join(t.TempDir(), "troubles.wasm")
	cmd := exec.Command("go", append(append([]string{"build"}, flags[:len(flags)-1]...), "-o", out, "./testdata/troubles")...)
	cmd.Env = append(os.Environ(), environment...)
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	module, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return joined(module)
}

// running is a module that has been started.
func running(t *testing.T, module []byte) api.Module {
	t.Helper()
	ctx := context.Background()
	runtime := wazero.NewRuntime(ctx)
	t.Cleanup(func() { runtime.Close(ctx) })
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	m, err := runtime.InstantiateWithConfig(ctx, module, wazero.NewModuleConfig().WithStartFunctions("_initialize").WithStderr(os.Stderr))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// call calls an export.
func call(t *testing.T, m api.Module, name string, args ...uint64) int32 {
	t.Helper()
	result, err := m.ExportedFunction(name).Call(context.Background(), args...)
	if err != nil {
		t.Fatalf("%s%v: %v", name, args, err)
	}
	return int32(result[0])
}

// endings are what the troubles end in.
func endings(t *testing.T, module []byte) []string {
	t.Helper()
	m := running(t, module)
	var all []string
	for n := uint64(0); ; n++ {
		size := call(t, m, "try", n)
		if size < 0 {
			return all
		}
		text, _ := m.Memory().Read(uint32(call(t, m, "place")), uint32(size))
		all = append(all, string(text))
	}
}

// TestTroublesEndAlike holds a program without its traces to the same program
// with them, and both to a few endings that are known.
func TestTroublesEndAlike(t *testing.T) {
	with := troubled(t)
	without := untraced(with)
	if bytes.Equal(with, without) {
		t.Fatal("no traces were left out: Go writes other tables now")
	}
	want, got := endings(t, with), endings(t, without)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("without traces (-with +without):\n%s", diff)
	}
	for _, ending := range []string{"recovered from of our own", "recovered from again, after once", "elsewhere", "recovered from within 1",
		"recovered from value method main.figure.Said called using nil *figure pointer"} {
		if !strings.Contains(strings.Join(got, "\n"), ending) {
			t.Errorf("nothing ends in %q: %q", ending, got)
		}
	}
}

// TestPublishedCalculatorsAnswerAsNative asks the calculators as they are
// published; the package wasm asks them more, as they are linked.
func TestPublishedCalculatorsAnswerAsNative(t *testing.T) {
	linked := linkedCalculators(t)
	published := untraced(joined(linked))
	for _, trace := range []string{"catalog.workDensity", "catalog/density.go", "runtime/panic.go"} {
		if !bytes.Contains(linked, []byte(trace)) || bytes.Contains(published, []byte(trace)) {
			t.Errorf("%s is not in the calculators as linked, or is as published", trace)
		}
	}
	m := running(t, published)
	send := func(export, text string) []byte {
		m.Memory().WriteString(uint32(call(t, m, "reserve", uint64(len(text)))), text)
		n := call(t, m, export, uint64(len(text)))
		answer, _ := m.Memory().Read(uint32(call(t, m, "reserve", 0)), uint32(max(n, -n)))
		return bytes.Clone(answer)
	}
	settings := form.Plain()
	settings.Table, settings.Bodies, settings.Words = stagetest.Table(), catalogtest.Bodies, words.In(words.Default)
	send("configure", settings.Encode())
	random := rand.New(rand.NewPCG(3, 2026))
	for _, c := range catalog.All() {
		for range 100 {
			request := catalogtest.Any(random, c)
			if got, want := send("work", request), catalog.Respond([]byte(request), settings); !bytes.Equal(got, want) {
				t.Fatalf("%s\npublished %s\nnative    %s", request, got, want)
			}
		}
	}
}

// TestStrangeTablesStay damages one number of the tables after the other: the
// module comes back as it was.
func TestStrangeTablesStay(t *testing.T) {
	module := troubled(t)
	if twice := untraced(untraced(module)); !bytes.Equal(twice, untraced(module)) {
		t.Error("leaving traces out twice gives another module than once")
	}
	header := bytes.Index(module, []byte(tablesMagic))
	at := func(of int) int { return int(binary.LittleEndian.Uint32(module[header+of:])) }
	records := header + at(atRecords)
	record := records + int(binary.LittleEndian.Uint32(module[records+8*9+4:]))
	name := int(binary.LittleEndian.Uint32(module[record+ofName:]))
	for number, place := range map[string]int{
		"the magic number": header + 7, "the count": header + atCount, "the sign of the count": header + atCount + 7,
		"the names": header + atNames + 3, "the units": header + atUnits + 3, "the steps": header + atSteps + 3, "the records": header + atRecords + 2,
		"where the code begins": record, "a record's place": records + 8*9 + 6, "a name": record + ofName + 2, "the stack": record + ofStack + 3,
		"how many steps": record + ofSteps + 3, "the end of the name before": header + at(atNames) + name - 1,
	} {
		damaged := bytes.Clone(module)
		damaged[place] ^= 0xd5
		if !bytes.Equal(untraced(damaged), damaged) {
			t.Errorf("%s: traces were left out all the same", number)
		}
	}
}
