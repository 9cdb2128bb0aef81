package stage_test

import (
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
)

// TestWishes holds wishes worked out by hand on a studio's table. Steps are
// written as their actions, layers by their medium.
func TestWishes(t *testing.T) {
	tests := []struct{ name, state, layers, options, want string }{
		{"slip on a leather-hard mug", "leather-hard", "slip", "", "slip, dry, bisque fire, glaze, dry, fire"},
		{"a brush over a wash that may be loose", "leather-hard", "slip by stencil, wash wiped back, clear glaze brushed", "",
			"conflict 2: Glaze in another way than brushing."},
		{"the same with a dipped glaze", "leather-hard", "slip by stencil, wash wiped back, clear glaze dipped", "",
			"slip, dry, bisque fire, wash, work, dry, glaze, dry, fire"},
		{"a wash that was rubbed clean", "bisque", "clear glaze brushed", "already wash fixed", "glaze, dry, fire"},
		{"a wash that was not", "bisque", "clear glaze brushed", "already wash", "conflict 0: Glaze in another way than brushing."},
		{"slip too late", "bone-dry", "slip", "", "conflict 0: Underglaze instead of coloured slip."},
		{"slip too late, on paper clay", "bone-dry", "slip", "body", "slip, dry, bisque fire, glaze, dry, fire"},
		{"underglaze on bone dry dries again", "bone-dry", "underglaze", "", "underglaze, dry, bisque fire, glaze, dry, fire"},
		{"underglaze from wet waits", "wet", "underglaze", "", "dry, underglaze, dry, bisque fire, glaze, dry, fire"},
		{"wash on bisque", "bisque", "wash", "", "wash, dry, glaze, dry, fire"},
		{"wash on bare bisque", "bisque", "wash", "bare no food", "wash, dry, fire"},
		{"wash on leather-hard clay waits for bisque", "leather-hard", "wash", "", "dry, bisque fire, wash, dry, glaze, dry, fire"},
		{"underglaze forgotten under glaze asks the label first", "unfired-glaze", "underglaze", "", "underglaze, dry, fire|label 1"},
		{"wash on the glaze", "unfired-glaze", "wash", "", "wash, dry, fire"},
		{"a second coat, not a washed pot", "unfired-glaze", "clear glaze dipped", "", "glaze, dry, fire"},
		{"painting on unfired white glaze", "bisque", "white glaze, wash", "", "white glaze, wash, dry, fire"},
		{"the word for that", "bisque", "majolica", "", "white glaze, wash, dry, fire"},
		{"white glaze hides", "leather-hard", "slip, white glaze", "", "slip, dry, bisque fire, white glaze, dry, fire|not see"},
		{"enamel and lustre on a glazed pot", "glaze-fired", "enamel, lustre", "", "enamel, dry, on-glaze fire, lustre, dry, on-glaze fire|label 1"},
		{"lustre before enamel", "glaze-fired", "lustre, enamel", "", "conflict 1: The same in another order."},
		{"enamel on bisque gets its glaze first", "bisque", "enamel", "", "glaze, dry, fire, enamel, dry, on-glaze fire"},
		{"slip over wash", "leather-hard", "wash, slip", "", "conflict 1: The same in another order."},
		{"slip on glazed ware: enamel is for the instructor, so a new pot", "glaze-fired", "slip", "",
			"conflict 0: Too late for this pot. On a new pot, begun while it is “leather-hard”."},
		{"slip under a clear glaze on glazed ware: never the glaze alone", "glaze-fired", "slip, clear glaze", "",
			"conflict 0: Too late for this pot. On a new pot, begun while it is “leather-hard”."},
		{"apart, each at its best", "leather-hard", "wash, slip", "apart", "slip, dry, bisque fire, wash, dry, glaze, dry, fire"},
		{"a glaze wished on a glazed pot", "unfired-glaze", "wash, clear glaze", "", "wash, dry, glaze, dry, fire"},
		{"enamel before the wash", "bisque", "enamel, wash, clear glaze", "", "conflict 1: The same in another order."},
		{"a stencil on fired glaze", "glaze-fired", "enamel by stencil", "", "conflict 0: Enamel in another way than stencil."},
		{"a label on a risky step", "bisque", "underglaze by stencil", "", "underglaze, dry, glaze, dry, fire|label 1"},
		{"trailing wants soft clay, and the plan asks", "leather-hard", "slip trailed", "", "slip, dry, bisque fire, glaze, dry, fire|label 1"},
		{"trailing on stiff clay is a risk", "leather-hard stiff", "slip trailed", "", "slip, dry, bisque fire, glaze, dry, fire|risky 1"},
		{"a coat, then wait, then scratch", "leather-hard", "slip dipped then scratched", "", "slip, wait, work, dry, bisque fire, glaze, dry, fire|label 0"},
		{"stiff clay does not go soft again", "leather-hard", "slip scratched, slip trailed", "", "slip, wait, work, slip, dry, bisque fire, glaze, dry, fire|risky 1"},
		{"carved before a coat", "leather-hard", "carved, slip", "", "work, slip, dry, bisque fire, glaze, dry, fire"},
		{"wax keeps the glaze off, so it is burned off first", "bisque", "wash waxed, clear glaze dipped", "", "wash, wax, dry, harden on, glaze, dry, fire|label 0"},
		{"nothing is sprayed over loose oxide", "bisque", "oxide wash, clear glaze sprayed", "", "conflict 1: Glaze in another way than spraying."},
		{"oxide is never fixed by bisque heat", "bisque", "oxide wash, clear glaze brushed", "", "conflict 1: Glaze in another way than brushing."},
		{"underglaze under a brushed glaze", "bone-dry", "underglaze, glaze brushed", "", "underglaze, dry, bisque fire, glaze, dry, fire"},
		{"underglaze on bisque under a brushed glaze", "bisque", "underglaze, glaze brushed", "", "underglaze, dry, harden on, glaze, dry, fire|label 1"},
		{"a glaze over what is named after it", "bisque", "clear glaze over wash", "", "wash, dry, glaze, dry, fire"},
		{"six layers", "wet", "slip, slip, underglaze, wash, clear glaze, enamel", "",
			"dry, slip, slip, underglaze, dry, bisque fire, wash, dry, glaze, dry, fire, enamel, dry, on-glaze fire"},
	}
	table := stagetest.Table()
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := table.Plan(wish(t, table, test.state, test.layers, test.options))
			want, more, _ := strings.Cut(test.want, "|")
			if got := summary(table, p); got != want {
				t.Errorf("got  %s\nwant %s\n%+v", got, want, p)
			}
			if label, ok := strings.CutPrefix(more, "label "); ok && label != string(rune('0'+p.Questions)) {
				t.Errorf("%d label questions, want %s", p.Questions, label)
			}
			if risky, ok := strings.CutPrefix(more, "risky "); ok && risky != string(rune('0'+p.Risky)) {
				t.Errorf("%d risky steps, want %s", p.Risky, risky)
			}
			if more == "not see" && !strings.Contains(strings.Join(p.Ends, " "), "You will not see it") {
				t.Errorf("ends %q", p.Ends)
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
	state, part, _ := strings.Cut(state, " ")
	for i, s := range table.States {
		if s.ID == state {
			w.State = i
			w.Part = 1 + slices.IndexFunc(s.Parts, func(p stage.Part) bool { return p.ID == part })
		}
	}
	if _, already, is := strings.Cut(options, "already "); is {
		coats, _, err := table.Coats(already, w.State)
		if err != nil {
			t.Fatal(err)
		}
		w.Already = coats
	}
	understood, err := table.Layers(layers)
	if err != nil {
		t.Fatal(err)
	}
	w.Layers = understood.Layers
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
		_, what, _ := strings.Cut(s.What, "Put on ")
		what = what[:strings.IndexAny(what, ".:,")]
		what, _, _ = strings.Cut(what, " by ")
		what, _, _ = strings.Cut(what, " not by ")
		for long, short := range map[string]string{"coloured slip": "slip", "stain wash": "wash", "opaque glaze": "white glaze"} {
			if what == long {
				what = short
			}
		}
		steps = append(steps, what)
	}
	return strings.Join(steps, ", ")
}

