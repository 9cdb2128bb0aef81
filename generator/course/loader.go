package course

import (
	"crypto/sha256"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/pool"
	"slipbook/generator/source"
)

// loader is a course being read.
type loader struct {
	fsys   fs.FS
	reader *Reader
	course *Course
	found  finding.List
	open   []*source.Text // files read, whose findings are gathered at the end

	pageBytes   int64             // of the pages read so far
	tables      [sha256.Size]byte // of course.yaml, hazards.yaml and the decoration table
	hazardIDs   unique
	hazardsRead bool               // hazards.yaml could be read, or is not there
	taught      []source.Value     // the lessons that hazards name, and the page of first aid
	listed      map[string]listing // folders that were listed
}

// yaml reads a YAML file and returns its value; of a file that is broken or
// empty, an absent one. example is how such a file begins.
func (l *loader) yaml(path, example string) source.Value {
	s, ok := source.Read(l.fsys, path, textLimit)
	l.open = append(l.open, s)
	if !ok {
		return source.Value{}
	}
	s.Language = l.course.Language
	if path == settingsFile {
		s.Language = languageOf(s.Bytes)
	}
	s.CheckHidden()
	before := s.Reported()
	root := s.YAML()
	if root.Absent() && s.Reported() == before {
		s.Report(-1, finding.MissingKey, "the file is empty", "Write its keys and values, first a line such as `"+example+"`.")
	}
	return root
}

// unreadable reports a folder that is there and cannot be read.
func (l *loader) unreadable(folder string, err error) {
	if !source.Exists(l.fsys, folder) {
		return
	}
	text, do := source.Fault(l.fsys, folder, "folder", err)
	l.report(folder, finding.Unreadable, text, do)
}

func (l *loader) stray(path, do string) {
	l.report(path, finding.StrayFile, "nothing in the handbook reads this", do)
}

// report adds a finding about a file as a whole.
func (l *loader) report(path string, rule *finding.Rule, text, do string) {
	l.found = append(l.found, finding.Finding{File: path, Line: 1, Column: 1, Rule: rule, Text: text, Do: do})
}

// pathsFrom lists the pages as a page would write the way to them.
func (l *loader) pathsFrom(file string) []string {
	var paths []string
	for _, p := range l.course.Pages() {
		if way, err := filepath.Rel(path.Dir(file), p.File); err == nil {
			paths = append(paths, filepath.ToSlash(way))
		}
	}
	return paths
}

// listing is a folder's entries by name, those that start with a dot left out.
// Names are looked up here rather than on the disk, which may not tell capital
// letters from small ones.
type listing []fs.DirEntry

// listing lists a folder. One that is not there is empty, and one that cannot
// be read is reported.
func (l *loader) listing(folder string) listing {
	if listed, ok := l.listed[folder]; ok {
		return listed
	}
	l.listAll([]string{folder})
	return l.listed[folder]
}

// listAll lists folders, several at once.
func (l *loader) listAll(folders []string) {
	type result struct {
		entries []fs.DirEntry
		err     error
	}
	read := pool.Map(len(folders), func(n int) result {
		entries, err := fs.ReadDir(l.fsys, folders[n])
		return result{entries, err}
	})
	for n, folder := range folders {
		if read[n].err != nil {
			l.unreadable(folder, read[n].err)
		}
		l.listed[folder] = slices.DeleteFunc(read[n].entries, func(e fs.DirEntry) bool { return strings.HasPrefix(e.Name(), ".") })
	}
}

func (l listing) has(name string) bool { return l.entry(name) != nil }

// entry returns the entry of a name, nil where there is none.
func (l listing) entry(name string) fs.DirEntry {
	n, ok := slices.BinarySearchFunc(l, name, func(e fs.DirEntry, name string) int { return strings.Compare(e.Name(), name) })
	if !ok {
		return nil
	}
	return l[n]
}

func (l listing) names() []string {
	names := make([]string, len(l))
	for i, e := range l {
		names[i] = e.Name()
	}
	return names
}

// pages lists the names that a list may write: Markdown files without ".md".
func (l listing) pages() []string {
	var names []string
	for _, name := range l.names() {
		if stem, ok := strings.CutSuffix(name, ".md"); ok && name != unitFile {
			names = append(names, stem)
		}
	}
	return names
}
