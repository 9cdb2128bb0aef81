package course_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slipbook/generator/course"
)

// pairs hands out every pair of a table with what it is about.
func pairs(d *course.Decoration, take func(where string, p course.Pair)) {
	for _, s := range d.States {
		for _, m := range d.Media {
			take(m.ID+" "+s.ID, m.On[s.ID])
		}
		for _, q := range d.Techniques {
			for _, c := range q.On[s.ID] {
				take(strings.Join(append([]string{q.ID}, c.Only...), " ")+" "+s.ID, c.Pair)
			}
		}
		for _, e := range d.Exceptions {
			if p, there := e.On[s.ID]; there {
				take(e.ID+" "+s.ID, p)
			}
		}
	}
	for _, o := range d.Overs {
		take(o.Above+" on "+o.Under, o.Pair)
	}
}

// TestPhysicsIsRare holds the pairs that nothing gets round to these; every
// other never is a custom of the trade, with its exception, or a rule of the
// house.
func TestPhysicsIsRare(t *testing.T) {
	var physics []string
	pairs(demo(t).Decoration, func(where string, p course.Pair) {
		if p.Verdict == course.Never && p.Rule == "physics" {
			physics = append(physics, where)
		}
		if names := strings.Contains(p.Reason, "The exception is "); names != (p.Rule == "trade") {
			t.Errorf("%s: rule %q, and the reason is %q", where, p.Rule, p.Reason)
		}
	})
	want := []string{
		"enamel wet", "lustre wet", "decal wet",
		"enamel leather-hard", "lustre leather-hard", "decal leather-hard",
		"enamel bone-dry", "lustre bone-dry", "decal bone-dry", "feathering bone-dry", "marbling bone-dry", "stamping bone-dry",
		"enamel bisque", "lustre bisque", "decal bisque", "feathering bisque", "marbling bisque", "stamping bisque",
		"enamel unfired-glaze", "lustre unfired-glaze", "decal unfired-glaze", "feathering unfired-glaze", "marbling unfired-glaze", "stamping unfired-glaze",
		"stamping glaze-fired",
	}
	if d := cmp.Diff(want, physics); d != "" {
		t.Error(d)
	}
}

// TestRemediesDoNoHarm makes sure that no advice of the table leads from a
// finished pot to a solvent, or from a brush to a mist.
func TestRemediesDoNoHarm(t *testing.T) {
	harmful := map[string]string{ // words, and the rows that may use them
		"alcohol": "", "thinner": "", "solvent": "", "hot wax": "", "torch": "", "sand it": "", "sanding": "", "spray": "", "card": "engobe bisque|coloured-slip bisque",
		"enamel": "enamel ", "lustre": "lustre ", "decal": "decal ", "oxide": "oxide-wash ",
	}
	pairs(demo(t).Decoration, func(where string, p course.Pair) {
		for _, word := range slices.Sorted(maps.Keys(harmful)) {
			allowed := slices.ContainsFunc(strings.Split(harmful[word], "|"), func(row string) bool { return row != "" && strings.HasPrefix(where, row) })
			advised := strings.Contains(" "+strings.ToLower(p.Remedy), " "+word)
			if advised && !allowed && !strings.Contains(p.Remedy, "Do not "+word) {
				t.Errorf("%s: the remedy says %q: %s", where, word, p.Remedy)
			}
		}
	})
}

// TestRemediesAreAllowed makes sure that no cell recommends there what the
// table forbids there.
func TestRemediesAreAllowed(t *testing.T) {
	d := demo(t).Decoration
	pairs(d, func(where string, p course.Pair) {
		i := slices.IndexFunc(d.States, func(s course.State) bool { return strings.HasSuffix(where, " "+s.ID) })
		if i < 0 {
			return // layers lie in many states
		}
		for _, advice := range []string{"Use ", "Paint with ", "Paint a ", "Paint the ", "or use ", "Print with ", "Draw with ", "Lay down "} {
			_, rest, _ := strings.Cut(p.Remedy, advice)
			rest = rest[:max(0, strings.IndexAny(rest, ".,"))]
			for _, other := range d.Media {
				words := append([]string{strings.ToLower(other.Name)}, other.Words...)
				named := slices.ContainsFunc(words, func(w string) bool { return strings.Contains(" "+rest+" ", " "+w+" ") })
				if named && other.On[d.States[i].ID].Verdict == course.Never && !strings.HasPrefix(where, other.ID+" ") {
					t.Errorf("%s: the remedy names %s, which is never there: %s", where, other.ID, p.Remedy)
				}
			}
		}
	})
}

