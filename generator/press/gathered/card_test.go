package gathered

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// TestCardIsOneSheetInTheSmallestType wants as many pieces as fit in the smallest type of
// a card, and one more not to: 8 points, 1400 points parted by 1.3 times the type.
func TestCardIsOneSheetInTheSmallestType(t *testing.T) {
	p := presstest.Studio(t).Print.Card
	for letters, most := range map[int]int{40: 112, 120: 61} {
		pieces := slices.Repeat([]int{letters}, most)
		if !cardFits(p, pieces) || cardFits(p, append(pieces, letters)) {
			t.Errorf("%d pieces of %d letters: %v, one more: %v", most, letters, cardFits(p, pieces), cardFits(p, append(pieces, letters)))
		}
	}
}

// TestForemostHazards wants those that most rows name, in the order of the table, and all
// of them where there is room.
func TestForemostHazards(t *testing.T) {
	var all care.Care
	for _, id := range []string{"a", "b", "c", "d"} {
		all.Hazards = append(all.Hazards, care.Hazard{ID: id})
	}
	row := func(ids ...string) course.Care { return course.Care{Hazards: ids} }
	rows := []course.Care{row("d", "a"), row("d"), row("b"), row("b", "c", "d")}
	for _, c := range []struct {
		most int
		want string
		more bool
	}{{4, "abcd", false}, {3, "abd", true}, {2, "bd", true}, {1, "d", true}, {0, "", true}, {-1, "", true}} {
		got, more := foremost(all, rows, c.most)
		ids := ""
		for _, h := range got.Hazards {
			ids += h.ID
		}
		if ids != c.want || more != c.more {
			t.Errorf("%d of them: %q, more %v, want %q, %v", c.most, ids, more, c.want, c.more)
		}
	}
	if len(all.Hazards) != 4 || all.Hazards[0].ID != "a" {
		t.Errorf("the care was changed: %v", all.Hazards)
	}
}

// TestCardWhereThereIsSomethingToSay wants a card of a medium with a caution, in any state
// or way of working, or with a lesson, and none of another.
func TestCardWhereThereIsSomethingToSay(t *testing.T) {
	c, found := new(course.Reader).Load(coursetest.Small())
	if found.Stop() {
		t.Fatal(found)
	}
	quiet := course.Medium{ID: "quiet", Best: "wet", On: map[string]course.Pair{"wet": {Verdict: course.Yes}}}
	harmful := course.Medium{ID: "harmful", Best: "wet", On: map[string]course.Pair{"wet": {Verdict: course.Yes, Care: course.Care{Hazards: []string{c.Decoration.Hazards[0].ID}}}}}
	c.Decoration.Media = append(c.Decoration.Media, quiet, harmful)
	r := opened(t, c)
	var cards []string
	for _, s := range r.Cards() {
		cards = append(cards, s.Address)
	}
	if want := []string{"cards/coloured-slip.html", "cards/stain-wash.html", "cards/harmful.html"}; !slices.Equal(cards, want) {
		t.Errorf("cards %q, want %q", cards, want)
	}
	if owes := r.Owes(); owes[address.Card("quiet")] != nil || owes[address.Card("harmful")] == nil {
		t.Error("what is owed goes by other cards than there are")
	}
}

// TestCardTakesWhatFits fills a medium with lessons: the card takes the same from each
// while it has room, then something of some, and sends its reader to all of them.
func TestCardTakesWhatFits(t *testing.T) {
	for _, c := range []struct {
		lessons      int
		looks, wrong int // of all lessons together
		left         bool
	}{{0, 1, 1, false}, {2, 5, 5, true}, {60, 0, 30, true}} {
		r := opened(t, manyLessons(t, c.lessons))
		m := r.Decoration.Media[0]
		view, err := r.card(m, imprint.Place{Page: address.Card(m.ID)})
		if err != nil {
			t.Fatal(err)
		}
		v := view.(cardView)
		looks := 0
		for _, l := range v.Looks {
			looks += len(l.Looks)
		}
		if wrong := len(v.Faults); looks != c.looks || wrong != c.wrong && (c.lessons < 60 || wrong == 0 || wrong >= 60) || v.Left != c.left {
			t.Errorf("%d lessons: %d to look for, %d that go wrong, left %v", c.lessons, looks, wrong, v.Left)
		}
		if !cardFits(r.Print.Card, v.letters()) {
			t.Errorf("%d lessons: it does not fit", c.lessons)
		}
	}
}

// manyLessons is the small course with more lessons about its first medium, beside the
// one that says one thing to look for and one that goes wrong.
func manyLessons(t *testing.T, more int) *course.Course {
	t.Helper()
	c, found := new(course.Reader).Load(coursetest.Small())
	if found.Stop() {
		t.Fatal(found)
	}
	u := c.Units[0]
	medium := c.Decoration.Media[0].ID
	for _, unit := range c.Units {
		for _, l := range unit.Lessons {
			l.Head.Medium = ""
		}
	}
	page := func(name, text string) {
		u.Lessons = append(u.Lessons, &course.Page{Kind: course.LessonPage, File: "units/slip/" + name + ".md", Address: "slip/" + name + ".html", Unit: u,
			Head: course.Head{Title: name, Medium: medium}, Source: []byte(text), Language: c.Language})
	}
	page("one", "## What to look for\n\n- It shines.\n\n## What goes wrong\n\nIt runs\n: Too thin.\n")
	for n := range more {
		long := strings.Repeat("Stir it and wait. ", 6)
		page(fmt.Sprintf("more-%02d", n), "## What to look for\n\n- "+long+"\n- "+long+"\n- "+long+"\n\n## What goes wrong\n\nIt runs\n: "+long+"\n\nIt stops\n: "+long+"\n\nIt smells\n: "+long+"\n")
	}
	return c
}
