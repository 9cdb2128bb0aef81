package house

import (
	"go/ast"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// ways are the methods by which a test could pass without having looked.
var ways = []string{"Skip", "Skipf", "SkipNow"}

func TestNoTestLooksAway(t *testing.T) {
	for _, p := range module(t) {
		fset := token.NewFileSet()
		for _, file := range parse(t, fset, p, p.tests()) {
			ast.Inspect(file, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				method, ok := call.Fun.(*ast.SelectorExpr)
				if ok && slices.Contains(ways, method.Sel.Name) {
					t.Errorf("%s: a test that cannot be run fails; it never passes by", where(fset, call.Pos()))
				}
				return true
			})
		}
	}
}

// unfinished marks what somebody meant to do later.
var unfinished = []string{"TO" + "DO", "FIX" + "ME", "XX" + "X", "HA" + "CK"}

func TestNothingIsLeftForLater(t *testing.T) {
	for _, p := range module(t) {
		fset := token.NewFileSet()
		for _, file := range parse(t, fset, p, append(p.tests(), p.GoFiles...)) {
			for _, group := range file.Comments {
				for _, mark := range unfinished {
					if strings.Contains(group.Text(), mark) {
						t.Errorf("%s: a comment says %s: do it, or file it where the work is kept", where(fset, group.Pos()), mark)
					}
				}
			}
		}
	}
}