// TestTableNamesItsHazards holds the hazards and the people of the table to
// what the course teaches: no row loses one unnoticed.
func TestTableNamesItsHazards(t *testing.T) {
	d := demo(t).Decoration
	care := func(medium, technique, state string) (string, course.Who) {
		var rows []course.Care
		if m, there := d.FindMedium(medium); there {
			rows = append(rows, m.Care, m.On[state].Care)
		}
		if q, there := d.FindTechnique(technique); there {
			rows = append(rows, q.Care, q.On[state].For(medium).Care)
		}
		all, who := d.HazardsOf(rows...)
		var ids []string
		for _, h := range all {
			ids = append(ids, h.ID)
		}
		return strings.Join(ids, " "), who
	}
	for _, c := range []struct {
		medium, technique, state, hazards string
		who                               course.Who
	}{
		{"coloured-slip", "dipping", "leather-hard", "colour", course.Student},
		{"underglaze", "brushing", "bone-dry", "colour", course.Student},
		{"stain-wash", "", "bone-dry", "dust colour wash-colour", course.Student},
		{"oxide-wash", "brushing", "bisque", "raw-metal colour", course.WithInstructor},
		{"oxide-wash", "", "bone-dry", "raw-metal dust colour", course.WithInstructor},
		{"coloured-slip", "spraying", "leather-hard", "mist colour", course.WithInstructor},
		{"stain-wash", "held-card", "unfired-glaze", "mist colour wash-colour", course.WithInstructor},
		{"coloured-slip", "scratching-through", "leather-hard", "colour blade", course.Student},
		{"coloured-slip", "scratching-through", "bone-dry", "scrapings colour blade", course.WithInstructor},
		{"glaze", "scratching-through", "unfired-glaze", "scrapings colour blade", course.WithInstructor},
		{"coloured-slip", "inlay", "bone-dry", "scrapings colour blade", course.WithInstructor},
		{"", "carving", "bone-dry", "scrapings blade", course.Student},
		{"", "burnishing", "bone-dry", "dust", course.Student},
		{"terra-sigillata", "burnishing", "bone-dry", "dust", course.Student},
		{"latex", "brushing", "bisque", "latex", course.WithInstructor},
		{"wax", "brushing", "bisque", "", course.Student},
		{"underglaze", "", "glaze-fired", "colour warm-pot", course.WithInstructor},
		{"glaze", "trailing", "glaze-fired", "colour warm-pot", course.WithInstructor},
		{"enamel", "brushing", "glaze-fired", "solvent on-glaze-metal colour", course.Instructor},
		{"lustre", "brushing", "glaze-fired", "solvent on-glaze-metal colour", course.Instructor},
		{"decal", "", "glaze-fired", "on-glaze-metal colour", course.Instructor},
	} {
		if got, who := care(c.medium, c.technique, c.state); got != c.hazards || who != c.who {
			t.Errorf("%s by %s when %s: %s, %s; want %s, %s", c.medium, c.technique, c.state, got, who, c.hazards, c.who)
		}
	}
	for _, s := range d.States {
		q, _ := d.FindTechnique("spraying")
		for _, medium := range []string{"oxide-wash", "enamel"} {
			if p := q.On[s.ID].For(medium); p.Verdict != course.Never || p.Rule != "house" {
				t.Errorf("%s may be sprayed when %s: %+v", medium, s.ID, p)
			}
		}
	}
	for _, tr := range d.Transitions {
		all, who := d.HazardsOf(tr.Care)
		fires := tr.Move == "bisque" || tr.Move == "harden" || tr.Move == "fire"
		fumes := slices.ContainsFunc(all, func(h course.Hazard) bool { return h.ID == "kiln-fume" })
		if fires != fumes || fires != (who == course.Instructor) || (tr.Move == "strip" || tr.From == "glaze-fired") != (tr.Ask != "") {
			t.Errorf("%s: %v, %s, %q", tr.ID, tr.Hazards, who, tr.Ask)
		}
	}
}

