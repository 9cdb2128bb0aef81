//go:build judges

package trial

import (
	"flag"
	"fmt"
	"io/fs"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
)

// root is the top of the module, as seen from this package.
const root = "../.."

// workshop is a folder for everything that the trial makes, removed at its end.
var workshop string

func TestMain(m *testing.M) {
	os.Exit(runIn(m))
}

// runIn runs the tests in a new workshop and tidies up after them.
func runIn(m *testing.M) int {
	var err error
	if workshop, err = os.MkdirTemp("", "trial-"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(workshop)
	defer closeBrowser()
	return m.Run()
}

// handbook is a published handbook and where it is served.
type handbook struct {
	dir   string   // the folder it was published into
	home  string   // where its root is served, "http://127.0.0.1:PORT/bench/notes/"
	pages []string // addresses of its pages from there, in order

	parsed func() (map[string]*document, error) // its pages by address, read once
}

// program builds slipbook and returns the path of the built program.
var program = sync.OnceValues(func() (string, error) {
	built := filepath.Join(workshop, "slipbook")
	return built, run(nil, "go", "build", "-o", built, "./generator")
})

// publishing is the demo course for students, published once for all tests.
var publishing = sync.OnceValues(func() (*handbook, error) { return publishAndServe("handbook") })

// publishingNotes is the copy for the instructor, likewise.
var publishingNotes = sync.OnceValues(func() (*handbook, error) { return publishAndServe("teaching", "--teaching") })

// publishAndServe publishes the demo course into a folder of the workshop.
func publishAndServe(name string, options ...string) (*handbook, error) {
	dir := filepath.Join(workshop, name)
	if err := publishTo(dir, nil, options...); err != nil {
		return nil, err
	}
	return serve(dir)
}

// published returns the demo course, published and served as students get it.
func published(t *testing.T) *handbook {
	t.Helper()
	h, err := publishing()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// publishedNotes returns the copy for the instructor.
func publishedNotes(t *testing.T) *handbook {
	t.Helper()
	h, err := publishingNotes()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// publishTo publishes the demo course into a folder with the built program, in
// an environment with some variables more.
func publishTo(dir string, variables []string, options ...string) error {
	slipbook, err := program()
	if err != nil {
		return err
	}
	return run(variables, slipbook, append([]string{"publish", "--to", dir}, options...)...)
}

// run runs a command at the top of the module; an error carries all it said.
func run(variables []string, name string, arguments ...string) error {
	command := exec.Command(name, arguments...)
	command.Dir = root
	command.Env = append(os.Environ(), variables...)
	if said, err := command.CombinedOutput(); err != nil {
		return fmt.Errorf("%s %s: %w\n%s", name, strings.Join(arguments, " "), err, said)
	}
	return nil
}

// types are all that the server knows of media types, and all a handbook needs.
var types = map[string]string{
	".html": "text/html; charset=utf-8",
	".css":  "text/css; charset=utf-8",
	".js":   "text/javascript; charset=utf-8",
	".svg":  "image/svg+xml",
	".png":  "image/png",
	".jpg":  "image/jpeg",
	".bin":  "application/octet-stream",

	".webmanifest": "application/manifest+json",
}

// folder is where a handbook is served.
const folder = "/bench/notes/"

// serve puts a folder behind a static server on this machine, in a folder of
// its own, so that an address that takes the handbook for the whole server
// shows.
func serve(dir string) (*handbook, error) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	go http.Serve(listener, handler(dir)) // ends with the test program
	pages, err := find(dir, ".html")
	if err == nil && len(pages) == 0 {
		err = fmt.Errorf("no page in %s", dir)
	}
	h := &handbook{dir: dir, home: "http://" + listener.Addr().String() + folder, pages: pages}
	h.parsed = sync.OnceValues(h.parse)
	return h, err
}

// handler answers for a folder.
func handler(dir string) http.Handler {
	files := http.StripPrefix(folder, http.FileServer(http.Dir(dir)))
	served := http.NewServeMux()
	served.HandleFunc(folder, func(w http.ResponseWriter, r *http.Request) {
		kind := types[path.Ext(r.URL.Path)]
		if kind == "" {
			kind = types[".bin"]
		}
		if strings.HasSuffix(r.URL.Path, "/") {
			kind = types[".html"]
		}
		w.Header().Set("Content-Type", kind)
		files.ServeHTTP(w, r)
	})
	return served
}

// find lists the files of a folder with an extension, slash-separated, sorted.
func find(dir, extension string) ([]string, error) {
	var found []string
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && path.Ext(name) == extension {
			found = append(found, name)
		}
		return err
	})
	return found, err
}

