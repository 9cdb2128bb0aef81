package press

import (
	"slipbook/generator/address"
	"slipbook/generator/notices"
)

// noticesView is the page that says under which terms the parts of a handbook
// stand.
type noticesView struct {
	framed
	Notices []notices.Notice // of other people's code that readers load
}

// noticesSheets is that page.
func (i *impression) noticesSheets() []sheet {
	title, description := i.Say("notices"), i.Say("notices-description")
	return []sheet{{address: address.Notices, title: title, description: description, view: func(at place) (pageView, error) {
		v := noticesView{framed{Shell: i.shell(at, about{kind: "notices", title: title, description: description})}, notices.Published()}
		v.Shell.Strip = nil
		return v, nil
	}}}
}
