package press

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"path"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/offline"
)

// keptEdition is a course as it is published, for phones to keep.
func keptEdition(t *testing.T, c *course.Course) *Edition {
	t.Helper()
	b := shared()
	b.Phone = assets.Phone{
		Worker: []byte("work()"), Script: "assets/phone-AAAA.js", Style: "assets/phone-AAAA.css", Ground: "#f6f0e4",
		Icons: []assets.Icon{{Address: "assets/icon-192-AAAA.png", Side: 192}, {Address: "assets/maskable-512-AAAA.png", Side: 512, Whole: true}},
	}
	b.Find = "assets/find-AAAA.js"
	for _, at := range []string{b.Find, b.Phone.Script, b.Phone.Style, b.Phone.Icons[0].Address, b.Phone.Icons[1].Address} {
		b.Files[at] = []byte(at)
	}
	e, err := Print(studio(t), read(t, c), b, Copy{Kept: true})
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// TestEveryPublishedFileIsListedOrLeftOut compares what a worker lists with all that is
// published: each file is there once, with its own size and digest, or is left out for
// a reason.
func TestEveryPublishedFileIsListedOrLeftOut(t *testing.T) {
	c := largeCourse(t)
	c.Pictures["pictures/kiln.png"] = course.Whole("pictures/kiln.png", 8, 6, []byte("a kiln"))
	c.Units[0].Lessons[0].Source = append(slices.Clone(c.Units[0].Lessons[0].Source), "\n\n![A kiln](../../pictures/kiln.png)\n"...)
	e := keptEdition(t, c)
	all, err := everything(e)
	if err != nil {
		t.Fatal(err)
	}
	var files []offline.File
	for at, data := range all {
		files = append(files, offline.File{Address: at, Size: len(data), Sum: sha256.Sum256(data)})
	}
	worker, err := e.Worker(files)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := keptEdition(t, c).Worker(files); err != nil || string(again) != string(worker) {
		t.Errorf("the same edition has another worker, %v", err)
	}
	left := map[string][]string{}
	part, err := e.parts()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		line := fmt.Sprintf("[%q,%d,%q", f.Address, f.Size, offline.Digest(f.Sum))
		listed := strings.Count(string(worker), line)
		why := part(f.Address).Left
		if why != "" {
			left[why] = append(left[why], f.Address)
		}
		if want := map[bool]int{true: 1, false: 0}[why == ""]; listed != want || strings.Count(string(worker), fmt.Sprintf("[%q,", f.Address)) != want {
			t.Errorf("%s stands %d times in the list, want %d; left out: %q", f.Address, listed, want, why)
		}
	}
	for _, all := range left {
		slices.Sort(all)
	}
	printing := left[forPrinting]
	if !slices.Contains(printing, address.Book) || !slices.ContainsFunc(printing, func(at string) bool { return strings.HasPrefix(at, "book/") }) {
		t.Errorf("for printing: %q", printing)
	}
	delete(left, forPrinting)
	index, err := e.press.index()
	if err != nil || len(index.carried) < 3 {
		t.Fatalf("the index travels in %d files, %v", len(index.carried), err)
	}
	carried := append(slices.Clone(index.carried), "assets/carried-AAAA.js", e.press.frame.Spoken.Carried, e.press.frame.Table.Carried)
	if d := cmp.Diff(map[string][]string{
		fromAFolder: slices.Sorted(slices.Values(carried)),
		toTakeAway:  {address.Ebook},
	}, left); d != "" {
		t.Errorf("left out (-want +got):\n%s", d)
	}
}

