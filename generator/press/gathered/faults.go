package gathered

import (
	"html/template"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/setting"
	"slipbook/generator/proof"
)

// faultsView is the page of all that goes wrong, by what a student sees and when:
// the course's list of it, and under each entry why and what then as the lessons
// say it, so that nothing is written twice. Last comes what lessons tell beside
// that list, by the medium that they are about.
type faultsView struct {
	imprint.Framed
	When    []imprint.Link // to the parts by time
	With    []imprint.Link // and to those by medium
	Parts   []faultsPart
	Further []imprint.Link // other pages of it, where it does not fit one
}

// faultsPart is what one sees at one time, or what is on no list.
type faultsPart struct {
	ID, Name string
	Seen     []seenLink // the faults that follow, to find one by
	Faults   []seenFault
	Also     []imprint.Link // faults of the list that lessons about the same medium name
	Others   []lessonFaults // on no list, lesson by lesson
}

// seenLink leads to a fault, with its drawing once more, small.
type seenLink struct {
	imprint.Link
	Drawing       string // the id of the drawing; empty where the picture is none
	Width, Height int    // of the drawing
}

// seenFault is a fault of the course's list.
type seenFault struct {
	ID, Sees, Looks string
	Picture         template.HTML
	Else            []imprint.Link // what looks like it
	Safety          care.Care      // of what the lessons behind it are about
	Causes          []faultView
}

// lessonFaults is what a lesson says beside the list.
type lessonFaults struct {
	Lesson imprint.Link
	Safety care.Care // of what it is about
	Faults []faultView
}

// faultView is one thing that goes wrong, as a lesson tells it.
type faultView struct {
	Seen, Means template.HTML // Seen is empty where it would say once more what stands above it
	Lesson      imprint.Link
}

// Faults is the page of what goes wrong, or nothing while nothing is
// said of it.
func (r *Gathered) Faults() []imprint.Sheet {
	return gathering[faultsSource]{
		address: address.Faults, title: r.Say("faults"), description: r.Say("faults-description"), parts: r.faultsSources(),
		size: func(s faultsSource) int { return s.size }, name: faultsSource.name, view: r.faults,
		found: func(s faultsSource, address string) {
			r.faultsAt[address] = append(r.faultsAt[address], s)
			if s.fault != nil {
				r.frame.FaultsOn[s.fault.ID] = address
			}
		},
	}.sheets()
}

// faults makes the view of a page with some of it.
func (r *Gathered) faults(at imprint.Place, g gatheredPage, sources []faultsSource) (imprint.PageView, error) {
	v := faultsView{
		Framed:  imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "faults", Title: g.title, Description: g.description, Gathered: true, Filter: true})},
		Further: g.links(at),
	}
	for _, s := range sources {
		if id := at.ID(s.group()); len(v.Parts) == 0 || v.Parts[len(v.Parts)-1].ID != id {
			v.begin(s, r.faultsPart(s, at))
		}
		part := &v.Parts[len(v.Parts)-1]
		told, err := r.told(s, at)
		if err != nil {
			return nil, err
		}
		safety := r.Care(at, r.faultsCare(s)...)
		if s.fault == nil {
			part.Others = append(part.Others, lessonFaults{imprint.LinkTo(at, s.said[0].page.Page), safety, told})
			continue
		}
		part.Seen = append(part.Seen, r.seenLink(s.fault, at))
		part.Faults = append(part.Faults, r.seenFault(s.fault, safety, told, at))
	}
	return v, nil
}

// begin adds the part that begins with a source, with the way to it from the top of the
// page.
func (v *faultsView) begin(s faultsSource, part faultsPart) {
	way := imprint.Link{Title: part.Name, Address: "#" + part.ID}
	if s.fault != nil {
		v.When = append(v.When, way)
	} else {
		v.With = append(v.With, way)
	}
	v.Parts = append(v.Parts, part)
}

