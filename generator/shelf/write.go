package shelf

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"

	"slipbook/generator/pool"
)

// each calls do for 0 to n-1 on several workers, since a file system has more
// patience than one of them, and returns the error of the first that failed.
// When ctx ends it stops and returns its error.
func each(ctx context.Context, n int, do func(i int) error) error {
	err := pool.Try(n, 2, func(i int) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		return do(i)
	})
	if err == nil {
		err = ctx.Err()
	}
	return err
}

// makeFolders makes every folder that names need and that is not there.
func makeFolders(root string, names []string) error {
	made := map[string]bool{".": true}
	var need func(dir string) error
	need = func(dir string) error {
		if made[dir] {
			return nil
		}
		if err := need(path.Dir(dir)); err != nil {
			return err
		}
		made[dir] = true
		full := filepath.Join(root, filepath.FromSlash(dir))
		if info, err := os.Lstat(full); err == nil && info.IsDir() {
			return nil
		}
		if err := os.Mkdir(full, 0o755); err != nil {
			return err
		}
		return os.Chmod(full, 0o755) // the umask may have taken bits away
	}
	for _, name := range names {
		if err := need(path.Dir(name)); err != nil {
			return err
		}
	}
	return nil
}

// write makes one new file with mode 0644.
func write(name string, data []byte) (err error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("two addresses mean the same file %q on this disk, which does not tell capital letters from small ones", filepath.Base(name))
	}
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	if _, err := f.Write(data); err != nil {
		return err
	}
	if err := f.Chmod(0o644); err != nil { // the umask may have taken bits away
		return err
	}
	return flushFile(f)
}

// link makes the file from stand at to as well: a second name for it, which
// keeps everything about it, or a copy where the disk does not allow that.
func link(from, to string) error {
	if os.Link(from, to) == nil {
		return nil
	}
	info, err := os.Lstat(from)
	if err != nil {
		return err
	}
	return copyFile(from, to, info)
}

// copyFile copies a file with its mode and its time.
func copyFile(from, to string, info fs.FileInfo) (err error) {
	if !info.Mode().IsRegular() {
		return &fs.PathError{Op: "copy", Path: from, Err: errors.New("it is neither a file nor a folder; move it away first")}
	}
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, info.Mode().Perm())
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	if err = errors.Join(err, out.Chmod(info.Mode().Perm()), flushFile(out), out.Close()); err != nil {
		return err
	}
	return os.Chtimes(to, info.ModTime(), info.ModTime())
}
