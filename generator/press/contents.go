package press

// contentsView is the list of everything: units with their lessons, states,
// media, calculators.
type contentsView struct {
	Shell       shell
	Units       []unitEntry
	States      []link
	Media       []link
	Calculators []link
	Extra       []link // what is gathered, and what is to print
}

// contentsSheet is the page of contents.
func (i *impression) contentsSheet() sheet {
	return sheet{contentsAddress, "contents", func() (any, error) {
		w, err := i.words.sayAll("contents", "contents-description")
		if err != nil {
			return nil, err
		}
		extra, err := i.extraLinks()
		if err != nil {
			return nil, err
		}
		return contentsView{
			Shell: i.shell(about{
				kind:        "contents",
				address:     contentsAddress,
				title:       w[0],
				description: w[1],
			}),
			Units:       i.unitEntries(contentsAddress),
			States:      i.stateLinks(contentsAddress),
			Media:       i.mediumLinks(contentsAddress),
			Calculators: i.calculatorLinks(contentsAddress),
			Extra:       extra,
		}, nil
	}}
}

// extraLinks lists the pages that are gathered from the others, for the page of
// contents.
func (i *impression) extraLinks() ([]link, error) {
	var links []link
	for _, e := range []struct {
		is           bool
		address, key string
	}{
		{i.has.answers, answersAddress, "answers"},
		{i.has.faults, faultsAddress, "faults"},
		{len(i.table.Hazards) > 0, hazardsAddress, "hazards"},
		{len(i.table.States) > 0, cardsAddress, "cards"},
		{i.bundle.Book != "", bookAddress, "book"},
		{i.teaching, teachingAddress, "teaching-page"},
	} {
		if !e.is {
			continue
		}
		title, err := i.words.say(e.key)
		if err != nil {
			return nil, err
		}
		links = append(links, link{Title: title, Address: e.address})
	}
	if page := i.course.Style; page != nil {
		links = append(links, linkTo(contentsAddress, page))
	}
	return links, nil
}

// stateLinks lists the clay states for the page at from.
func (i *impression) stateLinks(from string) []link {
	var links []link
	for _, s := range i.table.States {
		links = append(links, link{s.Name, relative(from, stateAddress(s.ID)), s.Short})
	}
	return links
}
