//go:build judges

package trial

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
)

// How far down, in CSS pixels, the first box of a calculator may end on a phone of 360
// by 740, and where its answer ends once somebody came to it.
const (
	phoneWidth, phoneHeight = 360, 740
	firstBoxEnds            = 600
	keypad                  = 300 // of the height, while somebody types
)

// places tells where the parts of a calculator stand: from the top of the page, but
// for the answer, which counts from the top of the window.
const places = `(() => {
	const end = e => Math.round(e.getBoundingClientRect().bottom + scrollY)
	const seen = [...document.querySelectorAll(".reckon-form .reckon-box :is(input, select)")].filter(e => e.checkVisibility() && !e.closest("details"))
	const head = document.querySelector("[data-head]")
	return {
		boxes: seen.length,
		first: end(seen[0]),
		button: end(document.querySelector(".reckon-go")),
		begins: head.checkVisibility() ? Math.round(head.getBoundingClientRect().top) : -1,
		answer: head.checkVisibility() ? Math.round(head.getBoundingClientRect().bottom) : -1,
	}
})()`

// place is what places tells.
type place struct{ Boxes, First, Button, Begins, Answer int }

// aboveTheKeys puts the focus into the first box and tells how far down in the window
// the answer under it ends, which is 0 for a list.
const aboveTheKeys = `(async () => {
	const box = [...document.querySelectorAll(".reckon-form .reckon-box :is(input, select)")].find(e => e.checkVisibility() && !e.closest("details"))
	box.focus()
	await new Promise(requestAnimationFrame)
	const line = document.querySelector("[data-headline]"), stands = box.getBoundingClientRect()
	if (box.closest("fieldset")) return 0 // of a list: its boxes alone are higher than what the keys leave
	if (!line.checkVisibility() || line.textContent === "" || stands.top < 0) return 10000
	return Math.round(line.getBoundingClientRect().bottom)
})()`

// TestCalculatorsInTheFirstScreen holds, for every calculator, that a phone shows its
// first box without a drag, that whoever asks for the answer has it before their eyes
// with what may hurt, and that while somebody types it stands above the keys.
func TestCalculatorsInTheFirstScreen(t *testing.T) {
	t.Parallel()
	h := published(t)
	tour(t, h.all(t, "calculator"), func(b *tab, address string) {
		b.size(phoneWidth, phoneHeight)
		b.visit(h.home + address)
		b.ready()
		p := ask[place](b, places)
		if p.First > firstBoxEnds {
			b.t.Errorf("%s: the first box ends %d px down, the limit is %d", address, p.First, firstBoxEnds)
		}
		example := ask[string](b, `document.querySelector(".reckon-try a").href`)
		b.visit("about:blank")
		b.visit(example)
		b.ready()
		if !b.until(`document.querySelector("[data-head]").checkVisibility() && scrollY > 0`) {
			b.t.Fatalf("%s: its example leads to no answer", address)
		}
		a := ask[place](b, places)
		b.t.Logf("%-32s %2d boxes, the first ends at %d px, the button at %4d; the answer at %d of the window", address, p.Boxes, p.First, p.Button, a.Answer)
		if a.Begins < 0 || a.Answer > phoneHeight {
			b.t.Errorf("%s: the answer stands from %d to %d px in a window of %d", address, a.Begins, a.Answer, phoneHeight)
		}
		b.size(phoneWidth, phoneHeight-keypad)
		if ends := ask[int](b, aboveTheKeys); ends > phoneHeight-keypad {
			b.t.Errorf("%s: while somebody types the answer ends %d px down in a window of %d", address, ends, phoneHeight-keypad)
		}
	})
}

