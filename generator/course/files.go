package course

import (
	"slices"
	"strings"
)

// What stands in a content folder.
const (
	settingsFile    = "course.yaml"
	homeFile        = "home.md"
	styleFile       = "style.md"
	hazardsFile     = "hazards.yaml"
	tableFile       = "decoration.yaml"
	glossaryFile    = "glossary.yaml"
	faultsFile      = "faults.yaml"
	unitsFolder     = "units"
	unitFile        = "unit.md" // in the folder of each unit
	picturesFolder  = "pictures"
	materialsFolder = "materials"
	recipesFolder   = "recipes"
	tilesFile       = "tiles.csv"
	classesFile     = "classes.yaml"
	leachFile       = "leach.csv"
)

// reserved are the folders of the published handbook that no unit may have.
var reserved = []string{"calculators", "states", "media", "cards", "book", "assets", "pictures", "materials", "recipes", "labels", "tiles", "classes", "stock", "paper", "leach"}

// Reserved reports whether a unit may not have a name, since a folder of the
// published handbook has it.
func Reserved(name string) bool { return slices.Contains(reserved, strings.ToLower(name)) }

// Limits of what is read, far above what a handbook needs, so that a file put
// there by mistake costs neither time nor memory.
const (
	textLimit    = 2 << 20
	pictureLimit = 30 << 20  // a phone's photo of 50 million points, and then some
	outlineLimit = 2 << 20   // of a drawing that stands beside its pages
	drawingLimit = 128 << 10 // of one drawing, which stands in its page as often as it is shown
	pagesLimit   = 32 << 20  // of all pages together: three thousand lessons of the usual length
)

func unitAddress(unit string) string { return unit + "/index.html" }

// lessonAddress is where the page of a unit with this content path is
// published.
func lessonAddress(file string) string {
	address, ok := strings.CutPrefix(file, unitsFolder+"/")
	if !ok {
		return ""
	}
	if unit, opens := strings.CutSuffix(address, "/"+unitFile); opens {
		return unitAddress(unit)
	}
	return strings.TrimSuffix(address, ".md") + ".html"
}
