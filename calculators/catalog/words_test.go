package catalog

import (
	"cmp"
	"go/ast"
	"go/token"
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
	at          string
	calculators []*form.Calculator // whose file it stands in; none for what several files share
	group       string             // of the calculator's words
	key         string
	fills       []string // their names
}

// id is the id of what is said. Where several calculators share a file it is
// that of one which has words for it.
func (s spoken) id(w *words.Table) string {
	if strings.Contains(s.key, ".") {
		return s.key
	}
	first := ""
	for _, c := range s.calculators {
		id := c.Name + "." + s.group + "." + s.key
		if has(w, id) {
			return id
		}
		first = cmp.Or(first, id)
	}
	return first
}

// source reads the rooms: every call that says something, and every text that
// stands in the code, by the calculators whose file it stands in; of files that
// declare none, under "".
func source(t *testing.T) (calls []spoken, literals map[string][]string) {
	t.Helper()
	literals = map[string][]string{}
	for _, room := range rooms {
		for _, file := range readRoom(t, room) {
			of := []string{}
			for _, c := range file.calculators() {
				of = append(of, c.Name)
			}
			if len(of) == 0 {
				of = []string{""}
			}
			ast.Inspect(file.tree, func(n ast.Node) bool {
				if e, ok := n.(ast.Expr); ok {
					if text, ok := literal(e); ok {
						for _, name := range of {
							literals[name] = append(literals[name], text, within(room, text), within(room, "measure."+text), within(room, "kind."+text))
						}
					}
				}
				if call, ok := n.(*ast.CallExpr); ok {
					if s, ok := speaks(call); ok {
						s.at, s.calculators, s.key = file.at(call), file.calculators(), within(room, s.key)
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
		id := s.id(w)
		if len(s.calculators) == 0 && (!strings.Contains(s.key, ".") || s.group == "formula") {
			continue // of several calculators: their answers are looked at below
		}
		if !has(w, id) {
			t.Errorf("%s: write %s in calculators/words/en-US.yaml", s.at, id)
			continue
		}
		if !w.Has(id) {
			continue
		}
		text := w.Text(id)
		for _, fill := range s.fills {
			if !strings.Contains(text, "{"+fill+"}") {
				t.Errorf("%s: the code fills {%s}, which %s does not hold: write it there in calculators/words, or take it out here: %s", s.at, fill, id, text)
			}
		}
		for _, fill := range regexp.MustCompile(`\{([^}]*)\}`).FindAllStringSubmatch(text, -1) {
			if !slices.Contains(s.fills, fill[1]) && !known(s.calculators, fill[1]) {
				t.Errorf("%s: nothing fills %s of %s: name an input or an output there in calculators/words, or fill it here", s.at, fill[0], id)
			}
		}
	}
}

// known reports whether a fill-in is an input or an output: of one of these
// calculators, or of any where several files say it.
func known(calculators []*form.Calculator, name string) bool {
	if len(calculators) == 0 {
		calculators = all
	}
	return slices.ContainsFunc(calculators, func(c *form.Calculator) bool {
		return c.Input(name) != nil || c.Output(name) != nil
	})
}

// TestEveryWordIsUsed wants all words to be said by somebody. That those have
// words which a declaration names is for TestDeclarations to say.
func TestEveryWordIsUsed(t *testing.T) {
	w, used := words.In(words.Default), map[string]bool{}
	for _, c := range all {
		for _, id := range declared(c) {
			used[id] = true
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
			t.Errorf("nobody says %s: name it in the code, or take it out of calculators/words: %s", id, w.Text(id))
		}
	}
}

// declared are the ids of the words that a declaration names.
func declared(c *form.Calculator) []string {
	ids := []string{c.Name + ".title", c.Name + ".purpose", c.Name + ".example", c.Name + ".table.caption"}
	for _, key := range c.Says {
		ids = append(ids, c.Name+".note."+key)
	}
	for _, key := range c.Cares {
		ids = append(ids, c.Name+".caution."+key)
	}
	for _, n := range c.Next {
		ids = append(ids, c.Name+".next."+n.Calculator)
	}
	for _, o := range c.Outputs {
		ids = append(ids, c.Name+".answer."+o.Name)
	}
	for _, column := range c.Columns {
		ids = append(ids, c.Name+".column."+column.Name)
		if column.Either != "" {
			ids = append(ids, "form.unit."+column.Either)
		}
	}
	for _, k := range c.Table.Cases {
		ids = append(ids, c.Name+".table."+k.ID)
	}
	for i := range c.Inputs {
		ids = append(ids, inputIDs(c, &c.Inputs[i])...)
	}
	return ids
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
