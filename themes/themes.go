// Package themes carries the looks that a handbook can be printed in, inside
// the program, so that slipbook is one file and publishes the same bytes
// everywhere. A theme is a folder: pages and pieces of pages (html/template), styles,
// scripts (TypeScript), icons, and in a file for each language every word that the
// theme itself prints.
package themes

import (
	"embed"
	"fmt"
	"io/fs"
	"slices"
	"strings"
)

//go:embed all:studio
var folders embed.FS

// Open returns the folder of the theme with this name, its words.yaml in a
// language, or in the one that stands in for it. The error for a name that no
// theme has lists those that there are.
func Open(name, language string) (fs.FS, error) {
	theme, err := folder(name)
	if err != nil {
		return nil, err
	}
	return in(theme, language)
}

// folder returns a theme as it is carried, with the words of every language.
func folder(name string) (fs.FS, error) {
	if !slices.Contains(Names(), name) {
		return nil, fmt.Errorf("there is no look %q; choose one of: %s", name, strings.Join(Names(), ", "))
	}
	return fs.Sub(folders, name)
}

// Names lists the themes carried, in order of their names.
func Names() []string {
	entries, err := folders.ReadDir(".")
	if err != nil {
		panic(err) // the embedded root always reads
	}
	names := make([]string, 0, len(entries))
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}
