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

// Tile is one test tile on the studio's wall.
type Tile struct {
	Code       string // as it is scratched into the tile, "R4"
	Recipe     string // id of a recipe; empty for what was not mixed here
	Version    int    // of the recipe; 0: not said
	Percent    string // of the colour, as written; may be empty
	Medium     string // id of a medium of the decoration table: the recipe's where the tile names none
	Body       string // id of a clay body of course.yaml
	Coats      int
	Cone       string
	Place      string // in the kiln, in the studio's own words; may be empty
	Clear      string // id of the material over it; NoClear where it is bare
	Atmosphere string // oxidation or reduction; may be empty
	Batch      string // of the colour; may be empty
	Made       string // ISO 8601, as are the next two
	Fired      string // empty: not yet
	Retest     string // when it is to be tried again; may be empty
	Before     string // content path of a photo before firing; may be empty
	After      string // likewise after
	Colour     string // of its drawing, where there is no photo: "#3a6ea5"; may be empty
	Verdict    string // good, usable or failed; empty: not judged yet
	Remark     string
	Spots      Spots
}

// The verdicts of tiles.
const (
	TileGood   = "good"
	TileUsable = "usable"
	TileFailed = "failed"
)

// Due reports whether a tile was to be tried again before a day of ISO 8601. On no
// day, "", none was.
func (t *Tile) Due(today string) bool { return t.Retest != "" && t.Retest < today }

// MadeOf reports whether a tile was made of a version of a recipe.
func (t *Tile) MadeOf(r *Recipe, v Version) bool { return t.Recipe == r.ID && t.Version == v.Number }

// CameOut reports whether a tile left the kiln as something to use.
func (t *Tile) CameOut() bool { return t.Verdict == TileGood || t.Verdict == TileUsable }

// TileOf returns the tile on which the newest version of a recipe was tested: it was
// made of that version, fired and judged. Of most versions there is none.
func (c *Course) TileOf(r *Recipe) (*Tile, bool) {
	newest := r.Newest()
	if newest == nil {
		return nil, false
	}
	t, there := c.FindTile(newest.Tile)
	return t, there && t.MadeOf(r, *newest) && t.Fired != "" && t.Verdict != ""
}

// FindTile finds a test tile by its code, capital letters set aside.
func (c *Course) FindTile(code string) (*Tile, bool) {
	i := slices.IndexFunc(c.Tiles, func(t *Tile) bool { return strings.EqualFold(t.Code, code) })
	if i < 0 {
		return nil, false
	}
	return c.Tiles[i], true
}

// The columns of tiles.csv: those that every tile needs, and the others.
var (
	tileNeeds  = []string{"code", "body", "cone", "clear"}
	tileOthers = []string{"recipe", "version", "percent", "medium", "coats", "place", "atmosphere", "batch", "made", "fired", "before", "after", "colour", "verdict", "remark", "retest"}
)

// TileColumns lists the columns of tiles.csv: those that every tile needs first.
func TileColumns() []string { return slices.Concat(tileNeeds, tileOthers) }

// tiles reads the test wall. A course may do without.
func (l *loader) tiles() {
	codes := unique{}
	for _, row := range l.rows(tilesFile, tileNeeds, tileOthers) {
		if t, code := l.tile(row); codes.addWord(code, t.Code) {
			l.course.Tiles = append(l.course.Tiles, t)
		}
	}
}

// rows reads a table of the content folder; of one that is not there, none.
func (l *loader) rows(file string, needs, others []string) []source.Fields {
	if !source.Exists(l.fsys, file) {
		return nil
	}
	s, ok := source.Read(l.fsys, file, textLimit)
	l.open = append(l.open, s)
	if !ok {
		return nil
	}
	s.CheckHidden()
	return s.CSV(needs, others...)
}

// tileCode is the form of a code: short enough to scratch into clay.
var tileCode = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9.-]{0,11}$`)

// tilePercent is the form of a strength: one number, whatever the course's language.
var tilePercent = regexp.MustCompile(`^(0|[1-9][0-9]{0,2})(\.[0-9]{1,3})?$`)

// tileColour is the form of the colour of a drawing.
var tileColour = regexp.MustCompile(`^#[0-9a-f]{6}$`)

