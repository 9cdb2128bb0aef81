package shelf

import (
	"os"
	"path/filepath"
)

// Marker is the name of the file by which a later publish knows a folder as
// its own.
const Marker = ".slipbook-published"

const markerText = `This folder was written by "slipbook publish".
The next publish replaces everything in it, except names that start with a dot.
Change the lessons, not these files. To keep this folder, remove this file:
slipbook then leaves the folder alone.
`

// mark puts the marker into a folder.
func mark(dir string) error {
	return write(filepath.Join(dir, Marker), []byte(markerText))
}

// marked says whether a folder bears the marker: a plain file, since a folder
// or a link of that name is not ours.
func marked(dir string) bool {
	info, err := os.Lstat(filepath.Join(dir, Marker))
	return err == nil && info.Mode().IsRegular()
}
