package press

import (
	"bytes"
	"html/template"
	"net/url"
	"path"
	"strings"

	"golang.org/x/net/html"
)

// rebase takes HTML that was made for one page over to another. Links and
// pictures keep leading where they led; ids, and what speaks of them, get a
// word in front, so that pieces of many pages can stand on one.
type rebase struct {
	from   string                      // the page the HTML was made for
	place  func(address string) string // how an address counted from the root is written now; it may carry a query and a fragment
	prefix string                      // before ids; empty = ids are taken out, since the piece stands on its own page as well
}

// moved is HTML made for the page at from as it stands in the page at to, with
// links back to the place it came from and without ids of its own.
func moved(from, to string, piece []byte) template.HTML {
	r := rebase{from: from, place: func(address string) string { return relative(to, address) }}
	return template.HTML(r.apply(piece))
}

// pointing are the attributes that hold ids.
var pointing = map[string]bool{"id": true, "for": true, "aria-labelledby": true, "aria-describedby": true, "aria-controls": true}

// apply rewrites the start tags and leaves every other byte as it is.
func (r rebase) apply(piece []byte) []byte {
	var out bytes.Buffer
	out.Grow(len(piece) + len(piece)/8)
	tokens := html.NewTokenizer(bytes.NewReader(piece))
	for {
		kind := tokens.Next()
		if kind == html.ErrorToken {
			return out.Bytes() // the end: the bytes are in memory, nothing else can fail
		}
		raw := tokens.Raw()
		if kind != html.StartTagToken && kind != html.SelfClosingTagToken || !bytes.ContainsRune(raw, '=') {
			out.Write(raw)
			continue
		}
		token := tokens.Token()
		if !r.change(&token) {
			out.Write(raw)
			continue
		}
		out.WriteString(token.String())
	}
}

// change rewrites the attributes of a start tag, and says whether it did.
func (r rebase) change(t *html.Token) bool {
	changed := false
	kept := t.Attr[:0]
	for _, a := range t.Attr {
		switch {
		case a.Key == "href" || a.Key == "src":
			if to, ok := r.address(a.Val); ok {
				a.Val, changed = to, true
			}
		case pointing[a.Key] && r.prefix == "":
			changed = true
			continue
		case pointing[a.Key]:
			ids := strings.Fields(a.Val)
			for n := range ids {
				ids[n] = r.prefix + ids[n]
			}
			a.Val, changed = strings.Join(ids, " "), true
		}
		kept = append(kept, a)
	}
	t.Attr = kept
	return changed
}

// address rewrites an address that leads within the handbook.
func (r rebase) address(written string) (string, bool) {
	u, err := url.Parse(written)
	if err != nil || u.Scheme != "" || u.Host != "" {
		return "", false
	}
	target := r.from
	if u.Path != "" {
		target = path.Join(path.Dir(r.from), u.Path)
	}
	if u.RawQuery != "" {
		target += "?" + u.RawQuery
	}
	if u.Fragment != "" {
		target += "#" + u.EscapedFragment()
	}
	return r.place(target), true
}
