//go:build judges

package trial

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
)

// labelsOut returns what does not fit on its label, and letters smaller than 6
// points, on a page of labels as it is laid out on paper.
const labelsOut = `[...document.querySelectorAll(".labels > div")].flatMap(sheet => {
	const label = sheet.firstElementChild, box = label.getBoundingClientRect(), found = []
	for (const e of label.querySelectorAll("p, svg")) {
		const r = e.getBoundingClientRect()
		if (r.bottom > box.bottom + 0.5 || r.right > box.right + 0.5) found.push(sheet.className + ": outside of its label: " + (e.textContent.slice(0, 60) || e.outerHTML.slice(0, 40)))
		if (e.textContent && parseFloat(getComputedStyle(e).fontSize) < 7.95) found.push(sheet.className + ": type of " + getComputedStyle(e).fontSize)
	}
	return found
})`

// labelsOn counts the labels of each sheet.
const labelsOn = `[...document.querySelectorAll(".labels > div")].map(sheet => sheet.childElementCount)`

// labelPapers are the ends of the addresses of labels, by the papers that they are for.
var labelPapers = []string{"-a4.html", "-us.html"}

// TestLabelsFit looks at every label: all that it says stands on it, large enough
// to read, and the sheets have as many as they should.
func TestLabelsFit(t *testing.T) {
	t.Parallel()
	h, american := publishedAt(t, "GB"), publishedAt(t, "US") // with codes, which take room
	want := map[string]string{"-a4.html": "1 8 14 44", "-us.html": "1 8 14 40"}
	every, n := []string(nil), 0
	for _, address := range h.all(t, "label") { // half of them, in turn on both papers
		switch n++; n % 4 {
		case 0, 1:
			every = append(every, h.home+address)
		case 2: // where labels say more
			every = append(every, american.home+address)
		}
	}
	tour(t, every, func(b *tab, address string) {
		call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		b.size(1000, 900)
		b.visit(address)
		for _, fault := range ask[[]string](b, labelsOut) {
			b.t.Errorf("%s: %s", address, fault)
		}
		paper := address[len(address)-len("-a4.html"):]
		if got := strings.Trim(strings.Join(strings.Fields(ask[string](b, labelsOn+`.join(" ")`)), " "), " "); got != want[paper] {
			b.t.Errorf("%s: labels on the sheets: %s, want %s", address, got, want[paper])
		}
	})
}

// TestLabelsAreScanned prints labels of a recipe and has another program than ours
// read the code on each sheet back.
func TestLabelsAreScanned(t *testing.T) {
	t.Parallel()
	h := publishedAt(t, "GB")
	b := open(t)
	of := h.one(t, "recipe")
	name := strings.TrimSuffix(strings.TrimPrefix(of, "recipes/"), ".html")
	for n, paper := range labelPapers {
		b.visit(h.home + "labels/recipe-" + name + paper)
		s := b.print(papers[n])
		if s.pages != 4 || !s.is(papers[n], false) {
			t.Errorf("%s: %d pages of %g by %g points, want 4", paper, s.pages, s.width, s.height)
		}
		at := filepath.Join(t.TempDir(), "label")
		if out, err := exec.Command("pdftoppm", "-r", "200", "-gray", "-png", "-l", "3", s.file, at).CombinedOutput(); err != nil {
			t.Fatalf("pdftoppm: %v: %s", err, out)
		}
		pages, err := filepath.Glob(at + "*.png")
		if err != nil || len(pages) != 3 {
			t.Fatal(err, pages)
		}
		for i, page := range pages {
			out, err := exec.Command("zbarimg", "-q", "--raw", page).Output()
			want := strings.Repeat(whereItIs+of+"\n", []int{1, 8, 14}[i])
			if err != nil || string(out) != want {
				t.Errorf("%s: the codes on %s say %q (%v), want the address of %s on each label", paper, filepath.Base(page), out, err, of)
			}
		}
	}
}

// whereItIs is where the handbook of publishedAt says that it is published.
const whereItIs = "https://handbook.example/colour/"

// publishedAt is the demo course as somebody publishes it who knows where, by
// a law.
func publishedAt(t *testing.T, law string) *handbook {
	t.Helper()
	content, dir := filepath.Join(t.TempDir(), "content"), filepath.Join(t.TempDir(), "handbook")
	if err := os.CopyFS(content, os.DirFS(root+"/content")); err != nil {
		t.Fatal(err)
	}
	settings, err := os.ReadFile(filepath.Join(content, "course.yaml"))
	if err == nil {
		err = os.WriteFile(filepath.Join(content, "course.yaml"), bytes.Replace(append(settings, "\npublished-at: "+whereItIs+"\n"...), []byte("law: GB"), []byte("law: "+law), 1), 0o666)
	}
	if err == nil {
		err = publishTo(dir, nil, "--content", content)
	}
	if err != nil {
		t.Fatal(err)
	}
	h, err := serve(dir)
	if err != nil {
		t.Fatal(err)
	}
	return h
}
