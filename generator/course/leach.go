package course

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// Leach is a laboratory's report on what came out of pots of one combination of clay,
// colour, clear and fire: the only thing that allows food on them.
type Leach struct {
	Number     string // of the report, "14"
	Laboratory string
	Date       string // of the report, ISO 8601
	Method     string // the published standard, "ISO 6486-1:2019"
	Ware       string // one of wares
	Lip        bool   // the outside below the rim was tested too: no test of a filled pot is one of it
	Recipe     string // id of a recipe; empty
	Version    int    // of the recipe; 0 where it has none
	Percent    float64
	Colour     string // id of the material that a ready-mixed colour came from; empty
	Batch      string // of the recipe or the colour
	Clear      string // id of the material over it; NoClear where it is bare
	ClearBatch string
	Body       string // id of a clay body of course.yaml
	Cone       string
	Place      string // in the kiln; may be empty
	Atmosphere string // oxidation or reduction; may be empty
	Found      []Leached
	Passed     bool   // as the laboratory judged it
	Until      string // the last day on which the studio rests on it, ISO 8601
	Ends       string // what ends it before that day, in words
	Invented   bool   // made up, to be read in class: it answers nothing
	Spots      Spots
}

// Leached is how much of a metal came out.
type Leached struct {
	Metal  string
	Below  bool    // nothing was found; Amount is the least that the laboratory finds
	Amount float64 // in Unit
	Unit   string  // of leachUnits
}

// wares are the shapes by which laws set their limits: a plate is measured by its
// surface in some, and a jug has a stricter limit than a bowl in others.
var wares = []string{"flatware", "cup", "small-hollowware", "large-hollowware", "jug", "cooking-ware", "storage"}

// leachUnits are the units of what came out, as written and as printed.
var leachUnits = map[string]string{
	"mg/L": "mg/L", "µg/L": "µg/L", "ug/L": "µg/L", "µg/mL": "µg/mL", "ug/mL": "µg/mL",
	"mg/dm²": "mg/dm²", "mg/dm2": "mg/dm²", "µg/dm²": "µg/dm²", "ug/dm2": "µg/dm²",
}

// The columns of leach.csv: those that every report needs, and the others.
var (
	leachNeeds  = []string{"report", "laboratory", "date", "method", "ware", "clear", "body", "cone", "lead", "cadmium", "verdict", "valid-until", "ends"}
	leachOthers = []string{"lip", "recipe", "version", "percent", "colour", "batch", "clear-batch", "place", "atmosphere", "others", "invented"}
)

// leach reads the reports of leach tests. A course may do without.
func (l *loader) leach() {
	numbers := unique{}
	for _, row := range l.rows(leachFile, leachNeeds, leachOthers) {
		if r, number := l.leachReport(row); numbers.addWord(number, r.Number) {
			l.course.Leach = append(l.course.Leach, r)
		}
	}
}

