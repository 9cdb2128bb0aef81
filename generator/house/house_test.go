package house

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// root is the folder that holds go.mod, as seen from this package.
const root = "../.."

// pkg is what the go command says of one package of the module.
type pkg struct {
	Dir          string
	ImportPath   string
	Name         string
	GoFiles      []string
	TestGoFiles  []string
	XTestGoFiles []string
	Imports      []string
	TestImports  []string
	XTestImports []string
}

// short is the package's path inside the module, "generator/press".
func (p pkg) short() string { return strings.TrimPrefix(p.ImportPath, "slipbook/") }

// tests lists the package's test files.
func (p pkg) tests() []string { return append(append([]string{}, p.TestGoFiles...), p.XTestGoFiles...) }

// list asks the go command about packages, in the environment given besides.
func list(env []string, arguments ...string) ([]pkg, error) {
	command := exec.Command("go", append([]string{"list", "-json", "-tags", "judges"}, arguments...)...)
	command.Dir = root
	command.Env = append(os.Environ(), env...)
	var complaint bytes.Buffer
	command.Stderr = &complaint
	out, err := command.Output()
	if err != nil {
		return nil, fmt.Errorf("go list %s: %w\n%s", strings.Join(arguments, " "), err, complaint.String())
	}
	var found []pkg
	for decoder := json.NewDecoder(bytes.NewReader(out)); decoder.More(); {
		var p pkg
		if err := decoder.Decode(&p); err != nil {
			return nil, err
		}
		found = append(found, p)
	}
	return found, nil
}

// listModule asks for the module's own packages, once for all tests. The
// reactor's package is looked at as its target builds it.
var listModule = sync.OnceValues(func() ([]pkg, error) {
	host, err := list(nil, "-e", "./...")
	if err != nil {
		return nil, err
	}
	wasm, err := list([]string{"GOOS=wasip1", "GOARCH=wasm"}, "-e", "./calculators/wasm/...")
	if err != nil {
		return nil, err
	}
	for i := range host {
		for _, w := range wasm {
			if host[i].ImportPath == w.ImportPath {
				host[i] = w
			}
		}
	}
	return host, nil
})

// module lists the module's own packages.
func module(t *testing.T) []pkg {
	t.Helper()
	packages, err := listModule()
	if err != nil {
		t.Fatal(err)
	}
	if len(packages) < 10 {
		t.Fatalf("only %d packages found: these tests look at the wrong place", len(packages))
	}
	return packages
}

// parse reads Go files of one package's folder, with comments.
func parse(t *testing.T, fset *token.FileSet, p pkg, names []string) []*ast.File {
	t.Helper()
	var files []*ast.File
	for _, name := range names {
		file, err := parser.ParseFile(fset, filepath.Join(p.Dir, name), nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	return files
}

// where names a position by a path from the root of the module.
func where(fset *token.FileSet, pos token.Pos) string {
	at := fset.Position(pos)
	if top, err := filepath.Abs(root); err == nil {
		if inside, err := filepath.Rel(top, at.Filename); err == nil {
			at.Filename = filepath.ToSlash(inside)
		}
	}
	return at.String()
}
