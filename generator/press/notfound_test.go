package press

import (
	"strings"
	"testing"

	"golang.org/x/net/html"
)

func TestNotFoundStartsFromWhereItIsPublished(t *testing.T) {
	for at, want := range map[string]string{"": "", "https://handbook.example/slip/": "https://handbook.example/slip/", "/": "/"} {
		c := small(t)
		c.PublishedAt = at
		e := printed(t, c)
		root := pageOf(t, e, "404.html")
		base := ""
		for _, b := range elements(root, called("base")) {
			base = attribute(b, "href")
		}
		if base != want {
			t.Errorf("published at %q: base %q", at, base)
		}
		from := "base-uri 'self'"
		if at != "" && at != "/" {
			from += " https://handbook.example;"
		}
		policy := elements(root, func(n *html.Node) bool { return attribute(n, "http-equiv") == "Content-Security-Policy" })[0]
		if allowed := strings.Contains(attribute(policy, "content"), from); allowed != (want != "") {
			t.Errorf("published at %q: a base is allowed: %v", at, allowed)
		}
		if n := len(elements(root, called("script"))); n != 0 {
			t.Errorf("%d scripts, which lead nowhere from a depth", n)
		}
	}
}
