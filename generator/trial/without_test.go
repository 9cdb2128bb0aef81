//go:build judges

package trial

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
)

// exampleStands checks that the page shows the worked example's answers and
// the printed table.
func exampleStands(t *testing.T, b *tab, c *engine.Calculator, s engine.Settings) {
	t.Helper()
	b.unfold()
	said := ask[string](b, "document.querySelector('main').innerText")
	answer := catalog.Solve(c.Name, c.Example.Given, s)
	if len(answer.Outputs) == 0 {
		t.Fatalf("the worked example has no answer: %v", answer.Errors)
	}
	wanted := []string{c.Example.Case, answer.Headline}
	for _, r := range answer.Outputs {
		if !slices.ContainsFunc(c.Outputs, func(o engine.Output) bool { return o.Name == r.Name && o.Aside }) {
			wanted = append(wanted, r.Text)
		}
	}
	wanted = append(wanted, c.Table.Caption)
	for _, value := range c.Table.Values {
		given := append([]engine.Setting{{Name: c.Table.Down, Text: value}}, c.Table.Also...)
		if c.Table.Across != "" {
			given = append(given, engine.Setting{Name: c.Table.Across, Text: c.Table.AcrossValues[0]})
		}
		for _, g := range c.Example.Given {
			if _, taken := textOf(given, g.Name); !taken {
				given = append(given, g)
			}
		}
		for _, r := range catalog.Solve(c.Name, given, s).Outputs {
			if r.Name == c.Table.Show[0] && r.IsText {
				wanted = append(wanted, r.Text)
			} else if r.Name == c.Table.Show[0] {
				wanted = append(wanted, r.Figure) // the unit stands in the head of the table
			}
		}
	}
	for _, w := range wanted {
		if !shows(said, w) {
			t.Errorf("%s: the page does not show %q", c.Name, w)
		}
	}
}

func TestWithoutScripts(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		b := open(t)
		call(b, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		b.do(chromedp.Navigate(h.home + "calculators/" + c.Name + ".html"))
		exampleStands(t, b, c, s)
		if ask[bool](b, "[...document.querySelectorAll('form[data-calculator] input')].some(e => e.checkVisibility())") {
			t.Error("without scripts there are boxes to type into, and nothing would answer")
		}
		if said, _ := b.heard(); len(said) > 0 {
			t.Errorf("on the console: %v", said)
		}
	})
}

func TestCalculatesFromAFolder(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	local := h.fromFolder(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(open(t), local, c)
		f.fill(c.Example.Given, true)
		f.agree(c.Example.Given, s)
		_, asked := f.heard()
		for _, a := range asked {
			if !strings.HasPrefix(a, local.home) {
				t.Errorf("asks for %s, outside its folder", a)
			}
		}
	})
}

// copyWithout copies a folder, all but the files with one extension.
func copyWithout(t *testing.T, from, to, extension string) {
	t.Helper()
	for name, data := range contents(t, from) {
		file := filepath.Join(to, filepath.FromSlash(name))
		if filepath.Ext(name) == extension {
			continue
		}
		if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

func TestWithoutTheEngine(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	dir := t.TempDir()
	copyWithout(t, h.dir, dir, ".bin")
	broken, err := serve(dir)
	if err != nil {
		t.Fatal(err)
	}
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		b := open(t)
		b.visit(broken.home + "calculators/" + c.Name + ".html")
		if !b.until("[...document.querySelectorAll('[data-failed]')].some(e => e.checkVisibility() && e.innerText.trim().length > 20)") {
			t.Error("the page does not say that its calculator cannot work")
		}
		exampleStands(t, b, c, s)
		for _, fault := range b.accessible() {
			t.Error(fault)
		}
	})
}
