//go:build judges

package trial

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/chromedp/cdproto/network"
)

// The limits of what a student's phone has to fetch, in bytes, gzipped.
const (
	lessonLimit = 25_000 // a lesson's page without its pictures, its styles and scripts
	scriptLimit = 10_000 // of these the scripts
	engineLimit = 1.30   // the calculators, as a multiple of an empty reactor
)

// gzipped returns the size of bytes as a server would send them.
func gzipped(t *testing.T, data []byte) int {
	t.Helper()
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return packed.Len()
}

func TestWeightOfALesson(t *testing.T) {
	t.Parallel()
	h := published(t)
	var heaviest atomic.Int64
	tour(t, h.all(t, "lesson"), func(b *tab, address string) {
		call(b, network.SetCacheDisabled, network.SetCacheDisabledParams{CacheDisabled: true})
		b.visit("about:blank")
		b.heard()
		b.visit(h.home + address)
		b.ready()
		_, asked := b.heard()
		all, scripts := 0, 0
		for _, a := range asked {
			name := strings.TrimPrefix(a, h.home)
			extension := path.Ext(name)
			if extension != ".html" && extension != ".css" && extension != ".js" {
				continue
			}
			size := gzipped(b.t, undrawn(h.read(b.t, name)))
			all += size
			if extension == ".js" {
				scripts += size
			}
		}
		for old := heaviest.Load(); int64(all) > old && !heaviest.CompareAndSwap(old, int64(all)); old = heaviest.Load() {
		}
		if all > lessonLimit || all == 0 {
			b.t.Errorf("%s: %d bytes with its styles and scripts, the limit is %d", address, all, lessonLimit)
		}
		if scripts > scriptLimit {
			b.t.Errorf("%s: %d bytes of scripts, the limit is %d", address, scripts, scriptLimit)
		}
	})
	t.Logf("the heaviest lesson: %d bytes of %d", heaviest.Load(), lessonLimit)
}

// TestWeightOfALessonsScripts holds what a lesson has loaded once one of its calculators
// was opened: the same limit, since that may be the first thing that somebody does.
func TestWeightOfALessonsScripts(t *testing.T) {
	t.Parallel()
	h := published(t)
	all := 0
	for _, name := range []string{"lesson", "calculator"} {
		scripts := slices.DeleteFunc(h.files(t, ".js"), func(file string) bool { return !strings.HasPrefix(file, "assets/"+name+"-") })
		if len(scripts) != 1 {
			t.Fatalf("%d scripts are called %s", len(scripts), name)
		}
		all += gzipped(t, h.read(t, scripts[0]))
	}
	t.Logf("a lesson with an open calculator: %d bytes of scripts", all)
	if all > scriptLimit {
		t.Errorf("a lesson with an open calculator loads %d bytes of scripts, the limit is %d", all, scriptLimit)
	}
}

// plates are the drawings of a lesson.
var plates = regexp.MustCompile(`(?s)(<figure class="plate">\s*)<svg .*?</svg>`)

// undrawn is a page without its drawings. The limit is for what has to come
// before a lesson can be read; drawings stand in the page itself, so that they
// take its inks, but they are pictures all the same.
func undrawn(page []byte) []byte { return plates.ReplaceAll(page, []byte("$1")) }

// empty is a reactor that does nothing: what the calculators are measured by.
const empty = `package main

//go:wasmexport work
func work(n int32) int32 { return n }

func main() {}
`

// emptyReactor builds it as the calculators are built.
func emptyReactor(t *testing.T) []byte {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"go.mod": "module empty\n\ngo 1.26\n", "main.go": empty} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	build := exec.Command("go", "build", "-buildmode=c-shared", "-trimpath", "-ldflags=-s -w", "-o", "empty.wasm", ".")
	build.Dir = dir
	build.Env = append(os.Environ(), "GOOS=wasip1", "GOARCH=wasm")
	if said, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	built, err := os.ReadFile(filepath.Join(dir, "empty.wasm"))
	if err != nil {
		t.Fatal(err)
	}
	return built
}

func TestWeightOfTheCalculators(t *testing.T) {
	t.Parallel()
	h := published(t)
	engines := slices.DeleteFunc(h.files(t, ".bin"), func(file string) bool { return !strings.HasPrefix(file, "assets/calculators-") })
	if len(engines) != 1 {
		t.Fatalf("%d engines were published, want one: %v", len(engines), engines)
	}
	packed := h.read(t, engines[0])
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	engine, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	least := gzipped(t, emptyReactor(t))
	for what, size := range map[string]int{"as published": len(packed), "gzipped anew": gzipped(t, engine)} {
		ratio := float64(size) / float64(least)
		t.Logf("the calculators %s: %d bytes, %.3f times an empty reactor of %d", what, size, ratio, least)
		if ratio > engineLimit {
			t.Errorf("the calculators %s: %.3f times an empty reactor, the limit is %.2f", what, ratio, engineLimit)
		}
	}
}
