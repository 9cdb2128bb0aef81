package house

import (
	"go/ast"
	"go/token"
	"testing"
)

// TestEveryRuleIsReported finds rules that reports and the guide promise and that
// nothing in the program can break any more.
func TestEveryRuleIsReported(t *testing.T) {
	fset := token.NewFileSet()
	declared, reported := map[string]token.Pos{}, map[string]bool{}
	for _, p := range module(t) {
		for _, file := range parse(t, fset, p, p.GoFiles) {
			ast.Inspect(file, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.ValueSpec:
					if p.short() == "generator/finding" && declaresRule(n) {
						declared[n.Names[0].Name] = n.Pos()
					}
				case *ast.SelectorExpr:
					if from, ok := n.X.(*ast.Ident); ok && from.Name == "finding" {
						reported[n.Sel.Name] = true
					}
				}
				return true
			})
		}
	}
	if len(declared) < 50 {
		t.Fatalf("only %d rules found: this test looks at the wrong place", len(declared))
	}
	for name, pos := range declared {
		if !reported[name] {
			t.Errorf("%s: nothing reports %s: take it out", where(fset, pos), name)
		}
	}
}

// declaresRule reports whether a variable is a rule.
func declaresRule(v *ast.ValueSpec) bool {
	if len(v.Values) != 1 {
		return false
	}
	call, ok := v.Values[0].(*ast.CallExpr)
	if !ok {
		return false
	}
	made, ok := call.Fun.(*ast.Ident)
	return ok && made.Name == "rule"
}
