package house

import (
	"go/ast"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// reactor lists what the packages inside the WebAssembly reactor may import of
// the standard library. Each of these costs little or nothing there; fmt,
// encoding/json, reflect, net/url, sort, html and the tables of unicode cost
// more than all calculators together.
var reactor = []string{"bytes", "cmp", "errors", "iter", "maps", "math", "math/bits", "slices", "strconv", "strings",
	"unicode/utf8", "unsafe"}

// unicodeAware are the functions of strings and bytes that draw the tables of
// Unicode into a program.
var unicodeAware = []string{"EqualFold", "Fields", "FieldsSeq", "Title", "ToLower", "ToLowerSpecial", "ToTitle",
	"ToTitleSpecial", "ToUpper", "ToUpperSpecial", "TrimSpace"}

// reactorPackages lists the module's packages that end up in the reactor.
func reactorPackages(t *testing.T) []pkg {
	t.Helper()
	all, err := list([]string{"GOOS=wasip1", "GOARCH=wasm"}, "-deps", "./calculators/wasm")
	if err != nil {
		t.Fatal(err)
	}
	own := slices.DeleteFunc(all, func(p pkg) bool { return !strings.HasPrefix(p.ImportPath, "slipbook/") })
	if len(own) < 5 {
		t.Fatalf("only %d packages in the reactor: this test looks at the wrong place", len(own))
	}
	return own
}

func TestReactorImportsOnlySmallPackages(t *testing.T) {
	for _, p := range reactorPackages(t) {
		for _, path := range p.Imports {
			if !strings.HasPrefix(path, "slipbook/") && !slices.Contains(reactor, path) {
				t.Errorf("%s imports %q, which is not among the packages small enough for the reactor: %s",
					p.short(), path, strings.Join(reactor, " "))
			}
		}
	}
}

func TestReactorUsesNoTablesOfUnicode(t *testing.T) {
	for _, p := range reactorPackages(t) {
		fset := token.NewFileSet()
		for _, file := range parse(t, fset, p, p.GoFiles) {
			ast.Inspect(file, func(n ast.Node) bool {
				call, ok := n.(*ast.SelectorExpr)
				if !ok {
					return true
				}
				of, ok := call.X.(*ast.Ident)
				if ok && (of.Name == "strings" || of.Name == "bytes") && slices.Contains(unicodeAware, call.Sel.Name) {
					t.Errorf("%s: %s.%s draws in the tables of Unicode; cut or compare ASCII by hand",
						where(fset, call.Pos()), of.Name, call.Sel.Name)
				}
				return true
			})
		}
	}
}
