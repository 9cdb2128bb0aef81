package offline

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// read takes a worker apart: the list as the script gets it, and the script.
func read(t *testing.T, worker []byte) (l struct {
	Name, Page string
	Whole      bool
	Core, Rest [][]any
	Units      []struct {
		ID    string
		Lines [][]any
	}
}, script string) {
	t.Helper()
	first, rest, _ := bytes.Cut(worker, []byte("\n"))
	text, ok := bytes.CutPrefix(first, []byte("globalThis.edition="))
	if !ok {
		t.Fatalf("the worker begins with %.60q", worker)
	}
	if err := json.Unmarshal(text, &l); err != nil {
		t.Fatal(err)
	}
	return l, string(rest)
}

// addresses are the first entries of lines.
func addresses(lines [][]any) []string {
	all := []string{}
	for _, l := range lines {
		all = append(all, l[0].(string))
	}
	return all
}

// sized is a file of an address and a size.
func sized(address string, size int) File {
	return File{address, size, sha256.Sum256(fmt.Append(nil, address, size))}
}

// byAddress tells the part of a file by its address: a folder is a unit, pictures say
// what they show and how wide they are: "pictures/NAME-WIDTH".
func byAddress(address string) Part {
	folder, name, inFolder := strings.Cut(address, "/")
	switch {
	case folder == "book":
		return Part{Left: "It is for printing."}
	case folder == "pictures":
		p := Part{Picture: strings.Split(name, "-")[0]}
		fmt.Sscanf(strings.Split(name, "-")[1], "%d", &p.Width)
		return p
	case inFolder && folder != "assets":
		return Part{Unit: folder}
	}
	return Part{}
}

func TestListHoldsEachFileOnce(t *testing.T) {
	files := []File{sized("index.html", 10), sized("slip/mix.html", 20), sized("assets/a.css", 5), sized("book/1.html", 99), sized("wash/thin.html", 30), sized("slip/index.html", 7)}
	worker, err := Worker([]byte("work()"), "phone.html", files, byAddress)
	if err != nil {
		t.Fatal(err)
	}
	l, script := read(t, worker)
	if script != "work()" || !l.Whole || len(l.Name) != 8 || l.Page != "phone.html" || len(l.Rest) > 0 {
		t.Errorf("script %q, whole %v, name %q, page %q, rest %q", script, l.Whole, l.Name, l.Page, l.Rest)
	}
	if got, want := addresses(l.Core), []string{"assets/a.css", "index.html"}; !slices.Equal(got, want) {
		t.Errorf("core %q, want %q", got, want)
	}
	if len(l.Units) != 2 || l.Units[0].ID != "slip" || l.Units[1].ID != "wash" {
		t.Fatalf("units %v", l.Units)
	}
	if got, want := addresses(l.Units[0].Lines), []string{"slip/index.html", "slip/mix.html"}; !slices.Equal(got, want) {
		t.Errorf("unit slip %q, want %q", got, want)
	}
	if d := cmp.Diff([]any{"index.html", float64(10), Digest(files[0].Sum)}, l.Core[1]); d != "" {
		t.Errorf("a line (-want +got):\n%s", d)
	}
}

func TestSameFilesSameWorker(t *testing.T) {
	files := []File{sized("index.html", 10), sized("slip/mix.html", 20), sized("pictures/jar-544.jpg", 5), sized("pictures/jar-816.jpg", 5)}
	make := func(script string, files []File) string {
		worker, err := Worker([]byte(script), "phone.html", files, byAddress)
		if err != nil {
			t.Fatal(err)
		}
		return string(worker)
	}
	name := func(worker string) string {
		l, _ := read(t, []byte(worker))
		return l.Name
	}
	first := make("work()", files)
	back := slices.Clone(files)
	slices.Reverse(back)
	if make("work()", back) != first {
		t.Error("the order in which files are given changes the worker")
	}
	other := slices.Clone(files)
	other[1].Sum[11]++
	for what, worker := range map[string]string{"another file": make("work()", other), "another script": make("work(1)", files)} {
		if name(worker) == name(first) {
			t.Errorf("%s, and the edition has the same name", what)
		}
	}
}

func TestNoWorkerWithoutItsScript(t *testing.T) {
	if _, err := Worker(nil, "", nil, byAddress); err == nil || !strings.Contains(err.Error(), "scripts/worker.ts") {
		t.Errorf("error %v", err)
	}
}

func TestLargeHandbookAsksFirst(t *testing.T) {
	files := []File{sized("index.html", 1_000), sized("answers.html", 15_000_000), sized("faults.html", 2_000_000), sized("assets/a.bin", 4_000_000), sized("slip/mix.html", 1)}
	l := newList(files, byAddress)
	if l.Whole || len(l.Units) != 1 {
		t.Errorf("of %d bytes: whole %v, units %v", 21_001_001, l.Whole, l.Units)
	}
	var core []string
	for _, f := range l.Core {
		core = append(core, f.Address)
	}
	if want := []string{"assets/a.bin", "index.html", "faults.html"}; !slices.Equal(core, want) {
		t.Errorf("core %q, want %q: shared files, then the smallest pages, up to %d bytes", core, want, Most)
	}
	if len(l.Rest) != 1 || l.Rest[0].Address != "answers.html" {
		t.Errorf("rest %v", l.Rest)
	}
	for size, whole := range map[int]bool{Most: true, Most + 1: false} {
		if l := newList([]File{sized("slip/mix.html", size)}, byAddress); l.Whole != whole {
			t.Errorf("of %d bytes: whole %v", size, l.Whole)
		}
	}
}

func TestPicturesHaveTheirBudget(t *testing.T) {
	files := []File{
		sized("pictures/jar-544.jpg", 10), sized("pictures/jar-816.jpg", 20), sized("pictures/jar-1088.jpg", 30),
		sized("pictures/pot-1088.jpg", 40), sized("pictures/pot-1600.jpg", 50),
		sized("pictures/tall-544.jpg", MostPictures-60), sized("pictures/vast-544.jpg", MostPictures),
	}
	l := newList(files, byAddress)
	numbers := map[string]int{}
	for _, f := range slices.Concat(l.Core, l.Rest) {
		numbers[f.Address] = f.picture
	}
	var core []string
	for _, f := range l.Core {
		core = append(core, f.Address)
	}
	if want := []string{"pictures/jar-816.jpg", "pictures/pot-1088.jpg", "pictures/tall-544.jpg"}; !slices.Equal(core, want) {
		t.Errorf("taken %q, want %q", core, want)
	}
	if len(l.Rest) != 4 || numbers["pictures/jar-544.jpg"] != numbers["pictures/jar-1088.jpg"] || numbers["pictures/jar-544.jpg"] == numbers["pictures/pot-1088.jpg"] {
		t.Errorf("rest %v, numbers %v", l.Rest, numbers)
	}
}
