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
	from := find.Source{Theme: i.Theme, Reading: i.reading, Frame: i.frame, Calculators: i.calculators.List, ForTeaching: i.forTeaching}
	i.places = from.Places()
	return i.gathered.Index(find.Entries(from.Theme, i.places))
}

// wrapIndex wraps the index of the words, where the theme has a script for it.
func (i *impression) wrapIndex() error {
	if i.frame.Bundle.Find == "" {
		return nil
	}
	var err error
	i.frame.Find, err = find.Pack(i.Theme, i.places, func(name string, data []byte) (assets.Parcel, error) {
		parcel, files, err := i.frame.Bundle.Wrap(name, data)
		maps.Copy(i.parcels, files)
		return parcel, err
	})
	return err
}
