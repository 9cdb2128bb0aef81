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
	c, found := course.Load(os.DirFS("../../content"))
	if len(found) > 0 {
		t.Fatal(findings(found))
	}
	return c
}

// practice is the table of media by clay state in common practice, as it was
// gathered before it was written out: one letter for each state in its order,
// y(es), l(abel), r(isky), N(ever, physics), H (never, house rule), and the
// state liked best.
const practice = `
coloured-slip        y y H N N N  leather-hard
engobe               r y l l N N  leather-hard
underglaze           r y y l l N  leather-hard
underglaze-transfer  r y r l N N  leather-hard
stain-wash           H r y y y N  bisque
oxide-wash           H r r y y N  bisque
glaze                N l l y r r  bisque
enamel               N N N N N y  glaze-fired
lustre               N N N N N l  glaze-fired
decal                N N N N N l  glaze-fired
terra-sigillata      N r y N N N  bone-dry
`

func TestContentTable(t *testing.T) {
	d := demo(t).Decoration
	letters := map[course.Verdict]string{course.Yes: "y", course.Label: "l", course.Risky: "r"}
	var rows []string
	for _, m := range d.Media {
		row := []string{m.ID}
		for _, s := range d.States {
			switch p := m.On[s.ID]; {
			case p.Verdict == course.Never && p.Rule == "house":
				row = append(row, "H")
			case p.Verdict == course.Never:
				row = append(row, "N")
			default:
				row = append(row, letters[p.Verdict])
			}
		}
		rows = append(rows, strings.Join(append(row, m.Best), " "))
	}
	var want []string
	for line := range strings.Lines(strings.TrimSpace(practice)) {
		want = append(want, strings.Join(strings.Fields(line), " "))
	}
	if diff := cmp.Diff(want, rows); diff != "" {
		t.Error(diff)
	}
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
	d := demo(t).Decoration
	for _, s := range d.States {
		check(s.ID, s.Short, 6)
		check(s.ID, s.Tell, 60)
		if s.Between != "" {
			check(s.ID, s.Between, 40)
		}
	}
	for _, m := range d.Media {
		check(m.ID, m.About, 25)
		for _, s := range d.States {
			p, where := m.On[s.ID], m.ID+" "+s.ID
			check(where, p.Reason, 25)
			check(where, p.Fault, 20)
			check(where, p.Remedy, 35)
		}
	}
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
	if d := cmp.Diff([]string{"slip", "wash"}, units); d != "" {
		t.Error(d)
	}
}
