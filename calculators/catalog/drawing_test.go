package catalog

import (
	"encoding/xml"
	"math"
	"strconv"
	"strings"
	"testing"

	"slipbook/calculators/sketch"

	"slipbook/calculators/form"
)

// shape is one element of a drawing, with what stands in it.
type shape struct {
	XMLName xml.Name
	Class   string  `xml:"class,attr"`
	X       float64 `xml:"x,attr"`
	Y       float64 `xml:"y,attr"`
	Width   float64 `xml:"width,attr"`
	Height  float64 `xml:"height,attr"`
	CX      float64 `xml:"cx,attr"`
	CY      float64 `xml:"cy,attr"`
	Path    string  `xml:"d,attr"`
	Size    float64 `xml:"font-size,attr"`
	Anchor  string  `xml:"text-anchor,attr"`
	Words   string  `xml:",chardata"`
}

// drawn solves a request and returns the shapes of its drawing, by element and
// class: "rect.clay".
func drawn(t *testing.T, request string) (*Answer, map[string][]shape) {
	t.Helper()
	name, given, err := form.ReadRequest(request)
	if err != nil {
		t.Fatal(err)
	}
	a := Solve(name, given, british())
	if len(a.Errors) > 0 {
		t.Fatalf("%s: %v", request, a.Errors)
	}
	var svg struct {
		Shapes []shape `xml:",any"`
	}
	if err := xml.Unmarshal([]byte(a.Drawing), &svg); err != nil {
		t.Fatal(err)
	}
	shapes := map[string][]shape{}
	for _, s := range svg.Shapes {
		kind := s.XMLName.Local + "." + s.Class
		shapes[kind] = append(shapes[kind], s)
	}
	return a, shapes
}

func valueOf(a *Answer, name string) float64 {
	for _, r := range a.Outputs {
		if r.Name == name {
			return r.Value
		}
	}
	return math.NaN()
}

// drawnNear allows what a drawing rounds: a tenth at each end of a length.
func drawnNear(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 0.2) {
		t.Errorf("%s: drawn %v, want %v", what, got, want)
	}
}

