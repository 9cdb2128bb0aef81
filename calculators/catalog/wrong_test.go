package catalog

import (
	"strings"
	"testing"
)

// TestWhichValueIsWrong wants a list that is refused for one of its values to
// say which, so that a page marks that box and no other.
func TestWhichValueIsWrong(t *testing.T) {
	for _, tt := range []struct{ name, dry, want string }{
		{"not read", "94 abc 94", "wrong.dry=2"},
		{"out of range", "94 94 0", "wrong.dry=3"},
		{"longer than fresh", "120 94 94", "wrong.dry=1"},
		{"unlike the others", "94 84 94", "wrong.dry=2"},
		{"one too few", "94 94", ""},
		{"right", "94 94 94", ""},
	} {
		answer := string(Respond([]byte("calculator=shrinkage-test&plastic=100+100+100&fired=82+82+82&dry="+strings.ReplaceAll(tt.dry, " ", "+")), british()))
		_, found, _ := strings.Cut(answer, "&wrong.")
		found, _, _ = strings.Cut(found, "&")
		if found != strings.TrimPrefix(tt.want, "wrong.") {
			t.Errorf("%s: the answer says %q, want %q:\n%s", tt.name, found, tt.want, answer)
		}
	}
}
