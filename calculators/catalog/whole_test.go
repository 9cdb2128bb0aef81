package catalog

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

// What an answer is, whatever its calculator: its figure with its doubt, in the
// reader's measures, judged, with its next step.

// texts solves a request, given as in an address, and returns the texts of its
// outputs with plain spaces; a refused one has none.
func texts(t *testing.T, request string, s Settings) map[string]string {
	t.Helper()
	name, given, err := form.ReadRequest(request)
	if err != nil {
		t.Fatal(err)
	}
	answer := Solve(name, given, s)
	for _, e := range answer.Errors {
		t.Errorf("%s: %s: %s", request, e.Input, e.Text)
	}
	said := map[string]string{"headline": plainly(answer.Headline), "judged": plainly(strings.Join(answer.Judged, " | "))}
	for _, r := range answer.Outputs {
		said[r.Name] = plainly(r.Text)
	}
	return said
}

func plainly(text string) string {
	return strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(text)
}

// bench1 is a studio with two scales and working numbers of its own.
func bench1() Settings {
	s := british()
	s.Scales = []Scale{{To: 500, Step: 0.1}, {To: 5000, Step: 5}}
	s.Working = []Working{{Of: form.OfSlip, For: "to brush or pour", Low: 1.45, High: 1.45}}
	return s
}

func in(measures string) Settings {
	s := british()
	s.Style.Measures = measures
	return s
}

func TestAnswersComeInTheReadersMeasures(t *testing.T) {
	for _, c := range []struct {
		request, output, want string
		in                    Settings
	}{
		{"calculator=slip-adjust&volume=1 US gallon&from=1.52&to=1.45", "water-to-add", "2 1/2 US cups (590 mL)", british()},
		{"calculator=slip-adjust&volume=1&volume.unit=US gallon&from=1.52&to=1.45", "water-to-add", "2 1/2 US cups (590 mL)", british()},
		{"calculator=slip-adjust&volume=1 imperial gallon&from=1.6&to=1.45", "new-volume", "10 5/8 imperial pints (6.06 L)", british()},
		{"calculator=slip-adjust&volume=2 L&from=1.60&to=1.45", "water-to-add", "670 mL", in("us")}, // typed in litres
		{"calculator=slip-adjust&slip-mass=7 kg&from=1.60&to=1.45", "water-to-add", "6 1/8 US cups (1460 mL)", in("us")},
		{"calculator=slip-adjust&slip-mass=10 lb&from=1.40&to=1.45", "powder-to-add", "366.3 g (12.9 oz)", british()},
		{"calculator=slip-batch&volume=1 US gallon&specific-gravity=1.45", "water", "2721 g (2 7/8 US quarts)", british()},
		{"calculator=slip-batch&volume=1 US gallon&specific-gravity=1.45", "dry-base", "2768 g", british()},
		{"calculator=shrinkage-size&shrinkage=12&fired-size=4 in", "wet-size", "4 9/16 in (115.5 mm)", british()},
		{"calculator=shrinkage-size&shrinkage=12&fired-size=9 cm", "wet-size", "10.23 cm", in("us")},
		{"calculator=shrinkage-size&shrinkage=12&capacity-fired=2 US cups", "capacity-wet", "23 1/2 US fl oz (694.3 mL)", british()},
	} {
		if got := texts(t, c.request, c.in)[c.output]; got != c.want {
			t.Errorf("%s: %s is %q, want %q", c.request, c.output, got, c.want)
		}
	}
}

// TestValuesStayCanonical wants the same bits behind a text in any measure.
func TestValuesStayCanonical(t *testing.T) {
	given := []Setting{{Name: "volume", Text: "1 US gallon"}, {Name: "from", Text: "1.6"}, {Name: "to", Text: "1.45"}}
	other := []Setting{{Name: "volume", Text: "3785.411784"}, {Name: "from", Text: "1.6"}, {Name: "to", Text: "1.45"}}
	a, b := Solve("slip-adjust", given, in("us")), Solve("slip-adjust", other, bench1())
	for i := range a.Outputs {
		if a.Outputs[i].Value != b.Outputs[i].Value || a.Outputs[i].Unit != "mL" || a.Outputs[i].Text == b.Outputs[i].Text {
			t.Errorf("%+v and %+v", a.Outputs[i], b.Outputs[i])
		}
	}
}