// TestJarsAreToScale wants the fullest jar full, and every other filling as
// high as it is large beside it.
func TestJarsAreToScale(t *testing.T) {
	const full = sketch.JarFloor - sketch.JarTop
	for _, test := range []struct {
		request  string
		fillings func(*Answer) map[string][]float64 // by class, of what is drawn full
	}{
		{"calculator=wash-dilute&volume=40&from=25&to=10", func(*Answer) map[string][]float64 {
			return map[string][]float64{"slip": {0.4, 0.4}, "water": {0.6}}
		}},
		{"calculator=wash-dilute&from=20&to=5&each=30&cups=12", func(*Answer) map[string][]float64 {
			return map[string][]float64{"slip": {0.25, 0.25}, "water": {0.75}}
		}},
		{"calculator=wash-dilute&from=20&to=5&each=30&steps=3", func(*Answer) map[string][]float64 {
			return map[string][]float64{"colour": {1, 0.5, 0.25}, "water": {0, 0.5, 0.75}}
		}},
		{"calculator=slip-density&mass=150&volume=100", func(a *Answer) map[string][]float64 {
			solids := valueOf(a, "solids-by-volume") / 100
			return map[string][]float64{"clay": {solids}, "water": {1 - solids}}
		}},
		{"calculator=slip-adjust&volume=2000&from=1.6&to=1.45", func(*Answer) map[string][]float64 {
			return map[string][]float64{"slip": {0.75, 0.75}, "water": {0.25}}
		}},
		{"calculator=slip-adjust&volume=1000&from=1.3&to=1.5", func(a *Answer) map[string][]float64 {
			share := 1000 / valueOf(a, "volume-after-powder")
			return map[string][]float64{"slip": {share, share}, "clay": {1 - share}}
		}},
		{"calculator=slip-colour&volume=1000&specific-gravity=1.5&stain=8", func(a *Answer) map[string][]float64 {
			all := valueOf(a, "new-volume")
			return map[string][]float64{"slip": {1000 / all, 1000 / all}, "colour": {valueOf(a, "stain-mass") / 4.5 / all}, "water": {valueOf(a, "water-to-hold") / all}}
		}},
		{"calculator=wash-mix&volume=100&stain-parts=3&water-parts=5", func(a *Answer) map[string][]float64 {
			return map[string][]float64{"colour": {valueOf(a, "stain-mass") / 450}, "glaze": {valueOf(a, "flux-mass") / 250}, "water": {valueOf(a, "water") / 100}}
		}},
		{"calculator=bucket-mix&first-gravity=1.6&first-volume=600&second-gravity=1.3&second-volume=400", func(*Answer) map[string][]float64 {
			return map[string][]float64{"clay": {0.6, 0.6}, "slip": {0.4, 0.4}}
		}},
		{"calculator=bucket-top-up&volume=1000&specific-gravity=1.3&to=1.45", func(*Answer) map[string][]float64 {
			return map[string][]float64{"slip": {2.0 / 3, 2.0 / 3}, "water": {0, 1.0 / 3}}
		}},
		{"calculator=bucket-top-up&volume=1000&specific-gravity=1.5&to=1.4&volume-wanted=2500&stain-now=8", func(a *Answer) map[string][]float64 {
			return map[string][]float64{"slip": {0.4, 0.4}, "clay": {valueOf(a, "base-to-add") / 2.6 / 2500}, "colour": {valueOf(a, "stain-to-add") / 4.5 / 2500}, "water": {valueOf(a, "water-to-add") / 2500}}
		}},
		{"calculator=wet-blend&points=3&first-gravity=1.5&second-gravity=1.4&each=90", func(*Answer) map[string][]float64 {
			return map[string][]float64{"clay": {1, 4.0 / 9, 0}, "colour": {0, 5.0 / 9, 1}}
		}},
		{"calculator=slip-batch&volume=1000&specific-gravity=1.5&stain=8", func(a *Answer) map[string][]float64 {
			return map[string][]float64{"clay": {valueOf(a, "dry-base") / 2600}, "colour": {valueOf(a, "stain-mass") / 4500}, "water": {valueOf(a, "water") / 1000}}
		}},
	} {
		a, shapes := drawn(t, test.request)
		for class, shares := range test.fillings(a) {
			got := shapes["rect."+class]
			if len(got) != len(shares) {
				t.Errorf("%s: %d fillings of %s, want %d", test.request, len(got), class, len(shares))
				continue
			}
			for i, share := range shares {
				drawnNear(t, test.request+": "+class, got[i].Height, full*share)
			}
		}
	}
}

// TestLengthsAreToScale wants bars, pots and lumps to be drawn as long as the
// answer says.
func TestLengthsAreToScale(t *testing.T) {
	_, bars := drawn(t, "calculator=shrinkage-test&plastic=100&dry=94&fired=85")
	for i, left := range []float64{1, 0.94, 0.85} {
		drawnNear(t, "a bar's length", bars["rect.clay"][i].Width, 440*left)
		drawnNear(t, "a bar's height", bars["rect.clay"][i].Height, 64*left)
	}
	for _, fit := range []struct {
		slip      string
		long, pot float64
	}{{"20", 440 * 0.8 / 0.88, 440}, {"4", 440, 440 * 0.88 / 0.96}} {
		_, shapes := drawn(t, "calculator=slip-fit&body=12&state=wet&slip="+fit.slip)
		drawnNear(t, "the slip", shapes["rect.slip"][0].Width, fit.long)
		drawnNear(t, "the pot", shapes["rect.clay"][0].Width, fit.pot)
	}
	a, lump := drawn(t, "calculator=clay-colour&clay=1000&clay-water=20&stain=10")
	all := 1000 + valueOf(a, "stain-mass")
	for class, grams := range map[string]float64{"clay": 800, "water": 200, "colour": 80} {
		drawnNear(t, "the lump's "+class, lump["rect."+class][0].Width, 560*grams/all)
	}
	_, bar := drawn(t, "calculator=recipe-scale&parts=50 30 20&additions=25&dry-mass=500")
	for i, share := range []float64{40, 24, 16, 20} {
		drawnNear(t, "a material", append(append(bar["rect.clay"][:1:1], bar["rect.slip"][0], bar["rect.clay"][1]), bar["rect.colour"]...)[i].Width, 5.8*share)
	}
	_, pots := drawn(t, "calculator=shrinkage-size&shrinkage=20&wet-size=100")
	now, fired := tall(t, pots["path.ghost"][0]), tall(t, pots["path.clay"][0])
	drawnNear(t, "the pot now", now, 250)
	drawnNear(t, "the fired pot", fired, 200)
	_, tiles := drawn(t, "calculator=tile-plan&points=3&low=2&high=8&base=100")
	for i, share := range []float64{0.25, 0.625, 1} {
		drawnNear(t, "a tile's filling", tiles["rect.colour"][i].Height, 180*share)
	}
}

