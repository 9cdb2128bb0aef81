//go:build judges

package trial

import (
	"regexp"
	"strings"
	"testing"
)

// tooNew is what phones of some years ago cannot read or do not know, though
// nothing that bundles the scripts complains.
var tooNew = map[string]*regexp.Regexp{
	"looks back in a regular expression: Safari before 16.4 runs no line of such a script": regexp.MustCompile(`\(\?<[=!][^)]*\)?`),
	"asks the page with :has(): Chromium before 105 and Firefox before 121 throw":          regexp.MustCompile(`:has\([^)]*\)`),
	"sets a role or a state by a property: Firefox before 119 sets nothing":                regexp.MustCompile(`\.(role|aria[A-Z][A-Za-z]*)=[^=][^;,]*`),
}

func TestScriptsRunInOlderBrowsers(t *testing.T) {
	t.Parallel()
	h := published(t)
	read := 0
	for _, address := range h.files(t, ".js") {
		script := string(h.read(t, address))
		for what, pattern := range tooNew {
			for _, found := range pattern.FindAllString(script, -1) {
				t.Errorf("%s: %.60q %s", address, found, what)
			}
		}
		if strings.Contains(script, "data-calculator") {
			read++
		}
	}
	if read < 2 {
		t.Errorf("%d scripts drive calculators: this test looks at the wrong place", read)
	}
}

// Signs before or after words, and those with other words for readers who listen.
var (
	rule      = regexp.MustCompile(`\{[^{}]*\}`)
	listened  = regexp.MustCompile(`content:[^;}]*/[^;}]*`)
	plainSign = regexp.MustCompile(`[{;]content:[^;}/]*;`)
)

// TestSignsAreSeenInOlderBrowsers wants every sign with other words for a screen
// reader to be declared without them first: older browsers drop the whole line.
func TestSignsAreSeenInOlderBrowsers(t *testing.T) {
	t.Parallel()
	h := published(t)
	signs := 0
	for _, address := range h.files(t, ".css") {
		for _, declared := range rule.FindAllString(string(h.read(t, address)), -1) {
			at := listened.FindStringIndex(declared)
			if at == nil {
				continue
			}
			if signs++; !plainSign.MatchString(declared[:at[0]]) {
				t.Errorf("%s: %s stands alone", address, declared)
			}
		}
	}
	if signs == 0 {
		t.Error("no sign has other words: this test looks at the wrong place")
	}
}
