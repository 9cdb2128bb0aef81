package imprint

import "testing"

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
		if got := Policy(c.desk, c.base); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
