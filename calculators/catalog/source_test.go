package catalog

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/form"
)

// What the code itself has to hold, since no answer shows that it is missing:
// a name that nobody declared reads as 0, and a calculator that is not in the
// list is in no handbook.

// written is a file of the code.
type written struct {
	fset     *token.FileSet
	tree     *ast.File
	declares []declaration
}

// declaration is a calculator as the code declares it: the variable, and the
// name it goes by.
type declaration struct {
	variable *ast.Ident
	name     string
}

// at is a place in the file.
func (f *written) at(n ast.Node) string { return f.fset.Position(n.Pos()).String() }

// calculators are those of the handbook that the file declares.
func (f *written) calculators() []*form.Calculator {
	var list []*form.Calculator
	for _, d := range f.declares {
		if c := all.Find(d.name); c != nil {
			list = append(list, c)
		}
	}
	return list
}

// readFile reads one file of the code.
func readFile(t *testing.T, name string) *written {
	t.Helper()
	f := &written{fset: token.NewFileSet()}
	tree, err := parser.ParseFile(f.fset, name, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	f.tree = tree
	for _, d := range tree.Decls {
		group, ok := d.(*ast.GenDecl)
		if !ok || group.Tok != token.VAR {
			continue
		}
		for _, s := range group.Specs {
			f.declares = append(f.declares, declarationsOf(s.(*ast.ValueSpec))...)
		}
	}
	return f
}

// readRoom reads a package's files but for its tests.
func readRoom(t *testing.T, room string) []*written {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(room, "*.go"))
	if err != nil || len(names) < 5 {
		t.Fatal(room, names, err)
	}
	var files []*written
	for _, name := range names {
		if !strings.HasSuffix(name, "_test.go") {
			files = append(files, readFile(t, name))
		}
	}
	return files
}

// declarationsOf are the calculators among the variables of a line: those of that
// type, and those that are the address of one.
func declarationsOf(line *ast.ValueSpec) []declaration {
	var list []declaration
	star, typed := line.Type.(*ast.StarExpr)
	typed = typed && isOf(star.X, "Calculator")
	for i, variable := range line.Names {
		d := declaration{variable: variable}
		if i < len(line.Values) {
			if address, ok := line.Values[i].(*ast.UnaryExpr); ok {
				value, ok := address.X.(*ast.CompositeLit)
				if ok && value.Type != nil && isOf(value.Type, "Calculator") {
					d.name = nameIn(value)
				}
			}
		}
		if typed || d.name != "" {
			list = append(list, d)
		}
	}
	return list
}

// isOf reports whether an expression is a type of package form.
func isOf(e ast.Expr, name string) bool {
	selected, ok := e.(*ast.SelectorExpr)
	if !ok || selected.Sel.Name != name {
		return false
	}
	from, ok := selected.X.(*ast.Ident)
	return ok && from.Name == "form"
}

// nameIn is the name in a declaration; "?" where it is not written out.
func nameIn(value *ast.CompositeLit) string {
	for _, part := range value.Elts {
		pair, ok := part.(*ast.KeyValueExpr)
		if !ok {
			continue
		}
		if key, ok := pair.Key.(*ast.Ident); !ok || key.Name != "Name" {
			continue
		}
		if name, ok := literal(pair.Value); ok {
			return name
		}
		if constant, ok := pair.Value.(*ast.Ident); ok && constant.Name == "Plan" {
			return Plan
		}
	}
	return "?"
}