var (
	// reportNumber is the form of a report's number.
	reportNumber = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9./-]{0,19}$`)
	// leachMethod is how the published standards of leach tests are called.
	leachMethod = regexp.MustCompile(`^(ISO 6486-1|EN 1388-1|ASTM C738|84/500/EEC)([:, -].{0,20})?$`)
	// leachFigure is a figure: "<0.05 mg/L".
	leachFigure = regexp.MustCompile(`^(<?) ?([0-9]+(?:\.[0-9]+)?) ?(.*)$`)
	// leachOther is one of further metals: "cobalt 0.12 mg/L".
	leachOther = regexp.MustCompile(`^([a-z]+(?: [a-z]+)*) (.+)$`)
)

// leachReport reads one row.
func (l *loader) leachReport(f source.Fields) (r *Leach, number source.Value) {
	number = f.Need("report", "report: 14")
	r = &Leach{
		Number:     matching(number, reportNumber, "the number of a report", "Write at most twenty letters, digits, stops, strokes and hyphens, such as 14."),
		Laboratory: f.Need("laboratory", "laboratory: Name of the laboratory").Text(),
		Date:       date(f.Need("date", "date: 2026-10-12")),
		Method:     matching(f.Need("method", "method: ISO 6486-1:2019"), leachMethod, "a published leach test", "Write ISO 6486-1, EN 1388-1, ASTM C738 or 84/500/EEC, with its year if the report names one. No test at home stands in for it."),
		Ware:       f.Need("ware", "ware: cup").Choice(wares...),
		Lip:        f.Get("lip").Choice("yes", "no") == "yes",
		Recipe:     f.Get("recipe").Text(),
		Version:    whole(f.Get("version"), 1, 10_000, "the number of the recipe's version"),
		Percent:    f.Get("percent").Number(0.001, 1000, "the colour over the base in percent"),
		Colour:     f.Get("colour").Text(),
		Batch:      f.Get("batch").Text(),
		Clear:      f.Need("clear", "clear: none").Text(),
		ClearBatch: f.Get("clear-batch").Text(),
		Body:       l.bodyNamed(f.Need("body", "body: white-stoneware")),
		Cone:       cone(f.Need("cone", "cone: 6")),
		Place:      f.Get("place").Text(),
		Atmosphere: f.Get("atmosphere").Choice("oxidation", "reduction"),
		Passed:     f.Need("verdict", "verdict: passed").Choice("passed", "failed") == "passed",
		Until:      date(f.Need("valid-until", "valid-until: 2027-10-12")),
		Ends:       f.Need("ends", "ends: until a batch changes").Text(),
		Invented:   f.Get("invented").Choice("yes", "no") == "yes",
		Spots:      f.Spots(),
	}
	if r.Until != "" && r.Until < r.Date {
		f.Get("valid-until").Report(finding.ValueForm, fmt.Sprintf("report %s ends on %s, before its own date, %s", r.Number, r.Until, r.Date), "Look at the two dates again.")
	}
	l.leachColour(f, r)
	l.leachClear(f, r)
	leachFigures(f, r)
	return r, number
}

// leachColour checks what the colour of a report is: a recipe in a version and a
// strength that there is, a tub, or none under a clear alone.
func (l *loader) leachColour(f source.Fields, r *Leach) {
	if r.Recipe != "" && r.Colour != "" {
		f.Get("colour").Report(finding.ValueForm, "a report is of a recipe or of a ready-mixed colour, and this names both", "Empty one of the two cells.")
	}
	if r.Colour != "" {
		if _, there := l.course.FindMaterial(r.Colour); !there {
			l.unknownTub(f.Get("colour"))
		}
	}
	if r.Recipe == "" {
		for _, key := range []string{"version", "percent"} {
			if v := f.Get(key); !v.Absent() {
				v.Report(finding.ValueForm, fmt.Sprintf("`%s` is of a recipe, and this report names none", key), "Name the recipe, or empty this cell.")
			}
		}
	} else if recipe, there := l.recipeNamed(f.Get("recipe"), "Write the recipe in the folder recipes, or empty this cell."); !there {
		r.Recipe = ""
	} else {
		leachRecipe(f, r, recipe, l.course)
	}
	if r.Recipe != "" || r.Colour != "" {
		f.Need("batch", "batch: 2026-09")
	}
}

// recipeNamed finds a recipe, and reports one that is not there; do is what to write
// while there are no recipes.
func (l *loader) recipeNamed(v source.Value, do string) (*Recipe, bool) {
	r, there := l.course.FindRecipe(v.Text())
	if there {
		return r, true
	}
	known := unique{}
	for _, r := range l.course.Recipes {
		known[r.ID] = v
	}
	if len(known) == 0 {
		v.Report(finding.UnknownName, "there are no recipes", do)
	}
	known.known(v, "recipe")
	return nil, false
}

// leachRecipe checks the version and the strength of a report's recipe.
func leachRecipe(f source.Fields, r *Leach, recipe *Recipe, c *Course) {
	var versions []string
	for _, v := range recipe.Versions {
		versions = append(versions, strconv.Itoa(v.Number))
	}
	if len(versions) > 0 {
		f.Need("version", "version: "+versions[0])
	}
	if r.Version > 0 && !slices.Contains(versions, strconv.Itoa(r.Version)) {
		f.Get("version").Report(finding.UnknownName, fmt.Sprintf("`%s` has no version %d", recipe.ID, r.Version), "Its versions are: "+strings.Join(versions, ", ")+".")
	}
	if own := c.Strength(recipe); own > 0 {
		f.Need("percent", "percent: "+strconv.FormatFloat(own, 'f', -1, 64))
	}
}

// leachClear checks the clear of a report.
func (l *loader) leachClear(f source.Fields, r *Leach) {
	if r.Clear == NoClear || r.Clear == "" {
		return
	}
	if _, there := l.course.FindMaterial(r.Clear); !there {
		l.unknownTub(f.Get("clear"))
	}
	f.Need("clear-batch", "clear-batch: 2026-08")
}

// leachFigures reads what came out: lead and cadmium, and whatever else was looked for.
func leachFigures(f source.Fields, r *Leach) {
	for _, metal := range limited {
		if v := f.Need(metal, metal+": <0.05 mg/L"); v.Text() != "" {
			r.leached(v, metal, v.Text())
		}
	}
	others := f.Get("others")
	for _, part := range strings.Split(others.Text(), ";") {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		m := leachOther.FindStringSubmatch(part)
		if m == nil {
			others.Report(finding.ValueForm, fmt.Sprintf("`%s` is not a metal with its figure", part), "Write the metal, its figure and its unit, and semicolons between them, such as: cobalt 0.12 mg/L; barium <0.01 mg/L.")
			continue
		}
		r.leached(others, m[1], m[2])
	}
}

// leached reads one figure with its unit.
func (r *Leach) leached(v source.Value, metal, text string) {
	m := leachFigure.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not a figure of %s", text, metal), "Write it as the report does, with its unit, such as 0.12 mg/L; below what the laboratory finds, <0.05 mg/L.")
		return
	}
	unit, known := leachUnits[m[3]]
	switch {
	case m[3] == "":
		v.Report(finding.ValueForm, fmt.Sprintf("the figure of %s, `%s`, has no unit", metal, text), "Write the report's own unit behind it: mg/L is by volume, mg/dm² by surface, and the two cannot be compared.")
		return
	case !known:
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` is no unit of what leaches out", m[3]), "Write one of: mg/L, µg/L, µg/mL, mg/dm², µg/dm².")
		return
	case strings.HasSuffix(unit, "dm²") && r.Ware != "" && r.Ware != "flatware":
		v.Report(finding.ValueForm, fmt.Sprintf("the figure of %s is by surface, and this ware is filled", metal), "Figures of what is filled are by volume, in mg/L. Look at the report again, or at the ware.")
		return
	}
	amount, _ := strconv.ParseFloat(m[2], 64) // digits and a point, by the form
	r.Found = append(r.Found, Leached{Metal: metal, Below: m[1] != "", Amount: amount, Unit: unit})
}
