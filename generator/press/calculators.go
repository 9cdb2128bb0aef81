package press

import (
	"slices"

	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/press/imprint"
)

// calculatorsView is the list of the calculators.
type calculatorsView struct {
	imprint.Framed
	Calculators []imprint.Link
}

// calculatorPageView is the page of one calculator.
type calculatorPageView struct {
	imprint.Framed
	Purpose    string
	Calculator any            // what the part "calculator" prints
	Lessons    []imprint.Link // that use the calculator
}

// calculatorsSheets is the list of the calculators.
func (i *impression) calculatorsSheets() []imprint.Sheet {
	title, description := i.Say("calculators"), i.Say("calculators-description")
	return []imprint.Sheet{{Address: address.Calculators, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		return calculatorsView{imprint.Framed{Shell: i.Shell(at, imprint.About{Kind: "calculators", Title: title, Description: description, Resume: true})}, i.calculatorLinks(at)}, nil
	}}}
}

// calculatorSheets are the calculators' own pages.
func (i *impression) calculatorSheets() []imprint.Sheet {
	var sheets []imprint.Sheet
	for _, c := range i.calculators.List {
		sheets = append(sheets, imprint.Sheet{Address: address.Calculator(c.Name), Title: c.Title, Description: c.Purpose,
			View: func(at imprint.Place) (imprint.PageView, error) { return i.calculatorPage(c, at) }})
	}
	return sheets
}

// calculatorPage makes the view of a calculator's own page, where its boxes
// start as it declares them.
func (i *impression) calculatorPage(c *form.Calculator, at imprint.Place) (imprint.PageView, error) {
	view, err := i.calculators.View(c, nil, 0, at)
	return calculatorPageView{
		Framed:     imprint.Framed{Shell: i.Shell(at, imprint.About{Kind: "calculator-page", Title: c.Title, Description: c.Purpose, Desk: true, Plan: c.Steps})},
		Purpose:    c.Purpose,
		Calculator: view,
		Lessons:    i.lessonsWith(c.Name, at),
	}, err
}

// lessonsWith lists the hand-written pages that a calculator stands in.
func (i *impression) lessonsWith(calculator string, at imprint.Place) []imprint.Link {
	var links []imprint.Link
	for _, page := range i.reading.Pages {
		if slices.Contains(page.Document.Calculators(), calculator) {
			links = append(links, imprint.LinkTo(at, page.Page))
		}
	}
	return links
}

// calculatorLinks lists the calculators for a place.
func (i *impression) calculatorLinks(at imprint.Place) []imprint.Link {
	var links []imprint.Link
	for _, c := range i.calculators.List {
		links = append(links, imprint.Link{Title: c.Title, Address: at.To(address.Calculator(c.Name)), About: c.Purpose})
	}
	return links
}
