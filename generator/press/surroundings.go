package press

import (
	"bytes"
	"html/template"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// Page finds the hand-written page with this content path.
func (p *Press) Page(path string) (*course.Page, bool) {
	page, ok := p.pages[path]
	return page, ok
}

// Picture finds the picture with this content path.
func (p *Press) Picture(path string) (*course.Picture, bool) {
	picture, ok := p.course.Pictures[path]
	return picture, ok
}

// Made finds a term of the glossary, a clay state or a calculator, and gives
// its address from the handbook's root.
func (p *Press) Made(scheme, id string) (address string, ok bool) {
	switch scheme {
	case "glossary":
		_, ok = p.terms[id]
		return termAddress(id), ok
	case "state":
		_, ok = p.table.FindState(id)
		return stateAddress(id), ok
	case "calculator":
		return calculatorAddress(id), catalog.Find(id) != nil
	}
	return "", false
}

// Section says what the part of a lesson under a heading is for.
func (p *Press) Section(heading string) markup.Section {
	switch {
	case strings.EqualFold(heading, p.course.Sections.Look):
		return markup.LookSection
	case strings.EqualFold(heading, p.course.Sections.Wrong):
		return markup.WrongSection
	}
	return markup.OtherSection
}

// Back says how the way back from a footnote reads and sounds. Where several
// places refer to one note each has its number.
func (p *Press) Back(note, place, places int) (words, name string, err error) {
	if words, err = p.words.say("note-back"); places > 1 {
		words, err = p.words.say("note-back-place", place)
	}
	if err != nil {
		return "", "", err
	}
	name, err = p.words.say("note-back-name", words, note)
	return words, name, err
}

// cautionView is a caution as its piece prints it.
type cautionView struct {
	Number  int // on the page, from 1
	Heading string
	Body    template.HTML
}

// askedView is what students ask, as its piece prints it.
type askedView struct {
	Number int // on the page, from 1
	Ask    string
	Body   template.HTML
}

// questionView is a self-check question as its piece prints it.
type questionView struct {
	Number  int // on the page, from 1
	Ask     string
	Answers []markup.Choice
}

// unknownCalculator is the problem of a block that names no calculator.
func unknownCalculator(b markup.Block) markup.Problem {
	var names []string
	for _, c := range catalog.All() {
		names = append(names, c.Name)
	}
	return markup.Problem{
		Offset: b.Offset,
		Rule:   finding.CalculatorName,
		Text:   "no calculator is named \"" + b.Words + "\"",
		Do:     "Write one of these after the word calculator: " + strings.Join(names, ", ") + ".",
	}
}

// Block renders one of the handbook's own blocks for a page.
func (p *Press) Block(page *course.Page, b markup.Block) (html []byte, problems []markup.Problem) {
	var view any
	switch b.Kind {
	case "caution":
		view = cautionView{b.Number, b.Words, template.HTML(b.HTML)}
	case "asked":
		view = askedView{b.Number, b.Words, template.HTML(b.HTML)}
	case "teaching":
		if !p.teaching {
			return nil, nil
		}
		view = template.HTML(b.HTML)
	case "question":
		view = questionView{b.Number, b.Ask.Ask, b.Ask.Answers}
	case "stages":
		if view, problems = p.stages(page, b); len(problems) > 0 {
			return nil, problems
		}
	case "calculator":
		c := p.calculators.Find(b.Words)
		if c == nil {
			return nil, []markup.Problem{unknownCalculator(b)}
		}
		if view, problems = p.calculatorView(c, b.Fill, b.Number, page.Address); len(problems) > 0 {
			return nil, problems
		}
	}
	var out bytes.Buffer
	if err := p.templates.ExecuteTemplate(&out, b.Kind, view); err != nil {
		fault := themeFault(b.Kind, err)
		fault.Offset = b.Offset
		return nil, []markup.Problem{fault}
	}
	return out.Bytes(), nil
}

// plainHTML is a text as HTML.
func plainHTML(text string) template.HTML { return template.HTML(template.HTMLEscapeString(text)) }

// themeFault says that a piece of the theme could not be printed.
func themeFault(piece string, err error) markup.Problem {
	return markup.Problem{
		Rule: finding.ThemeFault,
		Text: err.Error(),
		Do:   "This is a fault of the theme, not of the lesson: mend the theme's piece " + piece + ".html.",
	}
}