func TestMassesAreRoundedToTheScale(t *testing.T) {
	two, one := bench1(), bench1()
	one.Scales = []Scale{{To: 200, Step: 0.5}}
	turned := bench1()
	turned.Scales = []Scale{{To: 5000, Step: 5}, {To: 500, Step: 0.1}}
	for _, c := range []struct {
		mass float64
		in   Settings
		want float64
	}{
		{53.128, two, 0.1}, {500, two, 0.1}, {500.1, two, 5}, {4000, two, 5}, {20000, two, 5},
		{53.128, turned, 0.1}, {500.1, turned, 5}, {20000, turned, 5},
		{100, one, 0.5}, {1000, one, 0.5}, {53, british(), 0.1}, {2768, british(), 1}, {20000, british(), 5},
	} {
		if got := c.in.Step(c.mass); got != c.want {
			t.Errorf("%v g in %v: a step of %v, want %v", c.mass, c.in.Scales, got, c.want)
		}
	}
	said := texts(t, "calculator=slip-batch&volume=5 L&specific-gravity=1.45&stain=2", two)
	for output, want := range map[string]string{"dry-base": "3565 g", "stain-mass": "71.3 g", "water": "3615 g"} {
		if said[output] != want {
			t.Errorf("%s is %q, want %q", output, said[output], want)
		}
	}
}

// TestABatchSaysItsWaterOnce wants the water of a slip to be one number, in the
// headline, among the outputs and in the loads.
func TestABatchSaysItsWaterOnce(t *testing.T) {
	for _, request := range []string{
		"calculator=slip-batch&volume=168 mL&specific-gravity=1.45", "calculator=slip-batch&volume=200 mL&specific-gravity=1.40&stain=8",
		"calculator=slip-batch&volume=3 L&specific-gravity=1.5", "calculator=slip-batch&volume=1 US quart&specific-gravity=1.45",
	} {
		a := solveText(t, request, british())
		water, _, _ := strings.Cut(outputText(a, "water-to-add"), "\u00a0")
		if row := a.Rows[0]; row[1].Text != "Water" || row[2].Text != water || !strings.Contains(a.Headline, " into "+water+"\u00a0g") {
			t.Errorf("%s: %s g among the outputs, %v in the rows: %s", request, water, row, a.Headline)
		}
	}
}

// TestInputsAreSaidAsTyped wants what an answer was reckoned from in the units in
// which the reader gave it.
func TestInputsAreSaidAsTyped(t *testing.T) {
	for _, c := range []struct{ request, input, want string }{
		{"calculator=slip-density&mass=7 oz&volume=1/2 US cup", "mass", "7 oz"},
		{"calculator=slip-density&mass=7 oz&volume=1/2 US cup", "volume", "0.5 US cup"},
		{"calculator=slip-density&mass=150&volume=100", "mass", "150 g"},
		{"calculator=slip-density&mass=150&volume=100", "solids-density", "2.6 g/mL"},
		{"calculator=slip-adjust&volume=2 L&from=1.60&to=1450 g/L", "to", "1450 g/L"},
		{"calculator=slip-adjust&volume=2 L&from=1.60&to=1.45", "from", "1.6"},
		{"calculator=shrinkage-test&plastic=100 100 mm&dry=94 93.8&fired=88 87.9", "dry", "94; 93.8 mm"},
		{"calculator=shrinkage-test&plastic=10 cm; 100 mm&dry=94 93.8&fired=88 87.9", "plastic", "10 cm; 100 mm"},
		{"calculator=shrinkage-size&shrinkage=12&state=bisque&wet-size=4 in", "state", "bisque"},
	} {
		a := solveText(t, c.request, british())
		i := slices.IndexFunc(a.Inputs, func(g Given) bool { return g.Name == c.input })
		if i < 0 {
			t.Errorf("%s: %v", c.request, a.Errors)
		} else if got := plainly(a.Inputs[i].Said(british().Style)); got != c.want {
			t.Errorf("%s: %s is said as %q, want %q", c.request, c.input, got, c.want)
		}
	}
}

// outputText is an output as it is printed.
func outputText(a *Answer, name string) string {
	for _, o := range a.Outputs {
		if o.Name == name {
			return o.Text
		}
	}
	return ""
}

