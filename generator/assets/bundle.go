package assets

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
	"go.yaml.in/yaml/v4"
)

// made is one file that esbuild wrote.
type made struct {
	address string // from the handbook's root
	from    string // the theme's file it was made from
	data    []byte
}

// engines are the oldest browsers that the bundles are written for. All of
// them have DecompressionStream, which the calculators need.
var engines = []api.Engine{
	{Name: api.EngineChrome, Version: "103"},
	{Name: api.EngineFirefox, Version: "113"},
	{Name: api.EngineSafari, Version: "16.4"},
}

// bundle runs esbuild over the theme's entry files. Scripts are classic (a
// function called at once), because module scripts do not load from file:.
func bundle(theme fs.FS) ([]made, error) {
	entries := []string{styleFile, deskFile}
	for _, e := range []string{pageFile, wallFile, findFile, filterFile, shareFile, resumeFile, planFile, benchFile, benchLook, lessonFile, stepFile, stepLook, workerFile, phoneFile, phoneLook, gatherLook, planLook, bookLook} {
		if _, err := fs.Stat(theme, e); err == nil {
			entries = append(entries, e)
		}
	}
	for _, e := range entries {
		if _, err := fs.Stat(theme, e); err != nil {
			return nil, missing(e)
		}
	}
	result := api.Build(api.BuildOptions{
		EntryPoints: entries,
		Bundle:      true,
		Outdir:      folder,
		EntryNames:  "[name]-[hash]",
		AssetNames:  "[name]-[hash]",

		MinifyWhitespace: true, MinifyIdentifiers: true, MinifySyntax: true,
		Format:   api.FormatIIFE,
		Platform: api.PlatformBrowser,
		Engines:  engines,
		Charset:  api.CharsetUTF8,

		LegalComments: api.LegalCommentsNone,
		LogLevel:      api.LogLevelSilent,
		Metafile:      true,
		TsconfigRaw:   `{"compilerOptions":{"strict":true}}`,
		Plugins:       []api.Plugin{inside(theme)},
	})
	if messages := slices.Concat(result.Errors, result.Warnings); len(messages) > 0 {
		return nil, faults(messages)
	}
	return sources(result)
}

// sources pairs the files esbuild wrote with the theme's files they came from.
func sources(result api.BuildResult) ([]made, error) {
	var meta struct {
		Outputs map[string]struct{ EntryPoint string }
	}
	if err := json.Unmarshal([]byte(result.Metafile), &meta); err != nil {
		return nil, fmt.Errorf("reading what esbuild made: %w", err)
	}
	from := map[string]string{} // by last part of the name, which bears a hash
	for name, out := range meta.Outputs {
		from[path.Base(name)] = strings.TrimPrefix(out.EntryPoint, space+":")
	}
	var all []made
	for _, f := range result.OutputFiles {
		base := path.Base(strings.ReplaceAll(f.Path, `\`, "/"))
		all = append(all, made{address: path.Join(folder, base), from: from[base], data: f.Contents})
	}
	return all, nil
}

// space names the theme to esbuild, which writes it before file names.
const space = "theme"

// inside makes esbuild read the theme and nothing else: no disk, no packages,
// no other host. Its functions run on many goroutines and only read.
func inside(theme fs.FS) api.Plugin {
	return api.Plugin{Name: "theme", Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: ".*"}, func(a api.OnResolveArgs) (api.OnResolveResult, error) {
			return resolve(theme, a)
		})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: space}, func(a api.OnLoadArgs) (api.OnLoadResult, error) {
			return load(theme, a.Path)
		})
	}}
}

// resolve finds the theme's file that an import means. Imports in scripts
// leave ".ts" out, as TypeScript wants it.
func resolve(theme fs.FS, a api.OnResolveArgs) (api.OnResolveResult, error) {
	if a.Kind == api.ResolveEntryPoint {
		return api.OnResolveResult{Path: a.Path, Namespace: space}, nil
	}
	if strings.HasPrefix(a.Path, "#") || strings.HasPrefix(a.Path, "data:") {
		return api.OnResolveResult{Path: a.Path, External: true}, nil
	}
	script := a.Kind == api.ResolveJSImportStatement || a.Kind == api.ResolveJSDynamicImport
	if strings.Contains(a.Path, ":") || strings.HasPrefix(a.Path, "/") || script && !strings.HasPrefix(a.Path, ".") {
		return api.OnResolveResult{}, fmt.Errorf("%q is outside the theme; a theme uses only its own files, by a path such as \"./form\"", a.Path)
	}
	name := path.Join(path.Dir(a.Importer), a.Path)
	for _, candidate := range []string{name, name + ".ts"} {
		if info, err := fs.Stat(theme, candidate); err == nil && !info.IsDir() {
			return api.OnResolveResult{Path: candidate, Namespace: space}, nil
		}
	}
	return api.OnResolveResult{}, fmt.Errorf("%q: the theme has no file %s", a.Path, name)
}

// load reads one file of the theme.
func load(theme fs.FS, name string) (api.OnLoadResult, error) {
	data, err := fs.ReadFile(theme, name)
	if err != nil {
		return api.OnLoadResult{}, err
	}
	loader := api.LoaderFile
	switch path.Ext(name) {
	case ".ts":
		loader = api.LoaderTS
	case ".css":
		loader = api.LoaderCSS
	case ".yaml":
		loader = api.LoaderJSON
		if data, err = wordsAsJSON(data); err != nil {
			return api.OnLoadResult{}, fmt.Errorf("%s: %w", name, err)
		}
	}
	text := string(data)
	return api.OnLoadResult{Contents: &text, Loader: loader}, nil
}

// wordsAsJSON turns the theme's list of words into what esbuild can take a
// script's few words from: "import * as words from '../words.yaml'".
func wordsAsJSON(data []byte) ([]byte, error) {
	words := map[string]string{}
	if err := yaml.Load(data, &words); err != nil {
		return nil, err
	}
	return json.Marshal(words)
}

// faults turns esbuild's messages into one error with a line for each, sorted
// by place: "styles/studio.css:3:7: what is wrong".
func faults(messages []api.Message) error {
	type fault struct {
		file         string
		line, column int
		text         string
	}
	all := make([]fault, 0, len(messages))
	for _, m := range messages {
		f := fault{text: strings.ReplaceAll(m.Text, space+":", "")}
		if at := m.Location; at != nil {
			f.file, f.line, f.column = strings.TrimPrefix(at.File, space+":"), at.Line, at.Column+1
		}
		for _, n := range m.Notes {
			f.text += "; " + strings.ReplaceAll(n.Text, space+":", "")
		}
		all = append(all, f)
	}
	slices.SortStableFunc(all, func(a, b fault) int {
		return cmp.Or(strings.Compare(a.file, b.file), a.line-b.line, a.column-b.column, strings.Compare(a.text, b.text))
	})
	errs := make([]error, 0, len(all))
	for _, f := range all {
		if f.file == "" {
			errs = append(errs, errors.New(f.text))
			continue
		}
		errs = append(errs, fmt.Errorf("%s:%d:%d: %s", f.file, f.line, f.column, f.text))
	}
	return errors.Join(errs...)
}
