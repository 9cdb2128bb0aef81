package house

import (
	"go/ast"
	"go/token"
	"testing"
)

// screen is how many lines a function may have.
const screen = 60

// longer lists the functions that may be longer than a screen, by package and
// name, each with the reason why parting it would make it harder to read.
var longer = map[string]string{}

func TestFunctionsFitAScreen(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range module(t) {
		fset := token.NewFileSet()
		for _, file := range parse(t, fset, p, append(p.tests(), p.GoFiles...)) {
			for _, d := range file.Decls {
				f, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				name := p.short() + "." + f.Name.Name
				lines := fset.Position(f.End()).Line - fset.Position(f.Pos()).Line + 1
				if lines <= screen {
					continue
				}
				seen[name] = true
				if longer[name] == "" && !isTest(fset, f) {
					t.Errorf("%s: %s has %d lines, more than a screen of %d: part it, or list it in generator/house/size_test.go with the reason",
						where(fset, f.Pos()), name, lines, screen)
				}
			}
		}
	}
	for name := range longer {
		if !seen[name] {
			t.Errorf("%s is listed as longer than a screen and is not: take it off the list", name)
		}
	}
}

// isTest reports whether a function stands in a test file, where a long table of
// cases is no harm.
func isTest(fset *token.FileSet, f *ast.FuncDecl) bool {
	const end = "_test.go"
	name := fset.Position(f.Pos()).Filename
	return len(name) > len(end) && name[len(name)-len(end):] == end
}
