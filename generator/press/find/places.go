package find

import (
	"slices"
	"strconv"
	"strings"

	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// Source is what places are gathered from. Its frame knows all pages and on which each
// fault is told.
type Source struct {
	Theme       *theme.Theme
	Reading     *proof.Reading
	Frame       *imprint.Frame
	Calculators []*form.Calculator
	ForTeaching bool // a copy for the instructor
}

// Names lists the places that have a name of their own, without what stands there: what
// an index prints, and far less work than Places.
func (s *Source) Names() []Place { return s.list(s.named) }

// Places lists all places, with what stands there.
func (s *Source) Places() []Place { return s.list(s.page) }

// list lists places by kind, within a kind in the order of the book; page returns those
// of a hand-written page. What has no page in this edition is left out.
func (s *Source) list(page func(page *proof.Page, number string) []Place) []Place {
	var all []Place
	all = append(all, s.words()...)
	all = append(all, s.faults()...)
	all = append(all, s.table()...)
	all = append(all, s.pages(page)...)
	for _, c := range s.Calculators {
		all = append(all, Place{Kind: Calculator, Name: c.Title, Address: address.Calculator(c.Name), Line: line(c.Purpose), Text: c.Purpose})
	}
	all = append(all, s.register()...)
	all = append(all, s.others()...)
	all = slices.DeleteFunc(all, func(p Place) bool {
		page, _, _ := strings.Cut(p.Address, "#")
		return !s.Frame.There[page]
	})
	slices.SortStableFunc(all, func(a, b Place) int { return int(a.Kind) - int(b.Kind) })
	return all
}

func (s *Source) words() []Place {
	var all []Place
	for _, t := range s.Reading.Course.Glossary {
		all = append(all, Place{Kind: Word, Name: t.Word, Also: t.Also, Address: address.Term(t.ID), Line: line(t.Means), Text: t.Means})
	}
	return all
}

// faults are those of the course's list; what lessons say of them is found with them.
func (s *Source) faults() []Place {
	said := map[*course.Fault]string{}
	for _, page := range s.Reading.Pages {
		if page.Kind != course.LessonPage {
			continue
		}
		for _, f := range s.Reading.Faults(page) {
			for _, is := range f.Is {
				said[is] += " " + textOf(page.Document.In(f.Term)) + " " + textOf(page.Document.In(f.Means))
			}
		}
	}
	var all []Place
	for _, f := range s.Reading.Course.Faults {
		on := s.Frame.FaultsOn[f.ID]
		all = append(all, Place{Kind: Fault, Name: f.Sees, Also: []string{strings.ReplaceAll(f.ID, "-", " ")}, Address: address.FaultOn(on, f.ID), Line: line(f.Looks), Text: f.Looks + said[f]})
	}
	return all
}

// table are the rows of the decoration table. A way of working leads to the lesson that
// teaches it, else to the chart.
func (s *Source) table() []Place {
	var all []Place
	d := s.Reading.Course.Decoration
	for _, state := range d.States {
		text := state.Tell + " " + state.Between
		for _, p := range state.Parts {
			text += " " + p.Name + " " + p.Tell
		}
		all = append(all, Place{Kind: State, Name: state.Name, Also: state.Words, Address: address.State(state.ID), Line: line(state.Tell), Text: text})
	}
	for _, m := range d.Media {
		all = append(all, Place{Kind: Medium, Name: m.Name, Also: m.Words, Address: address.Medium(m.ID), Line: line(m.About), Text: m.About})
	}
	for _, t := range d.Techniques {
		all = append(all, Place{Kind: Technique, Name: t.Name, Also: t.Words, Address: s.taught(t.ID), Line: line(t.About), Text: t.About})
	}
	for _, h := range d.Hazards {
		all = append(all, Place{Kind: Hazard, Name: h.Title, Address: address.Hazard(h.ID), Line: line(h.Harm), Text: h.Harm + " " + h.Do})
	}
	return all
}

// taught returns where a way of working is taught.
func (s *Source) taught(technique string) string {
	for _, page := range s.Reading.Pages {
		if page.Kind == course.LessonPage && page.Head.Technique == technique {
			return page.Address
		}
	}
	return address.Chart
}

// pages are units and lessons, and what students ask.
func (s *Source) pages(places func(page *proof.Page, number string) []Place) []Place {
	var all []Place
	for n, u := range s.Reading.Course.Units {
		number := strconv.Itoa(n + 1)
		for _, page := range s.Reading.Pages {
			if page.Unit != u {
				continue
			}
			if of := slices.Index(u.Lessons, page.Page); of >= 0 {
				all = append(all, places(page, imprint.LessonNumber(number, of))...)
			} else {
				all = append(all, places(page, number)...)
			}
		}
	}
	return all
}

// kindOf says of what kind a hand-written page is.
func kindOf(page *proof.Page) Kind {
	switch page.Head.Type {
	case course.ForReading:
		return Reading
	case course.ForPaper:
		return Sheet
	}
	return Lesson
}

// whole is a page as one place, and question what is asked on it, both without what
// stands there.
func whole(page *proof.Page, number string) Place {
	return Place{Kind: kindOf(page), Name: page.Head.Title, Number: number, Address: page.Address}
}

func question(page *proof.Page, b *markup.Block, number string) Place {
	return Place{Kind: Question, Name: markup.Bind(b.Words), Number: number, Address: page.Address + "#" + address.Asked(b.Number)}
}

// named is a page and its questions.
func (s *Source) named(page *proof.Page, number string) []Place {
	all := []Place{whole(page, number)}
	for _, b := range page.Document.Named(markup.AskedBlock) {
		all = append(all, question(page, b, number))
	}
	return all
}

// page is a page with its parts behind it, and its questions.
func (s *Source) page(page *proof.Page, number string) []Place {
	whole := whole(page, number)
	whole.Line = line(page.Head.Description)
	whole.Text = page.Head.Description + " " + strings.Join(page.Head.Teaches, " ") + " " + strings.Join(page.Head.Needs, " ")
	var parts, questions []Place
	for _, p := range partsOf(page, s.ForTeaching) {
		switch {
		case p.asked != nil:
			q := question(page, p.asked, number)
			q.Line, q.Text = line(p.text), p.text
			questions = append(questions, q)
		case p.heading == nil:
			whole.Text += " " + p.text
		case p.text != "":
			parts = append(parts, Place{Kind: whole.Kind, Name: whole.Name, Part: p.heading.Text, Number: number, Address: page.Address + "#" + p.heading.ID, Line: cut(p.text, partLineLength), Text: p.text})
		}
	}
	whole.Parts = len(parts)
	return slices.Concat([]Place{whole}, parts, questions)
}

// register is what the studio keeps.
func (s *Source) register() []Place {
	var all []Place
	for _, r := range s.Reading.Course.Recipes {
		all = append(all, Place{Kind: Recipe, Name: r.Title, Address: address.Recipe(r.ID), Line: line(r.About), Text: r.About})
	}
	for _, m := range s.Reading.Course.Materials {
		all = append(all, Place{Kind: Material, Name: m.Name, Address: address.Material(m.ID), Line: line(m.What), Text: m.What + " " + m.Role})
	}
	return all
}

// others are the pages that gather or are to print.
func (s *Source) others() []Place {
	t := s.Theme
	var all []Place
	for _, o := range []struct {
		kind                 Kind
		address, name, about string
	}{
		{Page, address.Chart, t.Say("chart"), t.Say("chart-description")},
		{Page, address.Answers, t.Say("answers"), t.Say("answers-description")},
		{Page, address.Faults, t.Say("faults"), t.Say("faults-description")},
		{Page, address.Hazards, t.Say("hazards"), t.Say("hazards-description")},
		{Page, address.Glossary, t.Say("glossary"), t.Say("glossary-description")},
		{Page, address.Calculators, t.Say("calculators"), t.Say("calculators-description")},
		{Page, address.Cards, t.Say("cards"), t.Say("cards-description")},
		{Page, address.Recipes, t.Say("recipes"), t.Say("recipes-description")},
		{Page, address.Materials, t.Say("materials"), t.Say("materials-description")},
		{Page, address.Wall, t.Say("wall"), t.Say("wall-description")},
		{Page, address.Leach, t.Say("leach"), t.Say("leach-description")},
		{Page, address.Eat, t.Say("eat"), t.Say("eat-description")},
		{Page, address.Labels, t.Say("labels"), t.Say("labels-description")},
		{Page, address.Classes, t.Say("classes"), t.Say("classes-description")},
		{Page, address.Stock, t.Say("stock"), t.Say("stock-description")},
		{Page, address.Paper, t.Say("paper"), t.Say("paper-description")},
		{Teaching, address.Teaching, t.Say("teaching-page"), t.Say("teaching-description")},
	} {
		all = append(all, Place{Kind: o.kind, Name: o.name, Address: o.address, Line: line(o.about), Text: o.about})
	}
	return all
}
