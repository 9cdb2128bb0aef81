// Package coursetest is a small course without faults, for the tests of every
// package that needs one. It exists so that those tests share one content
// folder, which is checked to load without findings, and change only what
// they are about.
package coursetest

import (
	"embed"
	"io/fs"
	"testing/fstest"
)

//go:embed all:small
var small embed.FS

// Small gives a new content folder of two units, four lessons, a glossary, a
// decoration table of its own, of two media, one technique and two exceptions,
// two hazards, and one drawing. The caller may change it.
func Small() fstest.MapFS {
	files := fstest.MapFS{}
	err := fs.WalkDir(small, "small", func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := small.ReadFile(path)
		files[path[len("small/"):]] = &fstest.MapFile{Data: data, Mode: 0o644}
		return err
	})
	if err != nil {
		panic(err) // an embedded folder always reads
	}
	return files
}
