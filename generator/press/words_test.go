package press

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
)

// TestNeededWordsAreThoseThatThePressSays reads what the press itself asks for by
// name, with how many values, and wants a theme to be held to exactly that.
func TestNeededWordsAreThoseThatThePressSays(t *testing.T) {
	said, others := saidByThePress(t)
	if want := []string{"e.key", "kind.Part"}; !slices.Equal(others, want) {
		t.Errorf("words are asked for by %q, want by name or by %q", others, want)
	}
	for _, kind := range pageKinds { // kind.Part
		if kind.Part != "" && kind.Part != imprint.UnitsPart {
			said[kind.Part] = 0
		}
	}
	said[care.FitTested], said[care.Trained] = 0, 0
	for _, key := range care.WhoWords { // without which nothing says that a page names somebody
		said[key] = 0
	}
	if !maps.Equal(said, theme.Needed) {
		for key, values := range said {
			if n, ok := theme.Needed[key]; !ok || n != values {
				t.Errorf("%q is said with %d values; Needed has it: %v, with %d", key, values, ok, n)
			}
		}
		for key := range theme.Needed {
			if _, ok := said[key]; !ok {
				t.Errorf("Needed has %q, which the press does not say", key)
			}
		}
	}
}

// saidByThePress reads the calls of the method Say of a theme in the files of the
// press and its rooms: the keys written out with how many values follow, and the others as they
// are written.
func saidByThePress(t *testing.T) (keys map[string]int, others []string) {
	t.Helper()
	own, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	ofRooms, err := filepath.Glob("*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	keys = map[string]int{}
	for _, file := range append(own, ofRooms...) {
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

// saysOfTheme reports whether a call is of a theme's Say.
func saysOfTheme(call *ast.CallExpr) bool {
	method, ok := call.Fun.(*ast.SelectorExpr)
	return ok && method.Sel.Name == "Say"
}

// matches says whether err is the one a case wants: none for "", else one that
// says want.
func matches(err error, want string) bool {
	if err == nil || want == "" {
		return err == nil && want == ""
	}
	return strings.Contains(err.Error(), want)
}
