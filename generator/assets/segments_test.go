//go:build !carried

package assets

import (
	"bytes"
	"context"
	"os"
	"testing"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

// TestSegmentsAreJoined tries modules with nothing but segments: two with a
// short gap or none, two that overlap, one far away at an address whose sign
// needs a byte of its own, and a section before them.
func TestSegmentsAreJoined(t *testing.T) {
	near := "\x00\x41\x08\x0b\x01a"        // at 8
	far := "\x00\x41\xc0\x80\x04\x0b\x01z" // at 65,600
	for _, c := range []struct{ name, module, want string }{
		{"a short gap", "\x0b\x0e\x02" + near + "\x00\x41\x0b\x0b\x02bc", "\x0b\x0b\x01\x00\x41\x08\x0b\x05a\x00\x00bc"},
		{"no gap", "\x0b\x0d\x02" + near + "\x00\x41\x09\x0b\x01b", "\x0b\x08\x01\x00\x41\x08\x0b\x02ab"},
		{"an overlap", "\x0b\x0d\x02" + near + near, "\x0b\x0d\x02" + near + near},
		{"a long gap", "\x0b\x0f\x02" + near + far, "\x0b\x0f\x02" + near + far},
		{"another section", "\x00\x02\x01n\x0b\x09\x01" + far, "\x00\x02\x01n\x0b\x09\x01" + far},
	} {
		c.module, c.want = moduleHeader+c.module, moduleHeader+c.want
		if got := joined([]byte(c.module)); string(got) != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// TestStrangeModulesStay hands in what is no module, or none that can be
// joined: it comes back as it was.
func TestStrangeModulesStay(t *testing.T) {
	for name, module := range map[string]string{
		"nothing":            "",
		"no module":          "slip",
		"half a section":     moduleHeader + "\x0b\x0f\x02\x00\x41",
		"half a segment":     moduleHeader + "\x0b\x06\x01\x00\x41\x08\x0b\x09",
		"a passive segment":  moduleHeader + "\x0b\x04\x01\x01\x01a",
		"a negative address": moduleHeader + "\x0b\x07\x01\x00\x41\x7f\x0b\x01a",
		"a count before":     moduleHeader + "\x0c\x01\x01\x0b\x07\x01\x00\x41\x08\x0b\x01a",
		"more than is said":  moduleHeader + "\x0b\x08\x01\x00\x41\x08\x0b\x01ab",
	} {
		if got := joined([]byte(module)); string(got) != module {
			t.Errorf("%s: %q became %q", name, module, got)
		}
	}
}

// TestJoinedBeginsWithTheSameMemory lets an engine lay out the memory of the
// calculators as the linker wrote them and as they are published.
func TestJoinedBeginsWithTheSameMemory(t *testing.T) {
	linked := linkedCalculators(t)
	close := joined(linked)
	if bytes.Equal(close, linked) {
		t.Fatal("no segments were joined: the linker writes other modules now")
	}
	if again := joined(close); !bytes.Equal(again, close) {
		t.Error("joining twice gives another module than joining once")
	}
	if !bytes.Equal(memory(t, close), memory(t, linked)) {
		t.Error("the memory is another one")
	}
}

// linkedCalculators are the calculators as the linker wrote them.
func linkedCalculators(t *testing.T) []byte {
	t.Helper()
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	root, err := moduleRoot(here)
	if err != nil {
		t.Fatal(err)
	}
	linked, err := compile(root)
	if err != nil {
		t.Fatal(err)
	}
	return linked
}

// memory is what a module's memory holds before anything runs.
func memory(t *testing.T, module []byte) []byte {
	t.Helper()
	ctx := context.Background()
	runtime := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfigInterpreter())
	t.Cleanup(func() { runtime.Close(ctx) })
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	m, err := runtime.InstantiateWithConfig(ctx, module, wazero.NewModuleConfig().WithStartFunctions())
	if err != nil {
		t.Fatal(err)
	}
	all, ok := m.Memory().Read(0, m.Memory().Size())
	if !ok {
		t.Fatal("the memory cannot be read")
	}
	return all
}
