// Package stagetest makes decoration tables for tests: one like a studio's,
// small enough to work wishes out by hand, and random ones that no pottery
// ever had.
package stagetest

import (
	"strings"

	"slipbook/calculators/stage"
	"slipbook/calculators/words"
)

// states are those of a studio, in order.
var states = []stage.State{{ID: "wet", Name: "Wet"}, {ID: "leather-hard", Name: "Leather-hard", Parts: []stage.Part{{ID: "soft", Name: "soft leather-hard", Tell: "Handles still join."}, {ID: "firm", Name: "firm leather-hard", Tell: "A knife cuts a curl."}, {ID: "stiff", Name: "stiff leather-hard", Tell: "It hardly gives."}}}, {ID: "bone-dry", Name: "Bone dry"},
	{ID: "bisque", Name: "Bisque"}, {ID: "unfired-glaze", Name: "Unfired glaze"}, {ID: "glaze-fired", Name: "Glaze-fired"}}

// hazards of the table, so many that each kind is there.
var hazards = []stage.Hazard{
	{ID: "dust", Title: "Dust", Short: "Keep it wet, and wipe up wet.", Wear: []string{"a fitted respirator"}, Lesson: "safety/dust.html", Health: true},
	{ID: "mist", Title: "Mist", Short: "Spray in the booth only.", Wear: []string{"a fitted respirator", "safety glasses"}, Place: "in the booth", Lesson: "safety/spray.html", Health: true},
	{ID: "metal", Title: "Raw metal", Short: "Gloves on, and wash your hands.", Wear: []string{"gloves"}, Lesson: "safety/metal.html", Health: true},
	{ID: "heat", Title: "Heat", Short: "Keep away from the hot kiln.", Place: "in the kiln room"},
}

// The hazards by bit.
const (
	Dust stage.Hazards = 1 << iota
	Mist
	Metal
	Heat
)

// Table is the heart of a studio's table (common practice of the trade): one
// letter a state, y(es), l(abel), r(isky), n(ever).
func Table() *stage.Table {
	t := &stage.Table{Words: words.In("en-GB"), States: states, Firing: "Fire it to the cone on its label.", Drying: "Let it dry apart.", Fire: stage.Rule{Reason: "It harms while it is wet.", Hazards: Heat, Who: stage.Instructor}, Hazards: hazards}
	t.Metals = stage.Metals{Words: []string{"cobalt", "lead"}, Unplanned: []string{"zinc", "uranium"}, NeverFood: []string{"lead"}, NotOver: []string{"spraying"}, Rule: stage.Rule{Ask: "Is it the raw metal?", Reason: "The reason of what blows metal about.", Hazards: Metal, Who: stage.WithInstructor}}
	t.Phrases = []stage.Phrase{{Words: []string{"majolica"}, Layers: "white glaze, wash brushed"}, {Words: []string{"overglaze"}, Ask: "Do you mean enamel, or wash on the unfired glaze?"}}
	addMedia(t)
	addTechniques(t)
	addOvers(t)
	addTransitions(t)
	t.Bodies = []stage.Body{{ID: "yard-paper", Name: "Yard paper clay", Changes: []stage.Change{{Medium: "coloured-slip", State: 2, Rule: rules("slip on paper clay", "l")[0]}}}}
	return t
}

