package catalog_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"slipbook/calculators/catalog"
	"slipbook/calculators/catalog/catalogtest"
	"slipbook/calculators/form"
)

// These tests do not repeat the formulas. They ask whether the answers keep
// what cannot be lost: mass, volume, ratios and lengths.

// case is one accepted request with its answer.
type solved struct {
	t     *testing.T
	in    map[string][]float64
	words map[string]string // of inputs that are words or a choice, and of outputs
	out   map[string]float64
	rows  [][]form.Cell
}

func (s solved) value(name string) float64 {
	if v, ok := s.in[name]; ok {
		return v[0]
	}
	return math.NaN()
}

func (s solved) has(name string) bool { _, ok := s.in[name]; return ok }

func (s solved) near(what string, got, want float64) {
	s.t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Max(1, math.Abs(want))) {
		s.t.Errorf("%s: got %v, want %v, for %v", what, got, want, s.in)
	}
}

// forAll runs a check over 500 accepted random requests of a calculator.
func forAll(t *testing.T, name string, check func(solved)) {
	t.Helper()
	random := rand.New(rand.NewPCG(2026, uint64(len(name))))
	accepted, refused := 0, []form.Phrase{}
	for try := 0; accepted < 500; try++ {
		if try > 5000 {
			t.Fatalf("%s: only %d of %d requests were accepted; the last refusal is %q", name, accepted, try, refused)
		}
		a := catalog.Solve(name, catalogtest.Sensible(random, catalog.Find(name)), form.Plain())
		if len(a.Errors) > 0 {
			refused = a.Errors
			continue
		}
		accepted++
		s := solved{t, map[string][]float64{}, map[string]string{}, map[string]float64{}, a.Rows}
		for _, g := range a.Inputs {
			s.in[g.Name], s.words[g.Name] = g.Values, g.Text
		}
		for _, r := range a.Outputs {
			s.out[r.Name], s.words[r.Name] = r.Value, r.Text
		}
		check(s)
		if t.Failed() {
			return
		}
	}
}

func TestDensityBalances(t *testing.T) {
	forAll(t, "slip-density", func(s solved) {
		mass, water := s.value("mass")-s.value("tare"), 1.0
		if s.has("temperature") {
			water = tanaka(s.value("temperature"))
		}
		volume := s.value("volume")
		if s.has("water-mass") {
			volume = (s.value("water-mass") - s.value("tare")) / water
		}
		dry := s.out["dry-content"]
		s.near("room of clay and water", dry/s.value("solids-density")+(mass-dry)/water, volume)
		s.near("specific gravity", s.out["specific-gravity"], mass/volume/water)
		s.near("per litre", s.out["dry-per-litre"]+s.out["water-per-litre"], 1000*mass/volume)
		s.near("by mass", s.out["solids-by-mass"]/100*mass, dry)
		s.near("by volume", s.out["solids-by-volume"]/100*volume*s.value("solids-density"), dry)
		s.near("Baumé", 145/(145-s.out["baume"]), s.out["specific-gravity"])
		s.near("Twaddell", 1+0.005*s.out["twaddell"], s.out["specific-gravity"])
		s.near("pint", s.out["pint-weight"]/20, s.out["specific-gravity"])
		s.near("u", s.out["specific-gravity-u"], differences(s))
		s.near("range", s.out["specific-gravity-high"]-s.out["specific-gravity-low"], 4*s.out["specific-gravity-u"])
	})
}

// tanaka is the density of water (g/mL) in the form the paper prints it.
func tanaka(t float64) float64 {
	return 0.999974950 * (1 - math.Pow(t-3.983035, 2)*(t+301.797)/(522528.9*(t+69.34881)))
}

// differences finds the standard uncertainty numerically: how far the result
// moves for each reading's own uncertainty, added in squares.
func differences(s solved) float64 {
	mass, tare, volume, full := s.value("mass"), s.value("tare"), s.value("volume"), s.value("water-mass")
	water := 1.0
	if s.has("temperature") {
		water = tanaka(s.value("temperature"))
	}
	gravity := func(mass, tare, volume, full float64) float64 {
		if s.has("water-mass") {
			return (mass - tare) / (full - tare)
		}
		return (mass - tare) / volume / water
	}
	u, sum := s.value("mass-resolution")/math.Sqrt(12), 0.0
	slope := func(dm, dt, dv, df float64) float64 {
		return (gravity(mass+dm, tare+dt, volume+dv, full+df) - gravity(mass-dm, tare-dt, volume-dv, full-df)) / 2e-4
	}
	sum += math.Pow(slope(1e-4, 0, 0, 0)*u, 2)
	if tare > 0 {
		sum += math.Pow(slope(0, 1e-4, 0, 0)*u, 2)
	}
	if s.has("water-mass") {
		sum += math.Pow(slope(0, 0, 0, 1e-4)*u, 2)
		// A mL more or less at the line is that much more or less slip.
		density := (mass - tare) / (full - tare) * water
		sum += math.Pow(slope(1e-4, 0, 0, 0)*density*s.value("line-tolerance")/math.Sqrt(3), 2)
	} else {
		sum += math.Pow(slope(0, 0, 1e-4, 0)*s.value("volume-tolerance")/math.Sqrt(3), 2)
	}
	return math.Sqrt(sum)
}