// TestUsualWashesAreRight wants the weakest and the strongest wash that are usual
// to be judged so, and what is beyond them not.
func TestUsualWashesAreRight(t *testing.T) {
	for parts, verdict := range map[string]string{"22": "weak", "20": "right", "10": "right", "5": "right", "4": "strong"} {
		said := texts(t, "calculator=wash-mix&volume=100&stain-parts=1&flux-parts=1&water-parts="+parts, british())["judged"]
		if !strings.Contains(said, ": "+verdict+" ") {
			t.Errorf("1 + 1 in %s of water: %s", parts, said)
		}
	}
}

// TestGravitiesThatNoSlipHas wants a jar to be doubted that is heavier than any
// slip which moves, or too light for the scale to tell anything.
func TestGravitiesThatNoSlipHas(t *testing.T) {
	for mass, begins := range map[string]string{
		"191": "1.91: thicker than any slip that moves, which ends near 1.9. Check the numbers.",
		"190": "1.90: thick (",
		"115": "1.15: thin (",
		"114": "1.14: too thin to be judged by weighing a jar, which begins near 1.15.",
	} {
		said := texts(t, "calculator=slip-density&volume=100&mass="+mass, british())["judged"]
		if !strings.HasPrefix(said, begins) {
			t.Errorf("100 mL of %s g: %s", mass, said)
		}
	}
}

// TestSettingsThatMeanNothing wants settings to be refused by which nothing could
// be judged or weighed.
func TestSettingsThatMeanNothing(t *testing.T) {
	for _, encoded := range []string{
		"working=slip+1.6+1.4+to+trail", "working=slip+1.4+1.6", "working=slip+1.4", "scale=0+0.1", "scale=500+0", "scale=500+0.1+1",
		"measures=old", "decimal=%3B", "hazard=dry-powder", "hazard=+words", "colour=red",
	} {
		if s, err := Configure([]byte(encoded)); err == nil {
			t.Errorf("%s is taken as %+v", encoded, s)
		}
	}
}

// TestPageCarriesTheHazardsOfItsAnswers wants the settings of a calculator's page
// to hold the course's words for whatever its answers may warn of, and no others.
func TestPageCarriesTheHazardsOfItsAnswers(t *testing.T) {
	s := british()
	for _, id := range HazardIDs() {
		s.Hazards = append(s.Hazards, Hazard{ID: id, Words: "The course says this of " + id + "."})
	}
	warned := 0
	for _, c := range All() {
		sums := s.Sums(c)
		for _, id := range HazardIDs() {
			want := slices.Contains(c.Hazards, id) || slices.Contains(c.MayHurt, id)
			if got := strings.HasPrefix(sums.HazardWords(id), "The course says"); got != want {
				t.Errorf("the page of %s has the course's words for %s: %v, want %v", c.Name, id, got, want)
			}
		}
		for _, caution := range Solve(c.Name, c.Example.Given, sums).Cautions {
			warned++
			if !strings.HasPrefix(caution, "The course says") && !slices.Contains(c.Cautions, caution) {
				t.Errorf("%s warns in words that are not the course's: %s", c.Name, caution)
			}
		}
	}
	if warned < 5 {
		t.Errorf("only %d cautions", warned)
	}
}

// TestNext wants every next step of every worked example to name a calculator
// and inputs that exist, and what is carried to be taken there as it was meant.
func TestNext(t *testing.T) {
	steps := 0
	for _, c := range All() {
		a := Solve(c.Name, c.Example.Given, studio())
		for _, next := range a.Next {
			steps++
			name, given, err := form.ReadRequest(next.Request)
			to := Find(name)
			if err != nil || to == nil || next.Words == "" {
				t.Fatalf("%s leads to %q, %v", c.Name, next.Request, err)
			}
			for _, g := range given {
				of, isUnit := strings.CutSuffix(g.Name, ".unit")
				in := to.Input(of)
				if in == nil || isUnit && !slices.ContainsFunc(quantity.Units(in.Kind), func(u quantity.Unit) bool { return u.ID == g.Text }) {
					t.Errorf("%s leads to %s with %s=%q", c.Name, name, g.Name, g.Text)
				}
			}
			for _, e := range Solve(name, given, studio()).Errors {
				if !strings.HasPrefix(e.Text, "This is still missing") && !strings.HasPrefix(e.Text, "Give one of these") {
					t.Errorf("%s leads to %q, where %s is refused: %s", c.Name, next.Request, e.Input, e.Text)
				}
			}
		}
	}
	if steps < 2 {
		t.Errorf("only %d next steps", steps)
	}
}

