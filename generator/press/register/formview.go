package register

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// paperView is the list of what is to hang up and to fill in.
type paperView struct {
	imprint.Framed
	Posters, Forms []imprint.Link
}

// formView is a sheet to fill in.
type formView struct {
	imprint.Framed
	Why     string
	Safety  care.Care
	Aid     []string // keys of words
	Columns []formColumn
	Rows    []struct{}
	Wide    bool
	Asks    bool
	Health  bool
	Paper   string
}

// formColumn is a column with its cell of the example.
type formColumn struct{ Head, Example string }

// kept reports whether the studio writes anything down: then there is something to
// fill in.
func (r *Register) kept() bool {
	c := r.reading.Course
	return len(c.Materials)+len(c.Recipes)+len(c.Tiles) > 0
}

// Paper is the list of posters and forms, or nothing while the studio keeps nothing.
func (r *Register) Paper() []imprint.Sheet {
	if !r.kept() {
		return nil
	}
	title, description := r.Say("paper"), r.Say("paper-description")
	return []imprint.Sheet{{Address: address.Paper, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := paperView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "paper", Title: title, Description: description, Gathered: true})}}
		for _, p := range r.postersUp() {
			v.Posters = append(v.Posters, imprint.Link{Title: r.Word(p.title), Address: at.To(address.Poster(p.id))})
		}
		for _, f := range forms {
			v.Forms = append(v.Forms, imprint.Link{Title: r.Word(f.title), Address: at.To(address.Form(f.id)), About: r.Word(f.why)})
		}
		return v, nil
	}}}
}

// Forms are the pages of the forms.
func (r *Register) Forms() []imprint.Sheet {
	if !r.kept() {
		return nil
	}
	var sheets []imprint.Sheet
	for _, f := range forms {
		sheets = append(sheets, imprint.Sheet{Address: address.Form(f.id), Title: r.Word(f.title), Description: r.Word(f.why),
			View: func(at imprint.Place) (imprint.PageView, error) { return r.form(f, at) }})
	}
	return sheets
}

func (r *Register) form(f blankForm, at imprint.Place) (imprint.PageView, error) {
	v := formView{
		Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "form", Title: r.Word(f.title), Description: r.Word(f.why), Gathered: true})},
		Why:    r.Word(f.why), Safety: r.formCare(f, at), Aid: f.aid, Rows: make([]struct{}, f.rows),
		Wide: f.wide, Asks: f.asks, Health: f.health, Paper: at.To(address.Paper),
	}
	cells := strings.Split(r.Word(f.example), "|")
	if len(cells) != len(f.columns) {
		return nil, fmt.Errorf("words.yaml: %q has %d cells, the form has %d columns", f.example, len(cells), len(f.columns))
	}
	for n, key := range f.columns {
		v.Columns = append(v.Columns, formColumn{r.Word(key), strings.TrimSpace(cells[n])})
	}
	return v, nil
}

// formCare is the hazards of the work that a form is about.
func (r *Register) formCare(f blankForm, at imprint.Place) care.Care {
	return care.Care{Hazards: r.Care(at, course.Care{Hazards: f.cautions}).Hazards}
}

// Words lists the keys of the words that posters and forms take from a theme by their
// tables: it must have them all.
func Words() []string {
	var all []string
	for _, p := range posters {
		all = append(append(all, p.title), p.aid...)
	}
	for _, f := range forms {
		all = append(append(append(all, f.title, f.why, f.example), f.columns...), f.aid...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// owedOnPaper lists how to find what posters and forms owe their readers, by address.
func (r *Register) owedOnPaper() map[string]func() []care.Owed {
	all := map[string]func() []care.Owed{}
	for _, p := range r.postersUp() {
		all[address.Poster(p.id)] = func() []care.Owed { return r.owedByPoster(p) }
	}
	for _, f := range forms {
		if at := address.Form(f.id); r.kept() {
			all[at] = func() []care.Owed {
				return []care.Owed{care.Owe(r.Word(f.title), care.Short, r.formCare(f, imprint.Place{Page: at}))}
			}
		}
	}
	return all
}

// owedByPoster is the hazards of the place with what to do about each, what to wear
// there, who may, and of each group of tubs its own.
func (r *Register) owedByPoster(p poster) []care.Owed {
	at, name := imprint.Place{Page: address.Poster(p.id)}, r.Word(p.title)
	hazards, gear := r.posterCare(p, at)
	all := []care.Owed{care.Owe(name, care.Short, hazards), care.Owe(name, care.Line, gear)}
	for _, a := range r.allowed(p) {
		all = append(all, care.Owe(strings.Join(a.What, ", "), care.Who, a.Safety))
	}
	for _, g := range r.tubGroups(p, at) {
		of := strings.Join(g.Names, ", ")
		all = append(all, care.Owe(of, care.Line, g.Safety), care.Owe(of, care.Who, g.Safety))
	}
	return all
}