func TestAdjustBalances(t *testing.T) {
	forAll(t, "slip-adjust", func(s solved) {
		from, to, solids := s.value("from"), s.value("to"), s.value("solids-density")
		volume := s.value("volume")
		if s.has("slip-mass") {
			volume = s.value("slip-mass") / from
		}
		if math.Abs(to-from) <= 0.01+1e-9 {
			s.near("nothing to add", s.out["water-to-add"]+s.out["first-pour"]+s.out["powder-to-add"]+s.out["water-to-remove"], 0)
			s.near("volume", s.out["new-volume"], volume)
			return
		}
		if to <= from {
			water := s.out["water-to-add"]
			s.near("thinned", (volume*from+water)/(volume+water), to)
			s.near("volume", s.out["new-volume"], volume+water)
			s.near("first pour", s.out["first-pour"]*5/4, water)
			return
		}
		powder, removed := s.out["powder-to-add"], s.out["water-to-remove"]
		s.near("thickened", (volume*from+powder)/(volume+powder/solids), to)
		s.near("decanted", (volume*from-removed)/(volume-removed), to)
		s.near("powder", s.out["powder-base"]+s.out["powder-stain"], powder)
		s.near("stain over base", s.out["powder-base"]*s.value("stain")/100, s.out["powder-stain"])
		s.near("volume", s.out["volume-after-powder"], volume+powder/solids)
		s.near("volume left", s.out["volume-after-removal"], volume-removed)
	})
}

func TestMixBalances(t *testing.T) {
	forAll(t, "wash-mix", func(s solved) {
		stain, flux, water := s.out["stain-mass"], s.out["flux-mass"], s.out["water"]
		volume := s.value("volume")
		if s.has("people") {
			volume = s.value("people") * s.value("each") * (1 + s.value("spare")/100)
		}
		s.near("room", stain/s.value("stain-density")+flux/s.value("flux-density")+water, volume)
		s.near("stain to water", stain*s.value("water-parts"), water*s.value("stain-parts"))
		s.near("flux to water", flux*s.value("water-parts"), water*s.value("flux-parts"))
		s.near("density", s.out["density"], (stain+flux+water)/volume)
		s.near("strength", s.out["strength"]*volume/100, stain+flux)
		s.near("stain strength", s.out["stain-strength"]*volume/100, stain)
		s.near("by mass", s.out["stain-by-mass"]/100*(stain+flux+water), stain)
	})
}

func TestDiluteBalances(t *testing.T) {
	forAll(t, "wash-dilute", func(s solved) {
		volume, from, to := s.value("volume"), s.value("from"), s.value("to")
		strengths, alike := len(s.rows), s.value("cups")
		if steps := int(s.value("steps")); strengths != steps && steps != 1 || steps == 1 && strengths != 0 {
			t.Errorf("%d strengths for %d steps", strengths, steps)
		}
		if strengths == 0 {
			s.thinned(volume, from, to, alike)
			return
		}
		for _, whole := range []string{"water-to-add", "new-volume"} {
			if _, said := s.out[whole]; said {
				t.Errorf("a ladder says %s, which is of the whole lot", whole)
			}
		}
		stock, drunk := 0.0, 0.0
		for i, row := range s.rows {
			strength, wash, water := row[1].Value, row[2].Value, row[3].Value
			s.near("powder in the cup", strength*(wash+water), from*wash)
			s.near("equal ratios", strength, from*math.Pow(to/from, float64(i)/float64(strengths-1)))
			if s.has("each") {
				s.near("cup", wash+water, s.value("each"))
			}
			if alike > 1 {
				s.near("wash for all", cell(row, "all-stock"), alike*wash)
				s.near("water for all", cell(row, "all-water"), alike*water)
			} else if len(row) != 5 {
				t.Errorf("one cup of each has %d columns", len(row))
			}
			stock += alike * wash
			drunk += alike * water
		}
		s.near("strong wash needed", s.out["stock-needed"], stock)
		s.near("water needed", s.out["water-needed"], drunk)
		if !s.has("each") {
			s.near("all stock used", stock, volume)
		}
	})
}

