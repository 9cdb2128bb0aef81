package markup

import (
	"reflect"
	"slices"
	"strings"
	"testing"
)

// TestStepsAreNumberedThrough wants numbers through several lists, whatever they
// begin with as written, and no number for a list that stands in something else.
func TestStepsAreNumberedThrough(t *testing.T) {
	d := read(t, "## A\n\n1. a\n   1. inner\n2. b\n\n```caution Dust\n1. no step\n```\n\n3. c\n\n## B\n\n1. d\n\n   e\n\n> 1. quoted\n\n- 1. listed\n\n7) f[^n]\n\n[^n]: 1. note\n")
	var numbers []int
	for _, s := range d.Steps {
		numbers = append(numbers, s.Number)
	}
	if want := []int{1, 2, 3, 4, 5}; !slices.Equal(numbers, want) {
		t.Errorf("steps %v, want %v", numbers, want)
	}
	var lists []StepList
	depth := 0
	for _, p := range d.Pieces {
		switch {
		case p.StepList != nil && !p.End:
			lists = append(lists, *p.StepList)
			depth++
		case p.StepList != nil:
			depth--
		}
	}
	if want := []StepList{{1, 1}, {3, 3}, {4, 1}, {5, 7}}; !slices.Equal(lists, want) || depth != 0 {
		t.Errorf("lists %v, want %v; %d left open", lists, want, depth)
	}
}

// TestStepKeys wants a step to keep its key while its words stay, wherever it stands.
func TestStepKeys(t *testing.T) {
	keys := func(source string) []string {
		var all []string
		for _, s := range read(t, source).Steps {
			all = append(all, s.Key)
		}
		return all
	}
	before := keys("1. Stir *it*.\n2. Wait.\n3. Stir *it*.\n")
	after := keys("1. Weigh.\n\n## Then\n\n1. Stir it.\n2. Wait.\n\n   - not its words\n3. Stir it.\n")
	if !slices.Equal(before, after[1:]) || before[0] == before[2] || before[0] == before[1] || before[2] != before[0]+".2" {
		t.Errorf("keys %v and %v", before, after)
	}
}

func TestStepIDsAreNoHeadings(t *testing.T) {
	d := read(t, "## Step 7\n\n## Step 7\n\n## Step 7 b\n")
	if ids := []string{d.Headings[0].ID, d.Headings[1].ID, d.Headings[2].ID}; !slices.Equal(ids, []string{"step-7-2", "step-7-3", "step-7-b"}) {
		t.Errorf("ids %v", ids)
	}
	_, findings := whole("## A {#step-2}\n")
	if want := "1:8 heading-id: \"step-2\" is the id of a step | Give the heading another id; steps are numbered by themselves.\n"; said(findings) != want {
		t.Errorf("got %q, want %q", said(findings), want)
	}
	for id, want := range map[string]int{"step-12": 12, "step-0": 0} {
		if n, ok := StepNumber(id); !ok || n != want {
			t.Errorf("%s: %d %v", id, n, ok)
		}
	}
	for _, id := range []string{"step-", "step-1a", "step--1", "Step-1", "steps-1", "step-99999999999999999999"} {
		if n, ok := StepNumber(id); ok {
			t.Errorf("%s is that of step %d", id, n)
		}
	}
}

func TestParts(t *testing.T) {
	d := read(t, "## A\n\n### B\n\n```caution Dust\n## no\n```\n\n> ## no\n\n## C\n")
	var parts []string
	for _, h := range d.Parts() {
		parts = append(parts, h.Text)
	}
	if !slices.Equal(parts, []string{"A", "C"}) {
		t.Errorf("parts %v", parts)
	}
}

