package press

import (
	"slices"

	"slipbook/calculators/form"
	"slipbook/generator/address"
)

// calculatorsView is the list of the calculators.
type calculatorsView struct {
	framed
	Calculators []link
}

// calculatorPageView is the page of one calculator.
type calculatorPageView struct {
	framed
	Purpose    string
	Calculator any    // what the part "calculator" prints
	Lessons    []link // that use the calculator
}

// calculatorsSheets is the list of the calculators.
func (i *impression) calculatorsSheets() []sheet {
	title, description := i.Say("calculators"), i.Say("calculators-description")
	return []sheet{{address: address.Calculators, title: title, description: description, view: func(at place) (pageView, error) {
		return calculatorsView{framed{Shell: i.shell(at, about{kind: "calculators", title: title, description: description})}, i.calculatorLinks(at)}, nil
	}}}
}

// calculatorSheets are the calculators' own pages.
func (i *impression) calculatorSheets() []sheet {
	var sheets []sheet
	for _, c := range i.calculators {
		sheets = append(sheets, sheet{address: address.Calculator(c.Name), title: c.Title, description: c.Purpose,
			view: func(at place) (pageView, error) { return i.calculatorPage(c, at) }})
	}
	return sheets
}

// calculatorPage makes the view of a calculator's own page, where its boxes
// start as it declares them.
func (i *impression) calculatorPage(c *form.Calculator, at place) (pageView, error) {
	view, err := i.calculatorView(c, nil, 0, at)
	return calculatorPageView{
		framed:     framed{Shell: i.shell(at, about{kind: "calculator-page", title: c.Title, description: c.Purpose, desk: true, plan: c.Steps})},
		Purpose:    c.Purpose,
		Calculator: view,
		Lessons:    i.lessonsWith(c.Name, at),
	}, err
}

// lessonsWith lists the hand-written pages that a calculator stands in.
func (i *impression) lessonsWith(calculator string, at place) []link {
	var links []link
	for _, page := range i.order {
		if slices.Contains(page.Document.Calculators(), calculator) {
			links = append(links, linkTo(at, page.Page))
		}
	}
	return links
}

// calculatorLinks lists the calculators for a place.
func (i *impression) calculatorLinks(at place) []link {
	var links []link
	for _, c := range i.calculators {
		links = append(links, link{Title: c.Title, Address: at.to(address.Calculator(c.Name)), About: c.Purpose})
	}
	return links
}
