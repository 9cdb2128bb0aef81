package theme

import (
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"strings"
	"text/template/parse"
)

// Open reads a theme from its folder. Every fault that can be seen without
// printing is an error: a template that does not parse or that is missing, a word
// that words.yaml lacks, an element that only a screen shows and that ends where
// the book cannot leave it out. wanted are the templates that it must have.
func Open(folder fs.FS, wanted []string) (*Theme, error) {
	t := &Theme{}
	if err := t.read(folder, wanted); err != nil {
		return nil, fmt.Errorf("theme: %w", err)
	}
	return t, nil
}

func (t *Theme) read(theme fs.FS, wanted []string) error {
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
	if t.Print, err = readPrinting(theme); err != nil {
		return err
	}
	if t.Icons, t.screen, err = readIcons(theme); err != nil {
		return err
	}
	parsed, err := template.New("").Option("missingkey=error").Funcs(t.functions()).
		ParseFS(theme, "pages/*.html", "pieces/*.html")
	if err != nil {
		return err
	}
	for _, name := range wanted {
		if parsed.Lookup(name) == nil {
			return fmt.Errorf("it has no template %q", name)
		}
	}
	for _, one := range parsed.Templates() {
		if err := t.checkWords(one.Tree); err != nil {
			return err
		}
	}
	for _, e := range []struct {
		made **Templates
		of   use
	}{{&t.InBook, inBook}, {&t.InEbook, inEbook}, {&t.Pages, onPages}} {
		if *e.made, err = t.edition(parsed, e.of); err != nil {
			return err
		}
	}
	if t.EbookStyle, err = fs.ReadFile(theme, EbookLook); err != nil {
		return fmt.Errorf("it has no style sheet for the e-book: %w", err)
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

// checkWords finds the first word that a template asks for and words.yaml
// lacks. It sees only keys written out in the template; the press itself
// reports the others when it prints.
func (t *Theme) checkWords(tree *parse.Tree) error {
	if tree == nil {
		return nil
	}
	for _, key := range wordsOf(tree.Root) {
		if _, ok := t.words[key]; !ok {
			return fmt.Errorf("template %q asks for the word %q, which words.yaml lacks", tree.Name, key)
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