// TestNextOnlyWhereItFollows wants no next step that this answer gives no reason
// for: nobody who has strong wash enough is sent to mix some.
func TestNextOnlyWhereItFollows(t *testing.T) {
	for request, want := range map[string]string{
		"volume=40&from=25&to=10":                 "",
		"volume=500&from=20&to=5&each=30&cups=12": "",
		"from=20&to=5&each=30&cups=12":            "Mix that strong wash",
		"volume=50&from=20&to=5&each=30&cups=12":  "Mix that strong wash",
	} {
		_, given, err := form.ReadRequest("calculator=wash-dilute&" + request)
		if err != nil {
			t.Fatal(err)
		}
		a := Solve("wash-dilute", given, british())
		var said []string
		for _, next := range a.Next {
			if next.Words == "Mix that strong wash" {
				said = append(said, next.Words)
			}
		}
		if len(a.Errors) > 0 || strings.Join(said, ", ") != want {
			t.Errorf("%s leads to %q, want %q (%v)", request, said, want, a.Errors)
		}
	}
}

func TestCarried(t *testing.T) {
	comma, err := Configure([]byte("decimal=%2C"))
	if err != nil {
		t.Fatal(err)
	}
	weighed := []Setting{{Name: "mass", Text: "1605"}, {Name: "volume", Text: "1 L"}, {Name: "volume-tolerance", Text: "1"}}
	if a := Solve("slip-density", weighed, british()); a.Next[0].Request != "calculator=slip-adjust&from=1.605" {
		t.Errorf("%+v", a.Next)
	}
	a := Solve("slip-density", weighed, comma)
	if a.Next[0].Request != "calculator=slip-adjust&from=1.6050" {
		t.Errorf("in a course with a decimal comma: %+v", a.Next)
	}
	name, given, err := form.ReadRequest(a.Next[0].Request)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range Solve(name, given, comma).Errors {
		if e.Input == "from" {
			t.Errorf("in a course with a decimal comma: %s", e.Text)
		}
	}
}

func TestSettingsTravel(t *testing.T) {
	s := bench1()
	s.Style.Decimal, s.Style.Measures = ',', "us"
	s.Working = append(s.Working, Working{Of: form.OfWash, For: "on bisque & under “clear”", Low: 9.5, High: 12})
	got, err := Configure([]byte(s.Encode()))
	if err != nil || !slices.Equal(got.Scales, s.Scales) || !slices.Equal(got.Working, s.Working) || got.Style != s.Style {
		t.Errorf("got %+v, %v, want %+v", got, err, s)
	}
	for _, wrong := range []string{"scale=500", "scale=500+0", "scale=a+1", "scale=500+0.1+3", "scale=-1+1", "working=slip+1.45", "working=slip+1.5+1.4+for", "working=slip+1.4+1.4+", "colour=red"} {
		name, _, _ := strings.Cut(wrong, "=")
		if _, err := Configure([]byte(wrong)); err == nil || !strings.HasPrefix(err.Error(), name+"=") {
			t.Errorf("%q was taken (%v)", wrong, err)
		}
	}
}

// TestCautionsComeFirst wants what may hurt to stand before every figure.
func TestCautionsComeFirst(t *testing.T) {
	cautioned := 0
	for _, c := range All() {
		wire := string(Respond([]byte(Request(c.Name, c.Example.Given)), studio()))
		caution := strings.Index(wire, "&caution=")
		if caution < 0 {
			continue
		}
		cautioned++
		for _, key := range []string{"&headline=", "&judged=", "&text.", "&row.", "&note="} {
			if at := strings.Index(wire, key); at >= 0 && at < caution {
				t.Errorf("%s: %s stands before the caution", c.Name, key)
			}
		}
	}
	if cautioned < 4 {
		t.Errorf("only %d answers have a caution", cautioned)
	}
}

