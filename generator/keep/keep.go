// Package keep holds on to what costs time to make, from one run of the program to the
// next, in the user's folder for such things: the compiled calculators, the files
// made of photos. It exists so that there is one set of rules for it. An entry's
// name is a digest of all that it was made of, so it is never out of date; its bytes
// are followed by their sum, and one that does not agree with itself counts as
// missing. Entries appear by renaming, so that two programs at once never see half
// of one. Nobody needs the folder: failing to keep costs the next run its time and
// nothing else.
package keep

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"os"
	"path/filepath"
	"slices"
	"time"
)

// Folder returns where things of a name are kept; "" where the user has no folder
// for such things, and then everything is made anew.
func Folder(name string) string {
	dir, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "slipbook", name)
}

// Or returns what is kept under a digest, or makes it and keeps it. Afterwards it
// thins the folder as Thin does.
func Or(dir, digest string, fits func(entries int, size int64) bool, build func() ([]byte, error)) ([]byte, error) {
	if dir == "" {
		return build()
	}
	if data, ok := Get(dir, digest); ok {
		return data, nil
	}
	data, err := build()
	if err != nil {
		return nil, err
	}
	if Put(dir, digest, data) == nil {
		Thin(dir, fits)
	}
	return data, nil
}

// longUnused is how old an entry's time becomes before a use of it is noted.
const longUnused = time.Hour

// Get returns what is kept under a digest, and notes that it was of use.
func Get(dir, digest string) ([]byte, bool) {
	file := filepath.Join(dir, digest)
	entry, err := os.ReadFile(file)
	if err != nil {
		return nil, false
	}
	data, ok := unseal(entry)
	if info, err := os.Stat(file); ok && err == nil && time.Since(info.ModTime()) > longUnused {
		now := time.Now()
		_ = os.Chtimes(file, now, now) // where it may not be changed nothing is lost
	}
	return data, ok
}

// Put keeps something under a digest.
func Put(dir, digest string, data []byte) error {
	return store(dir, filepath.Join(dir, digest), seal(data))
}

// seal puts the sum of data behind it.
func seal(data []byte) []byte {
	sum := sha256.Sum256(data)
	return slices.Concat(data, sum[:])
}

// unseal takes the sum off and reports whether it is right.
func unseal(entry []byte) ([]byte, bool) {
	at := len(entry) - sha256.Size
	if at < 0 {
		return nil, false
	}
	sum := sha256.Sum256(entry[:at])
	return entry[:at:at], bytes.Equal(sum[:], entry[at:])
}

// store writes a whole file beside its place and then renames it.
func store(dir, file string, data []byte) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, "new-")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	err = cmp.Or(err, f.Close())
	if err == nil {
		err = os.Rename(f.Name(), file)
	}
	if err != nil {
		os.Remove(f.Name())
	}
	return err
}

// Thin removes the entries unused for longest until the number and the bytes of
// those that stay fit. Another program may do the same at the same moment, so what
// is gone already is no matter.
func Thin(dir string, fits func(entries int, size int64) bool) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	var infos []os.FileInfo
	for _, e := range entries {
		if info, err := e.Info(); err == nil {
			infos = append(infos, info)
		}
	}
	slices.SortFunc(infos, func(a, b os.FileInfo) int {
		return cmp.Or(b.ModTime().Compare(a.ModTime()), cmp.Compare(a.Name(), b.Name()))
	})
	size := int64(0)
	for n, info := range infos {
		if size += info.Size(); !fits(n+1, size) {
			os.Remove(filepath.Join(dir, info.Name()))
		}
	}
}