// paired tells of boxes that should stand two to a row and do not, or whose parts are
// too small or too near each other for a wet finger.
const paired = `(() => {
	const boxes = [...document.querySelectorAll(".reckon-form [data-paired]")].filter(e => e.checkVisibility() && !e.closest("details"))
	const found = []
	for (let n = 0; n < boxes.length; n += 2) {
		const [a, b] = [boxes[n].getBoundingClientRect(), boxes[n + 1].getBoundingClientRect()]
		if (a.top !== b.top || a.right > b.left - 8) found.push(boxes[n].dataset.input + " does not stand beside " + boxes[n + 1].dataset.input)
	}
	for (const e of document.querySelectorAll(".reckon-form [data-paired] :is(input, select)")) {
		const r = e.getBoundingClientRect()
		if (e.checkVisibility() && r.width > 0 && (r.width < 48 || r.height < 48)) found.push(e.name + " is " + r.width + " by " + r.height + " px")
	}
	return [String(boxes.length)].concat(found)
})()`

// TestBoxesTwoToARow wants pairs of short boxes side by side on a phone.
func TestBoxesTwoToARow(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, name := range []string{"slip-density", "slip-batch", "bucket-mix", "wash-mix"} {
		b.size(phoneWidth, phoneHeight)
		b.visit(h.home + "calculators/" + name + ".html")
		b.ready()
		found := ask[[]string](b, paired)
		if found[0] == "0" {
			t.Errorf("%s: no boxes stand two to a row", name)
		}
		for _, fault := range found[1:] {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

// signs returns the shape of each verdict's sign by its classes: the borders that it is
// drawn with, and how large it is, in mm.
const signs = `(() => {
	const found = {}
	for (const e of document.querySelectorAll(".verdict")) {
		if (!e.checkVisibility()) continue
		const s = getComputedStyle(e, "::before"), mm = px => parseFloat(px) * 25.4 / 96
		const thick = [s.borderLeftWidth, s.borderRightWidth].map(parseFloat)
		found[e.className] = {
			shape: [s.clipPath, s.borderTopLeftRadius, thick[0] > thick[1] * 1.5, parseFloat(s.width) > thick[0] + thick[1]].join(" "),
			high: mm(s.boxSizing === "border-box" ? Math.max(parseFloat(s.height), 2 * parseFloat(s.borderTopWidth)) : s.height),
			inked: s.borderLeftColor === getComputedStyle(e).color && s.content === '""',
		}
	}
	return found
})()`

// sign is what signs tells of one.
type sign struct {
	Shape string
	High  float64
	Inked bool
}

// TestSignsOfVerdicts wants a sign beside the word of every verdict, five shapes that
// need no colour, in forced colours and on paper too, where those of the media are read
// from two metres away: 4 mm.
func TestSignsOfVerdicts(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, media := range []string{"screen", "print", "forced"} {
		p := emulation.SetEmulatedMediaParams{Media: media}
		if media == "forced" {
			p = emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: "active"}}}
		}
		call(b, emulation.SetEmulatedMedia, p)
		b.size(1280, 800)
		b.visit(h.home + "chart.html")
		shapes := map[string]string{}
		for class, s := range ask[map[string]sign](b, signs) {
			if !s.Inked {
				t.Errorf("%s: the sign of %q has not the colour of its word", media, class)
			}
			if class != "verdict label most" { // drawn as what it is, not as the best
				shapes[s.Shape] = class
			}
		}
		if len(shapes) != 5 {
			t.Errorf("%s: the signs have the shapes %v, want five", media, shapes)
		}
	}
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	const least = `Math.min(...[...document.querySelectorAll(".chart tbody:first-of-type .verdict")].map(e => {
		const s = getComputedStyle(e, "::before")
		return Math.max(parseFloat(s.height), 2 * parseFloat(s.borderTopWidth)) * 25.4 / 96
	}))`
	if high := ask[float64](b, least); high < 4 {
		t.Errorf("on paper a sign of the chart is %.2f mm high, want 4", high)
	}
	for _, of := range []string{"state", "medium", "card", "course-card", "lesson"} {
		b.visit(h.home + h.all(t, of)[0])
		if unsigned := ask[int](b, `[...document.querySelectorAll(".verdict")].filter(e => getComputedStyle(e, "::before").content !== '""').length`); unsigned > 0 {
			t.Errorf("%s: %d verdicts have no sign", of, unsigned)
		}
	}
}

