package press

// contentsView is the list of everything: units with their lessons, states,
// media, calculators.
type contentsView struct {
	Shell       shell
	Units       []unitEntry
	States      []link
	Media       []link
	Calculators []link
}

// contentsSheet is the page of contents.
func (i *impression) contentsSheet() sheet {
	return sheet{contentsAddress, "contents", func() (any, error) {
		w, err := i.words.sayAll("contents", "contents-description")
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
			Calculators: calculatorLinks(contentsAddress),
		}, nil
	}}
}

// stateLinks lists the clay states for the page at from.
func (i *impression) stateLinks(from string) []link {
	var links []link
	for _, s := range i.table.States {
		links = append(links, link{s.Name, relative(from, stateAddress(s.ID)), s.Short})
	}
	return links
}
