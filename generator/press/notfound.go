package press

// notFoundView is the page a server shows in place of one it does not have. It
// may be served at any depth, where relative addresses lead nowhere: it reads
// well without its style sheet, and when the course says where it is published
// all its addresses start from there.
type notFoundView struct {
	Shell  shell
	States []link
}

// notFoundSheet is the page for addresses that lead nowhere.
func (i *impression) notFoundSheet() sheet {
	return sheet{notFoundAddress, "notfound", func() (any, error) {
		w, err := i.words.sayAll("notfound", "notfound-description")
		if err != nil {
			return nil, err
		}
		s := i.shell(about{
			kind:        "notfound",
			address:     notFoundAddress,
			title:       w[0],
			description: w[1],
		})
		s.Strip, s.Script = nil, ""
		if i.course.PublishedAt != "" {
			s.Base, s.Policy = i.course.PublishedAt, policy(false, i.course.PublishedAt)
		}
		return notFoundView{s, i.stateLinks(notFoundAddress)}, nil
	}}
}
