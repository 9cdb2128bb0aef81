package press

import (
	"slipbook/generator/address"
	"slipbook/generator/notices"
	"slipbook/generator/press/imprint"
)

// noticesView is the page that says under which terms the parts of a handbook
// stand.
type noticesView struct {
	imprint.Framed
	Notices []notices.Notice // of other people's code that readers load
}

// noticesSheets is that page.
func (i *impression) noticesSheets() []imprint.Sheet {
	title, description := i.Say("notices"), i.Say("notices-description")
	return []imprint.Sheet{{Address: address.Notices, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := noticesView{imprint.Framed{Shell: i.Shell(at, imprint.About{Kind: "notices", Title: title, Description: description})}, notices.Published()}
		v.Shell.Strip = nil
		return v, nil
	}}}
}
