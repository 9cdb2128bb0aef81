package finding

import (
	"regexp"
	"strings"
	"testing"
)

func TestRulesAreWellDeclared(t *testing.T) {
	id := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen := map[string]bool{}
	for _, r := range Rules() {
		if !id.MatchString(r.ID) {
			t.Errorf("%q is not kebab-case", r.ID)
		}
		if seen[r.ID] {
			t.Errorf("%s is declared twice", r.ID)
		}
		seen[r.ID] = true
		if !strings.HasSuffix(r.Means, ".") {
			t.Errorf("%s: %q is not a sentence", r.ID, r.Means)
		}
	}
}
