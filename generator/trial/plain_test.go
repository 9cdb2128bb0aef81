//go:build judges

package trial

import (
	"encoding/json"
	"net/url"
	"path"
	"regexp"
	"strings"
	"testing"
)

// inspect reads a page with the browser's own parser, without running it, and
// gives what has no place in a handbook: anything inline, anything fetched
// from elsewhere, addresses that only hold at the root of a server.
const inspect = `(source => {
	const page = new DOMParser().parseFromString(source, "text/html")
	const faults = []
	const fetched = {img: ["src", "srcset"], source: ["src", "srcset"], script: ["src"], iframe: ["src"], embed: ["src"],
		object: ["data"], video: ["src", "poster"], audio: ["src"], track: ["src"], input: ["src"], use: ["href", "xlink:href"],
		image: ["href", "xlink:href"], form: ["action"], button: ["formaction"]}
	for (const e of page.querySelectorAll("*")) {
		const name = e.localName, show = e.outerHTML.slice(0, 160)
		if (name === "style") faults.push("inline style: " + show)
		if (name === "script" && !e.hasAttribute("src")) faults.push("inline script: " + show)
		if (name === "base") faults.push("base element: " + show)
		for (const a of e.attributes) {
			if (a.name === "style") faults.push("style attribute: " + show)
			if (a.name.startsWith("on")) faults.push("event attribute: " + show)
			if (/^(href|src|srcset|action|formaction|data|poster|xlink:href|manifest)$/.test(a.name) && /^\s*\//.test(a.value))
				faults.push("address from the root of the server: " + show)
			if (/^\s*(javascript|data|blob|vbscript):/i.test(a.value)) faults.push("address that is a program: " + show)
		}
		const linked = name === "link" && !/^(canonical|license|author)$/.test(e.rel) ? ["href"] : []
		for (const a of (fetched[name] || []).concat(linked))
			if (/^\s*([a-z][a-z0-9+.-]*:|\/\/)/i.test(e.getAttribute(a) || "")) faults.push("fetched from elsewhere: " + show)
	}
	return faults
})`

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
	h := published(t)
	b := open(t)
	for _, address := range h.pages {
		for _, fault := range ask[[]string](b, inspect+"("+quoted(string(h.read(t, address)))+")") {
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

// policy gives a page's Content-Security-Policy.
const policy = `(source => {
	const page = new DOMParser().parseFromString(source, "text/html")
	const meta = page.querySelector("meta[http-equiv='Content-Security-Policy' i]")
	return meta ? meta.content : ""
})`

func TestPolicyOfEveryPage(t *testing.T) {
	h := published(t)
	b := open(t)
	for _, address := range h.pages {
		source := string(h.read(t, address))
		p := ask[string](b, policy+"("+quoted(source)+")")
		if !strings.Contains(p, "default-src 'none'") {
			t.Errorf("%s: the policy does not begin with nothing allowed: %q", address, p)
		}
		for _, never := range []string{"'unsafe-inline'", "'unsafe-eval'", "data:", "blob:", "http:", "https:", "*"} {
			if strings.Contains(p, never) {
				t.Errorf("%s: the policy allows %s: %q", address, never, p)
			}
		}
		calculates := strings.Contains(source, "data-calculator=")
		if strings.Contains(p, "'wasm-unsafe-eval'") != calculates {
			t.Errorf("%s: has a calculator: %t, but the policy is %q", address, calculates, p)
		}
	}
}

// places is what one page links to, and the ids it has to be linked to.
type places struct {
	To  []string
	IDs []string
}

// gather reads the links and ids of a page.
const gather = `(source => {
	const page = new DOMParser().parseFromString(source, "text/html")
	const all = what => [...page.querySelectorAll("[" + what + "]")].map(e => e.getAttribute(what))
	return {to: all("href").concat(all("src")), ids: all("id")}
})`

func TestEveryAddressLeadsSomewhere(t *testing.T) {
	h := published(t)
	b := open(t)
	there := map[string]bool{}
	for extension := range types {
		for _, address := range h.files(t, extension) {
			there[address] = true
		}
	}
	ids, links := map[string]bool{}, map[string][]string{}
	for _, address := range h.pages {
		found := ask[places](b, gather+"("+quoted(string(h.read(t, address)))+")")
		links[address] = found.To
		for _, id := range found.IDs {
			if ids[address+"#"+id] {
				t.Errorf("%s: the id %q is given twice", address, id)
			}
			ids[address+"#"+id] = true
		}
	}
	for _, address := range h.pages {
		for _, link := range links[address] {
			u, err := url.Parse(link)
			if err != nil {
				t.Errorf("%s: link to %q: %v", address, link, err)
				continue
			}
			if u.Scheme != "" {
				continue
			}
			to := address
			if u.Path != "" {
				to = path.Join(path.Dir(address), u.Path)
			}
			if !there[to] {
				t.Errorf("%s: link to %q: there is no %s", address, link, to)
			} else if u.Fragment != "" && !ids[to+"#"+u.Fragment] {
				t.Errorf("%s: link to %q: %s has no such id", address, link, to)
			}
		}
	}
}

func TestEveryPageIsReachedFromHome(t *testing.T) {
	h := published(t)
	b := open(t)
	seen := map[string]bool{"404.html": true}
	var walk func(address string)
	walk = func(address string) {
		if seen[address] {
			return
		}
		seen[address] = true
		for _, link := range ask[places](b, gather+"("+quoted(string(h.read(t, address)))+")").To {
			u, err := url.Parse(link)
			if err == nil && u.Scheme == "" && strings.HasSuffix(u.Path, ".html") {
				walk(path.Join(path.Dir(address), u.Path))
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
