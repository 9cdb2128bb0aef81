package assets

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"io"
	"strings"
	"testing"
	"testing/fstest"
)

func TestWrapCarriesTheSameBytesTwice(t *testing.T) {
	data := []byte("medium\tcoloured-slip\n")
	p, files, err := new(Bundle).Wrap("table", data)
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != 2 || !strings.HasPrefix(p.Packed, "assets/table-") || !strings.HasSuffix(p.Packed, ".bin") || !strings.HasSuffix(p.Carried, ".js") {
		t.Fatalf("the parcel is %+v with %d files", p, len(files))
	}
	r, err := gzip.NewReader(bytes.NewReader(files[p.Packed]))
	if err != nil {
		t.Fatal(err)
	}
	if got, err := io.ReadAll(r); err != nil || !bytes.Equal(got, data) {
		t.Errorf("unpacked %q (%v), want %q", got, err, data)
	}
	script := string(files[p.Carried])
	text, ok := strings.CutPrefix(script, `globalThis.carried="`)
	carried, err := base64.StdEncoding.DecodeString(strings.TrimSuffix(text, "\"\n"))
	if !ok || err != nil || !bytes.Equal(carried, files[p.Packed]) {
		t.Errorf("the script does not carry the packed bytes: %q (%v)", script, err)
	}
}

func TestWrapNamesByContent(t *testing.T) {
	var kept Bundle
	a, _, _ := kept.Wrap("table", []byte("a"))
	words, _, _ := kept.Wrap("words", []byte("a"))
	again, _, _ := kept.Wrap("table", []byte("a"))
	b, _, _ := kept.Wrap("table", []byte("b"))
	back, _, _ := kept.Wrap("table", []byte("a"))
	if a != again || a != back || a == words || a.Packed == b.Packed || a.Carried == b.Carried {
		t.Errorf("parcels %+v, %+v of the same data, %+v of other data", a, again, b)
	}
}

func TestScriptsTakeOnlyTheWordsTheySay(t *testing.T) {
	fsys := theme()
	fsys["words.yaml"] = &fstest.MapFile{Data: []byte("said: Work it out\nunsaid: Never mind\n")}
	fsys["scripts/calculator.ts"].Data = []byte("import * as words from '../words.yaml'\ndocument.title = words['said']\n")
	b := mustMake(t, fsys)
	if js := string(b.Files[b.Desk.Script]); !strings.Contains(js, "Work it out") || strings.Contains(js, "Never mind") {
		t.Errorf("the script holds %s", js)
	}
	fsys["scripts/calculator.ts"].Data = []byte("import * as words from '../words.yaml'\ndocument.title = words['sayd']\n")
	if _, err := Make(fsys, nil); err == nil || !strings.Contains(err.Error(), "scripts/calculator.ts:2:24") {
		t.Errorf("a word that words.yaml lacks: %v", err)
	}
}

func TestPlannerAndBenchMayBeLeftOut(t *testing.T) {
	if d := mustMake(t, theme()).Desk; d.Planner != "" || d.Bench != "" || d.BenchStyle != "" {
		t.Errorf("scripts from nothing: %+v", d)
	}
	fsys := theme()
	for _, name := range []string{"scripts/planner.ts", "scripts/bench.ts"} {
		fsys[name] = fsys["scripts/page.ts"]
	}
	fsys["styles/bench.css"] = fsys["styles/ground.css"]
	d := mustMake(t, fsys).Desk
	for address, start := range map[string]string{d.Planner: "assets/planner-", d.Bench: "assets/bench-", d.BenchStyle: "assets/bench-"} {
		if !strings.HasPrefix(address, start) {
			t.Errorf("address %q, want %s…", address, start)
		}
	}
}
