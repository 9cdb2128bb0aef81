package shelf

import (
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
)

// snapshot is how files and folders were at one moment, by address.
type snapshot map[string]fs.FileInfo

// everything takes a snapshot of a whole tree, without its root.
func everything(root string) (snapshot, error) {
	all := snapshot{}
	err := filepath.WalkDir(root, func(at string, e fs.DirEntry, err error) error {
		if err != nil || at == root {
			return err
		}
		rel, err := filepath.Rel(root, at)
		if err != nil {
			return err
		}
		all[filepath.ToSlash(rel)], err = e.Info()
		return err
	})
	return all, err
}

// addFolders adds the marker of a tree, and every folder that the names of a
// snapshot, and more names, need there.
func (s snapshot) addFolders(root string, more ...string) {
	names := slices.Concat(slices.Collect(maps.Keys(s)), more, []string{Marker})
	for _, name := range names {
		for at := name; at != "."; at = path.Dir(at) {
			if info, err := os.Lstat(filepath.Join(root, filepath.FromSlash(at))); err == nil && (at == Marker || info.IsDir()) {
				s[at] = info
			}
		}
	}
}

// sameState reports whether a file is the one it was, and was not written to.
func sameState(a, b fs.FileInfo) bool {
	return os.SameFile(a, b) && a.Mode() == b.Mode() && (a.IsDir() || a.Size() == b.Size() && a.ModTime().Equal(b.ModTime()))
}