func TestFilesOfUnits(t *testing.T) {
	c := small(t)
	for _, name := range []string{"own", "both", "home", "twice"} {
		file := "pictures/" + name + ".png"
		c.Pictures[file] = course.Whole(file, 8, 6, []byte("picture "+name))
	}
	add := func(p *course.Page, up string, names ...string) {
		p.Source = slices.Clone(p.Source)
		for _, name := range names {
			p.Source = fmt.Appendf(p.Source, "\n\n![A pot](%spictures/%s.png)\n", up, name)
		}
	}
	add(c.Home, "", "home")
	add(c.Units[0].Lessons[0], "../../", "own", "both", "home", "twice")
	add(c.Units[0].Lessons[1], "../../", "twice")
	add(c.Units[1].Lessons[0], "../../", "both")
	e := keptEdition(t, c)
	part, err := e.parts()
	if err != nil {
		t.Fatal(err)
	}
	pictures := map[string]string{}
	for at := range e.photos {
		pictures[strings.SplitN(path.Base(at), "-", 2)[0]] = part(at).Unit
		if p := part(at); p.Picture != "pictures/"+strings.SplitN(path.Base(at), "-", 2)[0]+".png" || p.Width != 8 {
			t.Errorf("%s is %+v", at, p)
		}
	}
	if d := cmp.Diff(map[string]string{"own": "slip", "both": "", "home": "", "twice": "slip"}, pictures); d != "" {
		t.Errorf("units of pictures (-want +got):\n%s", d)
	}
	for at, unit := range map[string]string{"slip/index.html": "slip", "slip/mix.html": "slip", "wash/thin.html": "wash", "index.html": "", "states/wet.html": "", "assets/page-AAAA.js": ""} {
		if got := part(at).Unit; got != unit {
			t.Errorf("%s is of the unit %q, want %q", at, got, unit)
		}
	}
}

// TestPagesSayThatPhonesKeepThem compares pages that are published with pages that are
// shown while they are written.
func TestPagesSayThatPhonesKeepThem(t *testing.T) {
	c := small(t)
	e, err := everything(keptEdition(t, c))
	if err != nil {
		t.Fatal(err)
	}
	shown := printed(t, c)
	for _, at := range []string{address.Phone, address.Manifest} {
		if e[at] == nil || shown[at] != nil {
			t.Errorf("%s: published %d bytes, shown %d", at, len(e[at]), len(shown[at]))
		}
	}
	for at, up := range map[string]string{"index.html": "", "slip/mix.html": "../"} {
		links := elements(pageOf(t, e, at), func(n *html.Node) bool { return called("link")(n) && attribute(n, "rel") == "manifest" })
		if len(links) != 1 {
			t.Fatalf("%s has %d links to a manifest", at, len(links))
		}
		link := links[0]
		if attribute(link, "href") != up+address.Manifest || attribute(link, "data-phone") != up+"assets/phone-AAAA.js" || attribute(link, "data-phone-style") != up+"assets/phone-AAAA.css" {
			t.Errorf("%s does not say how it is kept: %v", at, link.Attr)
		}
		if !strings.Contains(string(e[at]), `href="`+up+`phone.html"`) {
			t.Errorf("%s does not lead to the page about it", at)
		}
		if s := string(shown[at]); strings.Contains(s, "data-phone") || strings.Contains(s, "phone.html") || strings.Contains(s, "manifest\"") {
			t.Errorf("%s has something to keep it while it is written", at)
		}
	}
	if s := string(e[address.Phone]); strings.Contains(s, "data-phone=") || !strings.Contains(s, `src="assets/phone-AAAA.js"`) || strings.Count(s, "data-unit-room=") != len(c.Units) {
		t.Error("the page about it has not its script once, or not all units")
	}
	if s := string(e[address.NotFound]); strings.Contains(s, "data-phone") {
		t.Error("the page that stands anywhere asks for a script from there")
	}
}

func TestManifest(t *testing.T) {
	c := small(t)
	c.Title, c.Studio.Name = "Slip & <wash>", "The Yard"
	text := manifest(c, keptEdition(t, c).press.frame.Bundle)
	var m map[string]any
	if err := json.Unmarshal(text, &m); err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]any{"name": "Slip & <wash>", "short_name": "The Yard", "start_url": "index.html", "scope": "./", "id": "./", "background_color": "#f6f0e4", "display": "standalone"} {
		if m[key] != want {
			t.Errorf("%s is %v, want %v", key, m[key], want)
		}
	}
	icons, _ := m["icons"].([]any)
	if len(icons) != 3 {
		t.Fatalf("icons %v", m["icons"])
	}
	if d := cmp.Diff(map[string]any{"src": "assets/maskable-512-AAAA.png", "sizes": "512x512", "type": "image/png", "purpose": "maskable"}, icons[2]); d != "" {
		t.Errorf("the icon for any shape (-want +got):\n%s", d)
	}
	c.Studio.Name = ""
	if !strings.Contains(string(manifest(c, shared())), `"short_name": "Slip & <wash>"`) {
		t.Error("without a studio there is no short name")
	}
}
