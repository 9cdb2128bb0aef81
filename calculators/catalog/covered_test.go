package catalog

import (
	"go/ast"
	"strings"
	"testing"
)

// unchecked are the calculators of which a table of checks holds no row, by the
// file of the table and the name, each with the reason.
var unchecked = map[[2]string]string{
	{"balance_test.go", "stage-plan"}:   "it measures nothing: package stagetest/oracle plans the same wishes by the rules alone",
	{"published_test.go", "stage-plan"}: "the verdicts it plans by are compared with testdata/published/decoration-verdicts.csv",
}

// TestEveryCalculatorIsChecked wants every calculator to have rows of its own
// in the tables that nobody can make for it: what its answers keep, what it
// refuses in which words, and what others have published.
func TestEveryCalculatorIsChecked(t *testing.T) {
	for _, table := range []struct {
		file, what string
		named      map[string]bool
	}{
		{"balance_test.go", "write there a test with forAll that says what its answers cannot lose", namedIn(t, "balance_test.go", "")},
		{"refusal_test.go", "write into TestRefusals what it refuses, and the words", namedIn(t, "refusal_test.go", "TestRefusals")},
		{"published_test.go", "write a row with its source into testdata/published/mixing-checks.csv, and how it is reckoned into covered", namedIn(t, "published_test.go", "")},
	} {
		for _, c := range all {
			reason := unchecked[[2]string{table.file, c.Name}]
			switch {
			case !table.named[c.Name] && reason == "":
				t.Errorf("%s holds nothing of %s: %s, or name it in unchecked with the reason", table.file, c.Name, table.what)
			case table.named[c.Name] && reason != "":
				t.Errorf("%s holds something of %s: take it out of unchecked", table.file, c.Name)
			}
		}
	}
}

// namedIn are the calculators that texts of a test file name, alone or at the
// beginning of a request; where a function is given, texts of that one only.
func namedIn(t *testing.T, file, function string) map[string]bool {
	t.Helper()
	named := map[string]bool{}
	for _, d := range readFile(t, file).tree.Decls {
		if f, ok := d.(*ast.FuncDecl); function != "" && (!ok || f.Name.Name != function) {
			continue
		}
		ast.Inspect(d, func(n ast.Node) bool {
			if e, ok := n.(ast.Expr); ok {
				if text, ok := literal(e); ok {
					name, _, _ := strings.Cut(strings.TrimPrefix(text, "calculator="), "&")
					named[name] = true
				}
			}
			return true
		})
	}
	return named
}
