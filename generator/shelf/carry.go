package shelf

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// carry makes a second copy of from, a dot file or dot folder of the old tree,
// at to in the new one, so that a server never sees a moment without its
// access rules. Plain files are linked, which keeps everything about them, or
// copied where the file system has no links; symbolic links are made anew and
// not followed. A file at to already, because the handbook brings one of that
// name, wins; folders are joined.
func carry(from, to string) error {
	info, err := os.Lstat(from)
	if err != nil {
		return err
	}
	if there, err := os.Lstat(to); err == nil {
		if info.IsDir() && there.IsDir() {
			return carryEntries(from, to)
		}
		return nil
	}
	switch {
	case info.IsDir():
		return carryFolder(from, to, info.Mode())
	case info.Mode()&fs.ModeSymlink != 0:
		target, err := os.Readlink(from)
		if err != nil {
			return err
		}
		return os.Symlink(target, to)
	}
	if err := os.Link(from, to); err == nil {
		return nil
	}
	return carryFile(from, to, info)
}

// carryFolder makes the folder with all that is in it. Its own mode comes
// last, for it may forbid writing.
func carryFolder(from, to string, mode fs.FileMode) error {
	if err := os.Mkdir(to, 0o700); err != nil {
		return err
	}
	if err := carryEntries(from, to); err != nil {
		return err
	}
	return os.Chmod(to, mode)
}

// carryEntries carries what is in one folder into another that exists.
func carryEntries(from, to string) error {
	entries, err := os.ReadDir(from)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if err := carry(filepath.Join(from, e.Name()), filepath.Join(to, e.Name())); err != nil {
			return err
		}
	}
	return nil
}

// carryFile copies a file with its mode and its time.
func carryFile(from, to string, info fs.FileInfo) (err error) {
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