// TestWarmPotsAreTheInstructors makes sure that whatever wants a warmed pot names
// who warms it, and warns of it.
func TestWarmPotsAreTheInstructors(t *testing.T) {
	warmed := 0
	pairs(demo(t).Decoration, func(where string, p course.Pair) {
		if p.Verdict == course.Never || !strings.Contains(p.Reason+p.Remedy, "warm") && !strings.Contains(p.Remedy, "Warm") {
			return
		}
		warmed++
		if !strings.Contains(p.Reason+p.Remedy, "instructor") || !slices.Contains(p.Hazards, "warm-pot") || strings.Contains(p.Remedy, "Warm the") {
			t.Errorf("%s: %v: %s %s", where, p.Hazards, p.Reason, p.Remedy)
		}
	})
	if warmed < 9 {
		t.Errorf("%d rows want a warmed pot", warmed)
	}
}

// TestOnlyBareGroundIsWiped makes sure that no advice to take dust off first can
// be followed over loose colour: it says bare, or the planner leaves it out there,
// as it does with what a medium that holds there wants.
func TestOnlyBareGroundIsWiped(t *testing.T) {
	d := demo(t).Decoration
	pairs(d, func(where string, p course.Pair) {
		id, _, _ := strings.Cut(where, " ")
		_, isMedium := d.FindMedium(id)
		cleans := strings.Contains(p.Remedy, "off the dust") || strings.Contains(p.Remedy, "dust off") || strings.Contains(p.Remedy, "sponge first")
		if cleans && !strings.Contains(p.Remedy, " bare ") && !(isMedium && p.Verdict == course.Yes) {
			t.Errorf("%s: %s", where, p.Remedy)
		}
	})
}

// TestLookAlikesAreNoWorse makes sure that media which may stand in for each
// other before the glaze carry the same hazards to health, but for the raw
// oxides and latex, which nothing stands in for.
func TestLookAlikesAreNoWorse(t *testing.T) {
	d := demo(t).Decoration
	for _, m := range d.Media {
		for _, other := range d.Media {
			worse := slices.Contains([]string{"oxide-wash", "latex"}, other.ID) || other.Kind == "on-glaze"
			if m.Look == "" || m.Look != other.Look || worse {
				continue
			}
			was, whoWas := d.HazardsOf(m.Care)
			is, who := d.HazardsOf(other.Care)
			for _, h := range is {
				if h.Health && !slices.ContainsFunc(was, func(o course.Hazard) bool { return o.ID == h.ID }) {
					t.Errorf("%s instead of %s brings %s", other.ID, m.ID, h.ID)
				}
			}
			if who != course.Student || whoWas == "" {
				t.Errorf("%s instead of %s: %s", other.ID, m.ID, who)
			}
		}
	}
}

// TestContentHazardsArePlain makes sure that hazards are told in whole, short
// sentences, and that each goes by its own control.
func TestContentHazardsArePlain(t *testing.T) {
	for _, h := range demo(t).Decoration.Hazards {
		sentences := strings.Count(h.Do, ". ") + strings.Count(h.Do, "? ") + 1
		if sentences < 2 || sentences > 5 || !strings.HasSuffix(h.Do, ".") || !strings.HasSuffix(h.Short, ".") || !strings.HasSuffix(h.Harm, ".") || h.Lesson == "" {
			t.Errorf("%s: %d sentences: %s", h.ID, sentences, h.Do)
		}
		for s := range strings.SplitSeq(h.Do+" "+h.Harm, ". ") {
			if n := len(strings.Fields(s)); n > 25 {
				t.Errorf("%s: %d words: %s", h.ID, n, s)
			}
		}
		mask := slices.ContainsFunc(h.Wear, func(w string) bool { return strings.Contains(w, "respirator") })
		if want := slices.Contains([]string{"raw-metal", "mist", "scrapings", "dry-powder", "stain-powder"}, h.ID); mask != want {
			t.Errorf("%s: wear %v; a mask stops dust and mist, and no gas", h.ID, h.Wear)
		}
	}
}