// side tells what does not stand beside what it belongs to: pairs of selectors.
const side = `(pairs => pairs.flatMap(([left, right]) => {
	const [l, r] = [left, right].map(s => document.querySelector(s)?.getBoundingClientRect())
	if (!l || !r) return [left + " or " + right + " is not there"]
	return l.right <= r.left && l.top < r.bottom && r.top < l.bottom ? [] : [right + " does not stand beside " + left]
}))`

// tooLong returns what is set in lines longer than those of the one column, 34 rem.
const tooLong = `[...document.querySelectorAll("main :is(p, li, dd)")].filter(e => e.checkVisibility() && !e.matches(".lead, .source") && e.textContent.length > 90
	&& e.getBoundingClientRect().width > 34.5 * 16).map(e => e.outerHTML.slice(0, 120))`

// TestWideScreens wants side by side what belongs together, and no line longer than
// is good to read.
func TestWideScreens(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, c := range []struct{ address, beside, columns string }{
		{"calculators/slip-batch.html", `[[".reckon-form", ".reckon-result"]]`, ".reckon-parts > *"},
		{"index.html", `[[".states", ".welcome"]]`, ".unit h2"},
		{"contents.html", `[]`, ".unit h2"},
		{"calculators/index.html", `[]`, ".links li"},
		{"mixing/make-slip.html", `[["h1", ".facts"], [".steps:has(+ .plate)", ".steps + .plate"]]`, ".of-lesson > *"},
		{"faults.html", `[]`, ".fault h3"},
	} {
		for _, width := range []int64{1120, 1280, 1920} {
			b.size(width, 800)
			b.visit(h.home + c.address)
			for _, fault := range ask[[]string](b, side+"("+c.beside+")") {
				t.Errorf("%s, %d px: %s", c.address, width, fault)
			}
			if n := ask[int](b, `new Set([...document.querySelectorAll("`+c.columns+`")].filter(e => e.checkVisibility()).map(e => Math.round(e.getBoundingClientRect().left / 400))).size`); n < 2 {
				t.Errorf("%s, %d px: all %s stand in one column", c.address, width, c.columns)
			}
			for _, long := range ask[[]string](b, tooLong) {
				t.Errorf("%s, %d px: longer lines than a column's: %s", c.address, width, long)
			}
		}
	}
}

// TestUnitsHaveOneNumeral wants the numeral of a unit to be the same wherever it is
// named, and the one with which its lessons' numbers begin.
func TestUnitsHaveOneNumeral(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	numerals := func(page, of string) []string {
		b.visit(h.home + page)
		return ask[[]string](b, `[...document.querySelectorAll("`+of+`")].map(e => e.querySelector(".seal").textContent + " " + e.querySelector("a").textContent)`)
	}
	want := numerals("contents.html", ".unit h2")
	if len(want) < 2 || !slices.IsSortedFunc(want, func(a, b string) int { return cmp.Compare(len(strings.Fields(a)[0]), len(strings.Fields(b)[0])) }) {
		t.Fatalf("the units of the contents are %q", want)
	}
	for page, of := range map[string]string{"index.html": ".unit h2", "cards/index.html": ".runs li:has(.seal), h3:has(.seal)"} {
		if got := numerals(page, of); !slices.Equal(got, want) {
			t.Errorf("%s: the units are %q, want %q", page, got, want)
		}
	}
	for _, lesson := range []string{"slip/inlay.html", "mixing/make-slip.html"} {
		got := numerals(lesson, "main .place")
		number := ask[string](b, `document.querySelector("main .place span").textContent.match(/\d+/)[0]`)
		if len(got) != 1 || !slices.Contains(want, got[0]) || !strings.HasPrefix(got[0], number+" ") {
			t.Errorf("%s: its place is %q, number %s, want one of %q", lesson, got, number, want)
		}
	}
}