// tile reads one row.
func (l *loader) tile(f source.Fields) (t *Tile, code source.Value) {
	code = f.Need("code", "code: R4")
	t = &Tile{
		Code:       matching(code, tileCode, "a code", "Write at most twelve letters, digits, stops and hyphens, such as R4."),
		Recipe:     f.Get("recipe").Text(),
		Version:    whole(f.Get("version"), 1, 10_000, "the number of the recipe's version"),
		Percent:    matching(f.Get("percent"), tilePercent, "a strength in percent", "Write one number with a point, such as 8 or 2.5, and no sign behind it."),
		Body:       l.bodyNamed(f.Need("body", "body: white-stoneware")),
		Coats:      whole(f.Get("coats"), 1, 12, "how many coats it has"),
		Cone:       cone(f.Need("cone", "cone: 6")),
		Place:      f.Get("place").Text(),
		Clear:      f.Need("clear", "clear: none").Text(),
		Atmosphere: f.Get("atmosphere").Choice("oxidation", "reduction"),
		Batch:      f.Get("batch").Text(),
		Made:       date(f.Get("made")),
		Fired:      date(f.Get("fired")),
		Retest:     date(f.Get("retest")),
		Before:     f.Get("before").Text(),
		After:      f.Get("after").Text(),
		Colour:     matching(f.Get("colour"), tileColour, "a colour", "Write red, green and blue as six hexadecimal digits after a #, such as #3a6ea5."),
		Verdict:    f.Get("verdict").Choice(TileGood, TileUsable, TileFailed),
		Remark:     f.Get("remark").Text(),
		Spots:      f.Spots(),
	}
	t.Medium = l.tileMedium(f, t)
	l.tilePictures(f)
	if t.Clear != NoClear && t.Clear != "" {
		if _, there := l.course.FindMaterial(t.Clear); !there {
			l.unknownTub(f.Get("clear"))
		}
	}
	return t, code
}

// tileMedium returns the medium of a tile: that of its recipe where it names none.
func (l *loader) tileMedium(f source.Fields, t *Tile) string {
	if t.Recipe == "" {
		return l.medium(f.Need("medium", "medium: underglaze"))
	}
	r, there := l.recipeNamed(f.Get("recipe"), "Write the recipe in the folder recipes, or the tile's `medium` instead.")
	if !there {
		t.Recipe = ""
		return l.medium(f.Get("medium"))
	}
	if medium := l.medium(f.Get("medium")); medium != "" {
		return medium
	}
	return r.Medium
}

// tilePictures checks that the photos of a tile are there. Of one that was read and
// is no picture the finding stands at its own file.
func (l *loader) tilePictures(f source.Fields) {
	for _, key := range []string{"before", "after"} {
		v := f.Get(key)
		if _, there := l.course.Pictures[v.Text()]; there || v.Absent() {
			continue
		}
		if !strings.HasPrefix(v.Text(), picturesFolder+"/") || !source.Exists(l.fsys, v.Text()) {
			v.Report(finding.PictureFile, fmt.Sprintf("there is no picture %s", v.Text()), "Write the path of a file of the pictures folder, such as pictures/r4-after.jpg.")
		}
	}
}

// unknownTub reports a clear that no entry of the register describes.
func (l *loader) unknownTub(v source.Value) {
	known := unique{}
	for _, m := range l.course.Materials {
		known[m.ID] = v
	}
	if len(known) == 0 {
		v.Report(finding.UnknownName, "there are no materials", "Write `none` for a bare tile, or the clear's entry in the folder materials.")
	}
	known.known(v, "material")
}

// bodyNamed reads the id of a clay body of course.yaml.
func (l *loader) bodyNamed(v source.Value) string {
	known := unique{}
	for _, b := range l.course.Bodies {
		known[b.ID] = v
	}
	return known.known(v, "clay body")
}

// matching returns a text of some form, and reports another.
func matching(v source.Value, form *regexp.Regexp, what, do string) string {
	text := v.Text()
	if text != "" && !form.MatchString(text) {
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not %s", text, what), do)
		return ""
	}
	return text
}

// Strength is how much colour a tile has, in percent of the base; 0 where it says none.
func (t *Tile) Strength() float64 {
	n, _ := strconv.ParseFloat(t.Percent, 64) // words are no strength
	return n
}

// whole reads a whole number.
func whole(v source.Value, low, high int, what string) int {
	n := v.Number(float64(low), float64(high), what)
	if n != float64(int(n)) {
		v.Report(finding.ValueForm, fmt.Sprintf("%s is %s, which is not a whole number", v.Called(), strconv.FormatFloat(n, 'g', -1, 64)), "Write "+what+" without a point.")
		return 0
	}
	return int(n)
}
