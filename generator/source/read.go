package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"

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
		t.cannotRead(err)
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
		t.cannotRead(err)
	case int64(len(data)) > limit:
		t.tooLarge(limit)
	default:
		t.Bytes = data
	}
	return t
}

func (t *Text) cannotRead(err error) {
	t.Report(-1, finding.Unreadable, "the file cannot be read: "+Reason(err), "Check its name and who may read it.")
}

func (t *Text) tooLarge(limit int64) {
	t.Report(-1, finding.Unreadable, fmt.Sprintf("the file is larger than %d MiB", limit>>20),
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
