package register

import (
	"slices"

	"slipbook/generator/course"
)

// blankForm declares a sheet with rows to fill in by hand. Its words are the theme's; the
// cells of its example stand in one text, parted by "|".
type blankForm struct {
	id       string
	title    string // keys of words, as are the next three
	why      string
	example  string
	columns  []string // of the headings
	cautions []string // hazards of what is written down here; those that the course has
	aid      []string // what to do first, where somebody may be hurt
	rows     int      // to fill in; of a form that asks, how many lines each answer has

	wide   bool // it lies on its side
	asks   bool // it is about one case: what would be columns stands under each other
	health bool // it tells of somebody's health
}

// forms lists them.
var forms = []blankForm{
	{id: "test-book", title: "form-tests", why: "form-tests-why", example: "form-tests-example", columns: testColumns(), wide: true, rows: 14,
		cautions: []string{"splinter", "dry-powder"}},
	{id: "bucket-book", title: "form-buckets", why: "form-buckets-why", example: "form-buckets-example", wide: true, rows: 15,
		columns:  []string{"form-recipe", "form-version", "form-mixed", "form-number", "form-number-on", "form-water", "form-number-after", "form-by", "form-throw", "form-remark"},
		cautions: []string{"dust", "colour", "rinse-water"}},
	{id: "kiln-log", title: "form-kiln", why: "form-kiln-why", example: "form-kiln-example", wide: true, rows: 14,
		columns: []string{"form-date", "form-kiln-which", "form-firing", "form-loader", "form-vent", "form-alarm", "form-loose",
			"form-cone-top", "form-cone-middle", "form-cone-bottom", "form-peak", "form-hold", "form-opened"},
		cautions: []string{"kiln-fume", "hot-kiln", "splinter"}},
	{id: "waste-log", title: "form-waste", why: "form-waste-why", example: "form-waste-example", wide: true, rows: 14,
		columns:  []string{"form-date", "form-what", "form-which", "form-holds", "form-done", "form-amount", "form-went", "form-by", "form-next"},
		cautions: []string{"dust", "rinse-water", "wash-colour"}},
	{id: "training-list", title: "form-training", why: "form-training-why", example: "form-training-example", wide: true, health: true, rows: 13,
		columns:  []string{"form-name", "form-talked", "form-mask", "form-fitted", "form-fitted-by", "form-due", "form-weigh", "form-spray", "form-load", "form-taught", "form-signed"},
		cautions: []string{"dry-powder", "stain-powder", "mist", "kiln-fume", "hot-kiln"}},
	{id: "incident-report", title: "form-incident", why: "form-incident-why", example: "form-incident-example", asks: true, health: true, rows: 1,
		columns: []string{"form-when", "form-who", "form-happened", "form-in-hand", "form-hurt", "form-at-once", "form-sheet-read", "form-cause", "form-change", "form-told", "form-signed"},
		aid:     []string{"aid-call", "aid-bring"}},
}

// tileWords are the headings of the columns of tiles.csv in the test book.
var tileWords = map[string]string{
	"code": "form-code", "body": "form-body", "cone": "form-cone", "clear": "form-clear", "recipe": "form-recipe", "version": "form-version",
	"percent": "form-percent", "medium": "form-medium", "coats": "form-coats", "place": "form-place", "atmosphere": "form-atmosphere", "batch": "form-batch",
	"made": "form-made", "fired": "form-fired", "verdict": "form-verdict", "remark": "form-remark", "retest": "form-retest",
}

// onScreenOnly are the columns of tiles.csv that nobody writes by hand: photos, and
// the color of a drawing.
var onScreenOnly = []string{"before", "after", "colour"}

// testColumns are the columns of the test book: those of tiles.csv, in its order. One
// that has no words yet is its own key, which no theme has, so that it is noticed.
func testColumns() []string {
	var all []string
	for _, name := range course.TileColumns() {
		switch key := tileWords[name]; {
		case key != "":
			all = append(all, key)
		case !slices.Contains(onScreenOnly, name):
			all = append(all, name)
		}
	}
	return all
}
