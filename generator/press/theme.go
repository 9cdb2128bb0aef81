package press

import (
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"strings"
	"text/template/parse"
)

// readTheme reads the theme's words, drawings and templates.
func (p *Press) readTheme(theme fs.FS) error {
	data, err := fs.ReadFile(theme, "words.yaml")
	if err != nil {
		return fmt.Errorf("theme: %w", err)
	}
	if p.words, err = readWords(data); err != nil {
		return fmt.Errorf("theme: %w", err)
	}
	if p.icons, err = readIcons(theme); err != nil {
		return fmt.Errorf("theme: %w", err)
	}
	for _, s := range p.table.States {
		if _, ok := p.icons["state-"+s.ID]; !ok {
			return fmt.Errorf("theme: no drawing icons/state-%s.svg for the state %q", s.ID, s.ID)
		}
	}
	p.templates, err = template.New("").Option("missingkey=error").Funcs(p.functions()).
		ParseFS(theme, "pages/*.html", "pieces/*.html")
	if err != nil {
		return fmt.Errorf("theme: %w", err)
	}
	for _, t := range p.templates.Templates() {
		if err := p.checkWords(t.Tree); err != nil {
			return fmt.Errorf("theme: %w", err)
		}
		if t.Tree != nil {
			p.foldWords(t.Tree.Root)
		}
	}
	return nil
}

// readIcons reads the theme's drawings. They stand inside pages as they are:
// a theme is part of the program, so its files are trusted.
func readIcons(theme fs.FS) (map[string]template.HTML, error) {
	files, err := fs.Glob(theme, "icons/*.svg")
	if err != nil {
		return nil, err
	}
	icons := make(map[string]template.HTML, len(files))
	for _, file := range files {
		data, err := fs.ReadFile(theme, file)
		if err != nil {
			return nil, err
		}
		name := strings.TrimSuffix(path.Base(file), ".svg")
		icons[name] = template.HTML(strings.TrimSpace(string(data)))
	}
	return icons, nil
}

// functions are what templates may call beside Go's own.
func (p *Press) functions() template.FuncMap {
	return template.FuncMap{
		"word":        p.words.say,
		"duration":    p.words.duration,
		"isoDuration": isoDuration,
		"date":        p.words.date,
		"verdict":     p.words.verdict,
		"icon":        p.icon,
	}
}

// icon gives one of the theme's drawings.
func (p *Press) icon(name string) (template.HTML, error) {
	drawing, ok := p.icons[name]
	if !ok {
		return "", fmt.Errorf("the theme has no drawing icons/%s.svg", name)
	}
	return drawing, nil
}

// checkWords finds the first word that a template asks for and words.yaml
// lacks. It sees only keys written out in the template; the press itself
// reports the others when it prints.
func (p *Press) checkWords(t *parse.Tree) error {
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
	switch n := n.(type) {
	case *parse.ListNode:
		if n == nil { // an absent {{else}}
			return nil
		}
		for _, inner := range n.Nodes {
			keys = append(keys, wordsOf(inner)...)
		}
	case *parse.ActionNode:
		return wordsOf(n.Pipe)
	case *parse.TemplateNode:
		return wordsOf(n.Pipe)
	case *parse.IfNode:
		return wordsOfBranch(n.BranchNode)
	case *parse.RangeNode:
		return wordsOfBranch(n.BranchNode)
	case *parse.WithNode:
		return wordsOfBranch(n.BranchNode)
	case *parse.PipeNode:
		if n == nil { // {{template "x"}} without a value
			return nil
		}
		for _, c := range n.Cmds {
			keys = append(keys, wordsOf(c)...)
		}
	case *parse.CommandNode:
		for k, arg := range n.Args {
			keys = append(keys, wordsOf(arg)...)
			if id, ok := arg.(*parse.IdentifierNode); ok && id.Ident == "word" && k+1 < len(n.Args) {
				if key, ok := n.Args[k+1].(*parse.StringNode); ok {
					keys = append(keys, key.Text)
				}
			}
		}
	}
	return keys
}

func wordsOfBranch(b parse.BranchNode) []string {
	keys := wordsOf(b.Pipe)
	keys = append(keys, wordsOf(b.List)...)
	return append(keys, wordsOf(b.ElseList)...)
}
