// Package table reads the table of small wrong changes with which the tests of
// slipbook are tried. It exists apart from the command that runs them, so that
// the rules of the house, too, can hold the table against the code: a change
// whose words no longer stand there would be tried no more, and nobody would
// know.
package table

import (
	"bytes"
	"cmp"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// File is where the table stands, from the top of the tree.
const File = "testdata/mutations/table.txt"

// Mutant is one small wrong change, and the tests that ought to notice it.
type Mutant struct {
	Name     string   // one word
	File     string   // that is changed, from the top of the tree, with slashes
	From, To string   // what stands there once, and what is put in its place
	Packages []string // whose tests are run: "./generator/shelf"
	Run      string   // a regular expression of their names; empty = all
	Judges   bool     // the tests are those that need a judge, such as node for scripts
	Safety   bool     // it changes what keeps somebody from harm
	Line     int      // of the table
}

// Room is the package that is changed, "generator/shelf".
func (m Mutant) Room() string { return path.Dir(m.File) }

// Read reads the table of the tree below root.
func Read(root string) ([]Mutant, error) {
	text, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(File)))
	if err != nil {
		return nil, err
	}
	return Parse(string(text))
}

// Parse reads a table. A record begins with "mutant" and its name, and ends with
// "end"; between them are a key and its value on each line, then the lines
// behind "from" and those behind "to". Between records lines are empty or begin
// with #.
func Parse(text string) ([]Mutant, error) {
	var all []Mutant
	names := map[string]bool{}
	r := reader{lines: strings.Split(text, "\n")}
	for {
		m, more, err := r.record()
		if err != nil {
			return nil, fmt.Errorf("%s:%d: %w", File, r.at, err)
		}
		if !more {
			return all, nil
		}
		if names[m.Name] {
			return nil, fmt.Errorf("%s:%d: there is a second mutant %q", File, m.Line, m.Name)
		}
		names[m.Name] = true
		all = append(all, m)
	}
}

// reader is a table being read.
type reader struct {
	lines []string
	at    int // how many were read
}

// next returns the next line; false behind the last.
func (r *reader) next() (string, bool) {
	if r.at == len(r.lines) {
		return "", false
	}
	r.at++
	return r.lines[r.at-1], true
}

// record reads the next record; false where there is none.
func (r *reader) record() (m Mutant, more bool, err error) {
	for {
		line, more := r.next()
		if !more {
			return m, false, nil
		}
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, begins := strings.CutPrefix(line, "mutant ")
		if !begins {
			return m, false, fmt.Errorf("a record begins with mutant and a name, not with %q", line)
		}
		m.Name, m.Line = name, r.at
		return m, true, r.fields(&m)
	}
}

// fields reads a record from its second line to its end.
func (r *reader) fields(m *Mutant) error {
	for {
		line, more := r.next()
		if !more {
			return fmt.Errorf("the record of %q does not end", m.Name)
		}
		key, value, _ := strings.Cut(line, " ")
		switch key {
		case "safety":
			m.Safety = true
		case "judges":
			m.Judges = true
		case "file":
			m.File = value
		case "test":
			m.Packages = strings.Fields(value)
		case "run":
			m.Run = value
		case "from":
			m.From, m.To = r.upTo("to"), r.upTo("end")
			return m.complete()
		default:
			return fmt.Errorf("%q is no key of a record", key)
		}
	}
}

// upTo returns the lines before the next that is nothing but a word.
func (r *reader) upTo(word string) string {
	var lines []string
	for line, more := r.next(); more && line != word; line, more = r.next() {
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

// complete reports what a record lacks.
func (m *Mutant) complete() error {
	switch {
	case m.File == "" || len(m.Packages) == 0 || m.From == "":
		return fmt.Errorf("the record of %q lacks its file, its tests or what it changes", m.Name)
	case m.From == m.To:
		return fmt.Errorf("the record of %q changes nothing", m.Name)
	}
	return nil
}

// Changed returns the bytes of the file as the change leaves them. What is
// changed must stand there once.
func (m Mutant) Changed(root string) (before, after []byte, err error) {
	before, err = os.ReadFile(filepath.Join(root, filepath.FromSlash(m.File)))
	if err != nil {
		return nil, nil, fmt.Errorf("%s is stale: %w", m.Name, err)
	}
	if n := bytes.Count(before, []byte(m.From)); n != 1 {
		return nil, nil, fmt.Errorf("%s is stale: what it changes stands %d times in %s, and not once (%s:%d)", m.Name, n, m.File, File, m.Line)
	}
	return before, bytes.Replace(before, []byte(m.From), []byte(m.To), 1), nil
}

// Compare orders mutants by room and name.
func Compare(a, b Mutant) int {
	return cmp.Or(cmp.Compare(a.Room(), b.Room()), cmp.Compare(a.Name, b.Name))
}