// TestWaits holds what times are understood in the words of a step.
func TestWaits(t *testing.T) {
	const minute, hour = 60, 3600
	one := func(seconds int) []Wait { return []Wait{{Seconds: seconds}} }
	for _, tt := range []struct {
		words string
		want  []Wait
	}{
		{"Wait 20 minutes.", one(20 * minute)},
		{"Stir from the bottom for two minutes, until it is clean.", one(2 * minute)},
		{"Stir for two minutes, and wait ten.", one(2 * minute)},
		{"Wait a minute.", one(minute)},
		{"Lay the shapes in clean water for a minute.", one(minute)},
		{"Wait about a minute, while the paper drinks.", one(minute)},
		{"Let it soak for an hour.", one(hour)},
		{"Fill it again, wait ten minutes with the cork in.", one(10 * minute)},
		{"Pull it off a quarter of an hour later.", one(15 * minute)},
		{"Wait half a minute.", one(30)},
		{"Wait half an hour.", one(30 * minute)},
		{"Rest it for three quarters of an hour.", one(45 * minute)},
		{"Wait an hour and a half.", one(90 * minute)},
		{"Wait an hour and a quarter.", one(75 * minute)},
		{"Wait an hour and forty minutes.", one(100 * minute)},
		{"Wait two and a half hours.", one(150 * minute)},
		{"Wait 1.5 hours.", one(90 * minute)},
		{"Wait 1½ hours.", one(90 * minute)},
		{"Wait 20 min.", one(20 * minute)},
		{"Dry it for 4 h.", one(4 * hour)},
		{"Wait 20\u00a0minutes.", one(20 * minute)},
		{"Rinse it for at least 20 minutes.", one(20 * minute)},
		{"Wait another ten minutes.", one(10 * minute)},
		{"Wait ten more minutes.", one(10 * minute)},
		{"Ten minutes later, look again.", one(10 * minute)},
		{"Wait 10 to 30 minutes.", []Wait{{10 * minute, 30 * minute}}},
		{"Wait 10–30 minutes.", []Wait{{10 * minute, 30 * minute}}},
		{"Wait five or ten minutes.", []Wait{{5 * minute, 10 * minute}}},
		{"Wait a minute or two.", []Wait{{minute, 2 * minute}}},
		{"Wait one to six hours.", []Wait{{hour, 6 * hour}}},
		{"Look again after five minutes and after an hour.", []Wait{{Seconds: 5 * minute}, {Seconds: hour}}},
		{"Stir for two minutes, wait, and stir for two minutes.", one(2 * minute)},

		{"Let it slake overnight.", nil},
		{"Do not touch the jar for 20 to 24 hours.", nil},
		{"Wait a few minutes.", nil},
		{"Wait some minutes.", nil},
		{"Wait ten seconds.", nil},
		{"Dry it for five hours.", nil},
		{"Fire it at 60 °C an hour.", nil},
		{"Turn it 30 times a minute.", nil},
		{"Draw 50 feet a minute.", nil},
		{"Pour three bats, an hour apart.", nil},
		{"Use a slip that was mixed an hour ago.", nil},
		{"Blow within five minutes.", nil},
		{"Stir it every ten minutes.", nil},
		{"It takes five minutes.", nil},
		{"You have only about a minute.", nil},
		{"Stop, because by now half a minute has gone.", nil},
		{"After the first ten minutes nobody stirs.", nil},
		{"Wrap it in the last ten minutes.", nil},
		{"A minute’s testing tells you its state.", nil},
		{"Leave it no longer than ten minutes.", nil},
		{"Watch the five-minute film.", nil},
		{"Brush a second coat.", nil},
		{"Use the minute hand.", nil},
		{"Give it the hours between the weighings.", nil},
		{"Use tile R20 minutes.", nil},
		{"", nil},
	} {
		if got := waits(tt.words); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%q: %v, want %v", tt.words, got, tt.want)
		}
	}
}

// TestWaitsFor holds for what a step is understood to wait.
func TestWaitsFor(t *testing.T) {
	for _, tt := range []struct{ words, want string }{
		{"Wait until the shine has gone.", Shine},
		{"Wait until it has lost its shine, but do not let it dry.", Shine},
		{"Lay the wash over everything, and let its shine go.", Shine},
		{"Past its shine again, lay the slab on it.", Shine},
		{"Wait until it is tacky: no shine, clinging a little.", Shine},
		{"Watch the wet sheen. When it is gone, the sheen, go on.", Shine},
		{"When they are [bone dry](state:bone-dry), take them out.", "bone dry"},
		{"Leave it until it is soft [leather-hard](state:leather-hard).", "leather-hard"},
		{"Scratch it into each [leather-hard](state:leather-hard) tile.", ""},
		{"Wait here. Then scratch each [leather-hard](state:leather-hard) tile.", ""},
		{"Do not go back over a place that has lost its shine.", ""},
		{"Work while it shines.", ""},
		{"If soft clay shines, it is wet: stop there.", ""},
		{"Shine a lamp on it.", ""},
		{"Wait until it is dry.", ""},
	} {
		if got := read(t, "1. "+tt.words+"\n").Steps[0].Until; got != tt.want {
			t.Errorf("%q waits for %q, want %q", tt.words, got, tt.want)
		}
	}
	if d := read(t, "1. Wait 20 min.\n\n   Wait until it is [stiff](state:leather-hard).\n"); !reflect.DeepEqual(d.Steps[0].Waits, []Wait{{Seconds: 1200}}) || d.Steps[0].Until != "stiff" {
		t.Errorf("%+v", d.Steps[0])
	}
}

// TestStepsSetAsWritten wants a list to be printed with the number that its author
// gave it where steps are not numbered through.
func TestStepsSetAsWritten(t *testing.T) {
	html := string(read(t, "1. a\n\n## B\n\n3. c\n4. d\n\n- e\n").HTML)
	for _, want := range []string{"<ol>\n<li>a</li>\n</ol>\n", "<ol start=\"3\">\n<li>c</li>\n<li>d</li>\n</ol>\n", "<ul>\n<li>e</li>\n</ul>\n"} {
		if strings.Count(html, want) != 1 {
			t.Errorf("not once %q in %q", want, html)
		}
	}
}