// files lists the published files with an extension.
func (h *handbook) files(t *testing.T, extension string) []string {
	t.Helper()
	found, err := find(h.dir, extension)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// read returns the bytes of a published file.
func (h *handbook) read(t *testing.T, address string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(h.dir, filepath.FromSlash(address)))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// kinds are the kinds of page of a student's handbook; an instructor's copy has
// the kind "teaching" too.
var kinds = []string{"home", "unit", "lesson", "calculators", "calculator", "chart", "state", "medium", "glossary", "search", "contents",
	"answers", "faults", "hazards", "notices", "tried", "course-card", "card", "book", "style", "not-found",
	"materials", "material", "recipes", "recipe", "labels", "label", "wall", "classes", "class", "stock", "paper", "poster", "form", "leach", "eat", "phone"}

// inRegister says of what kind the pages of each folder of the register are.
var inRegister = map[string]string{"materials/": "material", "recipes/": "recipe", "labels/": "label", "classes/": "class"}

// everyPage has the tours visit each page of the handbook, which takes half an hour.
var everyPage = flag.Bool("every-page", false, "visit every page, not only some of each kind")

// toured lists the pages that a test visits which takes seconds on each: of lessons,
// and of what the register makes by the dozen from one view, a few.
func (h *handbook) toured() []string {
	var found []string
	seen := map[string]int{}
	for _, address := range h.pages {
		k := kind(address)
		if every := map[string]int{"lesson": 4, "book": 2, "material": 15, "recipe": 10, "label": 25}[k]; every > 0 && !*everyPage {
			if seen[k]++; seen[k]%every != 1 {
				continue
			}
		}
		found = append(found, address)
	}
	return found
}

// kind says what a page is by its address.
func kind(address string) string {
	in, name := path.Split(address)
	switch {
	case address == "index.html":
		return "home"
	case address == "404.html":
		return "not-found"
	case in == "":
		return strings.TrimSuffix(name, ".html")
	case in == "states/":
		return "state"
	case in == "media/":
		return "medium"
	case in == "cards/" && name == "index.html":
		return "course-card"
	case in == "cards/":
		return "card"
	case in == "calculators/" && name == "index.html":
		return "calculators"
	case in == "calculators/":
		return "calculator"
	case in == "book/": // a volume, where the book is too large for one page
		return "book"
	case in == "tiles/":
		return "wall"
	case in == "stock/":
		return "stock"
	case in == "paper/" && name == "index.html":
		return "paper"
	case in == "paper/":
		of, _, _ := strings.Cut(name, "-")
		return of
	case address == "leach/may-i-eat.html":
		return "eat"
	case in == "leach/":
		return "leach"
	case inRegister[in] != "" && name == "index.html":
		return strings.TrimSuffix(in, "/")
	case inRegister[in] != "":
		return inRegister[in]
	case name == "index.html":
		return "unit"
	}
	return "lesson"
}

// all lists the pages of some kinds.
func (h *handbook) all(t testing.TB, wanted ...string) []string {
	t.Helper()
	var found []string
	for _, address := range h.pages {
		if slices.Contains(wanted, kind(address)) {
			found = append(found, address)
		}
	}
	if len(found) == 0 {
		t.Fatalf("the handbook has no page of the kinds %q", wanted)
	}
	return found
}

// one returns the first page of a kind.
func (h *handbook) one(t testing.TB, wanted string) string {
	t.Helper()
	return h.all(t, wanted)[0]
}

// samples returns a page of each kind.
func (h *handbook) samples(t testing.TB) []string {
	t.Helper()
	var found []string
	for _, k := range kinds {
		found = append(found, h.one(t, k))
	}
	return found
}

func TestEveryKindOfPageIsThere(t *testing.T) {
	t.Parallel()
	h, notes := published(t), publishedNotes(t)
	h.samples(t)
	for _, address := range h.pages {
		if !slices.Contains(kinds, kind(address)) {
			t.Errorf("%s is of no known kind", address)
		}
	}
	more := append(slices.Clone(h.pages), notes.one(t, "teaching"))
	slices.Sort(more)
	if has := slices.Sorted(slices.Values(notes.pages)); !slices.Equal(has, more) {
		t.Errorf("the instructor's copy has the pages %q, want the students' and its own: %q", has, more)
	}
}