func addMedia(t *stage.Table) {
	for _, m := range []struct {
		medium stage.Medium
		on     string
	}{
		{stage.Medium{ID: "coloured-slip", Name: "Coloured slip", Words: []string{"slip"}, Kind: stage.Clay, Look: "solid", Best: 1, Food: true}, "yynnnn"},
		{stage.Medium{ID: "engobe", Name: "Engobe", Kind: stage.Clay, Look: "solid", Best: 1, Food: true}, "ryllnn"},
		{stage.Medium{ID: "underglaze", Name: "Underglaze", Kind: stage.Colour, Look: "solid", Best: 1, Food: true}, "ryylln"},
		{stage.Medium{ID: "stain-wash", Name: "Stain wash", Words: []string{"wash"}, Kind: stage.Powder, Look: "line", Best: 3, Food: true, Fixed: stage.RubTest}, "nryyyn"},
		{stage.Medium{ID: "oxide-wash", Name: "Oxide wash", Kind: stage.Powder, Look: "line", Best: 3, Food: true, Fixed: stage.Loose, Hazards: Metal, Who: stage.WithInstructor}, "nrryyn"},
		{stage.Medium{ID: "glaze", Name: "Glaze", Words: []string{"clear glaze"}, Kind: stage.Glaze, Look: "gloss", Best: 3, Food: true}, "nllyrr"},
		{stage.Medium{ID: "opaque-glaze", Base: "glaze", Name: "Opaque glaze", Words: []string{"white glaze"}, Kind: stage.Glaze, Look: "gloss", Best: 3, Food: true, Hides: true}, "nllyrr"},
		{stage.Medium{ID: "enamel", Name: "Enamel", Kind: stage.OnGlaze, Look: "solid", Best: 5, Heat: 3, Hazards: Metal, Who: stage.Instructor}, "nnnnny"},
		{stage.Medium{ID: "decal", Name: "Decal", Kind: stage.OnGlaze, Look: "on-glaze", Best: 5, Heat: 2}, "nnnnnl"},
		{stage.Medium{ID: "lustre", Name: "Lustre", Kind: stage.OnGlaze, Look: "on-glaze", Best: 5, Heat: 1}, "nnnnnl"},
		{stage.Medium{ID: "wax", Name: "Wax", Words: []string{"waxed"}, Kind: stage.Resist, Best: 3}, "nyyyyn"},
		{stage.Medium{ID: "latex", Name: "Latex", Kind: stage.Resist, Fixed: stage.Peeled, Best: 3, Hazards: Dust}, "nyrynn"},
	} {
		if m.medium.Base == "" {
			m.medium.Base = m.medium.ID
		}
		m.medium.On = rules(m.medium.Name, m.on)
		own := mixed[m.medium.ID]
		m.medium.Recipes, m.medium.Mixing, m.medium.Wet = own.Recipes, own.Mixing, own.Wet
		t.Media = append(t.Media, m.medium)
	}
}

// mixed is what the studio of the table mixes itself.
var mixed = map[string]stage.Medium{
	"coloured-slip": {
		Recipes: []stage.Recipe{{Name: "White slip, to trail", Page: "recipes/white.html", Proof: "our tile W2, cone 6", Tile: "tiles.html#W2"}, {Name: "Blue slip", Page: "recipes/blue.html", Proof: "untested"}},
		Mixing:  "Wear a mask and gloves to weigh it. Contains cobalt: “Blue slip”.",
		Wet:     []string{"“Blue slip”: it makes skin itch."},
	},
	"glaze": {Recipes: []stage.Recipe{{Name: "Clear", Page: "recipes/clear.html", Proof: "untested"}}, Mixing: "Wear a mask to weigh it."},
}

func addTechniques(t *stage.Table) {
	for _, q := range []struct {
		technique stage.Technique
		on        string
	}{
		{stage.Technique{ID: "stencil", Name: "Stencil"}, "rynrnn"},
		{stage.Technique{ID: "trailing", Name: "Trailing", Words: []string{"trailed"}, With: []string{"coloured-slip", "engobe"}}, "yynnnn"},
		{stage.Technique{ID: "wiping-back", Name: "Wiping back", Words: []string{"wiped back", "wiped"}, With: []string{"stain-wash", "oxide-wash"}, Takes: true}, "nrrynn"},
		{stage.Technique{ID: "scratching", Name: "Scratching", Words: []string{"scratched", "sgraffito"}, With: []string{"coloured-slip", "engobe", "underglaze", "glaze"}, Takes: true}, "nyrrrn"},
		{stage.Technique{ID: "carving", Name: "Carving", Words: []string{"carved"}, Bare: true, Takes: true}, "rynnnn"},
		{stage.Technique{ID: "stamping", Name: "Stamping", Words: []string{"stamped"}, Bare: true, Takes: true}, "yynnnn"},
		{stage.Technique{ID: "brushing", Name: "Brushing", Words: []string{"brushed", "brush"}, Coats: true}, "yyyyyy"},
		{stage.Technique{ID: "dipping", Name: "Dipping", Words: []string{"dipped"}, Coats: true}, "nyyyyy"},
		{stage.Technique{ID: "spraying", Name: "Spraying", Words: []string{"sprayed"}, Coats: true, Hazards: Mist}, "ryyyyy"},
	} {
		for _, r := range rules(q.technique.Name, q.on) {
			q.technique.On = append(q.technique.On, stage.Cell{{Rule: r}})
			q.technique.Best = -1
		}
		t.Techniques = append(t.Techniques, q.technique)
	}
	part := func(technique string, part uint8) {
		for i := range t.Techniques {
			if t.Techniques[i].ID == technique {
				t.Techniques[i].On[1][0].Part = part
			}
		}
	}
	part("trailing", 1)
	part("carving", 2)
	part("scratching", 3)
	for i := range t.Techniques {
		if t.Techniques[i].ID == "scratching" {
			for state := 2; state < 5; state++ {
				t.Techniques[i].On[state][0].Hazards = Dust
			}
		}
	}
}

