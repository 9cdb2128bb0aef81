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
//	course.yaml      settings.go, language.go, bench.go
//	hazards.yaml     hazard.go
//	decoration.yaml  decorate.go, and for its parts state.go, medium.go, pair.go,
//	                 technique.go, cell.go, over.go, transition.go, exception.go,
//	                 wording.go; over the program's own table, base.go
//	glossary.yaml    glossary.go
//	materials/       material.go, over the program's own list
//	recipes/         recipe.go
//	tiles.csv        tile.go
//	leach.csv        leach.go
//	pictures/        picture.go, photo.go, drawing.go
//	faults.yaml      fault.go
//	home.md units/   units.go, and the opening block of each page in head.go
//	classes.yaml     session.go
//
// It returns as much of the course as it could make, never nil, and everything
// that is wrong with the folder, sorted. Where a finding is an error, what it
// speaks of is left out or empty: ids may then lead nowhere. Load reads files in
// parallel and answers the same every time.
func (r *Reader) Load(fsys fs.FS) (*Course, finding.List) {
	r.pages.Begin()
	r.photos.Begin()
	r.stock.Begin()
	l := &loader{fsys: fsys, reader: r, listed: map[string]listing{}, course: &Course{
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
	l.tables = l.digest(settingsFile, hazardsFile, tableFile)
	l.glossary()
	l.materials()
	l.recipes()
	l.pictures()
	l.faults()
	l.tiles()
	l.leach()
	l.pages(units, known)
	l.findTaught(known)
	l.sessions(known)
	l.strays()
	for _, s := range l.open {
		l.found = append(l.found, s.Found...)
	}
	l.found.Sort()
	return l.course, l.found
}

// topLevel is what stands in a content folder.
var topLevel = []string{settingsFile, homeFile, styleFile, hazardsFile, tableFile, glossaryFile, faultsFile, unitsFolder, picturesFolder, materialsFolder, recipesFolder, tilesFile, leachFile, classesFile}

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
