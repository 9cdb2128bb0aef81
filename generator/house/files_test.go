package house

import (
	"go/ast"
	"go/token"
	"go/types"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// ordered lists the packages whose files have an order in which none borrows from a
// later one, so that they can be read from the first file to the last.
var ordered = []string{"generator/address", "generator/finding", "generator/notices", "generator/pool", "generator/source", "generator/terminal",
	"generator/press", "generator/press/book", "generator/press/care", "generator/press/desk", "generator/press/gathered",
	"generator/press/imprint", "generator/press/presstest", "generator/press/setting", "generator/press/table", "generator/press/theme"}

// TestFilesHaveAnOrder finds files of those packages that borrow from each other:
// they are one file, or two that share a third.
func TestFilesHaveAnOrder(t *testing.T) {
	from := exports(t, "./generator/...")
	looked := 0
	for _, p := range module(t) {
		if !slices.Contains(ordered, p.short()) {
			continue
		}
		looked++
		fset := token.NewFileSet()
		files := parse(t, fset, p, p.GoFiles)
		info := checked(t, fset, p.ImportPath, files, from)
		if ring := inARing(borrowings(fset, p.ImportPath, files, info)); len(ring) > 0 {
			t.Errorf("%s: these files borrow from each other: %s", p.short(), strings.Join(ring, ", "))
		}
	}
	if looked != len(ordered) {
		t.Errorf("%d packages looked at, %d are listed", looked, len(ordered))
	}
}

func TestRingsAreFound(t *testing.T) {
	lends := func(names ...string) map[string]bool {
		all := map[string]bool{}
		for _, name := range names {
			all[name] = true
		}
		return all
	}
	for _, c := range []struct {
		name string
		from map[string]map[string]bool
		ring []string
	}{
		{"a row", map[string]map[string]bool{"a": lends(), "b": lends("a"), "c": lends("a", "b")}, nil},
		{"two", map[string]map[string]bool{"a": lends("b"), "b": lends("a"), "c": lends("a"), "d": lends()}, []string{"a", "b"}},
		{"three", map[string]map[string]bool{"a": lends("b"), "b": lends("c"), "c": lends("a", "d"), "d": lends()}, []string{"a", "b", "c"}},
	} {
		if got := inARing(c.from); !slices.Equal(got, c.ring) {
			t.Errorf("%s: %q, want %q", c.name, got, c.ring)
		}
	}
}

// borrowings lists for each file of a package the others that declare what it uses.
func borrowings(fset *token.FileSet, path string, files []*ast.File, info *types.Info) map[string]map[string]bool {
	nameOf := func(pos token.Pos) string { return filepath.Base(fset.Position(pos).Filename) }
	here := map[string]bool{}
	for _, f := range files {
		here[nameOf(f.Pos())] = true
	}
	from := map[string]map[string]bool{}
	for name := range here {
		from[name] = map[string]bool{}
	}
	for use, object := range info.Uses {
		if object.Pkg() == nil || object.Pkg().Path() != path {
			continue
		}
		user, lender := nameOf(use.Pos()), nameOf(object.Pos())
		if user != lender && here[lender] {
			from[user][lender] = true
		}
	}
	return from
}

// inARing takes away files that borrow from none that is left, and returns those that
// stay, without those that nothing else of them borrows from.
func inARing(from map[string]map[string]bool) []string {
	for {
		var done []string
		for name, lenders := range from {
			borrowed := slices.ContainsFunc(slices.Collect(maps.Values(from)), func(other map[string]bool) bool { return other[name] })
			if len(lenders) == 0 || !borrowed {
				done = append(done, name)
			}
		}
		if len(done) == 0 {
			return slices.Sorted(maps.Keys(from))
		}
		for _, name := range done {
			delete(from, name)
		}
		for _, lenders := range from {
			for _, name := range done {
				delete(lenders, name)
			}
		}
	}
}