// TestDensityUncertainties finds the standard uncertainty of everything that
// follows from a weighing by moving each reading a little, and wants the one
// that is printed.
func TestDensityUncertainties(t *testing.T) {
	for name, readings := range map[string]map[string]float64{
		"by volume, jar not weighed": {"mass": 150, "volume": 100},
		"by volume":                  {"mass": 212.4, "tare": 62.4, "volume": 100},
		"by water":                   {"mass": 687, "tare": 212, "water-mass": 512},
		"a syringe":                  {"mass": 15, "volume": 10},
		"warm":                       {"mass": 687, "tare": 212, "water-mass": 512, "temperature": 35, "solids-density": 2.5},
	} {
		solve := func(name string, more float64) map[string]Result {
			var given []Setting
			for reading, value := range readings {
				if reading == name {
					value += more
				}
				given = append(given, Setting{Name: reading, Text: number(value)})
			}
			given = append(given, Setting{Name: "mass-resolution", Text: "0.1"}, Setting{Name: "volume-tolerance", Text: "1"}, Setting{Name: "line-tolerance", Text: "3"})
			found := map[string]Result{}
			for _, r := range Solve("slip-density", given, british()).Outputs {
				found[r.Name] = r
			}
			return found
		}
		found := solve("", 0)
		density := found["specific-gravity"].Value
		if celsius, warm := readings["temperature"]; warm {
			density *= slip.WaterDensity(celsius)
		}
		scale := 0.1 / math.Sqrt(12)
		for output, r := range found {
			if r.Doubt == 0 || output == "specific-gravity-low" || output == "specific-gravity-high" {
				continue // the ends are no estimates of their own
			}
			sum := 0.0
			for _, reading := range []string{"mass", "tare", "water-mass", "volume"} {
				if _, ok := readings[reading]; !ok {
					continue
				}
				slope := (solve(reading, 1e-4)[output].Value - solve(reading, -1e-4)[output].Value) / 2e-4
				u := scale
				if reading == "volume" {
					u = 1 / math.Sqrt(3)
				}
				sum += slope * u * slope * u
				if reading == "mass" && readings["volume"] == 0 { // a mL at the line is that much more slip
					sum += math.Pow(slope*density*3/math.Sqrt(3), 2)
				}
			}
			if want := math.Sqrt(sum); math.Abs(r.Doubt-want) > 1e-5*want {
				t.Errorf("%s: u of %s is %v, want %v", name, output, r.Doubt, want)
			}
		}
		if found["dry-per-litre"].Doubt == 0 || found["dry-content"].Doubt == 0 || found["baume"].Doubt == 0 {
			t.Errorf("%s: something has no doubt", name)
		}
	}
}

// TestRangeHoldsItsValue tries many weighings: the printed ends hold the printed
// value and the full range of two standard uncertainties, and are wider by less
// than two places.
func TestRangeHoldsItsValue(t *testing.T) {
	for _, jar := range []string{"volume=100", "volume=1000", "volume=10", "water-mass=300", "volume=946.35&mass-resolution=28.35", "volume=100&volume-tolerance=0.01&mass-resolution=0.001"} {
		for gravity := 1.02; gravity < 2.3; gravity += 0.0137 {
			_, vessel, _ := strings.Cut(jar, "=")
			size, err := strconv.ParseFloat(strings.Split(vessel, "&")[0], 64)
			if err != nil {
				t.Fatal(err)
			}
			_, given, err := form.ReadRequest("calculator=slip-density&" + jar + "&mass=" + number(gravity*size))
			if err != nil {
				t.Fatal(err)
			}
			r := map[string]Result{}
			for _, o := range Solve("slip-density", given, british()).Outputs {
				r[o.Name] = o
			}
			read := func(name string) float64 {
				x, err := strconv.ParseFloat(r[name].Text, 64)
				if err != nil {
					t.Fatal(err)
				}
				return x
			}
			low, value, high := read("specific-gravity-low"), read("specific-gravity"), read("specific-gravity-high")
			u := r["specific-gravity-u"].Value
			p := math.Max(0.0001, form.Place(u))
			if low > value || value > high || low > math.Max(0, gravity-2*u)+1e-9 || high < gravity+2*u-1e-9 || high-low > 4*u+2*p+1e-9 {
				t.Errorf("%s: %v in %v to %v, u %v", jar, value, low, high, u)
			}
		}
	}
}

