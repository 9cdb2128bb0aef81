package shelf

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// order checks the addresses of files and returns them sorted. An address is a
// clean relative path with slashes; one that could leave the folder, means
// something else on another system, or stands where another needs a folder is
// an error.
func order(names []string) ([]string, error) {
	sorted := slices.Sorted(slices.Values(names))
	for n, name := range sorted {
		if n > 0 && name == sorted[n-1] {
			return nil, fmt.Errorf("two files want the address %q", name)
		}
		if err := check(name, sorted); err != nil {
			return nil, err
		}
	}
	return sorted, nil
}

// check judges one address among all of them, which are sorted.
func check(name string, sorted []string) error {
	if !fs.ValidPath(name) || name == "." {
		return fmt.Errorf("the address %q cannot be written: it must be a relative path with slashes, with no empty part and no \".\" or \"..\" in it", name)
	}
	if strings.ContainsFunc(name, forbidden) {
		return fmt.Errorf("the address %q cannot be written: backslashes, colons and control characters mean something else on some systems", name)
	}
	if dotted(name) {
		return fmt.Errorf("the address %q cannot be written: names that start with a dot are left to whoever keeps the server", name)
	}
	for above := path.Dir(name); above != "."; above = path.Dir(above) {
		if _, taken := slices.BinarySearch(sorted, above); taken {
			return fmt.Errorf("the address %q cannot be written: %q is a file, so it cannot be a folder too", name, above)
		}
	}
	return nil
}

// dotted reports whether a name, or that of a folder above it, starts with a dot.
func dotted(name string) bool {
	return strings.HasPrefix(name, ".") || strings.Contains(name, "/.")
}

// quoted lists names for a person, not all of very many.
func quoted(names []string) string {
	const most = 20
	var out strings.Builder
	for i, name := range names[:min(most, len(names))] {
		if i > 0 {
			out.WriteString(", ")
		}
		fmt.Fprintf(&out, "%q", name)
	}
	if more := len(names) - most; more > 0 {
		fmt.Fprintf(&out, " and %d more", more)
	}
	return out.String()
}

func forbidden(r rune) bool {
	return r < 0x20 || r == 0x7f || r == '\\' || r == ':'
}