// faultsPart is the part in which a source stands, still empty.
func (r *Gathered) faultsPart(s faultsSource, at imprint.Place) faultsPart {
	part := faultsPart{ID: at.ID(s.group()), Name: r.Say("faults-other")}
	if m, there := r.Decoration.FindMedium(s.medium()); there {
		part.Name, part.Also = m.Name, r.FaultsWith(m.ID, at)
	}
	if s.fault == nil {
		return part
	}
	switch s.fault.When {
	case "wet":
		part.Name = r.Say("faults-wet")
	case "bisque":
		part.Name = r.Say("faults-bisque")
	case "glaze":
		part.Name = r.Say("faults-glaze")
	}
	return part
}

// seenFault is a fault of the list as a page tells it.
func (r *Gathered) seenFault(f *course.Fault, safety care.Care, causes []faultView, at imprint.Place) seenFault {
	v := seenFault{ID: at.ID(f.ID), Sees: f.Sees, Looks: f.Looks, Safety: safety, Causes: causes}
	if picture, there := r.reading.Course.Pictures[f.Picture]; there {
		v.Picture = imprint.NamedPicture(at, drawingID(f, at), picture, f.Alt, setting.PictureSizes)
	}
	for _, id := range f.Else {
		if other, there := r.reading.Course.FindFault(id); there {
			v.Else = append(v.Else, imprint.Link{Title: other.Sees, Address: at.To(r.FaultAt(id))})
		}
	}
	return v
}

// drawingID is the id of the drawing of a fault.
func drawingID(f *course.Fault, at imprint.Place) string { return at.ID("drawing." + f.ID) }

// seenLink leads to a fault on the same page.
func (r *Gathered) seenLink(f *course.Fault, at imprint.Place) seenLink {
	l := seenLink{Link: imprint.Link{Title: f.Sees, Address: at.To(r.FaultAt(f.ID))}}
	if p := r.reading.Course.Pictures[f.Picture]; p != nil && p.SVG != nil {
		l.Drawing, l.Width, l.Height = drawingID(f, at), p.Width, p.Height
	}
	return l
}

// told sets what lessons say of a source.
func (r *Gathered) told(s faultsSource, at imprint.Place) ([]faultView, error) {
	var all []faultView
	for _, said := range s.said {
		view, err := r.faultView(said, at)
		if err != nil {
			return nil, err
		}
		if s.fault != nil && strings.EqualFold(strings.TrimSpace(string(view.Seen)), template.HTMLEscapeString(s.fault.Sees)) {
			view.Seen = ""
		}
		all = append(all, view)
	}
	return all, nil
}

// faultView sets what a lesson says. That its term leads to the list is left out: here
// the reader is on the list, or holds a card.
func (r *Gathered) faultView(said saidFault, at imprint.Place) (faultView, error) {
	page := said.page
	term := slices.DeleteFunc(slices.Clone(page.Document.In(said.Term)), func(p markup.Piece) bool { return page.FaultOf(p) != nil })
	seen, err := r.setter.Apart(page, term, at)
	if err != nil {
		return faultView{}, err
	}
	means, err := r.setter.Apart(page, page.Document.In(said.Means), at)
	return faultView{seen, means, imprint.LinkTo(at, page.Page)}, err
}

// faultsOf is what a lesson says goes wrong.
func (r *Gathered) faultsOf(page *proof.Page, at imprint.Place) ([]faultView, error) {
	var s faultsSource
	for _, f := range r.reading.Faults(page) {
		s.said = append(s.said, saidFault{page, f})
	}
	return r.told(s, at)
}

// faultsCare is what the table says of the safety of what the lessons behind a fault are
// about: who reads what then is to be done has not always come by the lesson.
func (r *Gathered) faultsCare(s faultsSource) []course.Care {
	var rows []course.Care
	seen := map[*proof.Page]bool{}
	for _, said := range s.said {
		if !seen[said.page] {
			rows = append(rows, r.lessonCare(said.page)...)
		}
		seen[said.page] = true
	}
	return rows
}