// thinned checks a wash brought to one strength: all that there is, or what
// the cups take.
func (s solved) thinned(volume, from, to, cups float64) {
	s.t.Helper()
	if !s.has("volume") {
		volume = s.out["stock-needed"]
		s.near("cups filled", s.out["new-volume"], cups*s.value("each"))
	} else if need, said := s.out["stock-needed"]; said {
		s.near("strong wash for the cups", need*from, cups*s.value("each")*to)
		if need <= volume {
			s.t.Errorf("%v of %v is said to be lacking", need, volume)
		}
	}
	s.near("powder kept", (volume+s.out["water-to-add"])*to, volume*from)
	s.near("volume", s.out["new-volume"], volume+s.out["water-to-add"])
}

func TestBarsBalance(t *testing.T) {
	forAll(t, "shrinkage-test", func(s solved) {
		plastic, dry, fired := s.in["plastic"], s.in["dry"], s.in["fired"]
		var total, drying, firing, kept []float64
		for i := range plastic {
			total = append(total, 100*(1-fired[i]/plastic[i]))
			drying = append(drying, 100*(1-dry[i]/plastic[i]))
			firing = append(firing, 100*(1-fired[i]/dry[i]))
			kept = append(kept, 100*(dry[i]-fired[i])/plastic[i])
		}
		s.near("total", s.out["total"], stat.Mean(total, nil))
		s.near("drying", s.out["drying"], stat.Mean(drying, nil))
		s.near("firing", s.out["firing"], stat.Mean(firing, nil))
		s.near("firing of fresh", s.out["firing-plastic"], stat.Mean(kept, nil))
		s.near("volume", math.Cbrt(1-s.out["volume"]/100), 1-s.out["total"]/100)
		s.near("bars", s.out["bars"], float64(len(plastic)))
		if s.has("leather-hard") {
			var lost []float64
			for i, length := range s.in["leather-hard"] {
				lost = append(lost, 100*(1-length/plastic[i]))
			}
			s.near("gone at leather-hard", s.out["so-far"], stat.Mean(lost, nil))
		}
		half, given := s.out["total-ci"]
		if given != (len(plastic) > 1) {
			t.Errorf("confidence interval for %d bars: %v", len(plastic), given)
		}
		if given {
			n := float64(len(plastic))
			quantile := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 1}.Quantile(0.975)
			s.near("confidence", half, max(quantile*stat.StdDev(total, nil)/math.Sqrt(n), callipers(s)))
		}
	})
}

// callipers finds numerically what a step of the callipers leaves uncertain in
// the mean of the totals, when all bars are misread alike.
func callipers(s solved) float64 {
	u, mean := s.value("length-resolution")/math.Sqrt(12), 0.0
	for i, fresh := range s.in["plastic"] {
		fired := s.in["fired"][i]
		slope := func(dp, df float64) float64 {
			return 100 * ((fired-df)/(fresh-dp) - (fired+df)/(fresh+dp)) / 2e-4
		}
		mean += 2 * u * math.Hypot(slope(1e-4, 0), slope(0, 1e-4)) / float64(len(s.in["plastic"]))
	}
	return mean
}

// gone returns what a pot has shrunk so far: what was measured, else the part of
// the whole that its state makes likely.
func (s solved) gone(whole, measured string) float64 {
	if s.has(measured) {
		return s.value(measured)
	}
	return s.value(whole) * map[string]float64{"leather-hard": 3, "bone-dry": 6, "bisque": 7}[s.words["state"]] / 12
}

func TestSizeBalances(t *testing.T) {
	forAll(t, "shrinkage-size", func(s solved) {
		left := (1 - s.value("shrinkage")/100) / (1 - s.gone("shrinkage", "so-far")/100)
		s.near("remaining", 1-s.out["remaining"]/100, left)
		s.near("enlargement", (1+s.out["enlargement"]/100)*left, 1)
		s.near("template", s.out["template-scale"]/100*left, 1)
		pick := func(name string) float64 {
			if s.has(name) {
				return s.value(name)
			}
			return s.out[name]
		}
		if s.has("wet-size") || s.has("fired-size") {
			s.near("size", pick("wet-size")*left, pick("fired-size"))
		}
		if s.has("capacity-wet") || s.has("capacity-fired") {
			s.near("capacity", pick("capacity-wet")*math.Pow(left, 3), pick("capacity-fired"))
		}
	})
}

// cell returns the number in a row's column; 0 where the row has none.
func cell(row []form.Cell, column string) float64 {
	for _, c := range row {
		if c.Column == column {
			return c.Value
		}
	}
	return 0
}

// wanted returns the volume that a whole lot or a class asks for.
func (s solved) wanted() float64 {
	if s.has("people") {
		return s.value("people") * s.value("each") * (1 + s.value("spare")/100)
	}
	return s.value("volume")
}

