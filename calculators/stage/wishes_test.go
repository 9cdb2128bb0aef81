package stage_test

import (
	"strings"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
)

// TestWishes holds wishes worked out by hand on a studio's table. Steps are
// written as their actions, layers by their medium.
func TestWishes(t *testing.T) {
	tests := []struct{ name, state, layers, options, want string }{
		{"slip on a leather-hard mug", "leather-hard", "slip", "", "slip, dry, bisque fire, glaze, fire"},
		{"the example of the handbook", "leather-hard", "slip by stencil, wash wiped back, clear glaze brushed", "",
			"slip, dry, bisque fire, wash, harden on, glaze, fire"},
		{"the same with a dipped glaze", "leather-hard", "slip by stencil, wash wiped back, clear glaze dipped", "",
			"slip, dry, bisque fire, wash, glaze, fire"},
		{"slip too late", "bone-dry", "slip", "", "conflict 0: Underglaze instead of coloured slip."},
		{"slip too late, on paper clay", "bone-dry", "slip", "body", "slip, dry, bisque fire, glaze, fire"},
		{"underglaze on bone dry dries again", "bone-dry", "underglaze", "", "underglaze, dry, bisque fire, glaze, fire"},
		{"underglaze from wet waits", "wet", "underglaze", "", "dry, underglaze, dry, bisque fire, glaze, fire"},
		{"wash on bisque", "bisque", "wash", "", "wash, glaze, fire"},
		{"wash on bare bisque", "bisque", "wash", "bare no food", "wash, fire"},
		{"wash on leather-hard clay waits for bisque", "leather-hard", "wash", "", "dry, bisque fire, wash, glaze, fire"},
		{"underglaze forgotten under glaze", "unfired-glaze", "underglaze", "", "wash off, underglaze, glaze, fire|label 1"},
		{"wash on the glaze", "unfired-glaze", "wash", "", "wash, fire"},
		{"painting on unfired white glaze", "bisque", "white glaze, wash", "", "white glaze, wash, fire"},
		{"white glaze hides", "leather-hard", "slip, white glaze", "", "slip, dry, bisque fire, white glaze, fire|not see"},
		{"enamel and lustre on a glazed pot", "glaze-fired", "enamel, lustre", "", "enamel, on-glaze fire, lustre, on-glaze fire|label 1"},
		{"lustre before enamel", "glaze-fired", "lustre, enamel", "", "conflict 1: The same in another order."},
		{"enamel on bisque gets its glaze first", "bisque", "enamel", "", "glaze, fire, enamel, on-glaze fire"},
		{"slip over wash", "leather-hard", "wash, slip", "", "conflict 1: The same in another order."},
		{"slip on glazed ware", "glaze-fired", "slip", "", "conflict 0: Enamel instead of coloured slip."},
		{"apart, each at its best", "leather-hard", "wash, slip", "apart", "slip, dry, bisque fire, wash, glaze, fire"},
		{"a glaze wished on a glazed pot", "unfired-glaze", "wash, clear glaze", "", "wash off, wash, glaze, fire"},
		{"enamel before the wash", "bisque", "enamel, wash, clear glaze", "", "conflict 1: The same in another order."},
		{"a stencil on fired glaze", "glaze-fired", "enamel by stencil", "", "conflict 0: Enamel in another way than stencil."},
		{"a label on a risky step", "bisque", "underglaze by stencil", "", "underglaze, glaze, fire|label 1"},
		{"trailing when wet", "wet", "slip trailed", "", "dry, slip, dry, bisque fire, glaze, fire"},
		{"oxide wash under a sprayed glaze", "bisque", "oxide wash, clear glaze sprayed", "", "oxide wash, glaze, fire"},
		{"underglaze under a brushed glaze", "bone-dry", "underglaze, glaze brushed", "", "underglaze, dry, bisque fire, glaze, fire"},
		{"underglaze on bisque under a brushed glaze", "bisque", "underglaze, glaze brushed", "", "underglaze, harden on, glaze, fire|label 1"},
		{"six layers", "wet", "slip, slip, underglaze, wash, clear glaze, enamel", "",
			"dry, slip, slip, underglaze, dry, bisque fire, wash, glaze, fire, enamel, on-glaze fire"},
	}
	table := stagetest.Table()
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := table.Plan(wish(t, table, test.state, test.layers, test.options))
			want, more, _ := strings.Cut(test.want, "|")
			if got := summary(table, p); got != want {
				t.Errorf("got  %s\nwant %s\n%+v", got, want, p)
			}
			if label, ok := strings.CutPrefix(more, "label "); ok && label != string(rune('0'+p.Label)) {
				t.Errorf("%d label questions, want %s", p.Label, label)
			}
			if more == "not see" && !strings.Contains(strings.Join(p.Notes, " "), "You will not see it") {
				t.Errorf("notes %q", p.Notes)
			}
		})
	}
}

