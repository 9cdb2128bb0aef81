package press

import (
	"slices"

	"slipbook/calculators/catalog"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// aboutPage is what a unit's or lesson's page says of itself.
func (i *impression) aboutPage(kind string, page *course.Page) imprint.About {
	return imprint.About{
		Kind:        kind,
		Title:       page.Head.Title,
		Description: page.Head.Description,
		Head:        page.Head,
		Medium:      page.Head.Medium,
		Desk:        i.hasCalculator(page),
		Plan:        i.hasPlan(page),
		Lesson:      page.Kind == course.LessonPage && (i.hasSteps(page) || i.hasCalculator(page)),
	}
}

// hasCalculator reports whether a calculator stands in a hand-written page.
func (i *impression) hasCalculator(page *course.Page) bool {
	return len(i.documents[page].Document.Calculators()) > 0
}

// hasSteps reports whether a page's steps are numbered through, and there are any.
func (i *impression) hasSteps(page *course.Page) bool {
	return page.Numbered() && len(i.documents[page].Document.Steps) > 0
}

// hasPlan reports whether the calculator that plans is one of them.
func (i *impression) hasPlan(page *course.Page) bool {
	return slices.Contains(i.documents[page].Document.Calculators(), catalog.Plan)
}
