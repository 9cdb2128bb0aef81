package press

import "slipbook/generator/notices"

// noticesView is the page that says under which terms the parts of a handbook
// stand.
type noticesView struct {
	Shell   shell
	Notices []notices.Notice // of other people's code that readers load
}

// noticesSheet is that page.
func (i *impression) noticesSheet() sheet {
	return sheet{noticesAddress, "notices", func() (any, error) {
		w, err := i.words.sayAll("notices", "notices-description")
		if err != nil {
			return nil, err
		}
		v := noticesView{i.shell(about{kind: "notices", address: noticesAddress, title: w[0], description: w[1]}), notices.Published()}
		v.Shell.Strip = nil
		return v, nil
	}}
}
