package press

import "slipbook/generator/address"

// notFoundView is the page a server shows in place of one it does not have. It
// may be served at any depth, where relative addresses lead nowhere: it reads
// well without its style sheet, and when the course says where it is published
// all its addresses start from there.
type notFoundView struct {
	framed
	States []link
}

// notFoundSheets is the page for addresses that lead nowhere.
func (i *impression) notFoundSheets() []sheet {
	title, description := i.Say("notfound"), i.Say("notfound-description")
	return []sheet{{address: address.NotFound, title: title, description: description, view: func(at place) (pageView, error) {
		s := i.shell(at, about{kind: "notfound", title: title, description: description})
		s.Strip, s.Script = nil, ""
		if i.course.PublishedAt != "" {
			s.Base, s.Policy = i.course.PublishedAt, policy(false, i.course.PublishedAt)
		}
		return notFoundView{framed{Shell: s}, i.stateLinks(at)}, nil
	}}}
}
