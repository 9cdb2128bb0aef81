package press

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

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
// each key stands in quotes in a template, in a script or in the press itself.
func TestEveryWordIsUsed(t *testing.T) {
	used := sources(t, ".", "*.go") + sources(t, "../../themes/studio/pages", "*.html") +
		sources(t, "../../themes/studio/pieces", "*.html") + sources(t, "../../themes/studio/scripts", "*.ts")
	for _, key := range slices.Sorted(maps.Keys(studio(t).words)) {
		if !strings.Contains(used, `"`+key+`"`) && !strings.Contains(used, `'`+key+`'`) {
			t.Errorf("words.yaml: nothing says %q; take it out", key)
		}
	}
}

// TestNeededWordsAreThoseThatThePressSays reads what the press itself asks for by
// name, with how many values, and wants a theme to be held to exactly that.
func TestNeededWordsAreThoseThatThePressSays(t *testing.T) {
	said, others := saidByThePress(t)
	if want := []string{"e.key", "kind.part"}; !slices.Equal(others, want) {
		t.Errorf("words are asked for by %q, want by name or by %q", others, want)
	}
	for _, kind := range pageKinds { // kind.part
		if kind.part != "" && kind.part != unitsPart {
			said[kind.part] = 0
		}
	}
	for _, key := range whoWords { // without which nothing says that a page names somebody
		said[key] = 0
	}
	if !maps.Equal(said, needed) {
		for key, values := range said {
			if n, ok := needed[key]; !ok || n != values {
				t.Errorf("%q is said with %d values; needed has it: %v, with %d", key, values, ok, n)
			}
		}
		for key := range needed {
			if _, ok := said[key]; !ok {
				t.Errorf("needed has %q, which the press does not say", key)
			}
		}
	}
}

// saidByThePress reads the calls of the method say of a theme in the press's own
// files: the keys written out with how many values follow, and the others as they
// are written.
func saidByThePress(t *testing.T) (keys map[string]int, others []string) {
	t.Helper()
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	keys = map[string]int{}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for n := range ast.Preorder(tree) {
			call, ok := n.(*ast.CallExpr)
			if !ok || !saysOfTheme(call) {
				continue
			}
			if key, ok := call.Args[0].(*ast.BasicLit); ok {
				keys[strings.Trim(key.Value, `"`)] = len(call.Args) - 1
			} else {
				others = append(others, types.ExprString(call.Args[0]))
			}
		}
	}
	slices.Sort(others)
	return keys, others
}

// saysOfTheme reports whether a call is of a theme's say, not of its words'.
func saysOfTheme(call *ast.CallExpr) bool {
	method, ok := call.Fun.(*ast.SelectorExpr)
	if !ok || method.Sel.Name != "say" {
		return false
	}
	of, ok := method.X.(*ast.Ident)
	return ok && of.Name != "w"
}

// TestThemeLacksANeededWord wants each word that the press itself says to be
// asked for when a theme is opened, and its places.
func TestThemeLacksANeededWord(t *testing.T) {
	whole := studio(t).words
	for key, values := range needed {
		w := maps.Clone(whole)
		delete(w, key)
		if err := w.checkNeeded(); !matches(err, `words.yaml has no "`+key+`"`) {
			t.Errorf("without %q: %v", key, err)
		}
		w[key] = "words {1} {2} {3}"
		if err := w.checkNeeded(); !matches(err, fmt.Sprintf(`words.yaml: %q has a place {%d}`, key, values+1)) {
			t.Errorf("%q with three places: %v", key, err)
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
