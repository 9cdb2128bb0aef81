//go:build judges

package assets

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/evanw/esbuild/pkg/api"

	"slipbook/themes"
)

// scriptTests is where the tests of the theme's scripts stand. Each imports
// from a script as if it stood beside it.
const scriptTests = "../../testdata/scripts"

// withTests returns the theme with the tests of its scripts among them.
func withTests(t *testing.T) (theme fstest.MapFS, tests []string) {
	t.Helper()
	theme = fstest.MapFS{}
	add := func(from fs.FS, folder string) (names []string) {
		err := fs.WalkDir(from, ".", func(name string, e fs.DirEntry, err error) error {
			if err != nil || e.IsDir() {
				return err
			}
			data, err := fs.ReadFile(from, name)
			name = folder + strings.Replace(name, ".test.js", ".test.ts", 1) // the theme has no other scripts
			theme[name] = &fstest.MapFile{Data: data}
			names = append(names, name)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		return names
	}
	studio, err := themes.Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	add(studio, "")
	return theme, add(os.DirFS(scriptTests), "scripts/")
}

// ofNode leaves node's own modules to node.
var ofNode = api.Plugin{Name: "node", Setup: func(build api.PluginBuild) {
	build.OnResolve(api.OnResolveOptions{Filter: "^node:"}, func(a api.OnResolveArgs) (api.OnResolveResult, error) {
		return api.OnResolveResult{Path: a.Path, External: true}, nil
	})
}}

var passed = regexp.MustCompile(`(?m)^\S* ?pass (\d+)$`)

// TestScripts lets node run the tests of the theme's scripts, bundled as the
// scripts themselves are.
func TestScripts(t *testing.T) {
	theme, tests := withTests(t)
	if len(tests) < 6 {
		t.Fatalf("only %d tests of scripts were found", len(tests))
	}
	out := t.TempDir()
	result := api.Build(api.BuildOptions{
		EntryPoints: tests, Bundle: true, Write: true, Outdir: out,
		Format: api.FormatCommonJS, Platform: api.PlatformNode, Target: api.ES2022, LogLevel: api.LogLevelSilent,
		OutExtension: map[string]string{".js": ".cjs"},
		Plugins:      []api.Plugin{ofNode, inside(theme)},
	})
	if len(result.Errors) > 0 {
		t.Fatal(faults(result.Errors))
	}
	bundled, err := filepath.Glob(filepath.Join(out, "*.cjs"))
	if err != nil || len(bundled) != len(tests) {
		t.Fatalf("%d of %d tests were bundled, %v", len(bundled), len(tests), err)
	}
	said, err := exec.Command("node", append([]string{"--test"}, bundled...)...).CombinedOutput()
	const least = 70 // fewer would mean that node did not find them
	if pass := passed.FindSubmatch(said); err != nil || pass == nil || !bytes.Contains(said, []byte("skipped 0")) {
		t.Errorf("%v\n%s", err, said)
	} else if n, _ := strconv.Atoi(string(pass[1])); n < least {
		t.Errorf("only %d tests passed, want %d at least\n%s", n, least, said)
	} else {
		t.Logf("%d tests of scripts passed", n)
	}
}
