package register

import (
	"cmp"
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// poster declares a sheet to hang up where something can hurt: what of the course
// belongs there. What it says comes from hazards.yaml, the table and the register.
type poster struct {
	id     string
	title  string                      // key of the place's name
	place  string                      // of hazards.yaml: its hazards belong here; may be empty
	uses   []string                    // further hazards, by what is done here; those that the course has
	tubs   func(*course.Material) bool // tubs of the register to mind here
	barred func(*course.Material) bool // of these, what is never used here; may be nil
	waste  bool                        // tubs are emptied here
	aid    []string                    // keys of what to do first
	leads  string                      // address of the page where the whole of it stands
	firing bool                        // pots are fired here
}

// posters lists them.
var posters = []poster{
	{id: "mixing-bench", title: "poster-mixing-bench", place: "weighing", uses: []string{"raw-metal", "dust", "colour"}, tubs: badToWeigh, leads: address.Materials,
		aid: []string{"aid-call", "aid-breathed", "aid-skin", "aid-eye", "aid-swallowed", "aid-bring"}},
	{id: "spray-booth", title: "poster-spray-booth", place: "booth", uses: []string{"dust"}, tubs: badToBreathe, barred: rawMetal, leads: address.Hazards,
		aid: []string{"aid-call", "aid-injected", "aid-breathed", "aid-eye", "aid-bring"}},
	{id: "kiln-room", title: "poster-kiln-room", place: "outside-kiln-room", uses: []string{"hot-kiln", "warm-pot", "splinter"}, tubs: badToBurn, leads: address.Hazards, firing: true,
		aid: []string{"aid-shock", "aid-call", "aid-burn", "aid-breathed", "aid-eye"}},
	{id: "sink", title: "poster-sink", uses: []string{"rinse-water", "wash-colour", "colour", "dust"}, tubs: badToPour, leads: address.Materials, waste: true,
		aid: []string{"aid-skin", "aid-eye", "aid-swallowed", "aid-call", "aid-bring"}},
}

// posterView is a poster.
type posterView struct {
	imprint.Framed
	posterSize
	Safety   care.Care // the hazards of this place
	Gear     care.Care // what they call for wearing, and where
	Allowed  []allowance
	Tubs     []tubGroup
	Waste    []wasteGroup
	Aid      []string // keys of the words
	Whole    imprint.Link
	QR       *qrView
	Paper    string // the list of all that is to print
	Doctor   bool   // it says who asks a doctor first
	Invented bool   // a sheet behind its tubs is made up
}

// allowance is who may do something, where not every student may.
type allowance struct {
	Safety care.Care // of it only who may
	What   []string
}

// postersUp lists the posters for which the course has hazards, if it keeps a register.
func (r *Register) postersUp() []poster {
	if len(r.reading.Course.Materials) == 0 {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(posters), func(p poster) bool { return len(r.posterHazards(p).Hazards) == 0 })
}

// posterHazards is the hazards that belong to a place, as a row of the table.
func (r *Register) posterHazards(p poster) (row course.Care) {
	for _, h := range r.Decoration.Hazards {
		if p.place != "" && h.Place == p.place || slices.Contains(p.uses, h.ID) {
			row.Hazards = append(row.Hazards, h.ID)
		}
	}
	return row
}

// Posters are the pages of the posters.
func (r *Register) Posters() []imprint.Sheet {
	var sheets []imprint.Sheet
	for _, p := range r.postersUp() {
		title, description := r.Word(p.title), r.Say("poster-description")
		sheets = append(sheets, imprint.Sheet{Address: address.Poster(p.id), Title: title, Description: description,
			View: func(at imprint.Place) (imprint.PageView, error) {
				return r.poster(p, at, imprint.About{Kind: "poster", Title: title, Description: description, Gathered: true})
			}})
	}
	return sheets
}

func (r *Register) poster(p poster, at imprint.Place, about imprint.About) (imprint.PageView, error) {
	v := posterView{Framed: imprint.Framed{Shell: r.frame.Shell(at, about)}, Aid: p.aid, Paper: at.To(address.Paper)}
	v.Safety, v.Gear = r.posterCare(p, at)
	v.Allowed, v.Tubs = r.allowed(p), r.tubGroups(p, at)
	v.Doctor = len(v.Tubs) > 0 && !p.waste
	if p.waste {
		v.Waste = r.wasteGroups()
	}
	for _, g := range v.Tubs {
		v.Invented = v.Invented || g.Class.Invented
	}
	v.Whole = imprint.Link{Title: r.Say("materials"), Address: r.frame.WhereThere(at, address.Materials)}
	if p.leads == address.Hazards {
		v.Whole = imprint.Link{Title: r.Say("hazards"), Address: at.To(address.Hazards)}
	}
	if where := r.reading.Course.PublishedAt; where != "" {
		var err error
		if v.QR, err = qrCode(where + p.leads); err != nil {
			return nil, err
		}
	}
	v.settle(r.Theme.Word)
	return v, nil
}

// posterCare is the hazards of a place, and apart from them what they call for.
func (r *Register) posterCare(p poster, at imprint.Place) (hazards, gear care.Care) {
	c := r.Care(at, r.posterHazards(p))
	gear = care.Care{Wear: course.Worn(nil, c.Wear...)}
	if place, there := r.Decoration.FindPlace(p.place); there {
		gear.Places = []string{place.Name}
	}
	rank := func(h care.Hazard) int { return slices.Index(p.uses, h.ID) } // those of the place first
	slices.SortStableFunc(c.Hazards, func(a, b care.Hazard) int { return cmp.Compare(rank(a), rank(b)) })
	return care.Care{Hazards: c.Hazards}, gear
}

// allowed lists who may do what comes with the hazards of a poster's own place, as
// the table says it of media, ways of working and firings.
func (r *Register) allowed(p poster) []allowance {
	var all []allowance
	add := func(what string, c course.Care) {
		here := slices.ContainsFunc(r.Decoration.Hazards, func(h course.Hazard) bool {
			return p.place != "" && h.Place == p.place && slices.Contains(c.Hazards, h.ID)
		})
		who := care.WhoWords[c.Who]
		if what == r.Say("poster-firing") && c.Who == course.Instructor {
			who = care.Trained
		}
		if !here || who == "" {
			return
		}
		n := slices.IndexFunc(all, func(a allowance) bool { return a.Safety.Who == who })
		if n < 0 {
			n, all = len(all), append(all, allowance{Safety: care.Care{Who: who}})
		}
		all[n].What = care.AppendNew(all[n].What, what)
	}
	for _, m := range r.Decoration.Media {
		add(m.Name, m.Care)
	}
	for _, t := range r.Decoration.Techniques {
		add(t.Name, t.Care)
	}
	if p.firing {
		for _, t := range r.Decoration.Transitions {
			add(r.Say("poster-firing"), t.Care)
		}
		add(r.Say("poster-firing"), r.Decoration.Firing.Care)
	}
	return all
}