func addOvers(t *stage.Table) {
	over := func(under, above, verdict string, unless ...string) {
		t.Overs = append(t.Overs, stage.Over{Under: under, Above: above, Unless: unless, Rule: rules(under+" under "+above, verdict)[0]})
	}
	for _, under := range []string{"coloured-slip", "engobe"} {
		over(under, "coloured-slip", "y")
		over(under, "underglaze", "y")
		over(under, "stain-wash", "y")
	}
	over("underglaze", "coloured-slip", "r")
	over("underglaze", "underglaze", "y")
	over("underglaze", "glaze", "y", "brushing")
	over("stain-wash", "coloured-slip", "n")
	over("stain-wash", "underglaze", "r")
	over("stain-wash", "glaze", "y", "brushing")
	over("oxide-wash", "coloured-slip", "n")
	over("oxide-wash", "glaze", "y", "brushing")
	over("wax", "glaze", "l")
	t.Overs[len(t.Overs)-1].Ask = "Where the wax is the pot stays bare. Is that meant?"
}

func addTransitions(t *stage.Table) {
	for _, m := range []stage.Transition{
		{ID: "stiffen", Move: stage.Dry, From: 0, To: 1, Name: "Let it stiffen."},
		{ID: "dry", Move: stage.Dry, From: 1, To: 2, Name: "Let it dry."},
		{ID: "bisque", Move: stage.Bisque, From: 2, To: 3, Name: "Bisque fire it."},
		{ID: "harden", Move: stage.Harden, From: 3, To: 3, Name: "Fire it again to bisque heat."},
		{ID: "wash-off", Move: stage.Strip, From: 4, To: 3, Name: "Wash the glaze off."},
		{ID: "glaze-fire", Move: stage.Fire, From: 4, To: 5, Name: "Glaze fire it."},
		{ID: "last-fire", Move: stage.Fire, From: 3, To: 5, Name: "Fire it bare."},
		{ID: "refire", Move: stage.Fire, From: 5, To: 5, Name: "Glaze fire it again."},
	} {
		if m.Move == stage.Bisque || m.Move == stage.Harden || m.Move == stage.Fire {
			m.Hazards = Heat
		}
		if m.Move == stage.Strip {
			m.Ask = "Shall the coat really come off?"
		}
		m.Reason = "The reason of " + m.ID + "."
		t.Transitions = append(t.Transitions, m)
	}
}

// rules spells verdicts into rules whose sentences name what they are about.
func rules(name, verdicts string) []stage.Rule {
	var list []stage.Rule
	for i, c := range verdicts {
		r := stage.Rule{Verdict: stage.Verdict(strings.IndexRune("ylrn", c))}
		at := ""
		if len(verdicts) > 1 {
			at = " when " + strings.ToLower(states[i].Name)
		}
		r.Reason = "The reason of " + strings.ToLower(name) + at + "."
		if r.Verdict != stage.Yes {
			r.Fault, r.Remedy = "Its fault.", "Its remedy."
		}
		list = append(list, r)
	}
	return list
}
