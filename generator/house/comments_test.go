package house

import (
	"go/ast"
	"go/token"
	"strings"
	"testing"
)

func TestEveryPackageSaysWhyItExists(t *testing.T) {
	for _, p := range module(t) {
		fset := token.NewFileSet()
		opening := "Package " + p.Name + " "
		if p.Name == "main" {
			opening = "Command "
		}
		var words []string
		for _, file := range parse(t, fset, p, p.GoFiles) {
			if file.Doc != nil {
				words = append(words, file.Doc.Text())
			}
		}
		switch {
		case len(words) == 0:
			t.Errorf("%s has no package comment: open it with a paragraph on why it exists", p.short())
		case len(words) > 1:
			t.Errorf("%s has %d package comments: keep one", p.short(), len(words))
		case !strings.HasPrefix(words[0], opening) && p.Name != "main":
			t.Errorf("the package comment of %s does not begin with %q", p.short(), opening)
		case len(strings.Fields(words[0])) < 20:
			t.Errorf("the package comment of %s is too short to say why it exists: %q", p.short(), words[0])
		}
	}
}

func TestEverythingExportedIsExplained(t *testing.T) {
	for _, p := range module(t) {
		fset := token.NewFileSet()
		for _, file := range parse(t, fset, p, p.GoFiles) {
			for _, d := range file.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					explainedFunc(t, fset, d)
				case *ast.GenDecl:
					explainedGroup(t, fset, d)
				}
			}
		}
	}
}

// explainedFunc reports an exported function, or method of an exported type,
// whose comment is missing or does not begin with its name.
func explainedFunc(t *testing.T, fset *token.FileSet, d *ast.FuncDecl) {
	if !d.Name.IsExported() || d.Recv != nil && !ast.IsExported(receiver(d)) {
		return
	}
	explained(t, fset, d.Pos(), d.Name.Name, d.Doc.Text())
}

// explainedGroup reports exported types, constants and variables without a
// comment. In a group of values the group's comment may stand for all.
func explainedGroup(t *testing.T, fset *token.FileSet, d *ast.GenDecl) {
	for _, s := range d.Specs {
		switch s := s.(type) {
		case *ast.TypeSpec:
			words := s.Doc.Text()
			if words == "" && !d.Lparen.IsValid() {
				words = d.Doc.Text()
			}
			if s.Name.IsExported() {
				explained(t, fset, s.Pos(), s.Name.Name, words)
			}
		case *ast.ValueSpec:
			for _, name := range s.Names {
				if name.IsExported() && s.Doc.Text()+s.Comment.Text()+d.Doc.Text() == "" {
					t.Errorf("%s: %s is exported and has no comment", where(fset, name.Pos()), name.Name)
				}
			}
		}
	}
}

// explained reports a comment that is missing or does not name its thing first.
func explained(t *testing.T, fset *token.FileSet, pos token.Pos, name, words string) {
	first := strings.Fields(words)
	switch {
	case len(first) == 0:
		t.Errorf("%s: %s is exported and has no comment", where(fset, pos), name)
	case first[0] != name && !(len(first) > 1 && (first[0] == "A" || first[0] == "An" || first[0] == "The") && first[1] == name):
		t.Errorf("%s: the comment of %s begins with %q; begin with the name", where(fset, pos), name, first[0])
	}
}

// receiver returns the name of the type that a method belongs to.
func receiver(d *ast.FuncDecl) string {
	name := ""
	ast.Inspect(d.Recv.List[0].Type, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok && name == "" {
			name = id.Name
		}
		return name == ""
	})
	return name
}
