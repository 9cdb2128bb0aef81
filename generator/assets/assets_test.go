package assets

import (
	"encoding/base64"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// theme is a small theme with everything a theme must have.
func theme() fstest.MapFS {
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	return fstest.MapFS{
		"styles/studio.css":     file("@import \"ink.css\";\n@import \"./ground.css\";\nh1 { & b { color: red } }\n"),
		"styles/ink.css":        file("p { color: #112233; background: url(../pictures/dot.svg) }\n"),
		"styles/ground.css":     file("body { background: #f4efe6 }\n"),
		"pictures/dot.svg":      file("<svg xmlns=\"http://www.w3.org/2000/svg\"/>"),
		"scripts/page.ts":       file("document.title += '!'\n"),
		"scripts/calculator.ts": file("import { twice } from './sums'\nconst n: number = twice(2)\ndocument.title = String(n) + 'ä'\n"),
		"scripts/sums.ts":       file("export function twice(x: number): number { return x * 2 }\nexport function unused(): void { document.title = 'unused' }\n"),
		"icons/icon.svg":        file("<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\"M0 0\"/></svg>"),
	}
}

func mustMake(t *testing.T, fsys fstest.MapFS) *Bundle {
	t.Helper()
	b, err := Make(fsys, []byte("engine"))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestMakeGivesEveryAddressItsFile(t *testing.T) {
	b := mustMake(t, theme())
	for _, tt := range []struct{ what, address, start, end, holds string }{
		{"style", b.Style, "assets/studio-", ".css", "#f4efe6"},
		{"page", b.Page, "assets/page-", ".js", `"!"`},
		{"desk script", b.Desk.Script, "assets/calculator-", ".js", "ä"},
		{"engine", b.Desk.Engine, "assets/calculators-", ".bin", "engine"},
		{"carried", b.Desk.Carried, "assets/calculators-", ".js", base64.StdEncoding.EncodeToString([]byte("engine"))},
		{"icon", b.Icon, "assets/icon-", ".svg", "M0 0"},
	} {
		t.Run(tt.what, func(t *testing.T) {
			if !strings.HasPrefix(tt.address, tt.start) || !strings.HasSuffix(tt.address, tt.end) {
				t.Errorf("address %q, want %s…%s", tt.address, tt.start, tt.end)
			}
			if got := string(b.Files[tt.address]); !strings.Contains(got, tt.holds) {
				t.Errorf("%s holds %q, want it to hold %q", tt.address, got, tt.holds)
			}
		})
	}
	if got, want := len(b.Files), 7; got != want { // and the picture of the style sheet
		t.Errorf("%d files %q, want %d", got, slices.Sorted(maps.Keys(b.Files)), want)
	}
}

func TestStyleSheetIsOneFileForOlderBrowsers(t *testing.T) {
	b := mustMake(t, theme())
	css := string(b.Files[b.Style])
	for _, want := range []string{"h1 b{color:red}", `url("./dot-`} {
		if !strings.Contains(css, want) {
			t.Errorf("style sheet lacks %q:\n%s", want, css)
		}
	}
	if strings.Contains(css, "@import") {
		t.Errorf("the style sheet imports:\n%s", css)
	}
}

func TestScriptsAreClassicAndLean(t *testing.T) {
	b := mustMake(t, theme())
	js := string(b.Files[b.Desk.Script])
	if !strings.HasPrefix(js, `"use strict";(()=>{`) || !strings.Contains(js, "})()") {
		t.Errorf("not a function called at once: %s", js)
	}
	if strings.Contains(js, "unused") {
		t.Errorf("what nobody calls was taken in: %s", js)
	}
}

func TestSameThemeSameBytes(t *testing.T) {
	a, b := mustMake(t, theme()), mustMake(t, theme())
	if diff := cmp.Diff(a, b, cmpopts.IgnoreUnexported(Bundle{})); diff != "" {
		t.Errorf("two bundles of one theme differ (-first +second):\n%s", diff)
	}
}

func TestNamesChangeWithContent(t *testing.T) {
	before := mustMake(t, theme())
	changed := theme()
	changed["styles/ink.css"] = &fstest.MapFile{Data: []byte("p { color: #112234 }\n")}
	changed["icons/icon.svg"] = &fstest.MapFile{Data: []byte("<svg xmlns=\"http://www.w3.org/2000/svg\"/>")}
	after := mustMake(t, changed)
	if before.Style == after.Style || before.Icon == after.Icon {
		t.Errorf("style %q and icon %q kept their names after a change", after.Style, after.Icon)
	}
	if before.Desk != after.Desk || before.Page != after.Page {
		t.Errorf("scripts changed names without a change: %+v, %+v", before.Desk, after.Desk)
	}
}

func TestThemeWithoutPageScript(t *testing.T) {
	fsys := theme()
	delete(fsys, "scripts/page.ts")
	if b := mustMake(t, fsys); b.Page != "" {
		t.Errorf("page script %q from nothing", b.Page)
	}
}

func TestFaultsOfATheme(t *testing.T) {
	for _, tt := range []struct{ name, file, text, want string }{
		{"syntax of a script", "scripts/sums.ts", "export function twice(x: number { }\n",
			`scripts/sums.ts:1:33: Expected ")" but found "{"`},
		{"a misspelt property is an error", "styles/ink.css", "p {\n  widht: 1px;\n}\n",
			`styles/ink.css:2:3: "widht" is not a known CSS property; Did you mean "width" instead?`},
		{"a missing import", "scripts/calculator.ts", "import { a } from './away'\na()\n",
			`scripts/calculator.ts:1:19: "./away": the theme has no file scripts/away`},
		{"a package", "scripts/calculator.ts", "import { a } from 'somewhere'\na()\n",
			`scripts/calculator.ts:1:19: "somewhere" is outside the theme; a theme uses only its own files, by a path such as "./form"`},
		{"another host", "styles/ink.css", "p { background: url(https://example.org/a.png) }\n",
			`styles/ink.css:1:17: "https://example.org/a.png" is outside the theme; a theme uses only its own files, by a path such as "./form"`},
		{"the root of the host", "styles/ink.css", "@import \"/a.css\";\n",
			`styles/ink.css:1:9: "/a.css" is outside the theme; a theme uses only its own files, by a path such as "./form"`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			fsys := theme()
			fsys[tt.file] = &fstest.MapFile{Data: []byte(tt.text)}
			_, err := Make(fsys, nil)
			if err == nil {
				t.Fatal("no error")
			}
			if got := err.Error(); got != tt.want {
				t.Errorf("error\n got %s\nwant %s", got, tt.want)
			}
		})
	}
}

func TestFaultsComeAllAtOnceInOrder(t *testing.T) {
	fsys := theme()
	fsys["styles/ink.css"] = &fstest.MapFile{Data: []byte("p { heigth: 1px }\nb { widht: 1px }\n")}
	fsys["scripts/sums.ts"] = &fstest.MapFile{Data: []byte("export const twice = (\n")}
	_, err := Make(fsys, nil)
	if err == nil {
		t.Fatal("no error")
	}
	var places []string
	for line := range strings.Lines(err.Error()) {
		place, _, _ := strings.Cut(line, ": ")
		places = append(places, place)
	}
	want := []string{"scripts/sums.ts:2:1", "styles/ink.css:1:5", "styles/ink.css:2:5"}
	if diff := cmp.Diff(want, places); diff != "" {
		t.Errorf("places (-want +got):\n%s\n%v", diff, err)
	}
}

func TestFilesAThemeMustHave(t *testing.T) {
	for _, file := range []string{"styles/studio.css", "scripts/calculator.ts", "icons/icon.svg"} {
		fsys := theme()
		delete(fsys, file)
		_, err := Make(fsys, nil)
		want := file + ": the theme has no such file; every theme needs it"
		if err == nil || err.Error() != want {
			t.Errorf("without %s: error %v, want %s", file, err, want)
		}
	}
}
