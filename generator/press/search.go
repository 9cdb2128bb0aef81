package press

import (
	"maps"

	"slipbook/generator/assets"
	"slipbook/generator/press/find"
	"slipbook/generator/press/imprint"
)

// searchSheets is the page on which one looks for something, with the index of the
// whole book. It is listed when all it may lead to is.
func (i *impression) searchSheets() []imprint.Sheet {
	return i.gathered.Index(find.Entries(i.Theme, i.searched().Names()))
}

// searched is what the places that one may look for are gathered from.
func (i *impression) searched() *find.Source {
	return &find.Source{Theme: i.Theme, Reading: i.reading, Frame: i.frame, Calculators: i.calculators.List, ForTeaching: i.forTeaching}
}

// packIndex packs the index of all words, where the theme has a script for it. It reads
// the whole book, so it is made when somebody asks for it: a save seldom does.
func (i *impression) packIndex() (*wordIndex, error) {
	index := &wordIndex{files: map[string][]byte{}}
	if i.frame.Bundle.Find == "" {
		return index, nil
	}
	var err error
	index.head, err = find.Pack(i.Theme, i.searched().Places(), func(name string, data []byte) (assets.Parcel, error) {
		parcel, files, err := i.frame.Bundle.Wrap(name, data)
		maps.Copy(index.files, files)
		index.carried = append(index.carried, parcel.Carried)
		return parcel, err
	})
	return index, err
}
