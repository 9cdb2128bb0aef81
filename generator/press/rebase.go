package press

import (
	"bytes"
	"html"
	"html/template"
	"net/url"
	"path"
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

// apply rewrites the addresses and ids in the tags and leaves every other byte as
// it is.
func (r rebase) apply(piece []byte) []byte {
	var out bytes.Buffer
	out.Grow(len(piece) + len(piece)/8)
	tags(piece, func(tag []byte) { r.tag(&out, tag) }, func(text []byte) { out.Write(text) })
	return out.Bytes()
}

// tag writes a tag with its addresses and ids rewritten.
func (r rebase) tag(out *bytes.Buffer, tag []byte) {
	done := 0
	values(tag, func(name []byte, from, value, to int) {
		switch string(name) {
		case "href", "src":
			if address, ok := r.address(html.UnescapeString(string(tag[value:to]))); ok {
				out.Write(tag[done:value])
				out.WriteString(template.HTMLEscapeString(address))
				done = to
			}
		case "id", "for", "aria-labelledby", "aria-describedby", "aria-controls":
			if r.prefix == "" {
				out.Write(tag[done:from])
				done = to + 1
				return
			}
			out.Write(tag[done:value])
			for n, id := range bytes.Fields(tag[value:to]) {
				if n > 0 {
					out.WriteByte(' ')
				}
				out.WriteString(r.prefix)
				out.Write(id)
			}
			done = to
		}
	})
	out.Write(tag[done:])
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
