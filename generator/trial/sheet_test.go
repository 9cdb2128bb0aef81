//go:build judges

package trial

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	cdbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
)

// sheets are the calculators that lead to the scale.
var sheets = []string{"slip-batch", "wash-mix"}

const (
	sheetLines = `[...document.querySelectorAll(".tally-lines li")]`
	sheetTicks = `[...document.querySelectorAll(".tally-lines input")].map(e => e.checked)`
)

// sheetOf opens the mixing sheet of a calculator's worked example on a phone.
func sheetOf(t *testing.T, h *handbook, name string) *form {
	t.Helper()
	f := formAt(phone(t), h, catalog.In("en-GB").Find(name))
	f.fill(f.calc.Example.Given, true)
	f.agree(f.calc.Example.Given, settings(t))
	f.tap(tool("sheet"))
	if !f.until(sheetLines + ".length > 1") {
		t.Fatal("no mixing sheet, or an empty one")
	}
	return f
}

func TestMixingSheetSaysWhatToWeigh(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	for _, name := range sheets {
		t.Run(name, func(t *testing.T) {
			f := sheetOf(t, h, name)
			lines := ask[[]string](f.tab, sheetLines+".map(e => e.innerText.replace(/\\s+/g, ' '))")
			if !strings.HasPrefix(lines[0], "Water") {
				t.Errorf("the water is not first: %q", lines)
			}
			answer := catalog.Solve(name, f.calc.Example.Given, s)
			said := strings.Join(lines, "\n")
			for _, r := range answer.Outputs {
				if len(answer.Rows) == 0 && (r.Name == "stain-mass" || r.Name == "flux-mass") && !shows(said, r.Text) {
					t.Errorf("%s, %s, is not on the sheet:\n%s", r.Name, r.Text, said)
				}
			}
			if !strings.Contains(said, "fine scale") {
				t.Errorf("nothing says that the stain is weighed alone:\n%s", said)
			}
			for n, row := range answer.Rows {
				for _, cell := range row[1:] {
					if !shows(lines[n], cell.Text) {
						t.Errorf("line %d is %q and lacks %q", n+1, lines[n], cell.Text)
					}
				}
			}
			for _, fault := range append(ask[[]string](f.tab, small), ask[[]string](f.tab, widest)...) {
				t.Error(fault)
			}
			f.judged("with its sheet")
		})
	}
}

func TestWashSheetAddsUp(t *testing.T) {
	t.Parallel()
	f := sheetOf(t, published(t), "wash-mix")
	totals := ask[[]string](f.tab, sheetLines+`.map(e => (e.querySelector("label > small")?.textContent ?? "").replace(/[^0-9.]/g, ""))`)
	answer := catalog.Solve("wash-mix", f.calc.Example.Given, settings(t))
	sum := 0.0
	for n, name := range []string{"water", "stain-mass", "flux-mass"} {
		for _, r := range answer.Outputs {
			if r.Name == name {
				sum += r.Value
			}
		}
		if name == "stain-mass" {
			if totals[n] != "" {
				t.Errorf("the stain is weighed alone, and the sheet says %s together", totals[n])
			}
			continue
		}
		if apart(totals[n], sum) > 0.06 {
			t.Errorf("after %s the sheet says %s together, it is %v", name, totals[n], sum)
		}
	}
}

func TestTicksAreKept(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	for _, name := range sheets {
		t.Run(name, func(t *testing.T) {
			f := sheetOf(t, h, name)
			f.tap(sheetLines + `[0].querySelector("label")`)
			f.tap(sheetLines + `[1].querySelector("label")`)
			f.tap(sheetLines + `[1].querySelector("label")`) // taken back
			want := ask[[]bool](f.tab, sheetTicks)
			if !want[0] || want[1] {
				t.Fatalf("after touching, the ticks are %v", want)
			}
			for _, again := range []func(){func() { f.reload(); f.ready() }, func() { f.lose(h) }} {
				again()
				f.agree(f.calc.Example.Given, s)
				if !f.until(sheetLines + ".length > 1") {
					t.Fatal("the sheet is gone after a reload")
				}
				if got := ask[[]bool](f.tab, sheetTicks); len(got) != len(want) || !got[0] || got[1] {
					t.Errorf("after a reload the ticks are %v, they were %v", got, want)
				}
			}
			// What has not been weighed must not be ticked.
			f.fill([]engine.Setting{{Name: "people", Text: "3"}}, false)
			f.until(sheetTicks + ".every(tick => !tick)")
			if ask[bool](f.tab, sheetTicks+".some(tick => tick)") {
				t.Error("the amounts changed, and a tick stands at an amount that nobody weighed")
			}
			f.tap(key("Put the sheet away"))
			f.lose(h)
			if n := ask[int](f.tab, sheetLines+".length"); n != 0 {
				t.Error("the sheet was put away, and is back after a reload")
			}
		})
	}
}