func TestBatchBalances(t *testing.T) {
	forAll(t, "slip-batch", func(s solved) {
		base, stain, water := s.out["dry-base"], s.out["stain-mass"], s.out["water"]
		s.near("room", base/s.value("solids-density")+stain/s.value("stain-density")+water, s.wanted())
		s.near("mass", base+stain+water, s.wanted()*s.value("specific-gravity"))
		s.near("mass said", s.out["slip-mass"], base+stain+water)
		s.near("stain over base", base*s.value("stain"), 100*stain)
		s.near("clay and water weighed", s.out["clay-to-weigh"]+s.out["water-to-add"], base+water)
		s.near("water in the clay", s.out["clay-to-weigh"]*s.value("clay-water"), 100*(s.out["clay-to-weigh"]-base))
		total, parts := 0.0, map[bool]float64{}
		for i, row := range s.rows {
			weigh := cell(row, "weigh")
			total += weigh
			parts[strings.HasPrefix(row[1].Text, "Stain")] += weigh
			s.near("running total", cell(row, "total"), total)
			s.near("number", cell(row, "load"), float64(i+1))
			if s.has("scale-limit") && weigh > s.value("scale-limit") {
				t.Errorf("load %d of %v is over the limit, for %v", i+1, weigh, s.in)
			}
		}
		s.near("all loads", total, s.out["slip-mass"])
		s.near("stain apart", parts[true], stain)
	})
}

func TestColourBalances(t *testing.T) {
	forAll(t, "slip-colour", func(s solved) {
		gravity, volume, heavy := s.value("specific-gravity"), s.value("volume"), s.value("stain-density")
		if s.has("slip-mass") {
			volume = s.value("slip-mass") / gravity
		}
		// What is in the bucket fills it and weighs what it weighs.
		base, stain := s.out["dry-base"], s.out["stain-mass"]
		already := base * s.value("stain-now") / 100
		water := volume*gravity - base - already
		s.near("room", base/s.value("solids-density")+already/heavy+water, volume)
		s.near("stain afterwards", (already+stain)/base*100, s.value("stain"))
		s.near("without water", s.out["specific-gravity-if-no-water"], (volume*gravity+stain)/(volume+stain/heavy))
		hold := s.out["water-to-hold"]
		s.near("volume", s.out["new-volume"], volume+stain/heavy+hold)
		s.near("gravity held", (volume*gravity+stain+hold)/s.out["new-volume"], gravity)
	})
}

func TestClayBalances(t *testing.T) {
	forAll(t, "clay-colour", func(s solved) {
		s.near("lump", s.out["dry-clay"]+s.out["water-held"], s.value("clay"))
		s.near("water", s.out["water-held"]/s.value("clay")*100, s.value("clay-water"))
		s.near("stain", s.out["stain-mass"]/s.out["dry-clay"]*100, s.value("stain"))
	})
}

func TestFitBalances(t *testing.T) {
	forAll(t, "slip-fit", func(s solved) {
		sofar := s.gone("body", "body-so-far")
		// A mark of 100 made now on both, and what is left of it when fired.
		pot := 100 * (100 - s.value("body")) / (100 - sofar)
		slip := 100 - s.value("slip")
		s.near("remaining", s.out["remaining"], 100-pot)
		s.near("mismatch", slip*(1+s.out["mismatch"]/100), pot)
		s.near("doubt", s.out["mismatch-ci"], mismatchDoubt(s, sofar))
		want := "curls and flakes off"
		switch over := 100 * (pot/slip - 1); {
		case over < -1:
			want = "may lift or shiver"
		case over <= 4.5:
			want = "usually fits, in a thin coat"
		case over <= 6:
			want = "is risky"
		}
		if s.words["verdict"] != want {
			t.Errorf("%q instead of %q for %v", s.words["verdict"], want, s.in)
		}
	})
}

// mismatchDoubt finds the doubt numerically: how far the mismatch moves for
// each number's own doubt, added in squares.
func mismatchDoubt(s solved, sofar float64) float64 {
	mismatch := func(body, gone, slip float64) float64 {
		return 100 * ((100-body)/(100-gone)/(1-slip/100) - 1)
	}
	body, slip, bars, guess := s.value("body"), s.value("slip"), s.value("bars-ci"), 0.5
	if !s.has("body-so-far") {
		guess = body / 12
		if s.words["state"] == "wet" {
			guess = 0
		}
	}
	slope := func(b, g, l float64) float64 {
		return (mismatch(body+b, sofar+g, slip+l) - mismatch(body-b, sofar-g, slip-l)) / 2e-4
	}
	return math.Sqrt(math.Pow(slope(1e-4, 0, 0)*bars, 2) + math.Pow(slope(0, 1e-4, 0)*guess, 2) + math.Pow(slope(0, 0, 1e-4)*bars, 2))
}

