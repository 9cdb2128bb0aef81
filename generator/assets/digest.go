//go:build !carried

package assets

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"path"
	"strconv"
	"strings"
)

// digestOf sums up everything that decides the bytes of the calculators: the
// Go version, its switches, the flags, how segments are joined, that traces are
// left out, go.mod, and every Go source file under calculators/ that is not a
// test, in the order of their paths.
func digestOf(root fs.FS, goVersion string) (string, error) {
	sum := sha256.New()
	add := func(name string, data []byte) {
		fmt.Fprintf(sum, "%q %d\n", name, len(data))
		sum.Write(data) // a hash never fails
	}
	add("go", []byte(goVersion))
	add("environment", []byte(strings.Join(environment, " ")))
	add("flags", []byte(strings.Join(flags, " ")))
	add("gap", []byte(strconv.Itoa(gap)))
	add("traces", []byte("left out"))
	mod, err := fs.ReadFile(root, "go.mod")
	if err != nil {
		return "", err
	}
	add("go.mod", mod)
	err = fs.WalkDir(root, "calculators", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go") {
			return err
		}
		data, err := fs.ReadFile(root, name)
		if err == nil {
			add(name, data)
		}
		return err
	})
	return hex.EncodeToString(sum.Sum(nil)), err
}
