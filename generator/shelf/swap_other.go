//go:build !linux

package shelf

import "os"

// swap exchanges two folders by two renames; see there.
func swap(fresh, old string) (spent string, err error) { return twoRenames(fresh, old) }

// flush makes the names in root safe on the disk; the files were made safe one
// by one.
func flush(root string) error {
	settle(root)
	return nil
}

// flushFile makes one file's bytes safe on the disk.
func flushFile(f *os.File) error { return f.Sync() }