func TestTilesBalance(t *testing.T) {
	forAll(t, "tile-plan", func(s solved) {
		points, base, step := int(s.value("points")), s.value("base"), s.value("mass-resolution")
		mixes := points
		if s.words["kind"] == "triaxial" {
			mixes = points * (points + 1) / 2
		}
		many := float64(mixes) * s.value("coats")
		for _, list := range []string{"cones", "finishes"} {
			many *= float64(1 + strings.Count(s.words[list], ","))
		}
		s.near("mixes", float64(len(s.rows)), float64(mixes))
		s.near("tiles", s.out["tiles"], many)
		smallest := 100.0
		for i, row := range s.rows {
			shares := map[string]string{"percent": "mass"}
			if s.words["kind"] == "triaxial" {
				shares = map[string]string{"a": "a-mass", "b": "b-mass", "c": "c-mass"}
				s.near("shares", cell(row, "a")+cell(row, "b")+cell(row, "c"), 100)
			}
			worst := 0.0
			for share, mass := range shares {
				percent, weigh := cell(row, share), cell(row, mass)
				s.near("steps of the scale", math.Round(weigh/step)*step, weigh)
				if off := weigh - base*percent/100; math.Abs(off) > step*(0.5+1e-6) {
					t.Errorf("mix %d: %v of %v %% is %v off", i+1, weigh, percent, off)
				} else if percent > 0 {
					worst = math.Max(worst, math.Abs(100*off/(base*percent/100)))
					smallest = math.Min(smallest, percent)
				}
			}
			s.near("off by rounding", math.Abs(cell(row, "error")), worst)
			if s.words["kind"] == "doubling" {
				s.near("doubled", cell(row, "percent"), s.value("low")*math.Pow(2, float64(i)))
			}
			if s.words["kind"] == "line" {
				s.near("equal steps", cell(row, "percent"), s.value("low")+(s.value("high")-s.value("low"))*float64(i)/float64(points-1))
			}
		}
		s.near("half a step at the safe base", step/2, s.out["smallest-safe-base"]*smallest/100*0.01)
	})
}

// weighed lists the materials of a recipe, from 0, in the order in which they are
// weighed: first those that go into the water before the powder.
func (s solved) weighed() (order []int) {
	count := len(s.in["parts"]) + len(s.in["additions"])
	first := map[int]bool{}
	for _, typed := range strings.Split(s.words["first"], ",") {
		if n, err := strconv.Atoi(strings.TrimSpace(typed)); err == nil {
			first[n-1] = true
		}
	}
	for _, before := range []bool{true, false} {
		for i := range count {
			if first[i] == before {
				order = append(order, i)
			}
		}
	}
	return order
}

func TestRecipeBalances(t *testing.T) {
	forAll(t, "recipe-scale", func(s solved) {
		sum, over := 0.0, 0.0
		for _, part := range s.in["parts"] {
			sum += part
		}
		for _, percent := range s.in["additions"] {
			over += percent
		}
		base, added, dry, water := s.out["base-mass"], s.out["additions-mass"], s.out["dry-total"], s.out["water"]
		s.near("dry", base+added, dry)
		s.near("additions over base", base*over, 100*added)
		if s.has("specific-gravity") {
			s.near("mass", s.out["slip-mass"], dry+water)
			s.near("room", base/s.value("solids-density")+added/s.value("stain-density")+water, s.out["new-volume"])
			s.near("gravity", s.out["slip-mass"]/s.out["new-volume"], s.value("specific-gravity"))
		}
		switch {
		case s.has("dry-mass"):
			s.near("dry wanted", dry, s.value("dry-mass"))
		case s.has("volume") || s.has("people"):
			s.near("volume wanted", s.out["new-volume"], s.wanted())
		}
		loads := 1.0
		if s.has("scale-limit") {
			loads = s.out["loads"]
		}
		rows, total, worst := s.rows, 0.0, 0.0
		if s.has("specific-gravity") {
			s.near("water in a load", cell(rows[0], "weigh")*loads, water)
			total, rows = cell(rows[0], "total"), rows[1:]
		}
		s.near("materials", float64(len(rows)), float64(len(s.in["parts"])+len(s.in["additions"])))
		order := s.weighed()
		for at, row := range rows {
			percent, i := 0.0, order[at]
			if n := len(s.in["parts"]); i < n {
				percent = 100 * s.in["parts"][i] / sum
			} else {
				percent = s.in["additions"][i-n]
			}
			weigh := cell(row, "weigh")
			total += weigh
			s.near("share", cell(row, "share"), percent)
			s.near("material", weigh*loads, base*percent/100)
			s.near("in the tub", cell(row, "total"), total)
			if s.words["which"] == row[0].Text || s.words["which"] == strconv.Itoa(i+1) {
				s.near("all that there is", weigh*loads, s.value("have"))
			}
			worst = math.Max(worst, math.Abs(cell(row, "error")))
			off := math.Abs(cell(row, "error")) / 100 * weigh
			if step := form.Plain().Step(weigh); off > step*(0.5+1e-6) {
				t.Errorf("%v g is weighed %v g off on a scale of %v g", weigh, off, step)
			}
		}
		s.near("off at most", s.out["largest-error"], worst)
		if s.has("scale-limit") && total > s.value("scale-limit")*(1+1e-12) {
			t.Errorf("a load of %v g is over the limit, for %v", total, s.in)
		}
	})
}

