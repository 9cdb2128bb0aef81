package press

import "testing"

// TestMovedPieceSpeaksOfItsOwnIDs wants every attribute that names an id to go
// with the ids: with a word in front of both, or out with them.
func TestMovedPieceSpeaksOfItsOwnIDs(t *testing.T) {
	for _, name := range []string{"id", "for", "aria-labelledby", "aria-describedby", "aria-controls"} {
		piece := `<p ` + name + `="a" class="b">c</p>`
		r := rebase{from: "slip/mix.html", place: func(address string) string { return address }, prefix: "page.x."}
		if got, want := string(r.apply([]byte(piece))), `<p `+name+`="page.x.a" class="b">c</p>`; got != want {
			t.Errorf("%s, want %s", got, want)
		}
		r.prefix = ""
		if got, want := string(r.apply([]byte(piece))), `<p class="b">c</p>`; got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	r := rebase{prefix: "x."}
	if got, want := string(r.apply([]byte(`<p aria-describedby="a b">`))), `<p aria-describedby="x.a x.b">`; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// TestPolicy wants the whole policy of a page, word by word: whatever is missing
// in it is allowed.
func TestPolicy(t *testing.T) {
	const rest = "; style-src 'self'; img-src 'self'; connect-src 'self'; manifest-src 'self'; base-uri "
	const there = "'self' https://clay.example:8443"
	for _, c := range []struct {
		desk bool
		base string
		want string
	}{
		{false, "", "default-src 'none'; script-src 'self'" + rest + "'none'; form-action 'self'"},
		{true, "", "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'" + rest + "'none'; form-action 'self'"},
		{false, "/", "default-src 'none'; script-src 'self'" + rest + "'self'; form-action 'self'"},
		{false, "https://clay.example:8443/a/", "default-src 'none'; script-src 'self'; style-src " + there + "; img-src " + there +
			"; connect-src 'self'; manifest-src 'self'; base-uri " + there + "; form-action 'self'"},
	} {
		if got := policy(c.desk, c.base); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestFoldedWordsAreEscaped wants a word that is set into a template to stand
// there as one that is looked up would.
func TestFoldedWordsAreEscaped(t *testing.T) {
	theme := copyTheme(t)
	theme["words.yaml"].Data = append(theme["words.yaml"].Data, "\nodd: a < b & \"c\"\n"...)
	theme["pieces/caution.html"].Data = append(theme["pieces/caution.html"].Data, `{{define "odd"}}{{word "odd"}}{{end}}`...)
	p, err := New(small(t), theme)
	if err != nil {
		t.Fatal(err)
	}
	piece, err := p.writtenCare("odd", care{})
	if want := "a &lt; b &amp; &#34;c&#34;"; err != nil || string(piece) != want {
		t.Errorf("%q, %v, want %q", piece, err, want)
	}
}
