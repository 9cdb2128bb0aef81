package course_test

import (
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"slipbook/calculators/stage"
	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// overBase is the small course with a table and hazards that lie over the
// program's own.
func overBase(t *testing.T, text string) *course.Course {
	t.Helper()
	files := coursetest.Small()
	files[table] = &fstest.MapFile{Data: []byte(text)}
	files[hazards] = &fstest.MapFile{Data: []byte(taught)}
	c, found := new(course.Reader).Load(files)
	if len(found) > 0 {
		t.Fatal(findings(found))
	}
	return c
}

// TestBaseIsSound reads the program's own files as if a course had written
// them: nothing is wrong with them.
func TestBaseIsSound(t *testing.T) {
	files := coursetest.Small()
	for _, name := range []string{table, hazards} {
		text, err := os.ReadFile("base/" + name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: append([]byte("base: no\n"), text...)}
	}
	c, found := new(course.Reader).Load(files)
	if got := findings(found); !strings.HasPrefix(got, "hazards.yaml:1:1: warning: no lesson is named for these hazards: raw-metal, ") || len(found) != 1 {
		t.Error(got) // a program knows no course's lessons
	}
	if o := c.Decoration.Origin; o.Program != 0 || o.Course < 200 {
		t.Errorf("%+v", o)
	}
}

// TestCourseOverBase makes sure that a course's words go before the program's,
// key by key and state by state, and that silence about safety takes none away.
func TestCourseOverBase(t *testing.T) {
	plain := overBase(t, "exceptions: []\n").Decoration
	d := overBase(t, `media:
  - id: engobe
    name: Our engobe
    states:
      bisque: {verdict: yes, reason: Ours is fluxed for it.}
  - id: oxide-wash
    states:
      bone-dry: {verdict: never, rule: house, reason: We do not., fault: It dusts., remedy: Wait for the bisque.}
techniques:
  - id: scratching-through
    states:
      bone-dry: {verdict: never, rule: house, reason: We do not., fault: It dusts., remedy: Wait., hazards: []}
      bisque: {verdict: never, rule: house, reason: We do not., fault: It dusts., remedy: Wait.}
transitions:
  - {id: bisque-fire, name: Bring it to the kiln., who: student}
over:
  - {under: coloured-slip, above: [engobe], verdict: risky, reason: Ours lifts., fault: It lifts., remedy: Wait.}
`).Decoration
	m, _ := d.FindMedium("engobe")
	was, _ := plain.FindMedium("engobe")
	if m.Name != "Our engobe" || m.About != was.About || m.On["bisque"].Verdict != course.Yes || m.On["wet"].Reason != was.On["wet"].Reason || !slices.Equal(m.Hazards, was.Hazards) {
		t.Errorf("%+v", m)
	}
	oxide, _ := d.FindMedium("oxide-wash")
	was, _ = plain.FindMedium("oxide-wash")
	if oxide.Who != course.WithInstructor || !slices.Equal(oxide.Hazards, was.Hazards) || len(oxide.Hazards) == 0 {
		t.Errorf("what is said of oxide wash in every state became %+v", oxide.Care)
	}
	if p := oxide.On["bone-dry"]; p.Verdict != course.Never || !slices.Equal(p.Hazards, was.On["bone-dry"].Hazards) || len(p.Hazards) == 0 {
		t.Errorf("%+v", p)
	}
	q, _ := d.FindTechnique("scratching-through")
	old, _ := plain.FindTechnique("scratching-through")
	dry, bisque := q.On["bone-dry"].For("engobe"), q.On["bisque"].For("engobe")
	if len(dry.Hazards) != 0 || dry.Verdict != course.Never || bisque.Verdict != course.Never || !slices.Equal(bisque.Hazards, old.On["bisque"][0].Hazards) || len(bisque.Hazards) == 0 {
		t.Errorf("%+v\n%+v", dry, bisque)
	}
	i := slices.IndexFunc(d.Overs, func(o course.Over) bool { return o.Under == "coloured-slip" && o.Above == "engobe" })
	if d.Overs[i].Verdict != course.Risky || len(d.Overs) != len(plain.Overs) || len(d.Media) != len(plain.Media) {
		t.Errorf("%+v, %d layers", d.Overs[i], len(d.Overs))
	}
	i = slices.IndexFunc(d.Transitions, func(tr course.Transition) bool { return tr.ID == "bisque-fire" })
	if tr := d.Transitions[i]; tr.Name != "Bring it to the kiln." || tr.Who != course.Student || len(tr.Hazards) == 0 || len(d.Transitions) != len(plain.Transitions) {
		t.Errorf("%+v", tr)
	}
	if diff := cmp.Diff([]string{"Our engobe", "Oxide wash", "Scratching through", "engobe on coloured-slip", "Bring it to the kiln."}, d.Origin.Names); diff != "" || d.Origin.Course != 6 || d.Origin.Program+6 != plain.Origin.Program {
		t.Errorf("%+v\n%s", d.Origin, diff)
	}
	if !d.FromProgram(was.About) || d.FromProgram("Our engobe") {
		t.Error("whose words are whose is not known")
	}
}

// TestSilentRowIsNoSafer words a row of the program's own table anew: what can
// hurt there, and who may, stay until the course says otherwise.
func TestSilentRowIsNoSafer(t *testing.T) {
	const row = `media:
  - {id: underglaze, states: {glaze-fired: {verdict: risky, reason: Ours melts., fault: It runs., remedy: Wait.MORE}}}
`
	for more, want := range map[string]course.Care{
		"":                             {Hazards: []string{"warm-pot"}, Who: course.WithInstructor},
		", who: instructor":            {Hazards: []string{"warm-pot"}, Who: course.Instructor},
		", who: student, hazards: []":  {Who: course.Student},
		", hazards: [hot-kiln, blade]": {Hazards: []string{"hot-kiln", "blade"}, Who: course.WithInstructor},
	} {
		m, _ := overBase(t, strings.Replace(row, "MORE", more, 1)).Decoration.FindMedium("underglaze")
		got := m.On["glaze-fired"]
		if got.Reason != "Ours melts." || !slices.Equal(got.Hazards, want.Hazards) || got.Who != want.Who {
			t.Errorf("%q: %+v, want %+v", more, got, want)
		}
	}
}

// TestLeftOut makes sure that what a course leaves out is nowhere named.
func TestLeftOut(t *testing.T) {
	d := overBase(t, "leave-out: [engobe, lustre, spraying]\n").Decoration
	text := d.Table().Encode()
	for _, id := range []string{"\tengobe\t", "|engobe", "engobe|", "\tlustre\t", "\tspraying\t", "spraying"} {
		if strings.Contains(text, id) {
			t.Errorf("%q is still in the planner's table", id)
		}
	}
	if _, there := d.FindMedium("engobe"); there || len(d.Media) == 0 {
		t.Error("engobe is still there")
	}
}

// TestHazardsOf makes sure that hazards of several rows come together once, in
// the table's order, and the strictest of the people with them.
func TestHazardsOf(t *testing.T) {
	d := &course.Decoration{Hazards: []course.Hazard{{ID: "mist"}, {ID: "dust"}, {ID: "blade"}}}
	for _, c := range []struct {
		rows []course.Care
		want string
		who  course.Who
	}{
		{nil, "", course.Student},
		{[]course.Care{{}, {Hazards: []string{"blade"}}}, "blade", course.Student},
		{[]course.Care{{Hazards: []string{"blade", "mist"}, Who: course.WithInstructor}, {Hazards: []string{"mist"}, Who: course.Student}}, "mist blade", course.WithInstructor},
		{[]course.Care{{Who: course.Instructor}, {Hazards: []string{"dust", "gone"}, Who: course.WithInstructor}}, "dust", course.Instructor},
	} {
		all, who := d.HazardsOf(c.rows...)
		var ids []string
		for _, h := range all {
			ids = append(ids, h.ID)
		}
		if got := strings.Join(ids, " "); got != c.want || who != c.who {
			t.Errorf("%v: %s, %s; want %s, %s", c.rows, got, who, c.want, c.who)
		}
	}
}

// TestCareReachesThePlanner follows hazards, people, parts and questions from
// the files into the planner's table.
func TestCareReachesThePlanner(t *testing.T) {
	d := overBase(t, `exceptions:
  - {id: yard-iron, kind: recipe, name: Yard iron wash, medium: stain-wash, hazards: [raw-metal], who: instructor, fixed: no}
media:
  - {id: coloured-slip, states: {leather-hard: {verdict: label, ask: Is it thin?, part: stiff, hazards: [blade], who: with-instructor, reason: It holds., fault: It lifts., remedy: Wait.}}}
`).Decoration
	table := d.Table()
	bit := func(id string) stage.Hazards {
		return 1 << slices.IndexFunc(table.Hazards, func(h stage.Hazard) bool { return h.ID == id })
	}
	i := slices.IndexFunc(table.Media, func(m stage.Medium) bool { return m.ID == "yard-iron" })
	if m := table.Media[i]; m.Hazards&bit("raw-metal") == 0 || m.Hazards&bit("colour") == 0 || m.Who != stage.Instructor || m.Fixed != stage.Loose {
		t.Errorf("%+v", m)
	}
	want := stage.Rule{Verdict: stage.Label, Reason: "It holds.", Fault: "It lifts.", Remedy: "Wait.", Ask: "Is it thin?", Hazards: bit("blade"), Who: stage.WithInstructor, Part: 3}
	if diff := cmp.Diff(want, table.Media[0].On[1]); diff != "" {
		t.Error(diff)
	}
	mist := table.Hazards[slices.IndexFunc(table.Hazards, func(h stage.Hazard) bool { return h.ID == "mist" })]
	if mist.Lesson != "wash/wipe.html" || mist.Place != "in the spray booth with its fan on" || !mist.Health || len(mist.Wear) == 0 || mist.Short == "" {
		t.Errorf("%+v", mist)
	}
	if table.Fire.Who != stage.Instructor || table.Fire.Hazards == 0 || table.Metals.Who != stage.WithInstructor || table.Metals.Ask == "" || len(table.Phrases) == 0 {
		t.Errorf("%+v %+v %+v", table.Fire, table.Metals, table.Phrases)
	}
}
