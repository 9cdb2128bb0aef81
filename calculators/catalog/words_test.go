package catalog

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slipbook/calculators/form"
	"slipbook/calculators/words"
)

// rooms are the packages that speak.
var rooms = []string{".", "../form", "../quantity", "../stage"}

// keyAt says which argument of a function is the key or id of a sentence, from
// 0; its fill-ins stand behind it.
var keyAt = map[string]int{
	"Say": 0, "Note": 0, "Headline": 0, "Judged": 0, "Count": 0, "Refuse": 1, "Unused": 1, "NewError": 0, "Fill": 0, "fill": 0, "count": 0,
	"say": 0, "refuse": 0, "sheet": 1, "brief": 1, "tooHeavy": 3, "capacityHeadline": 1,
}

// spoken is a call that says something.
type spoken struct {
	at         string
	calculator string // whose file it stands in; empty for what several share
	group      string // of the calculator's words
	key        string
	fills      []string // their names
}

// id is the id of what is said.
func (s spoken) id(calculator string) string {
	if strings.Contains(s.key, ".") {
		return s.key
	}
	return calculator + "." + s.group + "." + s.key
}

// source reads the rooms: every call that says something, and every text that
// stands in the code, by the calculator whose file it stands in.
func source(t *testing.T) (calls []spoken, literals map[string][]string) {
	t.Helper()
	literals = map[string][]string{}
	for _, room := range rooms {
		files, err := filepath.Glob(filepath.Join(room, "*.go"))
		if err != nil || len(files) < 5 {
			t.Fatal(room, files, err)
		}
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			fset := token.NewFileSet()
			tree, err := parser.ParseFile(fset, file, text, 0)
			if err != nil {
				t.Fatal(err)
			}
			of := ""
			for _, c := range all {
				if strings.Contains(string(text), "form.Calculator{\n\tName: ") && strings.Contains(string(text), `"`+c.Name+`",`) && declares(string(text), c.Name) {
					of = c.Name
				}
			}
			ast.Inspect(tree, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.BasicLit:
					if text, err := strconv.Unquote(n.Value); err == nil && n.Kind == token.STRING {
						literals[of] = append(literals[of], text, within(room, text), within(room, "measure."+text), within(room, "kind."+text))
					}
				case *ast.CallExpr:
					if s, ok := speaks(n); ok {
						s.at, s.calculator, s.key = fset.Position(n.Pos()).String(), of, within(room, s.key)
						calls = append(calls, s)
					}
				}
				return true
			})
		}
	}
	return calls, literals
}

// within is the whole id of a key in a room: packages quantity and stage leave
// their own part out.
func within(room, key string) string {
	switch {
	case strings.HasPrefix(key, "language."):
		return key
	case room == "../quantity":
		return "quantity." + key
	case room == "../stage":
		return "plan." + key
	}
	return key
}

// declares reports whether a file declares the calculator of that name.
func declares(text, name string) bool {
	return regexp.MustCompile(`Name: +("`+name+`"|Plan),\n`).MatchString(text) && (name == Plan) == strings.Contains(text, "const Plan")
}

// speaks reads a call whose key is written out.
func speaks(call *ast.CallExpr) (s spoken, ok bool) {
	name := ""
	switch f := call.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	at, ok := keyAt[name]
	if !ok || len(call.Args) <= at {
		return s, false
	}
	if s.key, ok = literal(call.Args[at]); !ok {
		return s, false
	}
	s.group = "say"
	switch _, plain := call.Fun.(*ast.Ident); {
	case name == "sheet", name == "brief":
		s.group = "draw"
	case name == "say" && plain:
		s.group = "formula"
	}
	for i := at + 1; i < len(call.Args); i += 2 {
		if fill, ok := literal(call.Args[i]); ok {
			s.fills = append(s.fills, fill)
		}
	}
	return s, true
}

func literal(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	return text, err == nil
}

// has reports whether there are words of that id, in whatever form.
func has(w *words.Table, id string) bool { return w.Has(id) || w.Has(id+".other") }

