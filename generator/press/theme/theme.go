// Package theme is a look: the templates, words, drawings and sizes of print that
// pages are made with. It exists so that a theme which lacks something is an error
// before anything is printed, and so that one set of templates serves a page on a
// screen and a chapter of the book.
//
// theme knows no course and no view; what pages hold is the press's.
package theme

import (
	"fmt"
	"html/template"
)

// Theme is a look: its templates, words and drawings, read and checked. It knows
// no course, and is only read once it is made.
type Theme struct {
	Pages      *Templates // for pages
	InBook     *Templates // the same for chapters of the book
	InEbook    *Templates // the same for an e-book, as XHTML
	EbookStyle []byte     // the style sheet of an e-book
	Print      Printing
	Icons      map[string]template.HTML // by name without ".svg"
	words      words
	screen     map[string]bool // the drawings that only a screen shows
}

// EbookLook is the file of a theme that holds the style sheet of an e-book.
const EbookLook = "styles/ebook.css"

// functions are what templates may call beside Go's own.
func (t *Theme) functions() template.FuncMap {
	return template.FuncMap{
		"word":        t.words.say,
		"duration":    t.words.duration,
		"isoDuration": isoDuration,
		"date":        t.words.date,
		"verdict":     t.words.verdict,
		"icon":        t.icon,
		targetIn:      Target,
		chapterIn:     chapter,
	}
}

// icon returns one of the theme's drawings.
func (t *Theme) icon(name string) (template.HTML, error) {
	drawing, ok := t.Icons[name]
	if !ok {
		return "", fmt.Errorf("the theme has no drawing icons/%s.svg", name)
	}
	return drawing, nil
}

// Word returns the words of a key as they are; empty where there are none.
func (t *Theme) Word(key string) string { return t.words[key] }

// Say returns the words of one of the needed keys. Open has seen that they can
// be said, so a fault is one of the program.
func (t *Theme) Say(key string, values ...any) string {
	text, err := t.words.say(key, values...)
	if _, known := Needed[key]; err != nil || !known {
		panic(fmt.Sprintf("press: the words %q are not listed as Needed: %v", key, err))
	}
	return text
}