// tall returns the height of an outline that begins at its rim and stands on the
// floor.
func tall(t *testing.T, path shape) float64 {
	t.Helper()
	_, after, _ := strings.Cut(path.Path, " ")
	rim, err := strconv.ParseFloat(after[:strings.IndexAny(after, "LQHVZ ")], 64)
	if err != nil {
		t.Fatal(err)
	}
	return sketch.JarFloor - rim
}

// TestTriangleIsNotMirrored wants each blend of a triaxial to stand nearest to
// the letter of the mix that it has most of.
func TestTriangleIsNotMirrored(t *testing.T) {
	a, shapes := drawn(t, "calculator=tile-plan&kind=triaxial&points=4&base=60")
	letters := map[string]shape{}
	for _, text := range shapes["text.words"] {
		if len(text.Words) == 1 && strings.Contains("ABC", text.Words) {
			letters[text.Words] = text
		}
	}
	if len(letters) != 3 {
		t.Fatalf("the corners are called %v", letters)
	}
	corner := 0
	for i, row := range a.Rows {
		dot := shapes["circle.clay"][i]
		for part, letter := range []string{"A", "B", "C"} {
			if row[1+part].Value != 100 {
				continue
			}
			corner++
			near := math.Hypot(letters[letter].X-dot.CX, letters[letter].Y-dot.CY)
			for other, text := range letters {
				if other != letter && math.Hypot(text.X-dot.CX, text.Y-dot.CY) < near {
					t.Errorf("the blend of %s alone stands nearer to %s", letter, other)
				}
			}
		}
	}
	if corner != 3 {
		t.Errorf("%d corners", corner)
	}
}

// TestDrawingsKeepToTheirSheet wants all of a drawing within the sheet, and no
// words on other words.
func TestDrawingsKeepToTheirSheet(t *testing.T) {
	requests := []string{
		"calculator=wash-dilute&from=20&to=1&steps=8&volume=100", "calculator=wash-dilute&from=20&to=10&volume=100",
		"calculator=shrinkage-size&shrinkage=12&fired-size=4 1/2 in&state=leather-hard", "calculator=shrinkage-size&shrinkage=12&wet-size=14 15/16 in",
		"calculator=wash-dilute&from=20&to=10&volume=2 1/2 US cup", "calculator=wash-dilute&from=20&to=10&volume=0.001", "calculator=slip-adjust&volume=12 US gallon&from=1.5&to=1.4",
		"calculator=clay-colour&clay=25 lb&clay-water=20&stain=8", "calculator=wash-mix&volume=1 US cup", "calculator=slip-batch&volume=5 US gallon&specific-gravity=1.45",
		"calculator=recipe-scale&parts=9 9 9 9 9 9 9 9 9 9 5 5&additions=8 2 1&dry-mass=1 kg", "calculator=wet-blend&kind=triaxial&points=7&first-gravity=1.5&second-gravity=1.4&third-gravity=1.45&each=50",
		"calculator=wet-blend&points=30&first-gravity=1.5&second-gravity=1.4&each=50", "calculator=bucket-top-up&volume=3 US quart&specific-gravity=1.55&gravity-mixed=1.45&volume-wanted=2 US gallon",
		"calculator=tile-plan&kind=triaxial&points=7&base=60", "calculator=tile-plan&kind=triaxial&points=2&base=60", "calculator=tile-plan&points=12&low=0&high=10&base=100",
	}
	for _, c := range All() {
		if !c.NeedsTable {
			requests = append(requests, Request(c.Name, c.Example.Given))
		}
	}
	for _, request := range requests {
		_, shapes := drawn(t, request)
		at := map[[2]float64]string{}
		for kind, list := range shapes {
			for _, s := range list {
				if s.X < 0 || s.Y < 0 || s.X+s.Width > sketch.Width+0.1 || s.Y+s.Height > sketch.Height || s.CX > sketch.Width || s.CY > sketch.Height {
					t.Errorf("%s: %s lies outside: %+v", request, kind, s)
				}
				if kind != "text.words" {
					continue
				}
				if wide := 0.55 * s.Size * float64(len([]rune(s.Words))); s.Anchor == "" && s.X+wide > sketch.Width {
					t.Errorf("%s: %q runs off the sheet", request, s.Words)
				}
				for place, words := range at {
					if math.Abs(place[0]-s.X) < 20 && math.Abs(place[1]-s.Y) < 15 {
						t.Errorf("%s: %q stands on %q", request, s.Words, words)
					}
				}
				at[[2]float64{s.X, s.Y}] = s.Words
			}
		}
		apart(t, request, shapes["rect.ink"])
	}
}

