package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"slipbook/generator/finding"
)

// Read reads a file of at most limit bytes and makes sure that it is text. It
// reports at most one fault; after one, the text is empty and ok false.
func Read(fsys fs.FS, path string, limit int64) (t *Text, ok bool) {
	t = ReadBytes(fsys, path, limit)
	if t.Found != nil {
		return t, false
	}
	if fault := findFault(t.Bytes); fault != nil {
		t.Report(fault.offset, finding.Unreadable, fault.text, fault.do)
		t.Bytes, t.lines = nil, nil
		return t, false
	}
	return t, true
}

// ReadBytes reads a file of at most limit bytes as it is. It looks before it
// opens: opening a named pipe would wait for ever.
func ReadBytes(fsys fs.FS, path string, limit int64) *Text {
	t := &Text{Path: path}
	info, err := fs.Stat(fsys, path)
	switch {
	case err != nil:
		t.cannotRead(fsys, err)
		return t
	case !info.Mode().IsRegular():
		t.Report(-1, finding.Unreadable, "this is not a file", "Put a plain file here, or rename what stands here.")
		return t
	case info.Size() > limit:
		t.tooLarge(limit)
		return t
	}
	data, err := readAtMost(fsys, path, info.Size(), limit+1)
	switch {
	case err != nil:
		t.cannotRead(fsys, err)
	case int64(len(data)) > limit:
		t.tooLarge(limit)
	default:
		t.Bytes = data
	}
	return t
}

func (t *Text) cannotRead(fsys fs.FS, err error) {
	text, do := Fault(fsys, t.Path, "file", err)
	t.Report(-1, finding.Unreadable, text, do)
}

// Fault says why a file or folder, whichever what says, cannot be read, and what
// to do. A link that leads to where nothing is read from is named.
func Fault(fsys fs.FS, path, what string, err error) (text, do string) {
	if link := linkIn(fsys, path); link != "" {
		return fmt.Sprintf("the %s cannot be read: `%s` is a link that leads out of the content folder, or nowhere", what, link),
			"Put the file or folder itself there; nothing outside of the content folder is published."
	}
	return "the " + what + " cannot be read: " + Reason(err), "Check its name and who may read it."
}

// linkIn returns the first part of a path that is a link; empty where none is.
func linkIn(fsys fs.FS, path string) string {
	for end := 0; end < len(path); {
		next := strings.IndexByte(path[end:], '/')
		if next < 0 {
			end = len(path)
		} else {
			end += next
		}
		if info, err := fs.Lstat(fsys, path[:end]); err == nil && info.Mode()&fs.ModeSymlink != 0 {
			return path[:end]
		}
		end++
	}
	return ""
}

// Exists reports whether something has this path, be it a link that leads
// nowhere: then reading it says what is wrong.
func Exists(fsys fs.FS, path string) bool {
	_, err := fs.Lstat(fsys, path)
	return !errors.Is(err, fs.ErrNotExist)
}

func (t *Text) tooLarge(limit int64) {
	size := fmt.Sprintf("%d MiB", limit>>20)
	if limit < 1<<20 {
		size = fmt.Sprintf("%d KiB", limit>>10)
	}
	t.Report(-1, finding.Unreadable, "the file is larger than "+size,
		"Divide it, or make it smaller; no page of a handbook needs so much.")
}

// Reason returns the words of an error of a file system without the path, which
// the finding has already, and whatever else differs from machine to machine.
func Reason(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// readAtMost reads a file of about size bytes, and not more than most: it may
// have grown since it was looked at.
func readAtMost(fsys fs.FS, path string, size, most int64) ([]byte, error) {
	f, err := fsys.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	b := bytes.NewBuffer(make([]byte, 0, size+bytes.MinRead))
	_, err = b.ReadFrom(io.LimitReader(f, most))
	return b.Bytes(), err
}
