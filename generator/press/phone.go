package press

import (
	"slipbook/generator/address"
	"slipbook/generator/offline"
	"slipbook/generator/press/imprint"
)

// phoneView is the page that says what of the handbook is on the reader's phone, and
// lets units be chosen. What it says depends on the phone, so scripts say it; without
// one the page says why nothing is kept.
type phoneView struct {
	imprint.Framed
	Most, MostPictures int // megabytes that a phone takes without being asked, and of photos
	Units              []keptUnit
}

// keptUnit is a unit that a phone may keep.
type keptUnit struct {
	ID   string
	Unit imprint.Link
}

const megabyte = 1_000_000

// phoneSheets is that page, where phones may keep the handbook.
func (i *impression) phoneSheets() []imprint.Sheet {
	if !i.frame.Kept {
		return nil
	}
	title, description := i.Say("phone"), i.Say("phone-description")
	return []imprint.Sheet{{Address: address.Phone, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := phoneView{Framed: imprint.Framed{Shell: i.Shell(at, imprint.About{Kind: "phone", Title: title, Description: description})}}
		v.Shell.Strip = nil
		v.Most, v.MostPictures = offline.Most/megabyte, offline.MostPictures/megabyte
		if p := v.Shell.Phone; p.Script != "" && p.Style != "" {
			v.Shell.Styles = append(v.Shell.Styles, p.Style)
			v.Shell.Scripts = append(v.Shell.Scripts, p.Script)
			p.Script, p.Style = "", ""
		}
		for _, u := range i.course.Units {
			if u.Page != nil {
				v.Units = append(v.Units, keptUnit{u.ID, imprint.LinkTo(at, u.Page)})
			}
		}
		return v, nil
	}}}
}
