package setting

import (
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/press/presstest"
)

const stepsPage = `## Mix

1. Stir for two minutes.

` + "```caution Dust\nWet it.\n```" + `

2. Wait until the shine has gone.

## Then

1. Wait 10 to 30 minutes, as in [step 2](#step-2).
`

func TestStepsOnAPage(t *testing.T) {
	html := setIn(t, stepsPage, false, false)
	presstest.Once(t, html,
		"<ol class=\"steps\">\n<li id=\"step-1\" data-step-key=\"", `data-waits="120"><a class="step-number" data-number href="#step-1" aria-label="Step 1">1</a>Stir for two`,
		"<ol class=\"steps\" start=\"2\">\n<li id=\"step-2\"", `data-until="shine"><a class="step-number" data-number href="#step-2" aria-label="Step 2">2</a>Wait until the shine`,
		"<ol class=\"steps\" start=\"3\">\n<li id=\"step-3\"", `data-waits="600-1800">`, `<a href="#step-2">step 2</a>.</li>`)
}

func TestStepsInTheBook(t *testing.T) {
	html := setIn(t, stepsPage, true, false)
	const own = "page.slip.measure."
	presstest.Once(t, html,
		"<ol>\n<li id=\""+own+"step-1\">Stir for two", "<ol start=\"2\">\n<li id=\""+own+"step-2\">Wait until the shine",
		"<ol start=\"3\">\n<li id=\""+own+"step-3\">Wait 10 to 30", `<a href="#`+own+`step-2">step 2</a>.</li>`)
	if strings.Contains(html, "data-") || strings.Contains(html, "step-number") {
		t.Errorf("the book has what only a screen uses: %s", html)
	}
}

// TestListsOfReadings wants a page that is no lesson at the bench to have the numbers
// that its author wrote.
func TestListsOfReadings(t *testing.T) {
	for _, inTheBook := range []bool{false, true} {
		c := presstest.Small(t)
		page, _ := c.FindPage(lesson)
		page.Source, page.Head.Type = []byte("1. a\n2. b\n\n## C\n\n1. d\n\n## E\n\n4. f\n"), course.ForReading
		html := setOf(t, c, inTheBook, false)
		presstest.Once(t, html, "<ol>\n<li>a</li>\n<li>b</li>\n</ol>\n", "<ol>\n<li>d</li>\n</ol>\n", "<ol start=\"4\">\n<li>f</li>\n</ol>\n")
	}
}
