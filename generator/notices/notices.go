// Package notices holds the licences of everybody else's code that slipbook is
// made of. It exists because their only condition is that these words travel
// with the code: with every published handbook, whose calculators contain a
// part of Go, and with the program itself.
//
// The texts are copies of those that come with the code; a test compares them.
package notices

import (
	"embed"
	"fmt"
	"io"
	"strings"
)

//go:embed texts/*.txt
var texts embed.FS

// Notice is the licence of one piece of code.
type Notice struct {
	Name      string // what its authors call it
	Module    string // its path for the go command; "std" for what comes with Go
	Licence   string // the licence's usual name
	Published bool   // its code is in what a handbook's readers load
	file      string
}

var all = []Notice{
	{"Go", "std", "BSD 3-Clause", true, "go"},
	{"chroma", "github.com/alecthomas/chroma/v2", "MIT", false, "chroma"},
	{"esbuild", "github.com/evanw/esbuild", "MIT", false, "esbuild"},
	{"fsnotify", "github.com/fsnotify/fsnotify", "BSD 3-Clause", false, "fsnotify"},
	{"go-yaml", "go.yaml.in/yaml/v4", "Apache 2.0, in part MIT", false, "yaml"},
	{"go-qr", "github.com/piglig/go-qr", "MIT", false, "qr"},
	{"goldmark", "github.com/yuin/goldmark", "MIT", false, "goldmark"},
	{"kong", "github.com/alecthomas/kong", "MIT", false, "kong"},
	{"regexp2", "github.com/dlclark/regexp2/v2", "MIT", false, "regexp2"},
	{"x/sys", "golang.org/x/sys", "BSD 3-Clause", false, "sys"},
	{"x/image", "golang.org/x/image", "BSD 3-Clause", false, "image"},
	{"x/text", "golang.org/x/text", "BSD 3-Clause", false, "text"},
}

// Published returns the notices of the code that a handbook's readers load.
func Published() []Notice {
	var published []Notice
	for _, n := range all {
		if n.Published {
			published = append(published, n)
		}
	}
	return published
}

// Text returns the licence word by word.
func (n Notice) Text() string {
	text, err := texts.ReadFile("texts/" + n.file + ".txt")
	if err != nil {
		panic(err) // a test reads them all
	}
	return string(text)
}

// Paragraphs returns the licence for a page, which breaks lines by itself.
func (n Notice) Paragraphs() []string {
	var paragraphs []string
	for p := range strings.SplitSeq(n.Text(), "\n\n") {
		if p = strings.Join(strings.Fields(p), " "); p != "" {
			paragraphs = append(paragraphs, p)
		}
	}
	return paragraphs
}

// Write prints all notices, as they go with the program.
func Write(to io.Writer) error {
	for _, n := range all {
		if _, err := fmt.Fprintf(to, "== %s (%s), %s\n\n%s\n", n.Name, n.Module, n.Licence, n.Text()); err != nil {
			return err
		}
	}
	return nil
}
