package course_test

import (
	"os"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"slipbook/generator/course"
)

func demo(t *testing.T) *course.Course {
	t.Helper()
	c, found := new(course.Reader).Load(os.DirFS("../../content"))
	if len(found) > 0 {
		t.Fatal(findings(found))
	}
	return c
}

// TestContentTableIsPlain makes sure that a first-year student gets whole,
// short sentences.
func TestContentTableIsPlain(t *testing.T) {
	check := func(where, text string, most int) {
		first, _ := utf8.DecodeRuneInString(text)
		if !unicode.IsUpper(first) || !strings.HasSuffix(text, ".") {
			t.Errorf("%s: %q is not a sentence", where, text)
		}
		if n := len(strings.Fields(text)); n > most {
			t.Errorf("%s: %q has %d words, more than %d", where, text, n, most)
		}
	}
	pair := func(where string, p course.Pair) {
		check(where, p.Short, 6)
		check(where, p.Reason, 25)
		if p.Fault != "" || p.Verdict != course.Yes {
			check(where, p.Fault, 20)
			check(where, p.Remedy, 35)
		}
	}
	d := demo(t).Decoration
	for _, s := range d.States {
		check(s.ID, s.Short, 6)
		check(s.ID, s.Tell, 60)
		if s.Between != "" {
			check(s.ID, s.Between, 40)
		}
		for _, m := range d.Media {
			pair(m.ID+" "+s.ID, m.On[s.ID])
		}
		for _, q := range d.Techniques {
			for _, c := range q.On[s.ID] {
				pair(q.ID+" "+s.ID, c.Pair)
			}
		}
		for _, e := range d.Exceptions {
			if p, there := e.On[s.ID]; there {
				pair(e.ID+" "+s.ID, p)
			}
		}
	}
	for _, m := range d.Media {
		check(m.ID, m.About, 25)
	}
	for _, q := range d.Techniques {
		check(q.ID, q.About, 30)
	}
	for _, o := range d.Overs {
		pair(o.Above+" on "+o.Under, o.Pair)
	}
	for _, tr := range d.Transitions {
		for _, text := range []string{tr.Name, tr.Reason, tr.Fault, tr.Remedy} {
			check(tr.ID, text, 35)
		}
	}
	check("firing", d.Firing.Name, 25)
}

func TestContentSettings(t *testing.T) {
	c := demo(t)
	if c.Language != "en-GB" || c.Decimal != '.' || c.Measures != "metric" || c.Cones.Bisque != "06" || c.Cones.Glaze != "6" {
		t.Errorf("%s %c %s %+v", c.Language, c.Decimal, c.Measures, c.Cones)
	}
	var units []string
	for _, u := range c.Units {
		units = append(units, u.ID)
	}
	if d := cmp.Diff([]string{"start", "slip", "week", "mixing", "underglaze", "wash", "colour", "size", "look", "safety", "teacher"}, units); d != "" {
		t.Error(d)
	}
}
