package press

import (
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"strings"
	"text/template/parse"

	"slipbook/generator/markup"
)

// Theme is a look: its templates, words and drawings, read and checked. It knows
// no course, and is only read once it is made.
type Theme struct {
	pages  *template.Template // for pages
	inBook *template.Template // the same for chapters of the book
	words  words
	print  printing
	icons  map[string]template.HTML // by name without ".svg"
	screen map[string]bool          // those that only a screen shows
}

// The pieces that stand before and after the words of every page; they take the
// page's shell. Of frameHead each page has its own; what frameTop and frameEnd
// print must depend on the kind of page, its folder and its strip alone.
const (
	frameHead = "frame-head"
	frameTop  = "frame-top"
	frameEnd  = "frame-end"
)

// Open reads a theme from its folder. Every fault that can be seen without
// printing is an error: a template that does not parse or that is missing, a word
// that words.yaml lacks, an element that only a screen shows and that ends where
// the book cannot leave it out. So is a block that the press itself has no view
// of, since no page with one could be printed.
func Open(theme fs.FS) (*Theme, error) {
	if err := checkViews(markup.Kinds(), blockViews()); err != nil {
		return nil, err
	}
	t := &Theme{}
	if err := t.read(theme); err != nil {
		return nil, fmt.Errorf("theme: %w", err)
	}
	return t, nil
}

func (t *Theme) read(theme fs.FS) error {
	data, err := fs.ReadFile(theme, "words.yaml")
	if err != nil {
		return err
	}
	if t.words, err = readWords(data); err != nil {
		return err
	}
	if err := t.words.checkNeeded(); err != nil {
		return err
	}
	if t.print, err = readPrinting(theme); err != nil {
		return err
	}
	if t.icons, t.screen, err = readIcons(theme); err != nil {
		return err
	}
	parsed, err := template.New("").Option("missingkey=error").Funcs(t.functions()).
		ParseFS(theme, "pages/*.html", "pieces/*.html")
	if err != nil {
		return err
	}
	if err := lacks(parsed); err != nil {
		return err
	}
	for _, one := range parsed.Templates() {
		if err := t.checkWords(one.Tree); err != nil {
			return err
		}
	}
	if t.inBook, err = t.edition(parsed, true); err != nil {
		return err
	}
	t.pages, err = t.edition(parsed, false)
	return err
}

// lacks reports the first template that every theme must have and this one lacks.
func lacks(t *template.Template) error {
	wanted := []string{frameHead, frameTop, frameEnd, bookKind.template, volumeKind.template, "calculator-standing",
		careMark, careWho, careLine, careWhole, careKey, careShort}
	for _, kind := range pageKinds {
		wanted = append(wanted, kind.template)
	}
	wanted = append(wanted, markup.Kinds()...)
	for _, name := range wanted {
		if t.Lookup(name) == nil {
			return fmt.Errorf("it has no template %q", name)
		}
	}
	return nil
}

// readIcons reads the theme's drawings. They stand inside pages as they are:
// a theme is part of the program, so its files are trusted.
func readIcons(theme fs.FS) (icons map[string]template.HTML, screen map[string]bool, err error) {
	files, err := fs.Glob(theme, "icons/*.svg")
	if err != nil {
		return nil, nil, err
	}
	icons, screen = make(map[string]template.HTML, len(files)), make(map[string]bool)
	for _, file := range files {
		data, err := fs.ReadFile(theme, file)
		if err != nil {
			return nil, nil, err
		}
		name := strings.TrimSuffix(path.Base(file), ".svg")
		drawing := strings.TrimSpace(string(data))
		if onlyOnScreen(drawing) {
			screen[name] = true
		}
		icons[name] = template.HTML(screenMark.ReplaceAllString(drawing, "$1"))
	}
	return icons, screen, nil
}

// functions are what templates may call beside Go's own.
func (t *Theme) functions() template.FuncMap {
	return template.FuncMap{
		"word":        t.words.say,
		"duration":    t.words.duration,
		"isoDuration": isoDuration,
		"date":        t.words.date,
		"verdict":     t.words.verdict,
		"icon":        t.icon,
		targetIn:      target,
		chapterIn:     chapter,
	}
}

// icon returns one of the theme's drawings.
func (t *Theme) icon(name string) (template.HTML, error) {
	drawing, ok := t.icons[name]
	if !ok {
		return "", fmt.Errorf("the theme has no drawing icons/%s.svg", name)
	}
	return drawing, nil
}

// checkWords finds the first word that a template asks for and words.yaml
// lacks. It sees only keys written out in the template; the press itself
// reports the others when it prints.
func (p *Theme) checkWords(t *parse.Tree) error {
	if t == nil {
		return nil
	}
	for _, key := range wordsOf(t.Root) {
		if _, ok := p.words[key]; !ok {
			return fmt.Errorf("template %q asks for the word %q, which words.yaml lacks", t.Name, key)
		}
	}
	return nil
}

// wordsOf lists the keys that follow the function word in a piece of a
// template.
func wordsOf(n parse.Node) []string {
	var keys []string
	visit(n, func(n parse.Node) {
		c, ok := n.(*parse.CommandNode)
		if !ok {
			return
		}
		for k, arg := range c.Args {
			if id, ok := arg.(*parse.IdentifierNode); ok && id.Ident == "word" && k+1 < len(c.Args) {
				if key, ok := c.Args[k+1].(*parse.StringNode); ok {
					keys = append(keys, key.Text)
				}
			}
		}
	})
	return keys
}
