package press

import (
	"fmt"
	"slices"

	"slipbook/calculators/catalog"
)

// calculatorsView is the list of the calculators.
type calculatorsView struct {
	Shell       shell
	Calculators []link
}

// calculatorPageView is the page of one calculator.
type calculatorPageView struct {
	Shell      shell
	Purpose    string
	Calculator any    // what the part "calculator" prints
	Lessons    []link // that use the calculator
}

// calculatorSheets are the pages of the calculators, their list first.
func (i *impression) calculatorSheets() []sheet {
	sheets := []sheet{{calculatorsAddress, "calculators", i.calculatorList}}
	for _, c := range i.calculators {
		sheets = append(sheets, sheet{calculatorAddress(c.Name), "calculator-page", func() (any, error) {
			return i.calculatorPage(c)
		}})
	}
	return sheets
}

// calculatorList makes the view of the list.
func (i *impression) calculatorList() (any, error) {
	w, err := i.words.sayAll("calculators", "calculators-description")
	if err != nil {
		return nil, err
	}
	return calculatorsView{
		Shell: i.shell(about{
			kind:        "calculators",
			address:     calculatorsAddress,
			title:       w[0],
			description: w[1],
		}),
		Calculators: i.calculatorLinks(calculatorsAddress),
	}, nil
}

// calculatorPage makes the view of a calculator's own page, where its boxes
// start as it declares them.
func (i *impression) calculatorPage(c *catalog.Calculator) (any, error) {
	address := calculatorAddress(c.Name)
	view, problems := i.calculatorView(c, nil, 0, address)
	if len(problems) > 0 {
		return nil, fmt.Errorf("calculator %s: %s", c.Name, problems[0].Text)
	}
	return calculatorPageView{
		Shell: i.shell(about{
			kind:        "calculator-page",
			address:     address,
			title:       c.Title,
			description: c.Purpose,
			desk:        true,
			plan:        c.Steps,
		}),
		Purpose:    c.Purpose,
		Calculator: view,
		Lessons:    i.lessonsWith(c.Name, address),
	}, nil
}

// lessonsWith lists the hand-written pages that a calculator stands in.
func (i *impression) lessonsWith(calculator, from string) []link {
	var links []link
	for _, page := range i.order {
		if d := i.documents[page]; d != nil && slices.Contains(d.Calculators, calculator) {
			links = append(links, linkTo(from, page))
		}
	}
	return links
}

// calculatorLinks lists the calculators for the page at from.
func (p *Press) calculatorLinks(from string) []link {
	var links []link
	for _, c := range p.calculators {
		links = append(links, link{c.Title, relative(from, calculatorAddress(c.Name)), c.Purpose})
	}
	return links
}
