package press

import (
	"net/url"

	"slipbook/generator/address"
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
	medium string // whose verdicts the strip shows
	unlike bool   // the page has a top or an end unlike that of others of its kind

	Kind        string // "lesson", "state", ...
	Language    string
	Handbook    string // the course's title
	Number      string // of the chapter, in the book
	Title       string // the page's own; the same as Handbook on the home page
	Description string
	Creator     string
	Date        string // ISO 8601
	Licence     string
	Studio      course.Studio
	Policy      string // of the Content-Security-Policy
	Base        string // absolute address that relative ones start at; almost always empty
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
	kind, title, description string
	head                     course.Head // the opening block of a hand-written page
	medium                   string      // whose verdicts the strip shows
	state                    string      // which state the page is about
	desk                     bool        // whether a calculator is on the page
	plan                     bool        // whether a plan is on it, to make or to read
	gathered                 bool        // whether it is gathered from other pages, or is the chart
}

// shell makes the shell of a page. A chapter of the book needs its name and
// number alone, and the places that its words lead to: the frame stands round the
// book once.
func (i *impression) shell(at place, a about) shell {
	s := shell{
		Kind:        a.kind,
		Language:    i.course.Language,
		Handbook:    i.course.Title,
		Title:       a.title,
		Description: a.description,
		Creator:     a.head.Creator,
		Date:        a.head.Date,
		Home:        at.to(address.Home),
		Contents:    at.to(address.Contents),
		Calculators: at.to(address.Calculators),
		Glossary:    at.to(address.Glossary),
		Notices:     at.to(address.Notices),
		Chart:       i.whereThere(at, address.Chart),
		Hazards:     i.whereThere(at, address.Hazards),
		Answers:     i.whereThere(at, address.Answers),
		Faults:      i.whereThere(at, address.Faults),
	}
	if at.book != nil {
		s.Number = at.book.chapters[at.page].number
		if a.kind == "medium" || a.kind == "home" { // whose words it stands among
			s.Strip = i.strip(a, at)
		}
		return s
	}
	s.Licence, s.Studio = i.course.Licence, i.course.Studio
	s.Policy = policy(a.desk, "")
	s.Style, s.Script, s.Icon = at.to(i.bundle.Style), at.to(i.bundle.Page), at.to(i.bundle.Icon)
	s.Strip, s.medium, s.unlike = i.strip(a, at), a.medium, a.state != ""
	s.TeachingPage = i.whereThere(at, address.Teaching)
	if a.desk {
		s.Desk = i.desk(at, a.plan)
	}
	if a.gathered && i.bundle.Gathered != "" {
		s.Styles = append(s.Styles, at.to(i.bundle.Gathered))
	}
	if a.plan && i.bundle.Plan != "" {
		s.Styles = append(s.Styles, at.to(i.bundle.Plan))
	}
	return s
}

// whereThere returns where a page is, from here; nothing while there is none.
func (i *impression) whereThere(at place, page string) string {
	if !i.there[page] {
		return ""
	}
	return at.to(page)
}

// desk returns the addresses that a page with calculators loads from.
func (i *impression) desk(at place, plan bool) *assets.Desk {
	d := &assets.Desk{
		Script:     at.to(i.bundle.Desk.Script),
		Bench:      at.to(i.bundle.Desk.Bench),
		BenchStyle: at.to(i.bundle.Desk.BenchStyle),
		Engine:     at.to(i.bundle.Desk.Engine),
		Carried:    at.to(i.bundle.Desk.Carried),
		Words:      assets.Parcel{Packed: at.to(i.spoken.Packed), Carried: at.to(i.spoken.Carried)},
	}
	if plan && i.bundle.Desk.Planner != "" {
		d.Script = at.to(i.bundle.Desk.Planner)
	}
	if plan {
		d.Table = assets.Parcel{Packed: at.to(i.wrapped.Packed), Carried: at.to(i.wrapped.Carried)}
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
