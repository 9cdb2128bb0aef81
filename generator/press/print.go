package press

import (
	"bytes"
	"html/template"
	"maps"
	"path"
	"sync"

	"slipbook/generator/assets"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// The pieces that stand before and after the words of every page; they take the
// page's shell. Of frameHead each page has its own; what frameTop and frameEnd
// print must depend on the kind of page, its folder and its strip alone.
const (
	frameHead = "frame-head"
	frameTop  = "frame-top"
	frameEnd  = "frame-end"
)

// printOne makes one sheet's view and prints it within its frame.
func (i *impression) printOne(s imprint.Sheet) ([]byte, error) {
	view, err := s.View(imprint.Place{Page: s.Address})
	if err != nil {
		return nil, err
	}
	frame := view.Frame()
	top, err := i.around(frameTop, s, frame)
	if err != nil {
		return nil, err
	}
	end, err := i.around(frameEnd, s, frame)
	if err != nil {
		return nil, err
	}
	return imprint.Output(func(page *bytes.Buffer) error {
		if err := i.Pages.ExecuteTemplate(page, frameHead, frame); err != nil {
			return err
		}
		page.WriteString(string(top))
		if err := imprint.Fill(page, i.Pages, s.Kind.Template, view); err != nil {
			return err
		}
		page.WriteString(string(end))
		return i.settle(s, page.Bytes())
	})
}

// aroundKey tells apart what stands around the words of pages: the same for all
// pages of a kind that have the same places to go, from the same folder, and the
// same strip.
type aroundKey struct{ template, folder, kind, alike string }

// around prints a part of the frame of a page, once for all pages that have the
// same.
func (i *impression) around(part string, s imprint.Sheet, frame imprint.Shell) (template.HTML, error) {
	alike, ok := frame.Alike()
	if !ok {
		return imprint.Execute(i.Pages, part, frame)
	}
	key := aroundKey{part, path.Dir(s.Address), s.Kind.Template, alike}
	if html, ok := i.kept.Load(key); ok {
		return html.(template.HTML), nil
	}
	html, err := imprint.Execute(i.Pages, part, frame)
	if err == nil {
		i.kept.Store(key, html)
	}
	return html, err
}

// settle makes sure that a finished page holds what it owes.
func (i *impression) settle(s imprint.Sheet, page []byte) error {
	owes := i.owed[s.Address]
	if owes == nil {
		return nil
	}
	return care.Settle(i.Theme, s.Kind.Template, owes(), page)
}

// debts lists how to find what each page owes its reader, by address.
func (i *impression) debts() map[string]func() []care.Owed {
	all := i.Owes()
	maps.Copy(all, i.register.Owes())
	maps.Copy(all, i.gathered.Owes())
	for _, page := range i.reading.Pages {
		all[page.Address] = func() []care.Owed { return i.OwedByLesson(page) }
	}
	return all
}

// prepare opens the rooms and lists the pages, the book's last, since it is made of
// the others.
func prepare(t *theme.Theme, r *proof.Reading, b *assets.Bundle, c Copy) (*impression, error) {
	i, err := newImpression(t, r, b, c)
	if err != nil {
		return nil, err
	}
	i.index = sync.OnceValues(i.packIndex)
	i.frame.Find = func() (assets.Parcel, error) {
		index, err := i.index()
		return index.head, err
	}
	i.list()
	i.owed = i.debts()
	return i, nil
}