func TestMixingSheetPrintsOnOnePage(t *testing.T) {
	t.Parallel()
	h := published(t)
	for name, more := range map[string][]engine.Setting{"wash-mix": nil, "slip-batch": {{Name: "scale-limit", Text: "700"}, {Name: "people", Text: "99"}}} {
		t.Run(name, func(t *testing.T) {
			f := sheetOf(t, h, name)
			f.fill(more, false)
			f.agree(over(f.calc.Example.Given, more), settings(t))
			lines := ask[[]string](f.tab, sheetLines+".flatMap(e => [e.querySelector('span').firstChild.textContent, e.querySelector('b').innerText])")
			said := ""
			for _, p := range papers {
				s := f.print(p)
				if s.pages != 1 {
					t.Errorf("%s: %d lines take %d pages", p.name, len(lines)/2, s.pages)
				}
				said = letters(s.words(t, asDrawn)[0])
			}
			for _, line := range append(lines, "Date", "Mixed by", settings(t).CautionsOf(f.calc)[0]) {
				if !strings.Contains(said, letters(line)) {
					t.Errorf("the printed sheet lacks %q", line)
				}
			}
			if strings.Contains(said, letters("Work it out")) || strings.Contains(said, letters("Print this sheet")) {
				t.Error("buttons are printed")
			}
		})
	}
}

// over returns a request with some of its inputs said anew.
func over(given, anew []engine.Setting) []engine.Setting {
	kept := slices.DeleteFunc(slices.Clone(given), func(s engine.Setting) bool {
		_, said := textOf(anew, s.Name)
		return said
	})
	return append(kept, anew...)
}

func TestRowsAsAFile(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		answer := catalog.Solve(c.Name, c.Example.Given, s)
		if len(answer.Rows) == 0 || c.Name == "stage-plan" {
			return
		}
		f := formAt(open(t), h, c)
		dir := t.TempDir()
		f.downloads(dir)
		f.fill(c.Example.Given, true)
		f.agree(c.Example.Given, s)
		ask[bool](f.tab, tool("save")+".click() || true")
		records := saved(t, filepath.Join(dir, c.Name+".csv"))
		if len(records) != len(answer.Rows)+1 {
			t.Fatalf("%d records, want a heading and %d rows", len(records), len(answer.Rows))
		}
		for n, cell := range answer.Rows[0] {
			for _, column := range c.Columns {
				want := column.Label
				if column.Unit != "1" && column.Unit != "" {
					want += ", " + column.Unit
				}
				if column.Name == cell.Column && records[0][n] != want {
					t.Errorf("heading %d is %q, want %q", n+1, records[0][n], want)
				}
			}
		}
		plain := strings.NewReplacer("\u202f", "", "\u2212", "-")
		for n, row := range answer.Rows {
			for k, cell := range row {
				want := cell.Text
				if !cell.IsText {
					want = plain.Replace(want)
				}
				if records[n+1][k] != want {
					t.Errorf("row %d holds %q, want %q", n+1, records[n+1][k], want)
				}
			}
		}
	})
}

func TestToolsFromAFolder(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	f := sheetOf(t, h.fromFolder(t), "slip-batch")
	f.tap(sheetLines + `[0].querySelector("label")`)
	f.reload()
	f.ready()
	f.agree(f.calc.Example.Given, s)
	f.until(sheetLines + ".length > 1")
	if ticks := ask[[]bool](f.tab, sheetTicks); len(ticks) == 0 || !ticks[0] {
		t.Errorf("opened from a folder, the ticks after a reload are %v", ticks)
	}
	f.tap(key("Put the sheet away"))
	kept := t.TempDir()
	f.downloads(kept)
	f.tap(tool("save"))
	if records := saved(t, filepath.Join(kept, "slip-batch.csv")); len(records) < 3 {
		t.Errorf("opened from a folder, this was saved: %v", records)
	}
	f.tap(tool("bench"))
	if !f.until(inBenchMode) {
		t.Error("opened from a folder, there is no bench mode")
	}
	if said, _ := f.heard(); len(said) > 0 {
		t.Errorf("on the console: %v", said)
	}
}

// downloads says where files go that the page saves.
func (f *form) downloads(dir string) {
	f.t.Helper()
	call(f.tab, cdbrowser.SetDownloadBehavior, cdbrowser.SetDownloadBehaviorParams{
		Behavior: cdbrowser.SetDownloadBehaviorBehaviorAllow, BrowserContextID: chromedp.FromContext(f.ctx).BrowserContextID, DownloadPath: dir})
}

// saved waits for a file of comma-separated values and reads it by RFC 4180.
func saved(t *testing.T, file string) [][]string {
	t.Helper()
	var data []byte
	if !eventually(func() (saved bool) {
		var err error
		data, err = os.ReadFile(file)
		return err == nil && len(data) > 0
	}) {
		t.Fatalf("no file %s was saved", filepath.Base(file))
	}
	if !strings.HasSuffix(string(data), "\r\n") {
		t.Error("the last line has no end")
	}
	records, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return records
}

// apart returns how far a number in words is from a value.
func apart(text string, value float64) float64 {
	shown, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.Inf(1)
	}
	return math.Abs(shown - value)
}