func TestBucketsBalance(t *testing.T) {
	forAll(t, "bucket-mix", func(s solved) {
		a, b := s.out["first-pour"], s.out["second-pour"]
		da, db, d := s.value("first-gravity"), s.value("second-gravity"), s.out["specific-gravity"]
		s.near("volume", a+b, s.out["new-volume"])
		s.near("mass", a*da+b*db, (a+b)*d)
		s.near("share", s.out["first-share"]/100*(a+b), a)
		switch {
		case !s.has("to"):
			s.near("all of the first", a, s.value("first-volume"))
			s.near("all of the second", b, s.value("second-volume"))
		case s.has("volume"):
			s.near("as much as was wanted", a+b, s.value("volume"))
			s.near("number", d, s.value("to"))
		default:
			for name, pour := range map[string]float64{"first-volume": a, "second-volume": b} {
				if s.has(name) && pour > s.value(name)*(1+1e-12) {
					t.Errorf("%v mL of a bucket of %v", pour, s.value(name))
				}
			}
		}
		// Both powders and the water fill the mix and weigh what it weighs.
		base, stain := s.out["dry-base"], s.out["dry-base"]*s.out["stain"]/100
		water := (a+b)*d - base - stain
		s.near("room", base/s.value("solids-density")+stain/s.value("stain-density")+water, a+b)
		of := func(volume, gravity float64, percent string) (base float64) {
			p := s.value(percent) / 100
			return volume * (gravity - 1) / (1 - 1/s.value("solids-density") + p*(1-1/s.value("stain-density")))
		}
		s.near("stain", of(a, da, "first-stain")*s.value("first-stain")+of(b, db, "second-stain")*s.value("second-stain"), 100*stain)
	})
}

func TestTopUpBalances(t *testing.T) {
	forAll(t, "bucket-top-up", func(s solved) {
		volume, d, solids, heavy := s.value("volume"), s.value("specific-gravity"), s.value("solids-density"), s.value("stain-density")
		base, stain := s.out["dry-left"], s.out["stain-left"]
		water := volume*d - base - stain
		s.near("room now", base/solids+stain/heavy+water, volume)
		s.near("stain now", base*s.value("stain-now"), 100*stain)
		if gone, said := s.out["water-gone"]; said {
			s.near("as it was mixed", (volume*d+gone)/(volume+gone), s.value("gravity-mixed"))
		}
		slip, ready := s.out["slip-to-add"]
		if ready {
			held := volume + s.out["water-with-slip"] + s.out["stain-with-slip"]/heavy
			s.near("with ready slip", held+slip, s.out["new-volume"])
			s.near("gravity by ready slip", volume*d+s.out["water-with-slip"]+s.out["stain-with-slip"], held*s.value("to"))
			s.near("stain by ready slip", stain+s.out["stain-with-slip"], base*s.value("stain")/100)
		}
		base += s.out["base-to-add"]
		stain += s.out["stain-to-add"]
		water += s.out["water-to-add"] - s.out["water-to-remove"]
		then := base/solids + stain/heavy + water
		s.near("room then", then, s.out["new-volume"])
		s.near("gravity then", base+stain+water, then*s.value("to"))
		s.near("stain then", base*s.value("stain"), 100*stain)
		if wanted := s.value("volume-wanted"); s.has("volume-wanted") && then < wanted*(1-1e-9) {
			t.Errorf("%v mL of %v wanted, for %v", then, wanted, s.in)
		} else if s.out["base-to-add"] > 0 {
			s.near("as much as was wanted", then, wanted)
		}
	})
}

