//go:build judges

package trial

import (
	"slices"
	"strings"
	"testing"
)

// TestLeachReportsNeverAnswer wants the demo's reports, all invented, to be marked on
// every page that names one, and the question whether one may eat from a pot never to
// be answered by them.
func TestLeachReportsNeverAnswer(t *testing.T) {
	t.Parallel()
	h := published(t)
	page, eat := h.document(t, "leach/index.html"), h.document(t, "leach/may-i-eat.html")
	reports := page.find(nil, "section")
	if len(reports) < 5 {
		t.Errorf("only %d reports", len(reports))
	}
	said := ""
	for _, report := range reports {
		said += words(report) + "\n"
		if !strings.Contains(words(report), "It answers nothing: it is invented, to be read in class") {
			t.Errorf("a report that is not marked as invented: %s", words(report))
		}
	}
	for _, want := range []string{"the laboratory failed it", "it has expired", "the recipe has changed since", "a batch of the colour has changed"} {
		if !strings.Contains(said, want) {
			t.Errorf("no report answers nothing since %s", want)
		}
	}
	main := words(eat.find(nil, "main")[0])
	for _, want := range []string{"This studio has no report that counts", "Invented, so they answer nothing:"} {
		if !strings.Contains(main, want) {
			t.Errorf("the seven questions do not say %q: %s", want, main)
		}
	}
}

// TestSevenQuestionsLeadToAnEnd wants seven questions, each with a way on or to one of
// the three ends, which stand on the page.
func TestSevenQuestionsLeadToAnEnd(t *testing.T) {
	t.Parallel()
	d := published(t).document(t, "leach/may-i-eat.html")
	questions := 0
	for _, list := range d.find(nil, "ol") {
		for _, item := range d.find(list, "li") {
			if answers := d.find(item, "ul"); len(answers) == 1 && item.Parent == list {
				questions++
				if n := len(d.find(answers[0], "li")); n < 2 || n > 3 {
					t.Errorf("%d answers: %s", n, words(item))
				}
			}
		}
	}
	if questions != 7 {
		t.Errorf("%d questions", questions)
	}
	for _, end := range []string{"no", "own", "laboratory"} {
		if d.ids[end] == nil || !slices.Contains(d.links(), "#"+end) {
			t.Errorf("nothing leads to the end %q, or it is not there", end)
		}
	}
}

// TestWaysToTheReports wants a way to the reports or the questions from where somebody
// asks whether a pot is for food.
func TestWaysToTheReports(t *testing.T) {
	t.Parallel()
	h := published(t)
	for page, to := range map[string]string{
		"contents.html":                        "leach/may-i-eat.html",
		"leach/index.html":                     "may-i-eat.html",
		"leach/may-i-eat.html":                 "index.html#report.7",
		"safety/food-surfaces.html":            "../leach/may-i-eat.html",
		"recipes/white-slip-cone-6.html":       "../leach/index.html#report.7",
		"recipes/iron-wash.html":               "../leach/may-i-eat.html",
		"tiles/index.html":                     "../leach/index.html#report.11",
		"labels/recipe-wren-blue-slip-a4.html": "../leach/index.html",
	} {
		if !slices.Contains(h.document(t, page).links(), to) {
			t.Errorf("%s does not lead to %s", page, to)
		}
	}
}
