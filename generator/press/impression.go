package press

import (
	"maps"
	"sync"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/press/book"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/ebook"
	"slipbook/generator/press/gathered"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/register"
	"slipbook/generator/press/setting"
	"slipbook/generator/press/table"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// Copy says for whom a handbook is printed.
type Copy struct {
	Teaching bool // for the instructor: notes for teaching stand in the lessons and on a page of their own
	Kept     bool // phones may keep it, for when there is no network: it will be published, and not shown while it is written
}

// impression is one printing of the whole handbook: what was read of the course, and
// the rooms that make its pages.
type impression struct {
	*table.Table // with the theme and what is said of safety
	reading      *proof.Reading
	course       *course.Course
	forTeaching  bool // it is the instructor's copy
	documents    map[*course.Page]*proof.Page
	place        map[*course.Page]int // in reading order
	frame        *imprint.Frame
	calculators  *desk.Calculators
	register     *register.Register
	setter       *setting.Setter
	gathered     *gathered.Gathered
	ebook        *ebook.Book
	book         *book.Book                 // nil while the theme prints no book
	index        func() (*wordIndex, error) // made once, when somebody asks
	parcels      map[string][]byte          // the files of words and table
	carried      []string                   // of these, those that only pages opened from a folder ask for
	sheets       []*imprint.Sheet
	owed         map[string]func() []care.Owed // what pages must say of safety, by address
	kept         sync.Map                      // of what stands around pages, once it was printed
}

// wordIndex is the index of all words, packed for the script.
type wordIndex struct {
	head    assets.Parcel
	files   map[string][]byte // by address
	carried []string          // of these, those that only pages opened from a folder ask for
}

// newImpression opens the rooms, one after the other, each with those before it that
// it asks.
func newImpression(t *theme.Theme, r *proof.Reading, b *assets.Bundle, c Copy) (*impression, error) {
	i := &impression{
		reading: r, course: r.Course, forTeaching: c.Teaching, parcels: map[string][]byte{},
		documents: make(map[*course.Page]*proof.Page, len(r.Pages)),
		place:     make(map[*course.Page]int, len(r.Pages)),
		frame:     &imprint.Frame{Course: r.Course, Bundle: b, There: map[string]bool{}, FaultsOn: map[string]string{}, Kept: c.Kept},
	}
	for n, page := range r.Pages {
		i.place[page.Page], i.documents[page.Page] = n, page
	}
	rules := &care.Rules{Decoration: r.Course.Decoration, Addresses: r.Addresses}
	if rules.Decoration == nil {
		rules.Decoration = &course.Decoration{}
	}
	i.calculators = desk.New(t, rules, r.Settings, r.Course.Language)
	var err error
	if i.Table, err = table.New(t, rules, i.frame, i.calculators, r); err != nil {
		return nil, err
	}
	i.register = register.New(r, i.Table, i.frame, i.calculators)
	i.setter = setting.New(t, i.calculators, i.Table, i.register, i.course.Units, c.Teaching)
	i.gathered = gathered.New(r, i.Table, i.frame, i.setter, c.Teaching)
	return i, i.wrapParcels()
}

// wrapParcels wraps the words of the calculators, and the course's decoration
// table for the pages that plan.
func (i *impression) wrapParcels() error {
	err := i.wrap("words", i.reading.Settings.Words.Reactor().Encode(), &i.frame.Spoken)
	if err == nil && i.reading.Settings.Table != nil {
		err = i.wrap("table", i.reading.Settings.Table.Encode(), &i.frame.Table)
	}
	return err
}

func (i *impression) wrap(name, data string, as *assets.Parcel) error {
	parcel, files, err := i.frame.Bundle.Wrap(name, []byte(data))
	*as = parcel
	i.carried = append(i.carried, parcel.Carried)
	maps.Copy(i.parcels, files)
	return err
}

// files returns what is no page, by address.
func (i *impression) files() map[string][]byte {
	all := maps.Clone(i.frame.Bundle.Files)
	maps.Copy(all, i.parcels)
	if i.book != nil {
		maps.Copy(all, i.book.Styles)
	}
	if i.frame.Kept {
		all[address.Manifest] = manifest(i.course, i.frame.Bundle)
	}
	return all
}