func TestWeighings(t *testing.T) {
	for _, c := range []struct {
		request    string
		in         Settings
		resolution float64
		sg, dry    string
	}{
		{"mass=150.0&volume=100", british(), 0.1, "1.500", "810 ± 30 g/L"},
		{"mass=150&volume=100", british(), 1, "1.500", "810 ± 30 g/L"},
		{"mass=174.5&volume=100", british(), 0.1, "1.75", "1210 ± 40 g/L"},
		{"mass=3 lb 1 oz&volume=1 US quart", british(), 28.349523125, "1.47", "760 ± 40 g/L"},
		{"mass=49.0 oz&volume=1 US quart", british(), 2.8349523125, "1.468", "760 ± 30 g/L"},
		{"mass=687&tare=212.0&water-mass=512", british(), 0.1, "1.583", "950 ± 30 g/L"},
		{"mass=687&tare=212&water-mass=512", bench1(), 5, "1.58", "950 ± 50 g/L"},
		{"mass=420&tare=180&volume=150", bench1(), 0.1, "1.600", "980 ± 40 g/L"},
		{"mass=15&volume=10", british(), 1, "1.50", "800 ± 300 g/L"},
		{"mass=150&volume=100&mass-resolution=0.01&volume-tolerance=0", british(), 0.01, "1.5000", "812.50 ± 0.10 g/L"},
	} {
		_, given, err := form.ReadRequest("calculator=slip-density&" + c.request)
		if err != nil {
			t.Fatal(err)
		}
		a := Solve("slip-density", given, c.in)
		texts := map[string]string{}
		for _, r := range a.Outputs {
			texts[r.Name] = plainly(r.Text)
		}
		resolution := 0.0
		for _, g := range a.Inputs {
			if g.Name == "mass-resolution" {
				resolution = g.Values[0]
			}
		}
		if math.Abs(resolution-c.resolution) > 1e-9 || texts["specific-gravity"] != c.sg || texts["dry-per-litre"] != c.dry {
			t.Errorf("%s: a step of %v, %q, %q, want %v, %q, %q (%v)", c.request, resolution, texts["specific-gravity"], texts["dry-per-litre"], c.resolution, c.sg, c.dry, a.Errors)
		}
	}
}

// TestStudioJudges wants what the trade has no usual number for to be judged by
// the studio's own, and by nothing else.
func TestStudioJudges(t *testing.T) {
	own := british()
	own.Working = []Working{
		{Of: form.OfCoat, For: "for one dip", Low: 0.8, High: 0.8},
		{Of: form.OfFlow, For: "to dip in", Low: 1.8, High: 2.2},
		{Of: form.OfAbsorption, For: "to hold water", Low: 0.1, High: 1},
	}
	for _, c := range []struct {
		request, usual, judged string
	}{
		{"calculator=coverage&area=250&thickness=0.5", "A wet coat of 0.5 mm in all: right for all coats together, wet (by what is usual in the trade).", "A wet coat of 0.5 mm in all: thin. For one dip, near 0.8."},
		{"calculator=coverage&area=250&thickness=0.95", "A wet coat of 0.95 mm in all: thick (by what is usual in the trade). For all coats together, wet, 0.4 to 0.6.", "A wet coat of 0.95 mm in all: right for one dip."},
		{"calculator=coverage&area=250&thickness=0.2", "A wet coat of 0.2 mm in all: thin (by what is usual in the trade). For all coats together, wet, 0.4 to 0.6.", "A wet coat of 0.2 mm in all: thin. For one dip, near 0.8."},
		{"calculator=flow-log&slip-seconds=52&water-seconds=26", "", "2 times as long as water: right to dip in."},
		{"calculator=flow-log&slip-seconds=78&water-seconds=26", "", "3 times as long as water: slow. To dip in, 1.8 to 2.2."},
		{"calculator=flow-log&slip-seconds=30&water-seconds=26", "", "1.2 times as long as water: quick. To dip in, 1.8 to 2.2."},
		{"calculator=absorption&dry=100&soaked=103", "", "3 % of absorption: open. To hold water, 0.1 to 1."},
		{"calculator=absorption&dry=100&soaked=100", "", "0 % of absorption: dense. To hold water, 0.1 to 1."},
	} {
		if got := texts(t, c.request, british())["judged"]; got != c.usual {
			t.Errorf("%s: by the trade %q, want %q", c.request, got, c.usual)
		}
		if got := texts(t, c.request, own)["judged"]; got != c.judged {
			t.Errorf("%s: by the studio %q, want %q", c.request, got, c.judged)
		}
	}
}