func FuzzLayers(f *testing.F) {
	f.Add("slip by stencil, wash wiped back")
	f.Add("\xff,,,a the glaze-glaze;brushed")
	table := stagetest.Table()
	f.Fuzz(func(t *testing.T, text string) {
		u, err := table.Layers(text)
		if err == nil && len(u.Layers) <= 4 && len(u.Layers) > 0 {
			table.Plan(stage.Wish{Layers: u.Layers, Body: -1})
		}
	})
}

func FuzzDecode(f *testing.F) {
	f.Add(stagetest.Table().Encode())
	f.Add(withoutFire()) // no pot ever wears a coat of glaze
	f.Add("state\ta\tA\non\t0\t0\t\t\t\n")
	f.Fuzz(func(t *testing.T, text string) {
		table, err := stage.Decode(text)
		if err != nil {
			return
		}
		if len(table.States) > 0 && len(table.Media) > 0 {
			table.Plan(stage.Wish{Layers: []stage.Layer{{Medium: 0}}, Body: -1})
		}
	})
}

// withoutFire is the table cut off behind its second transition.
func withoutFire() string {
	text := stagetest.Table().Encode()
	at := strings.Index(text, "\nmove\t") + 1
	for range 2 {
		at += strings.Index(text[at:], "\n") + 1
	}
	return text[:at]
}

// TestTableWithoutAFiring wants a glaze refused where no pot can wear it.
func TestTableWithoutAFiring(t *testing.T) {
	table, err := stage.Decode(withoutFire())
	if err != nil {
		t.Fatal(err)
	}
	for medium := range table.Media {
		for state := range table.States {
			p := table.Plan(stage.Wish{State: state, Layers: []stage.Layer{{Medium: medium}}, Body: -1})
			if p.Conflict == nil && table.Media[medium].Kind == stage.Glaze {
				t.Errorf("%s on %s is planned: %+v", table.Media[medium].Name, table.States[state].Name, p.Steps)
			}
		}
	}
}

func BenchmarkSixLayers(b *testing.B) {
	table := stagetest.Table()
	u, err := table.Layers("slip, slip, underglaze, wash, clear glaze, enamel")
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
				if table.Plan(stage.Wish{Layers: u.Layers, Apart: apart, Body: -1}).Conflict != nil {
					b.Fatal("no plan")
				}
			}
		})
	}
}
