//go:build !carried

package assets

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"os"
	"path/filepath"
	"slices"
)

// keptLimit is how many compiled sets of calculators are kept: enough to go to
// and fro between a few versions, little enough not to fill a disk.
const keptLimit = 8

// keepingFolder is where compiled calculators are kept, or "" where the user
// has no folder for such things; then each run compiles anew.
func keepingFolder() string {
	dir, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, "slipbook", "calculators")
}

// keptOr returns what is kept under the digest, or makes it and keeps it. An
// entry is its bytes followed by their SHA-256; one that does not agree with
// itself is made again. Entries appear by renaming, so that two programs at
// once never see half of one. Failing to keep is no failure: it costs the next
// run its time and nothing else.
func keptOr(dir, digest string, build func() ([]byte, error)) ([]byte, error) {
	if dir == "" {
		return build()
	}
	file := filepath.Join(dir, digest)
	if entry, err := os.ReadFile(file); err == nil {
		if data, ok := unseal(entry); ok {
			return data, nil
		}
	}
	data, err := build()
	if err != nil {
		return nil, err
	}
	if store(dir, file, seal(data)) == nil {
		thin(dir)
	}
	return data, nil
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

// thin removes the oldest entries beyond keptLimit. Another program may do the
// same at the same moment, so what is gone already is no matter.
func thin(dir string) {
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
	for _, old := range infos[min(len(infos), keptLimit):] {
		os.Remove(filepath.Join(dir, old.Name()))
	}
}
