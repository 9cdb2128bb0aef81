//go:build !linux

package shelf

// swap takes the old tree's place by two renames; see there.
func swap(w work, path string) (back bool, err error) { return twoRenames(w, path) }
