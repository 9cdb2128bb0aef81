//go:build judges

package trial

import (
	"encoding/json"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// fetched names the attributes by which an element fetches something.
var fetched = map[string][]string{
	"img": {"src", "srcset"}, "source": {"src", "srcset"}, "script": {"src"}, "iframe": {"src"}, "embed": {"src"},
	"object": {"data"}, "video": {"src", "poster"}, "audio": {"src"}, "track": {"src"}, "input": {"src"},
	"use": {"href", "xlink:href"}, "image": {"href", "xlink:href"}, "form": {"action"}, "button": {"formaction"},
}

// What an address must not be.
var (
	addressName = regexp.MustCompile(`^(href|src|srcset|action|formaction|data|poster|xlink:href|manifest)$`)
	fromTheRoot = regexp.MustCompile(`^\s*/`)
	runs        = regexp.MustCompile(`(?i)^\s*(javascript|data|blob|vbscript):`)
	elsewhere   = regexp.MustCompile(`(?i)^\s*([a-z][a-z0-9+.-]*:|//)`)
	onlyNamed   = regexp.MustCompile(`^(canonical|license|author)$`) // links that fetch nothing
)

// inspect returns what has no place in a page of a handbook: anything inline,
// anything fetched from elsewhere, addresses that only hold at the root of a
// server.
func (d *document) inspect() []string {
	var faults []string
	for _, n := range d.elements {
		say := func(what string) { faults = append(faults, what+": "+markup(n)) }
		switch {
		case n.Data == "style":
			say("inline style")
		case n.Data == "script" && attribute(n, "src") == "":
			say("inline script")
		case n.Data == "base":
			say("base element")
		}
		for _, a := range n.Attr {
			name := attributeName(a)
			switch {
			case name == "style":
				say("style attribute")
			case strings.HasPrefix(name, "on"):
				say("event attribute")
			case addressName.MatchString(name) && fromTheRoot.MatchString(a.Val):
				say("address from the root of the server")
			case runs.MatchString(a.Val):
				say("address that is a program")
			}
		}
		fetches := fetched[n.Data]
		if n.Data == "link" && !onlyNamed.MatchString(attribute(n, "rel")) {
			fetches = []string{"href"}
		}
		for _, name := range fetches {
			if elsewhere.MatchString(attribute(n, name)) {
				say("fetched from elsewhere")
			}
		}
	}
	return faults
}

// quoted makes a JavaScript string of a text.
func quoted(text string) string {
	q, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always has a form in JSON
	}
	return string(q)
}

// outside finds what a style sheet fetches from the root of a server or from
// another one.
var outside = regexp.MustCompile(`(?i)(url\(\s*['"]?\s*(/|[a-z][a-z0-9+.-]*:)|@import)[^;)]*`)

func TestNothingInlineAndNothingFromElsewhere(t *testing.T) {
	t.Parallel()
	h := published(t)
	for _, address := range h.pages {
		for _, fault := range h.document(t, address).inspect() {
			// A server shows the page for what is not found at any address, so
			// that page alone may say where its own addresses start.
			if kind(address) == "not-found" && strings.HasPrefix(fault, "base element") {
				continue
			}
			t.Errorf("%s: %s", address, fault)
		}
	}
	for _, address := range h.files(t, ".css") {
		for _, found := range outside.FindAllString(string(h.read(t, address)), -1) {
			t.Errorf("%s: fetches %s", address, found)
		}
	}
}

// policy returns a page's Content-Security-Policy.
func (d *document) policy() string {
	for _, n := range d.find(nil, "meta") {
		if strings.EqualFold(attribute(n, "http-equiv"), "Content-Security-Policy") {
			return attribute(n, "content")
		}
	}
	return ""
}

func TestPolicyOfEveryPage(t *testing.T) {
	t.Parallel()
	h := published(t)
	for _, address := range h.pages {
		d := h.document(t, address)
		p := d.policy()
		if !strings.Contains(p, "default-src 'none'") {
			t.Errorf("%s: the policy does not begin with nothing allowed: %q", address, p)
		}
		for _, never := range []string{"'unsafe-inline'", "'unsafe-eval'", "data:", "blob:", "http:", "https:", "*"} {
			if strings.Contains(p, never) {
				t.Errorf("%s: the policy allows %s: %q", address, never, p)
			}
		}
		calculates := slices.ContainsFunc(d.find(nil, "form"), func(n *html.Node) bool { return attribute(n, "data-calculator") != "" })
		if strings.Contains(p, "'wasm-unsafe-eval'") != calculates {
			t.Errorf("%s: has a calculator: %t, but the policy is %q", address, calculates, p)
		}
	}
}

// links lists where a page leads and what it fetches.
func (d *document) links() []string {
	var all []string
	for _, n := range d.elements {
		for _, name := range []string{"href", "src"} {
			if to := attribute(n, name); to != "" {
				all = append(all, to)
			}
		}
	}
	return all
}

// target returns the page or file, from the handbook's root, and the place on it
// that a link of a page leads to; no file for a link out of the handbook.
func target(from, link string) (file, place string, err error) {
	u, err := url.Parse(link)
	if err != nil || u.Scheme != "" {
		return "", "", err
	}
	if u.Path == "" {
		return from, u.Fragment, nil
	}
	return path.Join(path.Dir(from), u.Path), u.Fragment, nil
}

// leads says what is wrong with a link of a page; "" for nothing.
func (h *handbook) leads(t *testing.T, from, link string) string {
	t.Helper()
	to, place, err := target(from, link)
	switch {
	case err != nil:
		return err.Error()
	case to == "":
		return ""
	case !slices.Contains(h.pages, to):
		if info, err := os.Stat(filepath.Join(h.dir, filepath.FromSlash(to))); err != nil || info.IsDir() {
			return "there is no " + to
		}
	case place != "" && h.document(t, to).ids[place] == nil:
		return to + " has no such id"
	}
	return ""
}

func TestEveryAddressLeadsSomewhere(t *testing.T) {
	t.Parallel()
	for _, h := range []*handbook{published(t), publishedNotes(t)} {
		for _, address := range h.pages {
			d := h.document(t, address)
			for _, n := range d.elements {
				if id := attribute(n, "id"); id != "" && d.ids[id] != n {
					t.Errorf("%s: the id %q is given twice", address, id)
				}
			}
			for _, link := range d.links() {
				if fault := h.leads(t, address, link); fault != "" {
					t.Errorf("%s: link to %q: %s", address, link, fault)
				}
			}
		}
	}
}

func TestEveryPageIsReachedFromHome(t *testing.T) {
	t.Parallel()
	for _, h := range []*handbook{published(t), publishedNotes(t)} {
		seen := map[string]bool{"404.html": true}
		var walk func(address string)
		walk = func(address string) {
			if seen[address] || !slices.Contains(h.pages, address) {
				return
			}
			seen[address] = true
			for _, link := range h.document(t, address).links() {
				if to, _, err := target(address, link); err == nil {
					walk(to)
				}
			}
		}
		walk("index.html")
		for _, address := range h.pages {
			if !seen[address] {
				t.Errorf("%s: no way leads there from the home page", address)
			}
		}
	}
}
