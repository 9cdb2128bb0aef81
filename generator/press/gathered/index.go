package gathered

import (
	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/press/find"
	"slipbook/generator/press/imprint"
)

// indexView is the page "Find": the box for whoever has a script, and the index of the
// whole book.
type indexView struct {
	imprint.Framed
	Index   assets.Parcel // of the words, for the script
	Letters []indexLetter
	Further []imprint.Link // other pages of it, where it does not fit one
}

// indexLetter is the entries that start with one letter.
type indexLetter struct {
	ID, Name string
	Entries  []indexEntry
}

// indexEntry is an entry as a page prints it.
type indexEntry struct {
	find.Entry
	To string
}

// aroundEntry is how many bytes an entry is thought to take beside its words.
const aroundEntry = 60

// Index is the index of the whole book, on as many pages as it takes. The first is
// where one looks for something.
func (r *Gathered) Index(entries []find.Entry) []imprint.Sheet {
	return gathering[find.Entry]{
		address: address.Find, title: r.Say("find"), description: r.Say("find-description"), parts: entries,
		size: func(e find.Entry) int {
			return aroundEntry + len(e.Name) + len(e.See) + len(e.Kind) + len(e.Number) + len(e.Address)
		},
		name: func(e find.Entry) string { return e.Name },
		view: r.index,
	}.sheets()
}

// index makes the view of a page with some of the entries.
func (r *Gathered) index(at imprint.Place, g gatheredPage, entries []find.Entry) (imprint.PageView, error) {
	v := indexView{
		Framed:  imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "search", Title: g.title, Description: g.description, Gathered: true, Find: at.Page == address.Find})},
		Further: g.links(at),
	}
	if at.Page == address.Find {
		index, err := r.frame.Find()
		if err != nil {
			return nil, err
		}
		v.Index = assets.Parcel{Packed: at.To(index.Packed), Carried: at.To(index.Carried)}
	}
	for _, e := range entries {
		name := e.Letter()
		if len(v.Letters) == 0 || v.Letters[len(v.Letters)-1].Name != name {
			v.Letters = append(v.Letters, indexLetter{ID: at.ID("letter." + name), Name: name})
		}
		last := &v.Letters[len(v.Letters)-1]
		last.Entries = append(last.Entries, indexEntry{e, at.To(e.Address)})
	}
	return v, nil
}
