package theme

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slipbook/themes"
)

// studio reads the studio theme.
func studio(t testing.TB) *Theme {
	t.Helper()
	folder, err := themes.Open("studio", "en-GB")
	var opened *Theme
	if err == nil {
		opened, err = Open(folder, nil)
	}
	if err != nil {
		t.Fatal(err)
	}
	return opened
}

func TestSay(t *testing.T) {
	w := words{"plain": "Time", "one": "about {1} minutes", "two": "{2} of {1}"}
	for _, c := range []struct {
		name, key string
		values    []any
		want, err string
	}{
		{name: "no places", key: "plain", want: "Time"},
		{name: "one place", key: "one", values: []any{20}, want: "about 20 minutes"},
		{name: "places in another order", key: "two", values: []any{"cups", 3}, want: "3 of cups"},
		{name: "unknown key", key: "tiem", err: `words.yaml has no "tiem"`},
		{name: "value without a place", key: "plain", values: []any{1}, err: `"plain" has no place {1}`},
		{name: "place without a value", key: "two", values: []any{1}, err: `"two" has a place {2}, but nothing to stand there`},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := w.say(c.key, c.values...)
			if got != c.want && err == nil {
				t.Errorf("got %q, want %q", got, c.want)
			}
			if !matches(err, c.err) {
				t.Errorf("error %v, want one with %q", err, c.err)
			}
		})
	}
}

func TestReadWordsRefuses(t *testing.T) {
	for _, c := range []struct{ name, file, err string }{
		{"a key twice", "time: Time\ntime: Hours\n", "time"},
		{"a list", "time: [Time]\n", "words.yaml"},
		{"no words", "time: ''\n", `"time" has no words`},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := readWords([]byte(c.file)); err == nil || !strings.Contains(err.Error(), c.err) {
				t.Errorf("error %v, want one with %q", err, c.err)
			}
		})
	}
}

// TestEveryWordIsUsed keeps words.yaml from gathering words that no page says:
// each key stands in quotes in a template, in a script or in the press and its rooms.
func TestEveryWordIsUsed(t *testing.T) {
	used := sources(t, "..", "*.go") + sources(t, "..", "*/*.go") + sources(t, "../../../themes/studio/pages", "*.html") +
		sources(t, "../../../themes/studio/pieces", "*.html") + sources(t, "../../../themes/studio/scripts", "*.ts")
	for _, key := range slices.Sorted(maps.Keys(studio(t).words)) {
		if !strings.Contains(used, `"`+key+`"`) && !strings.Contains(used, `'`+key+`'`) {
			t.Errorf("words.yaml: nothing says %q; take it out", key)
		}
	}
}

// TestThemeLacksANeededWord wants each word that the press itself says to be
// asked for when a theme is opened, and its places.
func TestThemeLacksANeededWord(t *testing.T) {
	whole := studio(t).words
	for key, values := range Needed {
		w := maps.Clone(whole)
		delete(w, key)
		if err := w.checkNeeded(); !matches(err, `words.yaml has no "`+key+`"`) {
			t.Errorf("without %q: %v", key, err)
		}
		w[key] = "words {1} {2} {3} {4}"
		if err := w.checkNeeded(); !matches(err, fmt.Sprintf(`words.yaml: %q has a place {%d}`, key, values+1)) {
			t.Errorf("%q with four places: %v", key, err)
		}
		w[key] = "words"
		if err := w.checkNeeded(); (err != nil) != (values > 0) {
			t.Errorf("%q without places: %v", key, err)
		}
	}
}

// sources joins the files of a folder, tests aside.
func sources(t *testing.T, folder, pattern string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, pattern))
	if err != nil || len(files) == 0 {
		t.Fatalf("%s: no files %s (%v)", folder, pattern, err)
	}
	var all strings.Builder
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(data)
	}
	return all.String()
}

// matches says whether err is the one a case wants: none for "", else one that
// says want.
func matches(err error, want string) bool {
	if err == nil || want == "" {
		return err == nil && want == ""
	}
	return strings.Contains(err.Error(), want)
}
