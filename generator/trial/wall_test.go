//go:build judges

package trial

import (
	"fmt"
	"net/url"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
	"slipbook/generator/course"
)

// wallLimit is the most that the script of the wall may have, in bytes, gzipped.
const wallLimit = 3_500

// hangs lists the codes of the tiles that are shown.
const hangs = `[...document.querySelectorAll("[data-tile]")].filter(e => e.checkVisibility()).map(e => e.dataset.tile)`

// demoTiles are the tiles of the demo course.
func demoTiles(t *testing.T) []*course.Tile {
	t.Helper()
	c, found := new(course.Reader).Load(os.DirFS(root + "/content"))
	if found.Stop() {
		t.Fatal(found)
	}
	return c.Tiles
}

// fittingTiles lists the codes of the demo's tiles that fit, in order.
func fittingTiles(t *testing.T, fits func(*course.Tile) bool) []string {
	t.Helper()
	var codes []string
	for _, tile := range demoTiles(t) {
		if fits(tile) {
			codes = append(codes, tile.Code)
		}
	}
	slices.Sort(codes)
	return codes
}

// wall opens the wall, narrowed or paired by an address.
func (b *tab) wall(h *handbook, query string) {
	b.t.Helper()
	b.visit(h.home + h.one(b.t, "wall") + query)
	if !b.until(`document.querySelector("[data-narrow]").checkVisibility()`) {
		b.t.Fatal("the choosers do not come")
	}
}

// choose takes an option of a chooser, as a reader does.
func (b *tab) choose(facet, value string) {
	b.t.Helper()
	ask[bool](b, `(s => { s.value = `+quoted(value)+`; s.dispatchEvent(new Event("change", {bubbles: true})); return true })(document.querySelector("[data-narrow]").elements.namedItem(`+quoted(facet)+`))`)
}

// shownTiles wants these tiles to be shown and no others, the voice to say how many,
// and no row or hook to be shown in which nothing is left.
func (b *tab) shownTiles(when string, want []string, all int) {
	b.t.Helper()
	got := slices.Sorted(slices.Values(ask[[]string](b, hangs)))
	if !slices.Equal(got, want) {
		b.t.Errorf("%s: %q are shown, want %q", when, got, want)
	}
	said := ask[string](b, `document.querySelector("[data-left]").textContent`)
	if told := fmt.Sprintf("Shown: %d of %d tiles.", len(want), all); len(want) < all && !strings.HasPrefix(said, told) {
		b.t.Errorf("%s: says %q, want %q", when, said, told)
	}
	empty := ask[[]string](b, `[...document.querySelectorAll("[data-wall-row], [data-hook]")].filter(e => e.checkVisibility()
		&& ![...e.querySelectorAll("[data-tile]")].some(t => t.checkVisibility())).map(e => e.outerHTML.slice(0, 100))`)
	if len(want) < all && len(empty) > 0 {
		b.t.Errorf("%s: nothing is left of what is shown: %q", when, empty)
	}
}

// TestWallIsNarrowed narrows the wall, wants the address to bring it back, and all of
// it to be shown again.
func TestWallIsNarrowed(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	all := fittingTiles(t, func(*course.Tile) bool { return true })
	b.wall(h, "")
	b.shownTiles("at first", all, len(all))
	b.choose("body", "chalk-lane-earthenware")
	b.choose("clear", "none")
	want := fittingTiles(t, func(tile *course.Tile) bool {
		return tile.Body == "chalk-lane-earthenware" && tile.Clear == course.NoClear
	})
	b.shownTiles("narrowed", want, len(all))
	if off := ask[bool](b, `[...document.querySelector("[data-narrow] [name=body]").options].find(o => o.value === "lantern-porcelain").disabled`); !off {
		t.Error("a clay of which nothing would be left is offered")
	}
	for _, fault := range b.accessible() {
		t.Errorf("narrowed: %s", fault)
	}
	b.reload()
	b.shownTiles("after a reload", want, len(all))
	b.fits("the wall, narrowed", fewWidths)
	for _, fault := range slices.Concat(ask[[]string](b, small), ask[[]string](b, crowded)) {
		t.Error(fault)
	}
	b.size(360, 640)
	printed := letters(strings.Join(b.print(papers[0]).words(t, asDrawn), " "))
	if !strings.Contains(printed, letters("Shown: "+itoa(len(want)))) || !strings.Contains(printed, letters("Tile "+want[0])) || strings.Contains(printed, "TileKF6") {
		t.Error("what is printed is not what is shown")
	}
	b.tap(`document.querySelector("[data-show-all]")`)
	b.shownTiles("all again", all, len(all))
	if search := ask[string](b, "location.search"); search != "" {
		t.Errorf("the address still says %q", search)
	}
}

