package course

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"unicode/utf8"

	"slipbook/generator/finding"
)

// Limits of what is read, far above what a handbook needs, so that a file put
// there by mistake costs neither time nor memory.
const (
	textLimit    = 2 << 20
	pictureLimit = 5 << 20
)

// source is one file being read, with what is wrong in it so far. It serves
// one goroutine.
type source struct {
	path  string
	text  []byte
	lines *finding.Lines
	found finding.List
}

// mostFindings is how many findings of one file are worth reading; a file of
// two million brackets has no more.
const mostFindings = 200

// report adds a finding at an offset of the text; below zero is the file as a
// whole.
func (s *source) report(offset int, rule *finding.Rule, text, do string) {
	switch {
	case len(s.found) > mostFindings:
		return
	case len(s.found) == mostFindings:
		rule, text, do = finding.Unreadable, fmt.Sprintf("more than %d things are wrong with this file", mostFindings), "Mend those shown first; the rest will show then."
	}
	line, column := s.place(offset)
	s.found = append(s.found, finding.Finding{File: s.path, Line: line, Column: column, Rule: rule, Text: text, Do: do})
}

func (s *source) place(offset int) (line, column int) {
	if s.lines == nil {
		s.lines = finding.NewLines(s.text)
	}
	return s.lines.At(offset)
}

// readText reads a file of the content folder and makes sure that it is text.
// It reports at most one fault; after one, text is empty and ok false.
func readText(fsys fs.FS, path string, limit int64) (s *source, ok bool) {
	s = readFile(fsys, path, limit)
	if s.found != nil {
		return s, false
	}
	if fault := findFault(s.text); fault != nil {
		s.report(fault.offset, finding.Unreadable, fault.text, fault.do)
		s.text, s.lines = nil, nil
		return s, false
	}
	return s, true
}

// readFile reads a file as it is. It looks before it opens: opening a named
// pipe would wait for ever.
func readFile(fsys fs.FS, path string, limit int64) *source {
	s := &source{path: path}
	info, err := fs.Stat(fsys, path)
	switch {
	case err != nil:
		s.report(-1, finding.Unreadable, "the file cannot be read: "+reason(err), "Check its name and who may read it.")
		return s
	case !info.Mode().IsRegular():
		s.report(-1, finding.Unreadable, "this is not a file", "Put a plain file here, or rename what stands here.")
		return s
	case info.Size() > limit:
		s.tooLarge(limit)
		return s
	}
	data, err := readAtMost(fsys, path, info.Size(), limit+1)
	switch {
	case err != nil:
		s.report(-1, finding.Unreadable, "the file cannot be read: "+reason(err), "Check its name and who may read it.")
	case int64(len(data)) > limit:
		s.tooLarge(limit)
	default:
		s.text = data
	}
	return s
}

func (s *source) tooLarge(limit int64) {
	s.report(-1, finding.Unreadable, fmt.Sprintf("the file is larger than %d MiB", limit>>20),
		"Divide it, or make it smaller; no page of a handbook needs so much.")
}

// reason leaves out the path, which the finding has already, and whatever
// else differs from machine to machine.
func reason(err error) string {
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

// fault is what makes a file no text.
type fault struct {
	offset   int
	text, do string
}

// findFault finds the first byte that is not plain UTF-8 text: a byte-order
// mark, broken UTF-8, a control character other than tab and line ends.
func findFault(text []byte) *fault {
	for at := 0; at < len(text); {
		if c := text[at]; c >= ' ' && c < 0x7f || c == '\n' || c == '\t' {
			at++
			continue
		}
		r, size := utf8.DecodeRune(text[at:])
		switch {
		case r == utf8.RuneError && size == 1:
			return &fault{at, "this is not UTF-8 text", "Save the file again with the encoding UTF-8."}
		case r == 0:
			return &fault{at, "this is a NUL byte, which no text has", "Save the file again as plain text in UTF-8."}
		case r == '\ufeff' && at == 0:
			return &fault{at, "the file starts with a byte-order mark", "Save it again as “UTF-8 without BOM”."}
		case r == '\r' && (at+1 == len(text) || text[at+1] != '\n'):
			return &fault{at, "a line ends with a carriage return alone", "Save the file again with the line ends LF or CRLF."}
		case r < ' ' && r != '\r', r >= 0x7f && r < 0xa0, r == '\ufffe', r == '\uffff', r == '\ufeff':
			return &fault{at, fmt.Sprintf("this character, %U, cannot be seen or printed", r), "Take it out; it may have come along with copied text."}
		}
		at += size
	}
	return nil
}
