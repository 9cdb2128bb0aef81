package press

import (
	"slipbook/generator/address"
	"slipbook/generator/press/imprint"
)

// triedView is the page that says for readers with disabilities, and their teachers, in
// what and how a handbook was tried, and what it is known to lack. All of it is words of
// the theme, each held by a test of the trial.
type triedView struct {
	imprint.Framed
}

// triedSheets is that page.
func (i *impression) triedSheets() []imprint.Sheet {
	title, description := i.Say("tried"), i.Say("tried-description")
	return []imprint.Sheet{{Address: address.Tried, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := triedView{imprint.Framed{Shell: i.Shell(at, imprint.About{Kind: "tried", Title: title, Description: description})}}
		v.Shell.Strip = nil
		return v, nil
	}}}
}
