package house

import (
	"bytes"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// exactMath lists the functions of math that give the same bits on every
// machine: each is exact or correctly rounded by its definition.
var exactMath = []string{"Abs", "Ceil", "Copysign", "Float64bits", "Float64frombits", "Floor", "Inf", "IsInf", "IsNaN",
	"Max", "Min", "NaN", "Round", "RoundToEven", "Signbit", "Sqrt", "Trunc"}

// loose finds the products of floating-point numbers that a compiler may fuse
// with an addition: every product but those converted at once by float64(),
// multiplied or divided further, or compared. The specification of Go allows
// fusing across statements, so a product that is only assigned is loose too.
func loose(info *types.Info, file *ast.File) []ast.Node {
	var found []ast.Node
	var above []ast.Node
	ast.Inspect(file, func(n ast.Node) bool {
		if n == nil {
			above = above[:len(above)-1]
			return true
		}
		switch n := n.(type) {
		case *ast.BinaryExpr:
			if n.Op == token.MUL && isFloat(info, n) && !rounded(info, above) {
				found = append(found, n)
			}
		case *ast.AssignStmt:
			if n.Tok == token.MUL_ASSIGN && isFloat(info, n.Lhs[0]) {
				found = append(found, n)
			}
		}
		above = append(above, n)
		return true
	})
	return found
}

// isFloat reports whether e is a floating-point number known only at run time.
func isFloat(info *types.Info, e ast.Expr) bool {
	value := info.Types[e]
	if value.Type == nil || value.Value != nil {
		return false
	}
	basic, ok := value.Type.Underlying().(*types.Basic)
	return ok && basic.Info()&types.IsFloat != 0
}

// rounded reports whether what stands around a product keeps it from being fused.
func rounded(info *types.Info, above []ast.Node) bool {
	for _, n := range slices.Backward(above) {
		switch n := n.(type) {
		case *ast.ParenExpr:
			continue
		case *ast.UnaryExpr:
			continue
		case *ast.BinaryExpr:
			return n.Op != token.ADD && n.Op != token.SUB
		case *ast.CallExpr:
			return info.Types[n.Fun].IsType()
		}
		return false
	}
	return false
}

// exports finds the compiled form of what some packages import.
func exports(t *testing.T, packages string) types.Importer {
	t.Helper()
	command := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}}={{.Export}}", packages)
	command.Dir = root
	var complaint bytes.Buffer
	command.Stderr = &complaint
	out, err := command.Output()
	if err != nil {
		t.Fatalf("go list -export: %v\n%s", err, complaint.String())
	}
	files := map[string]string{}
	for line := range strings.Lines(string(out)) {
		path, file, _ := strings.Cut(strings.TrimSpace(line), "=")
		files[path] = file
	}
	return importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) {
		return os.Open(files[path])
	})
}

// checked type-checks the files of one package.
func checked(t *testing.T, fset *token.FileSet, path string, files []*ast.File, from types.Importer) *types.Info {
	t.Helper()
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}
	config := types.Config{Importer: from, Sizes: types.SizesFor("gc", "amd64")}
	if _, err := config.Check(path, fset, files, info); err != nil {
		t.Fatal(err)
	}
	return info
}

func TestArithmeticIsTheSameOnEveryMachine(t *testing.T) {
	from := exports(t, "./calculators/...")
	for _, p := range reactorPackages(t) {
		fset := token.NewFileSet()
		files := parse(t, fset, p, p.GoFiles)
		info := checked(t, fset, p.ImportPath, files, from)
		for _, file := range files {
			for _, n := range loose(info, file) {
				t.Errorf("%s: write float64(a*b): a compiler may fuse this product with an addition", where(fset, n.Pos()))
			}
		}
		for name, object := range info.Uses {
			function, ok := object.(*types.Func)
			if ok && function.Pkg() != nil && function.Pkg().Path() == "math" && !slices.Contains(exactMath, name.Name) {
				t.Errorf("%s: math.%s may differ between machines; use + - * / and math.Sqrt", where(fset, name.Pos()), name.Name)
			}
		}
	}
}

func TestLooseProductsAreFound(t *testing.T) {
	cases := []struct {
		name, body string
		loose      int
	}{
		{"added", "return a*b + c", 1},
		{"taken away", "return c - a*b", 1},
		{"in brackets", "return (a * b) + c", 1},
		{"negated", "return c + -(a * b)", 1},
		{"assigned", "p := a * b; return p", 1},
		{"returned", "return a * b", 1},
		{"given away", "return f(a*b, c, c)", 1},
		{"in place", "a *= b; return a", 1},
		{"two", "return a*b + b*c", 2},
		{"converted", "return float64(a*b) + c", 0},
		{"converted and in place", "a = float64(a * b); return a", 0},
		{"three factors", "return float64(a*b*c) - c", 0},
		{"divided", "return a*b/c + a", 0},
		{"compared", "if a*b > c { return a }; return b", 0},
		{"integers", "i := 3; return float64(i*i + i)", 0},
		{"constants", "const k = 2.0 * 3.5; return a + k", 0},
		{"divided by", "return float64(a*b) + c/(a*b)", 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			fset := token.NewFileSet()
			source := "package p\nfunc f(a, b, c float64) float64 {\n" + c.body + "\n}\n"
			file, err := parser.ParseFile(fset, "p.go", bytes.NewBufferString(source), parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			info := checked(t, fset, "p", []*ast.File{file}, nil)
			if got := len(loose(info, file)); got != c.loose {
				t.Errorf("%s: %d loose products found, want %d", c.body, got, c.loose)
			}
		})
	}
}