// TestWallShowsTheTileAskedFor comes by a link to a tile that is narrowed away.
func TestWallShowsTheTileAskedFor(t *testing.T) {
	t.Parallel()
	b := open(t)
	b.wall(published(t), "?body=lantern-porcelain&coats=99&x=1#tile.r4")
	if !b.until(`document.querySelector(":target[data-tile=R4]").checkVisibility()`) {
		t.Error("the tile is not shown")
	}
}

// beside is the button that takes a tile.
func beside(code string) string {
	return `document.querySelector("[data-tile=` + code + `] [data-beside]")`
}

// stand wants two tiles side by side, in two columns of one row, with a word beside
// what differs and nothing else.
func (b *tab) stand(when string, one, other *course.Tile) {
	b.t.Helper()
	if !b.until(`document.querySelector("[data-pair]").checkVisibility()`) {
		b.t.Fatalf("%s: nothing stands side by side", when)
	}
	heads := ask[[]string](b, `[...document.querySelectorAll("[data-pair] thead th a")].map(e => e.textContent)`)
	if !slices.Equal(heads, []string{"Tile " + one.Code, "Tile " + other.Code}) {
		b.t.Errorf("%s: %q stand there", when, heads)
	}
	for fact, differs := range map[string]bool{"remark": one.Remark != other.Remark, "body": one.Body != other.Body, "coats": one.Coats != other.Coats, "clear": one.Clear != other.Clear, "cone": one.Cone != other.Cone, "place": one.Place != other.Place} {
		row := `document.querySelector("[data-compared=` + fact + `]")`
		if said := ask[bool](b, row+`.querySelector("th").innerText.includes("differs")`); said != differs {
			b.t.Errorf("%s: of %s it says that it differs: %v", when, fact, said)
		}
		if beside := ask[bool](b, `(([p, q]) => p.top === q.top && p.right <= q.left + 1 && q.width > 80 && q.right <= innerWidth)([...`+row+`.querySelectorAll("td")].map(e => e.getBoundingClientRect()))`); !beside {
			b.t.Errorf("%s: %s does not stand side by side", when, fact)
		}
	}
	if heard := ask[string](b, `document.querySelector("[data-heard]").textContent`); heard != "" && heard != fmt.Sprintf("Tile %s stands beside tile %s.", one.Code, other.Code) {
		b.t.Errorf("%s: a screen reader hears %q", when, heard)
	}
}

// coded finds a tile of the demo.
func coded(t *testing.T, code string) *course.Tile {
	t.Helper()
	for _, tile := range demoTiles(t) {
		if tile.Code == code {
			return tile
		}
	}
	t.Fatalf("no tile %s", code)
	return nil
}

// TestTilesSideBySideByTouch puts tiles side by side with a finger at 360 px.
func TestTilesSideBySideByTouch(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.wall(h, "")
	b.tap(beside("R7"))
	if !b.until(`document.querySelector("[data-chosen]").checkVisibility() && document.querySelector("[data-heard]").textContent.includes("R7")`) {
		t.Fatal("nothing says that a tile is in hand")
	}
	for _, fault := range b.accessible() {
		t.Errorf("one in hand: %s", fault)
	}
	b.tap(beside("B8X"))
	b.stand("two", coded(t, "R7"), coded(t, "B8X"))
	if ask[bool](b, `document.querySelector("[data-chosen]").checkVisibility()`) {
		t.Error("one is still said to be in hand")
	}
	b.tap(beside("R4"))
	b.stand("a third", coded(t, "B8X"), coded(t, "R4"))
	b.reload()
	b.stand("after a reload", coded(t, "B8X"), coded(t, "R4"))
	for _, fault := range slices.Concat(b.accessible(), ask[[]string](b, small), ask[[]string](b, crowded)) {
		t.Errorf("side by side: %s", fault)
	}
	b.scheme("dark")
	for _, fault := range b.accessible() {
		t.Errorf("side by side, dark: %s", fault)
	}
	b.fits("two tiles side by side", []int64{320, 360, 768, 1280})
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	b.size(printedWidth(papers[0], "tiles/index.html"), 900)
	for _, fault := range ask[[]string](b, cut) {
		t.Errorf("side by side, on paper: %s", fault)
	}
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
	b.size(360, 640)
	b.tap(`document.querySelector("[data-apart]")`)
	if !b.until(`!document.querySelector("[data-pair]").checkVisibility() && location.search === "" && !document.querySelector("[aria-pressed=true]")`) {
		t.Error("they are not put back")
	}
}

