package course

import (
	"io/fs"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// Load reads the course in a content folder:
//
//	course.yaml      settings.go, language.go
//	hazards.yaml     hazard.go
//	decoration.yaml  table.go, and for its parts state.go, medium.go, pair.go,
//	                 technique.go, cell.go, over.go, transition.go, exception.go;
//	                 over the program's own table, base.go
//	glossary.yaml    glossary.go
//	pictures/        picture.go, drawing.go
//	home.md units/   units.go, and the opening block of each page in head.go
//
// It returns as much of the course as it could make, never nil, and everything
// that is wrong with the folder, sorted. Where a finding is an error, what it
// speaks of is left out or empty: ids may then lead nowhere. Load reads files in
// parallel and answers the same every time.
func Load(fsys fs.FS) (*Course, finding.List) {
	l := &loader{fsys: fsys, course: &Course{
		Language:   "en",
		Decimal:    '.',
		Measures:   "metric",
		Decoration: &Decoration{},
		Pictures:   map[string]*Picture{},
	}}
	if !source.Exists(fsys, settingsFile) {
		l.noSettings()
		return l.course, l.found
	}
	units, known := l.settings()
	l.hazards()
	l.untaught()
	l.decoration(known)
	l.glossary()
	l.pictures()
	l.pages(units, known)
	l.findTaught(known)
	l.strays()
	for _, s := range l.open {
		l.found = append(l.found, s.Found...)
	}
	l.found.Sort()
	return l.course, l.found
}

// Limits of what is read, far above what a handbook needs, so that a file put
// there by mistake costs neither time nor memory.
const (
	textLimit    = 2 << 20
	pictureLimit = 5 << 20
	pagesLimit   = 32 << 20 // of all pages together: three thousand lessons of the usual length
)

// loader is a course being read.
type loader struct {
	fsys   fs.FS
	course *Course
	found  finding.List
	open   []*source.Text // files read, whose findings are gathered at the end

	pageBytes   int64 // of the pages read so far
	hazardIDs   unique
	hazardsRead bool           // hazards.yaml could be read, or is not there
	taught      []source.Value // the lessons that hazards name
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

// topLevel is what stands in a content folder.
var topLevel = []string{settingsFile, homeFile, styleFile, hazardsFile, tableFile, glossaryFile, unitsFolder, picturesFolder}

// strays warns of files in the content folder that nothing reads. Names that
// start with a dot are somebody else's.
func (l *loader) strays() {
	entries, err := fs.ReadDir(l.fsys, ".")
	if err != nil {
		return // course.yaml could be read; nothing can be said of the rest
	}
	for _, e := range entries {
		if name := e.Name(); !strings.HasPrefix(name, ".") && !slices.Contains(topLevel, name) {
			l.stray(name, source.Meant(name, topLevel)+"Rename it, or move it out of the content folder. Read are: "+strings.Join(topLevel, ", ")+".")
		}
	}
}

func (l *loader) stray(path, do string) {
	l.report(path, finding.StrayFile, "nothing in the handbook reads this", do)
}

// unreadable reports a folder that is there and cannot be read.
func (l *loader) unreadable(folder string, err error) {
	if !source.Exists(l.fsys, folder) {
		return
	}
	text, do := source.Fault(l.fsys, folder, "folder", err)
	l.report(folder, finding.Unreadable, text, do)
}

// report adds a finding about a file as a whole.
func (l *loader) report(path string, rule *finding.Rule, text, do string) {
	l.found = append(l.found, finding.Finding{File: path, Line: 1, Column: 1, Rule: rule, Text: text, Do: do})
}