func TestWetBlendBalances(t *testing.T) {
	forAll(t, "wet-blend", func(s solved) {
		gravities := []float64{s.value("first-gravity"), s.value("second-gravity")}
		if s.words["kind"] == "triaxial" {
			gravities = append(gravities, s.value("third-gravity"))
		}
		step, worst, drawn := s.value("volume-resolution"), 0.0, make([]float64, len(gravities))
		for _, row := range s.rows {
			dry, total, all := make([]float64, len(gravities)), 0.0, 0.0
			for i, name := range []string{"first", "second", "third"}[:len(gravities)] {
				volume := cell(row, name+"-volume")
				s.near("steps of the syringe", math.Round(volume/step)*step, volume)
				drawn[i] += volume
				total += volume
				dry[i] = volume * (gravities[i] - 1) * s.value("solids-density") / (s.value("solids-density") - 1)
				all += dry[i]
			}
			if off := math.Abs(total - s.value("each")); off > step*(0.5+1e-6)*float64(len(gravities)) {
				t.Errorf("a cup of %v mL is %v off, for %v", total, off, s.in)
			}
			off := 0.0
			for i, name := range []string{"first", "second", "third"}[:len(gravities)] {
				off = math.Max(off, math.Abs(100*dry[i]/all-cell(row, name)))
			}
			s.near("off by the syringe", cell(row, "error"), off)
			worst = math.Max(worst, off)
			if all < s.out["least-dry"]*(1-1e-9) {
				t.Errorf("%v g in a cup, said to be %v at least", all, s.out["least-dry"])
			}
		}
		s.near("cups", s.out["cups"], float64(len(s.rows)))
		s.near("off at most", s.out["largest-error"], worst)
		for i, name := range []string{"first-needed", "second-needed", "third-needed"}[:len(gravities)] {
			s.near(name, s.out[name], drawn[i])
		}
		s.near("matching", s.out["second-for-hundred"]*(gravities[1]-1), 100*(gravities[0]-1))
	})
}

// TestSteps runs every length of ladder between two strengths.
func TestSteps(t *testing.T) {
	for cups := 2; cups <= 50; cups++ {
		a := catalog.Solve("wash-dilute", []form.Setting{{Name: "volume", Text: "100"}, {Name: "from", Text: "20"}, {Name: "to", Text: "0.02"}, {Name: "steps", Text: strconv.Itoa(cups)}}, form.Plain())
		if len(a.Rows) != cups || a.Rows[0][1].Value != 20 || math.Abs(a.Rows[cups-1][1].Value-0.02) > 1e-15 {
			t.Errorf("%d cups: %v", cups, a.Rows)
		}
	}
}

func TestCoverageBalances(t *testing.T) {
	forAll(t, "coverage", func(s solved) {
		area := s.out["area"]
		if s.has("area") {
			s.near("area", area, s.value("area"))
		} else {
			// A thousand hoops of the wall, and the floor, in mm².
			top, foot := s.value("width"), s.value("width")
			if s.has("foot-width") {
				foot = s.value("foot-width")
			}
			wall := 0.0
			for i := range 1000 {
				wall += math.Pi * (foot + (top-foot)*(float64(i)+0.5)/1000) * math.Hypot(s.value("height"), (top-foot)/2) / 1000
			}
			times := map[string][2]float64{"outside": {1, 0}, "outside-and-foot": {1, 1}, "inside": {1, 1}, "both": {2, 1}}[s.words["sides"]]
			s.near("area", area*100, times[0]*wall+times[1]*math.Pi*foot*foot/4)
		}
		wet := area * 100 * s.out["coat"] / 1000 // mL of one coat
		s.near("each", s.out["each"], wet*s.value("coats"))
		s.near("all", s.out["volume"], s.out["each"]*s.value("pots")*(1+s.value("spare")/100))
		s.near("pots of a litre", s.out["pots-per-litre"]*s.out["each"], 1000)
		if s.has("taken") {
			s.near("taken", wet, s.value("taken"))
		}
		if !s.has("specific-gravity") {
			return
		}
		gravity, solids := s.value("specific-gravity"), s.value("solids-density")
		powder := wet * s.value("coats") * (gravity - 1) / (1 - 1/solids) // g, under its own water
		s.near("dry coat", area/10*s.out["dry-coat"]*solids, powder)
		if s.has("before") {
			gain := wet * gravity
			if s.words["weighed"] == "dry" {
				gain = powder / s.value("coats")
			}
			s.near("gain", gain, s.value("after")-s.value("before"))
		}
	})
}