// TestTilesSideBySideByKeyboard does so with Tab and Enter alone.
func TestTilesSideBySideByKeyboard(t *testing.T) {
	t.Parallel()
	b := open(t)
	b.wall(published(t), "?place=middle+shelf%2C+front")
	for _, code := range []string{"R2", "R5"} {
		if !b.tabTo(beside(code), 60) {
			t.Fatalf("the key Tab never comes to %s", code)
		}
		b.do(chromedp.KeyEvent(kb.Enter))
	}
	b.stand("two", coded(t, "R2"), coded(t, "R5"))
	if at := ask[string](b, "document.activeElement.id"); at != "wall.pair" {
		t.Errorf("the focus is at %q, not at the two", at)
	}
	if !b.tabTo(`document.querySelector("[data-apart]")`, 2) {
		t.Fatal("the key Tab does not come to what puts them back")
	}
	b.do(chromedp.KeyEvent(kb.Enter))
	if !b.until("document.activeElement === " + beside("R5")) {
		t.Error("the focus is not back where the reader was")
	}
}

// TestWallWithoutScripts wants everything to hang there, and nothing that does nothing.
func TestWallWithoutScripts(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	call(b, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	b.do(chromedp.Navigate(h.home + h.one(t, "wall") + "?body=lantern-porcelain&beside=R1,R2"))
	want := fittingTiles(t, func(*course.Tile) bool { return true })
	if got := slices.Sorted(slices.Values(ask[[]string](b, hangs))); !slices.Equal(got, want) {
		t.Errorf("%q hang there, want %q", got, want)
	}
	if dead := ask[[]string](b, pressable); len(dead) > 0 {
		t.Errorf("dead: %q", dead)
	}
}

// TestHooksOfTheWallLeadToAnswers opens what an empty hook leads to, and works out all
// of them natively.
func TestHooksOfTheWallLeadToAnswers(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	page := h.one(t, "wall")
	hooks := 0
	for _, n := range h.document(t, page).find(nil, "a") {
		to, err := url.Parse(attribute(n, "href"))
		if err != nil || to.RawQuery == "" {
			continue
		}
		hooks++
		name, given, err := engine.ReadRequest(to.RawQuery)
		if answer := catalog.Solve(name, given, s); err != nil || name != "tile-plan" || len(answer.Errors) > 0 || len(answer.Rows) == 0 {
			t.Errorf("%s: %v %v", to, err, answer.Errors)
		}
	}
	if hooks < 10 {
		t.Fatalf("only %d empty hooks", hooks)
	}
	b := phone(t)
	b.wall(h, "")
	b.tap(`document.querySelector(".hook.empty a")`)
	if !b.until(`location.pathname.endsWith("/tile-plan.html") && document.querySelector("[data-answers]")?.checkVisibility() && document.querySelector("[data-head]").textContent !== ""`) {
		t.Error("the hook leads to no answer")
	}
}

// TestScriptOfTheWall wants it on the wall alone, and small.
func TestScriptOfTheWall(t *testing.T) {
	t.Parallel()
	published(t).scriptOfOneKind(t, "wall", "wall", wallLimit)
}

// scriptOfOneKind wants a script on pages of one kind alone, and of so many bytes at
// most, gzipped.
func (h *handbook) scriptOfOneKind(t *testing.T, name, of string, limit int) {
	t.Helper()
	size := 0
	for _, address := range h.pages {
		for _, n := range h.document(t, address).find(nil, "script") {
			src := path.Base(attribute(n, "src"))
			switch {
			case !strings.HasPrefix(src, name+"-"):
			case kind(address) != of:
				t.Errorf("%s loads the script %s", address, src)
			default:
				size = gzipped(t, h.read(t, "assets/"+src))
			}
		}
	}
	if t.Logf("%d bytes of %d", size, limit); size == 0 || size > limit {
		t.Errorf("%d bytes, the limit is %d", size, limit)
	}
}
