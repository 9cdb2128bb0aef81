package press

import (
	"bytes"
	"testing"
)

// FuzzTags wants every byte of a piece handed on once and in order, whatever it
// holds, and a piece without addresses and ids rewritten to itself.
func FuzzTags(f *testing.F) {
	for _, seed := range []string{"", "<", "a<b", `<a href="x.html#y">z</a>`, `<p id="a" class="b">c</p>`, `<a ="">`, `<a href="`, "<!-- x -->", `< a="b" c="d">`, "</", `<h1`, `="<">"`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, piece string) {
		var all bytes.Buffer
		take := func(part []byte) { all.Write(part) }
		tags([]byte(piece), take, take)
		if all.String() != piece {
			t.Errorf("%q became %q", piece, all.String())
		}
		tags([]byte(piece), func(tag []byte) { tagName(tag) }, func([]byte) {})
		r := rebase{from: "slip/mix.html", place: func(address string) string { return relative("answers.html", address) }}
		r.apply([]byte(piece))
		x := trimmer{rebase: r}
		tags([]byte(piece), x.tag, x.text)
	})
}
