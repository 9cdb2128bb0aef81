package press

import "slipbook/generator/address"

// contentsView is the list of everything: units with their lessons, states,
// media, calculators.
type contentsView struct {
	framed
	Units       []unitEntry
	States      []link
	Media       []link
	Calculators []link
	Extra       []link // what is gathered, and what is to print
}

// contentsSheets is the page of contents.
func (i *impression) contentsSheets() []sheet {
	title, description := i.Say("contents"), i.Say("contents-description")
	return []sheet{{address: address.Contents, title: title, description: description, view: func(at place) (pageView, error) {
		return contentsView{
			framed:      framed{Shell: i.shell(at, about{kind: "contents", title: title, description: description})},
			Units:       i.unitEntries(at),
			States:      i.stateLinks(at),
			Media:       i.mediumLinks(at),
			Calculators: i.calculatorLinks(at),
			Extra:       i.extraLinks(at),
		}, nil
	}}}
}

// extraLinks lists the pages that are gathered from the others, for the page of
// contents.
func (i *impression) extraLinks(at place) []link {
	var links []link
	for _, e := range []struct{ address, key string }{
		{address.Answers, "answers"},
		{address.Faults, "faults"},
		{address.Hazards, "hazards"},
		{address.Cards, "cards"},
		{address.Book, "book"},
		{address.Teaching, "teaching-page"},
	} {
		if i.there[e.address] {
			links = append(links, link{Title: i.Say(e.key), Address: at.to(e.address)})
		}
	}
	if page := i.course.Style; page != nil {
		links = append(links, linkTo(at, page))
	}
	return links
}

// stateLinks lists the clay states for a place.
func (i *impression) stateLinks(at place) []link {
	var links []link
	for n := range i.table.States {
		links = append(links, *i.stateLink(n, at))
	}
	return links
}