// TestEverySentenceHasWords wants every sentence that the code names to have
// words, and to be filled with what it asks for, and nothing else.
func TestEverySentenceHasWords(t *testing.T) {
	w := words.In(words.Default)
	calls, _ := source(t)
	if len(calls) < 200 {
		t.Errorf("only %d calls say something: this test looks at the wrong place", len(calls))
	}
	for _, s := range calls {
		id := s.id(s.calculator)
		if s.calculator == "" && (!strings.Contains(s.key, ".") || s.group == "formula") {
			continue // of several calculators: their answers are looked at below
		}
		if !has(w, id) {
			t.Errorf("%s: %s has no words", s.at, id)
			continue
		}
		if !w.Has(id) {
			continue
		}
		text := w.Text(id)
		for _, fill := range s.fills {
			if !strings.Contains(text, "{"+fill+"}") {
				t.Errorf("%s: %s is not filled with %s: %s", s.at, id, fill, text)
			}
		}
		for _, fill := range regexp.MustCompile(`\{([^}]*)\}`).FindAllStringSubmatch(text, -1) {
			if !slices.Contains(s.fills, fill[1]) && !known(s.calculator, fill[1]) {
				t.Errorf("%s: nothing fills %s of %s", s.at, fill[0], id)
			}
		}
	}
}

// known reports whether a fill-in is an input or an output: of the calculator,
// or of any where several say it.
func known(calculator, name string) bool {
	return slices.ContainsFunc(all, func(c *form.Calculator) bool {
		return (calculator == "" || c.Name == calculator) && (c.Input(name) != nil || c.Output(name) != nil)
	})
}

// TestEveryWordIsUsed wants all words to be said by somebody.
func TestEveryWordIsUsed(t *testing.T) {
	w, used := words.In(words.Default), declared()
	for id := range used {
		if !w.Has(id) {
			t.Errorf("%s has no words", id)
		}
	}
	_, literals := source(t)
	for of, texts := range literals {
		for _, text := range texts {
			used[text] = true
			for _, c := range all {
				if of == "" || of == c.Name {
					for _, group := range []string{".say.", ".draw.", ".formula."} {
						used[c.Name+group+text] = true
					}
				}
			}
		}
	}
	for _, id := range w.IDs() {
		phrase := regexp.MustCompile(`\.(one|few|many|other)$`).ReplaceAllString(id, "")
		if !used[phrase] && !strings.HasPrefix(id, "language.") && !strings.HasPrefix(id, "hazard.") {
			t.Errorf("nobody says %s: %s", id, w.Text(id))
		}
	}
}

// declared are the ids of words that the declarations name.
func declared() map[string]bool {
	used := map[string]bool{}
	add := func(ids ...string) {
		for _, id := range ids {
			used[id] = true
		}
	}
	for _, c := range all {
		add(c.Name+".title", c.Name+".purpose", c.Name+".example", c.Name+".table.caption")
		for _, key := range c.Says {
			add(c.Name + ".note." + key)
		}
		for _, key := range c.Cares {
			add(c.Name + ".caution." + key)
		}
		for _, n := range c.Next {
			add(c.Name + ".next." + n.Calculator)
		}
		for _, o := range c.Outputs {
			add(c.Name + ".answer." + o.Name)
		}
		for _, column := range c.Columns {
			add(c.Name + ".column." + column.Name)
			if column.Either != "" {
				add("form.unit." + column.Either)
			}
		}
		for _, k := range c.Table.Cases {
			add(c.Name + ".table." + k.ID)
		}
		for i := range c.Inputs {
			add(inputIDs(c, &c.Inputs[i])...)
		}
	}
	return used
}

// inputIDs are the ids of the words of one input.
func inputIDs(c *form.Calculator, in *form.Input) []string {
	base := c.Name + "." + in.Name
	if in.Shared != "" {
		base = "shared." + in.Shared
	}
	ids := []string{base + ".label", base + ".help"}
	for _, l := range []form.Limit{in.Low, in.High} {
		if l.Why != "" && !strings.Contains(l.Why, ".") {
			ids = append(ids, base+"."+l.Why)
		}
	}
	choices := base + ".choice."
	if in.SharedChoices != "" {
		choices = "shared." + in.SharedChoices + "."
	}
	for _, choice := range in.Choices {
		ids = append(ids, choices+choice.ID)
	}
	for _, id := range in.Said {
		ids = append(ids, choices+"said."+id)
	}
	for _, id := range in.Asks {
		ids = append(ids, choices+"ask."+id+".said", choices+"ask."+id+".ask")
	}
	return ids
}
