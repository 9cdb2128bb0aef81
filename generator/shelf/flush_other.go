//go:build !linux

package shelf

import "os"

// flush makes the names in root safe on the disk; the files were made safe one
// by one.
func flush(root string) error {
	syncFolder(root)
	return nil
}

// flushFile makes one file's bytes safe on the disk.
func flushFile(f *os.File) error { return f.Sync() }
