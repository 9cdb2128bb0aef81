package press

import (
	"slipbook/generator/address"
	"slipbook/generator/press/imprint"
)

// notFoundView is the page a server shows in place of one it does not have. It
// may be served at any depth, where relative addresses lead nowhere: it reads
// well without its style sheet, and when the course says where it is published
// all its addresses start from there.
type notFoundView struct {
	imprint.Framed
	States []imprint.Link
}

// notFoundSheets is the page for addresses that lead nowhere.
func (i *impression) notFoundSheets() []imprint.Sheet {
	title, description := i.Say("notfound"), i.Say("notfound-description")
	return []imprint.Sheet{{Address: address.NotFound, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		s := i.Shell(at, imprint.About{Kind: "notfound", Title: title, Description: description})
		s.Strip, s.Script, s.Phone = nil, "", nil
		if i.course.PublishedAt != "" {
			s.Base, s.Policy = i.course.PublishedAt, imprint.Policy(false, i.course.PublishedAt)
		}
		return notFoundView{imprint.Framed{Shell: s}, i.StateLinks(at)}, nil
	}}}
}