func TestFlowBalances(t *testing.T) {
	forAll(t, "flow-log", func(s solved) {
		s.near("ratio", s.out["flow-ratio"]*s.value("water-seconds"), s.value("slip-seconds"))
		if s.has("rested-seconds") {
			s.near("gelling", s.out["gelling"]*s.value("slip-seconds"), s.value("rested-seconds"))
		}
		if s.has("specific-gravity") && s.has("wanted-gravity") && math.Abs(s.value("specific-gravity")-s.value("wanted-gravity")) > 0.011 {
			s.near("number", s.value("wanted-gravity")+s.out["gravity-off"], s.value("specific-gravity"))
		}
		if !s.has("volume") && !s.has("slip-mass") && !s.has("dry-mass") {
			if len(s.rows) > 0 {
				t.Errorf("steps for no bucket: %v", s.rows)
			}
			return
		}
		dry, gravity, solids := s.out["dry-mass"], s.value("specific-gravity"), s.value("solids-density")
		switch {
		case s.has("dry-mass"):
			s.near("dry powder", dry, s.value("dry-mass"))
		case s.has("volume"):
			s.near("room", dry/solids+s.value("volume")*gravity-dry, s.value("volume"))
		default:
			s.near("room", dry/solids+s.value("slip-mass")-dry, s.value("slip-mass")/gravity)
		}
		total := 0.0
		for i, row := range s.rows {
			total += cell(row, "weigh")
			s.near("running total", cell(row, "total"), total)
			s.near("number", cell(row, "step"), float64(i+1))
			s.near("share", cell(row, "percent"), 100*total*s.value("strength")/100/dry)
			if cell(row, "percent") > 0.5+1e-9 {
				t.Errorf("%v %% of an additive for %v", cell(row, "percent"), s.in)
			}
		}
		s.near("all steps", s.out["all-steps"], total)
		if next := float64(len(s.rows)+1) * s.value("step"); float64(len(s.rows)) != s.value("steps") && next <= 0.5 {
			t.Errorf("only %d of %v steps for %v", len(s.rows), s.value("steps"), s.in)
		}
	})
}

func TestDryingBalances(t *testing.T) {
	forAll(t, "clay-water", func(s solved) {
		if s.has("earlier") {
			s.near("loss", s.out["loss-a-day"]/100*s.value("earlier")*s.value("hours")/24, s.value("earlier")-s.value("later"))
			return
		}
		share := s.value("clay-water") / 100
		if s.has("damp") {
			share = 1 - s.value("dry")/s.value("damp")
		}
		s.near("of the damp weight", s.out["water-of-damp"], 100*share)
		s.near("of the dry weight", s.out["water-of-dry"], 100*share/(1-share))
		if !s.has("clay") {
			return
		}
		clay, dry := s.value("clay"), s.out["dry-clay"]
		s.near("lot", dry+s.out["water-held"], clay)
		s.near("water", s.out["water-held"], clay*share)
		if !s.has("to") {
			return
		}
		more := s.out["water-to-add"] - s.out["water-to-lose"]
		s.near("then", s.out["new-mass"], clay+more)
		if math.Abs(s.value("to")-100*share) > 0.1 {
			s.near("wanted", 100*(s.out["water-held"]+more)/(clay+more), s.value("to"))
		}
		if s.out["water-to-add"] < 0 || s.out["water-to-lose"] < 0 {
			t.Errorf("less than no water: %v", s.out)
		}
	})
}

func TestAbsorptionBalances(t *testing.T) {
	forAll(t, "absorption", func(s solved) {
		dry, soaked := s.in["dry"], s.in["soaked"]
		var drunk, pores, bulk, apparent []float64
		for i := range dry {
			drunk = append(drunk, 100*(soaked[i]/dry[i]-1))
			s.near("tile", cell(s.rows[i], "absorption"), drunk[i])
			if !s.has("suspended") {
				continue
			}
			hung := s.in["suspended"][i]
			// What the water bears is the room of it all; without the pores it
			// bears less by what they hold.
			room, water := soaked[i]-hung, soaked[i]-dry[i]
			pores, bulk, apparent = append(pores, 100*water/room), append(bulk, dry[i]/room), append(apparent, dry[i]/(room-water))
			s.near("pores by both", cell(s.rows[i], "porosity"), cell(s.rows[i], "absorption")*cell(s.rows[i], "bulk-density"))
		}
		s.near("mean", s.out["absorption"], stat.Mean(drunk, nil))
		s.near("tiles", s.out["tiles"], float64(len(dry)))
		least := 0.0 // what the scale leaves, all tiles misread alike
		for i := range dry {
			u := s.value("mass-resolution") / math.Sqrt(12)
			slope := func(d, m float64) float64 {
				return 100 * ((soaked[i]+m)/(dry[i]+d) - (soaked[i]-m)/(dry[i]-d)) / 2e-4
			}
			least += 2 * u * math.Hypot(slope(1e-4, 0), slope(0, 1e-4)) / float64(len(dry))
		}
		if len(dry) == 1 {
			s.near("doubt of one", s.out["absorption-ci"], least)
		} else {
			n := float64(len(dry))
			quantile := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 1}.Quantile(0.975)
			s.near("doubt", s.out["absorption-ci"], max(quantile*stat.StdDev(drunk, nil)/math.Sqrt(n), least))
			s.near("least and most", s.out["most"]-s.out["least"], slices.Max(drunk)-slices.Min(drunk))
		}
		if s.has("suspended") {
			s.near("pores", s.out["porosity"], stat.Mean(pores, nil))
			s.near("bulk", s.out["bulk-density"], stat.Mean(bulk, nil))
			s.near("apparent", s.out["apparent-gravity"], stat.Mean(apparent, nil))
		}
	})
}