func wish(t *testing.T, table *stage.Table, state, layers, options string) stage.Wish {
	t.Helper()
	w := stage.Wish{Food: !strings.Contains(options, "no food"), Bare: strings.Contains(options, "bare"), Apart: strings.Contains(options, "apart"), Body: -1}
	if strings.Contains(options, "body") {
		w.Body = 0
	}
	for i, s := range table.States {
		if s.ID == state {
			w.State = i
		}
	}
	var err error
	if w.Layers, err = table.Layers(layers); err != nil {
		t.Fatal(err)
	}
	return w
}

func summary(table *stage.Table, p stage.Plan) string {
	if p.Conflict != nil {
		return "conflict " + string(rune('0'+p.Conflict.Layer)) + ": " + p.Conflict.Changed
	}
	var steps []string
	for _, s := range p.Steps {
		if s.Action != "put on" {
			steps = append(steps, s.Action)
			continue
		}
		what := strings.TrimPrefix(s.What, "Put on ")
		what = what[:strings.IndexAny(what, ".:,")]
		for long, short := range map[string]string{"coloured slip": "slip", "stain wash": "wash", "opaque glaze": "white glaze"} {
			if what == long {
				what = short
			}
		}
		steps = append(steps, what)
	}
	return strings.Join(steps, ", ")
}

// TestShorter wants the way with fewer steps and more risk to be named as
// such, and never a way that is no shorter or no riskier.
func TestShorter(t *testing.T) {
	table := stagetest.Table()
	p := table.Plan(wish(t, table, "leather-hard", "wash", ""))
	want := "A shorter way is riskier: 1 step fewer, but 1 risky step and 1 question to the label. Put on stain wash. The reason of stain wash when leather-hard."
	if p.Risky != 0 || p.Shorter != want {
		t.Errorf("%d risky steps; %q", p.Risky, p.Shorter)
	}
	if p = table.Plan(wish(t, table, "bisque", "wash", "")); p.Shorter != "" {
		t.Errorf("no way is shorter, but %q", p.Shorter)
	}
}

func TestLayers(t *testing.T) {
	table := stagetest.Table()
	for text, want := range map[string]string{
		"slip by stencil, wash wiped back, clear glaze brushed": "coloured-slip stencil, stain-wash wiping-back, glaze brushing",
		"Coloured Slip; OXIDE WASH":                             "coloured-slip, oxide-wash",
		"a coat of slip, trailed":                               "error: “trailed” names no medium of the table.",
		"brushed clear glaze, on the slip":                      "glaze brushing, coloured-slip",
		"slip by stensil":                                       "error: In “slip by stensil” the words “stensil” are not understood.",
		"engobe wiped back":                                     "error: Wiping back is not a way of working with engobe.",
		"mud":                                                   "error: “mud” names no medium of the table.",
		" , ;":                                                  "",
		"slip,slip,slip,slip,slip,slip,slip,slip,slip": "error: Those are too many layers.",
	} {
		layers, err := table.Layers(text)
		if err != nil {
			if !strings.HasPrefix("error: "+err.Error(), want) || !strings.HasPrefix(want, "error") {
				t.Errorf("%q: %v", text, err)
			}
			continue
		}
		var got []string
		for _, l := range layers {
			s := table.Media[l.Medium].ID
			if l.Technique >= 0 {
				s += " " + table.Techniques[l.Technique].ID
			}
			got = append(got, s)
		}
		if strings.Join(got, ", ") != want {
			t.Errorf("%q: got %q, want %q", text, strings.Join(got, ", "), want)
		}
	}
}

func FuzzLayers(f *testing.F) {
	f.Add("slip by stencil, wash wiped back")
	f.Add("\xff,,,a the glaze-glaze;brushed")
	table := stagetest.Table()
	f.Fuzz(func(t *testing.T, text string) {
		layers, err := table.Layers(text)
		if err == nil && len(layers) <= 4 && len(layers) > 0 {
			table.Plan(stage.Wish{Layers: layers, Body: -1})
		}
	})
}

func FuzzDecode(f *testing.F) {
	f.Add(stagetest.Table().Encode())
	f.Add("state\ta\tA\non\t0\t0\t\t\t\n")
	f.Fuzz(func(t *testing.T, text string) {
		table, err := stage.Decode(text)
		if err != nil {
			return
		}
		if len(table.States) > 0 && len(table.Media) > 0 {
			table.Plan(stage.Wish{Layers: []stage.Layer{{Medium: 0, Technique: -1}}, Body: -1})
		}
	})
}

func BenchmarkSixLayers(b *testing.B) {
	table := stagetest.Table()
	layers, err := table.Layers("slip, slip, underglaze, wash, clear glaze, enamel")
	if err != nil {
		b.Fatal(err)
	}
	for _, apart := range []bool{false, true} {
		name := "same place"
		if apart {
			name = "apart"
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if table.Plan(stage.Wish{Layers: layers, Apart: apart, Body: -1}).Conflict != nil {
					b.Fatal("no plan")
				}
			}
		})
	}
}
