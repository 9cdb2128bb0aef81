package press

import (
	"net/url"

	"slipbook/generator/assets"
	"slipbook/generator/course"
)

// link is a link as a page prints it.
type link struct {
	Title   string
	Address string // relative to the page
	About   string // one sentence; may be empty
}

// shell is what stands around the words of every page: the document's head,
// the handbook's own links, the clay-state strip and the foot.
type shell struct {
	Kind        string // "lesson", "state", ...
	Language    string
	Handbook    string // the course's title
	Title       string // the page's own; the same as Handbook on the home page
	Description string
	Creator     string
	Date        string // ISO 8601
	Licence     string
	Studio      course.Studio
	Policy      string // of the Content-Security-Policy
	Base        string // absolute address that relative ones start from; almost always empty
	Style       string
	Styles      []string // further style sheets, of pages that others do not look like
	Script      string   // may be empty
	Icon        string
	Desk        *assets.Desk // only on a page with a calculator
	Strip       *strip       // not on pages that show the states in another way

	Home, Contents, Calculators, Glossary string
	Notices                               string
	Chart                                 string // empty while the course has no table
	Hazards                               string // empty while it has no hazards
	Answers, Faults                       string // empty while there are none
	TeachingPage                          string // only in a copy for the instructor
}

// about is what a page says of itself to its shell.
type about struct {
	kind, address, title, description string
	head                              course.Head // the opening block of a hand-written page
	medium                            string      // whose verdicts the strip shows
	state                             string      // which state the page is about
	desk                              bool        // whether a calculator is on the page
	plan                              bool        // whether a plan is on it, to make or to read
	gathered                          bool        // whether it is gathered from other pages, or is the chart
}

// shell makes the shell of a page.
func (i *impression) shell(a about) shell {
	at := func(to string) string { return relative(a.address, to) }
	s := shell{
		Kind:        a.kind,
		Language:    i.course.Language,
		Handbook:    i.course.Title,
		Title:       a.title,
		Description: a.description,
		Creator:     a.head.Creator,
		Date:        a.head.Date,
		Licence:     i.course.Licence,
		Studio:      i.course.Studio,
		Policy:      policy(a.desk, ""),
		Style:       at(i.bundle.Style),
		Script:      at(i.bundle.Page),
		Icon:        at(i.bundle.Icon),
		Strip:       i.strip(a),
		Home:        at(homeAddress),
		Contents:    at(contentsAddress),
		Calculators: at(calculatorsAddress),
		Glossary:    at(glossaryAddress),
		Notices:     at(noticesAddress),
	}
	if len(i.table.States) > 0 {
		s.Chart = at(chartAddress)
	}
	if len(i.table.Hazards) > 0 {
		s.Hazards = at(hazardsAddress)
	}
	if a.desk {
		s.Desk = i.desk(a)
	}
	i.gatheredLinks(&s, a)
	return s
}

// gatheredLinks adds the ways to what is gathered from the lessons, and the
// style of such a page.
func (i *impression) gatheredLinks(s *shell, a about) {
	if i.has.answers {
		s.Answers = relative(a.address, answersAddress)
	}
	if i.has.faults {
		s.Faults = relative(a.address, faultsAddress)
	}
	if i.teaching {
		s.TeachingPage = relative(a.address, teachingAddress)
	}
	if a.gathered && i.bundle.Gathered != "" {
		s.Styles = append(s.Styles, relative(a.address, i.bundle.Gathered))
	}
	if a.plan && i.bundle.Plan != "" {
		s.Styles = append(s.Styles, relative(a.address, i.bundle.Plan))
	}
}

// desk gives the addresses that a page with calculators loads from.
func (i *impression) desk(a about) *assets.Desk {
	at := func(to string) string { return relative(a.address, to) }
	d := &assets.Desk{
		Script:     at(i.bundle.Desk.Script),
		Bench:      at(i.bundle.Desk.Bench),
		BenchStyle: at(i.bundle.Desk.BenchStyle),
		Engine:     at(i.bundle.Desk.Engine),
		Carried:    at(i.bundle.Desk.Carried),
		Words:      assets.Parcel{Packed: at(i.spoken.Packed), Carried: at(i.spoken.Carried)},
	}
	if a.plan && i.bundle.Desk.Planner != "" {
		d.Script = at(i.bundle.Desk.Planner)
	}
	if a.plan {
		d.Table = assets.Parcel{Packed: at(i.wrapped.Packed), Carried: at(i.wrapped.Carried)}
	}
	return d
}

// policy is the Content-Security-Policy of a page: everything comes from the
// handbook itself, nothing stands inline, and WebAssembly runs only where a
// calculator is. A page with a base element names where that leads: it may be
// served from elsewhere, and then that is not the page's own server.
func policy(desk bool, base string) string {
	script, from, own := "'self'", "'none'", "'self'"
	if desk {
		script = "'self' 'wasm-unsafe-eval'"
	}
	if base != "" {
		own += origin(base)
		from = own
	}
	return "default-src 'none'; script-src " + script + "; style-src " + own + "; img-src " + own + "; " +
		"connect-src 'self'; manifest-src 'self'; base-uri " + from + "; form-action 'self'"
}

// origin returns the server of an absolute address as a policy names it, after
// a space; "" for an address that names none.
func origin(address string) string {
	at, err := url.Parse(address)
	if err != nil || at.Host == "" {
		return ""
	}
	return " " + at.Scheme + "://" + at.Host
}
