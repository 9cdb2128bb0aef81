package press

import (
	"slipbook/generator/address"
	"slipbook/generator/press/imprint"
)

// contentsView is the list of everything: units with their lessons, states,
// media, calculators.
type contentsView struct {
	imprint.Framed
	Units       []imprint.UnitEntry
	States      []imprint.Link
	Media       []imprint.Link
	Calculators []imprint.Link
	Extra       []imprint.Link // what is gathered, and what is to print
}

// contentsSheets is the page of contents.
func (i *impression) contentsSheets() []imprint.Sheet {
	title, description := i.Say("contents"), i.Say("contents-description")
	return []imprint.Sheet{{Address: address.Contents, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		return contentsView{
			Framed:      imprint.Framed{Shell: i.Shell(at, imprint.About{Kind: "contents", Title: title, Description: description})},
			Units:       imprint.UnitEntries(at, i.course.Units),
			States:      i.StateLinks(at),
			Media:       i.MediumLinks(at),
			Calculators: i.calculatorLinks(at),
			Extra:       i.extraLinks(at),
		}, nil
	}}}
}

// extraLinks lists the pages that are gathered from the others, for the page of
// contents.
func (i *impression) extraLinks(at imprint.Place) []imprint.Link {
	var links []imprint.Link
	for _, e := range []struct{ address, key string }{
		{address.Answers, "answers"},
		{address.Faults, "faults"},
		{address.Hazards, "hazards"},
		{address.Cards, "cards"},
		{address.Recipes, "recipes"},
		{address.Materials, "materials"},
		{address.Wall, "wall"},
		{address.Leach, "leach"},
		{address.Eat, "eat"},
		{address.Labels, "labels"},
		{address.Classes, "classes"},
		{address.Stock, "stock"},
		{address.Paper, "paper"},
		{address.Book, "book"},
		{address.Ebook, "ebook"},
		{address.Teaching, "teaching-page"},
	} {
		if i.frame.There[e.address] {
			links = append(links, imprint.Link{Title: i.Say(e.key), Address: at.To(e.address)})
		}
	}
	if page := i.course.Style; page != nil {
		links = append(links, imprint.LinkTo(at, page))
	}
	return links
}