// TestEveryCalculatorIsInTheList wants every calculator that is declared to be
// one of the handbook's.
func TestEveryCalculatorIsInTheList(t *testing.T) {
	listed := map[string]bool{}
	ast.Inspect(readFile(t, "all.go").tree, func(n ast.Node) bool {
		if list, ok := n.(*ast.CompositeLit); ok {
			for _, e := range list.Elts {
				if name, ok := e.(*ast.Ident); ok {
					listed[name.Name] = true
				}
			}
		}
		return true
	})
	found := 0
	for _, f := range readRoom(t, ".") {
		for _, d := range f.declares {
			found++
			if !listed[d.variable.Name] {
				t.Errorf("%s: name %s in all.go", f.at(d.variable), d.variable.Name)
			}
			if d.name == "?" {
				t.Errorf("%s: write the Name of %s out in its declaration", f.at(d.variable), d.variable.Name)
			}
		}
	}
	if found < len(all) {
		t.Errorf("only %d of %d declarations found: this test looks at the wrong place", found, len(all))
	}
}

// The methods of an evaluation, and of its answer, whose first argument is the
// name of an input, of an output, or of either.
var (
	ofInput  = []string{"Has", "Typed", "Value", "Word", "List", "Given", "Unused", "Stand", "Missing", "Refuse", "RefuseValue"}
	ofOutput = []string{"Set", "SetWithin", "Show", "Tell", "Result", "Weighable"}
	ofEither = []string{"Shown"}
)

// TestNamesAreDeclared wants every input and output that the code asks for by
// its name to be one of the calculator's in whose file that stands, or of any
// where several share the file.
func TestNamesAreDeclared(t *testing.T) {
	looked := 0
	for _, f := range readRoom(t, ".") {
		calculators := f.calculators()
		if len(f.declares) == 0 {
			calculators = all // a file of what several share
		}
		evaluations := evaluationsIn(f.tree)
		ast.Inspect(f.tree, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || len(calculators) == 0 {
				return true
			}
			method, name, ok := asks(call, evaluations)
			if !ok {
				return true
			}
			looked++
			if lacking := notDeclared(calculators, method, name); lacking != "" {
				t.Errorf("%s: the calculator has no %s", f.at(call.Args[0]), lacking)
			}
			return true
		})
	}
	if looked < 200 {
		t.Errorf("only %d calls name an input or an output: this test looks at the wrong place", looked)
	}
}

// evaluationsIn are the names that evaluations go by in a file.
func evaluationsIn(tree *ast.File) map[string]bool {
	names := map[string]bool{}
	ast.Inspect(tree, func(n ast.Node) bool {
		if field, ok := n.(*ast.Field); ok {
			if star, ok := field.Type.(*ast.StarExpr); ok && isOf(star.X, "Evaluation") {
				for _, name := range field.Names {
					names[name.Name] = true
				}
			}
		}
		return true
	})
	return names
}

// asks reads a call of a method of an evaluation, or of its answer, with a name
// that is written out.
func asks(call *ast.CallExpr, evaluations map[string]bool) (method, name string, ok bool) {
	selected, ok := call.Fun.(*ast.SelectorExpr)
	if !ok || len(call.Args) == 0 {
		return "", "", false
	}
	of := selected.X
	if answer, ok := of.(*ast.SelectorExpr); ok && answer.Sel.Name == "Answer" {
		of = answer.X
	}
	if e, ok := of.(*ast.Ident); !ok || !evaluations[e.Name] {
		return "", "", false
	}
	name, ok = literal(call.Args[0])
	return selected.Sel.Name, name, ok
}

// notDeclared says what none of the calculators has: "input "thicknes"". It is
// empty where one has it, and for methods that take no such name.
func notDeclared(calculators []*form.Calculator, method, name string) string {
	input := slices.ContainsFunc(calculators, func(c *form.Calculator) bool { return c.Input(name) != nil })
	output := slices.ContainsFunc(calculators, func(c *form.Calculator) bool { return c.Output(name) != nil })
	switch {
	case slices.Contains(ofInput, method) && !input && name != "calculator":
		return `input "` + name + `"`
	case slices.Contains(ofOutput, method) && !output:
		return `output "` + name + `"`
	case slices.Contains(ofEither, method) && !input && !output:
		return `input or output "` + name + `"`
	}
	return ""
}