// apart wants outlined boxes not to lie on one another.
func apart(t *testing.T, request string, boxes []shape) {
	t.Helper()
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			if a.X < b.X+b.Width-0.2 && b.X < a.X+a.Width-0.2 && a.Y < b.Y+b.Height-0.2 && b.Y < a.Y+a.Height-0.2 {
				t.Errorf("%s: a box at %v, %v lies on another at %v, %v", request, a.X, a.Y, b.X, b.Y)
			}
		}
	}
}

// TestTimesAreToScale wants the bars of a flow to be as long beside each other as
// the times.
func TestTimesAreToScale(t *testing.T) {
	_, shapes := drawn(t, "calculator=flow-log&slip-seconds=60&water-seconds=24&rested-seconds=80")
	for class, share := range map[string]float64{"water": 0.3, "slip": 0.75, "clay": 1} {
		drawnNear(t, class, shapes["rect."+class][0].Width, 380*share)
	}
}

// TestDampClayIsToScale wants the water of a lump to be as wide beside it as it is
// heavy, and a pot then and now as well.
func TestDampClayIsToScale(t *testing.T) {
	_, lump := drawn(t, "calculator=clay-water&damp=100&dry=75")
	drawnNear(t, "water", lump["rect.water"][0].Width, 560*0.25)
	drawnNear(t, "dry clay", lump["rect.clay"][0].Width, 560*0.75)
	_, pot := drawn(t, "calculator=clay-water&earlier=500&later=450")
	drawnNear(t, "then", pot["rect.clay"][0].Width, 400)
	drawnNear(t, "now", pot["rect.clay"][1].Width, 360)
}

// TestSoakedTileIsToScale wants what a tile drank to be as wide beside it as it is
// heavy.
func TestSoakedTileIsToScale(t *testing.T) {
	_, shapes := drawn(t, "calculator=absorption&dry=100&soaked=125")
	drawnNear(t, "clay", shapes["rect.clay"][0].Width, 560*0.8)
	drawnNear(t, "water", shapes["rect.water"][0].Width, 560*0.2)
}

// TestPotIsToScale wants a pot to be drawn as wide at its rim and its foot, and as
// high, as it was said to be.
func TestPotIsToScale(t *testing.T) {
	for _, pot := range [][3]float64{{80, 80, 100}, {160, 70, 60}, {60, 120, 80}} {
		top, foot, height := pot[0], pot[1], pot[2]
		_, shapes := drawn(t, "calculator=coverage&width="+number(top)+"&foot-width="+number(foot)+"&height="+number(height))
		path := strings.FieldsFunc(shapes["path.slip"][0].Path, func(r rune) bool { return strings.ContainsRune("MLHZ ", r) })
		at := make([]float64, len(path))
		for i, text := range path {
			var err error
			if at[i], err = strconv.ParseFloat(text, 64); err != nil {
				t.Fatal(err)
			}
		}
		scale := 240 / max(top, foot, height)
		drawnNear(t, "rim", at[5]-at[0], top*scale)
		drawnNear(t, "foot", at[4]-at[2], foot*scale)
		drawnNear(t, "height", at[3]-at[1], height*scale)
	}
}
