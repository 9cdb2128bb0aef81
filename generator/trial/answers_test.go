//go:build judges

package trial

import (
	"path"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"golang.org/x/net/html"
)

// questions are what students ask in every course, each by words of the question
// that answers it.
var questions = []string{
	"leather-hard?", "wet it again", "how thick", "before I can touch", "inside of a mug", "label is gone",
	"blue pink", "wiped it and it all came off", "smudged on my hands", "glaze over pencil", "dropped wax",
	"forgot the underglaze", "which clear", "will the white cover", "mix two underglazes", "lumps, smells, settled",
	"right, still too thick", "how much, one mug", "low-fire underglaze at cone 6", "decorated side",
	"skip the bisque", "blistered", "sponge water", "outdoors", "pregnant", "how wide a border",
	"colour vanished", "microwave, lustre",
}

// asks reports whether a question has all words of a topic, separated by commas.
func asks(question, topic string) bool {
	for part := range strings.SplitSeq(topic, ", ") {
		if !strings.Contains(strings.ToLower(question), strings.ToLower(part)) {
			return false
		}
	}
	return true
}

func TestEveryQuestionIsAnswered(t *testing.T) {
	t.Parallel()
	h := published(t)
	var asked []string
	for _, q := range h.quick(t) {
		asked = append(asked, q.ask)
	}
	for _, topic := range questions {
		found := 0
		for _, question := range asked {
			if asks(question, topic) {
				found++
			}
		}
		if found == 0 {
			t.Errorf("nobody asks about %q among %q", topic, asked)
		}
	}
	if len(asked) < len(questions) {
		t.Errorf("%d quick answers, want at least %d", len(asked), len(questions))
	}
}

// quickAnswer is an answer on the page of quick answers, with the question and
// the link to where a lesson tells it.
type quickAnswer struct {
	ask, link string
	body      *html.Node
}

// quick lists the quick answers.
func (h *handbook) quick(t *testing.T) []quickAnswer {
	t.Helper()
	d := h.document(t, "answers.html")
	var all []quickAnswer
	for _, n := range d.find(nil, ".quick") {
		q := quickAnswer{body: n}
		for _, s := range d.find(n, "summary") {
			q.ask = words(s)
		}
		for _, from := range d.find(n, ".from") {
			for _, a := range d.find(from, "a") {
				q.link = attribute(a, "href")
			}
		}
		all = append(all, q)
	}
	return all
}

// TestQuickAnswersStandInLessons follows the link of each answer: the lesson has
// the same question at that place, with the same words.
func TestQuickAnswersStandInLessons(t *testing.T) {
	t.Parallel()
	h := published(t)
	inLessons := 0
	for _, address := range h.all(t, "lesson", "unit") {
		inLessons += len(h.document(t, address).find(nil, ".asked"))
	}
	all := h.quick(t)
	if len(all) != inLessons {
		t.Errorf("%d quick answers, and %d questions in lessons", len(all), inLessons)
	}
	for _, q := range all {
		to, place, err := target("answers.html", q.link)
		if k := kind(to); err != nil || k != "lesson" && k != "unit" || !strings.HasPrefix(place, "asked.") {
			t.Errorf("%q leads to %q: %v", q.ask, q.link, err)
			continue
		}
		d := h.document(t, to)
		at := d.ids[place]
		if at == nil {
			t.Errorf("%q leads to %q, and there is no such place", q.ask, q.link)
			continue
		}
		if told := words(at); !strings.Contains(told, q.ask) {
			t.Errorf("%q leads to another question: %q", q.ask, told)
		}
		for _, p := range d.find(at, "p")[2:] { // after what it is, and the question
			if !strings.Contains(letters(words(q.body)), letters(words(p))) {
				t.Errorf("the lesson answers %q with %q, which the quick answer lacks", q.ask, words(p))
			}
		}
	}
}

// quickAnswers are those of the page.
const quickAnswers = `[...document.querySelectorAll("details.quick")]`

// opened reports whether the answers are open and in sight, in their order.
const opened = quickAnswers + `.map(d => d.open && d.querySelector("p").checkVisibility())`

func TestQuickAnswersByTouch(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.visit(h.home + "answers.html")
	all := ask[[]bool](b, opened)
	if len(all) < len(questions) {
		t.Fatalf("only %d answers", len(all))
	}
	for n := range all {
		one := quickAnswers + "[" + strconv.Itoa(n) + "]"
		b.tap(one + `.querySelector("summary")`)
		if !b.until(one + `.open && ` + one + `.querySelector("p").checkVisibility()`) {
			t.Errorf("answer %d does not open", n+1)
		}
	}
	for _, fault := range append(ask[[]string](b, widest), ask[[]string](b, crowded)...) {
		t.Errorf("with all answers open: %s", fault)
	}
	last := quickAnswers + "[" + strconv.Itoa(len(all)-1) + "]"
	b.tap(last + `.querySelector("summary")`)
	if !b.until("!" + last + ".open") {
		t.Error("the last answer does not close")
	}
	to := ask[string](b, quickAnswers+`[0].querySelector(".from a").href`)
	b.tap(quickAnswers + `[0].querySelector(".from a")`)
	if !b.until(`location.href === ` + quoted(to) + ` && document.readyState === "complete"`) {
		t.Fatalf("the link of the first answer does not lead to %s", to)
	}
	_, place, _ := strings.Cut(to, "#")
	if !b.until(`(r => r.top >= 0 && r.top < innerHeight)(document.getElementById(` + quoted(place) + `).getBoundingClientRect())`) {
		t.Errorf("%s is not in sight at %s", place, path.Base(to))
	}
}

func TestQuickAnswersByKeyboard(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := openFor(t, 10)
	b.size(360, 640)
	b.visit(h.home + "answers.html")
	all := ask[[]bool](b, opened)
	at := `(d => d && document.activeElement.localName === "summary" ? ` + quickAnswers + `.indexOf(d) : -1)(document.activeElement.closest("details.quick"))`
	reached := 0
	for range 6 * len(all) {
		b.do(chromedp.KeyEvent(kb.Tab))
		n := ask[int](b, at)
		if n < 0 {
			continue
		}
		if n != reached {
			t.Errorf("after answer %d the key Tab comes to answer %d", reached, n+1)
		}
		b.do(chromedp.KeyEvent(kb.Enter))
		if reached++; reached == len(all) {
			break
		}
	}
	for n, open := range ask[[]bool](b, opened) {
		if !open {
			t.Errorf("answer %d is not opened by Tab and Enter", n+1)
		}
	}
}
