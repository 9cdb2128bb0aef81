package imprint

import (
	"net/url"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/course"
)

// Shell is what stands around the words of every page: the document's head,
// the handbook's own links, the clay-state strip and the foot.
type Shell struct {
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
	Scripts     []string // further scripts, of pages that no others are like
	Icon        string
	Desk        *assets.Desk   // only on a page with a calculator
	Lesson      *assets.Lesson // only on a lesson with steps or a calculator: its script loads that of the desk, too
	Strip       any            // what the piece "strip" prints; nil on pages that show the states in another way

	Home, Contents, Calculators, Glossary string
	Notices, Tried                        string
	Chart                                 string // empty while the course has no table
	Hazards                               string // empty while it has no hazards
	Answers, Faults                       string // empty while there are none
	Find                                  string // where one looks for something
	FirstAid                              string // empty while the course names no page of it
	TeachingPage                          string // only in a copy for the instructor
	Phone                                 *Phone // only in a handbook that phones may keep
}

// Phone is where a page finds what keeps the handbook on a phone.
type Phone struct {
	Page          string // that tells of it
	Script, Style string // of what keeps it and tells of it; empty on that page, which has them as its own
	Manifest      string
}

// Alike returns what tells apart what stands around the words of two pages of one
// kind in one folder; not ok of a page that is unlike all others.
func (s Shell) Alike() (key string, ok bool) { return s.medium, !s.unlike }

// About is what a page says of itself to its shell.
type About struct {
	Kind, Title, Description string
	Head                     course.Head // the opening block of a hand-written page
	Medium                   string      // whose verdicts the strip shows
	State                    string      // which state the page is about
	Desk                     bool        // whether a calculator is on the page
	Plan                     bool        // whether a plan is on it, to make or to read
	Gathered                 bool        // whether it is gathered from other pages, or is the chart
	Lesson                   bool        // whether it is a lesson with steps, or with calculators that are folded
	Wall                     bool        // whether test tiles hang on it, to be narrowed and put side by side
	Find                     bool        // whether one looks for words on it
	Filter                   bool        // whether its entries can be narrowed by words
	Resume                   bool        // whether one goes to work from it, and may find something open
	Share                    bool        // whether it has keys to print it and to share it
}

// Frame makes the shells of pages. What it knows of pages is complete when the
// first of them is printed, and only read from then on.
type Frame struct {
	Course   *course.Course
	Bundle   *assets.Bundle
	Spoken   assets.Parcel                 // the words of the calculators
	Table    assets.Parcel                 // the decoration table for pages with a plan; empty without a table
	Find     func() (assets.Parcel, error) // the index of the words, for the page where one looks for them; packed when it is asked for
	There    map[string]bool               // addresses of the pages
	FaultsOn map[string]string             // the page on which each fault of the list is told, by its id
	Kept     bool                          // phones may keep the handbook
}

// Shell makes the shell of a page, without its strip of states. A chapter of the book needs its name and
// number alone, and the places that its words lead to: the frame stands round the
// book once.
func (f *Frame) Shell(at Place, a About) Shell {
	s := Shell{
		Kind:        a.Kind,
		Language:    f.Course.Language,
		Handbook:    f.Course.Title,
		Title:       a.Title,
		Description: a.Description,
		Creator:     a.Head.Creator,
		Date:        a.Head.Date,
		Home:        at.To(address.Home),
		Contents:    at.To(address.Contents),
		Calculators: at.To(address.Calculators),
		Glossary:    at.To(address.Glossary),
		Notices:     at.To(address.Notices), Tried: at.To(address.Tried),
		Chart:   f.WhereThere(at, address.Chart),
		Hazards: f.WhereThere(at, address.Hazards),
		Answers: f.WhereThere(at, address.Answers),
		Faults:  f.WhereThere(at, address.Faults),
		Find:    at.To(address.Find),
	}
	if at.Book != nil {
		s.Number = at.Book[at.Page].Number
		return s
	}
	if at.Ebook != nil {
		s.Number = at.Ebook.Numbers[at.Page]
		return s
	}
	if aid, there := f.Course.FindPage(f.Course.FirstAid); there {
		s.FirstAid = at.To(aid.Address)
	}
	s.Licence, s.Studio = f.Course.Licence, f.Course.Studio
	s.Policy = Policy(a.Desk, "")
	s.Style, s.Script, s.Icon = at.To(f.Bundle.Style), at.To(f.Bundle.Page), at.To(f.Bundle.Icon)
	s.medium, s.unlike = a.Medium, a.State != ""
	s.TeachingPage = f.WhereThere(at, address.Teaching)
	if f.Kept {
		s.Phone = f.phone(at)
	}
	if a.Desk {
		s.Desk = f.desk(at, a.Plan)
		s.Script = "" // what every page runs is part of the desk's script
	}
	if lesson := f.Bundle.Lesson; a.Lesson && lesson.Script != "" {
		s.Lesson = &assets.Lesson{Script: at.To(lesson.Script), StepView: at.To(lesson.StepView), StepStyle: at.To(lesson.StepStyle)}
	}
	s.Styles, s.Scripts = f.further(at, a)
	return s
}

// further returns the style sheets and scripts of a page that others do not load.
func (f *Frame) further(at Place, a About) (styles, scripts []string) {
	add := func(all *[]string, wanted bool, file string) {
		if wanted && file != "" {
			*all = append(*all, at.To(file))
		}
	}
	add(&styles, a.Gathered, f.Bundle.Gathered)
	add(&styles, a.Plan, f.Bundle.Plan)
	add(&scripts, a.Wall, f.Bundle.Wall)
	add(&scripts, a.Find, f.Bundle.Find)
	add(&scripts, a.Filter, f.Bundle.Filter)
	add(&scripts, a.Share, f.Bundle.Share)
	add(&scripts, a.Resume, f.Bundle.Resume)
	return styles, scripts
}

// WhereThere returns where a page is, from here; nothing while there is none.
func (f *Frame) WhereThere(at Place, page string) string {
	if !f.There[page] {
		return ""
	}
	return at.To(page)
}

// phone returns where a page finds what keeps the handbook.
func (f *Frame) phone(at Place) *Phone {
	return &Phone{at.To(address.Phone), at.To(f.Bundle.Phone.Script), at.To(f.Bundle.Phone.Style), at.To(address.Manifest)}
}

// desk returns the addresses that a page with calculators loads from.
func (f *Frame) desk(at Place, plan bool) *assets.Desk {
	d := &assets.Desk{
		Script:     at.To(f.Bundle.Desk.Script),
		Bench:      at.To(f.Bundle.Desk.Bench),
		BenchStyle: at.To(f.Bundle.Desk.BenchStyle),
		Engine:     at.To(f.Bundle.Desk.Engine),
		Carried:    at.To(f.Bundle.Desk.Carried),
		Size:       f.Bundle.Desk.Size + f.Spoken.Size,
		Words:      assets.Parcel{Packed: at.To(f.Spoken.Packed), Carried: at.To(f.Spoken.Carried)},
	}
	if plan && f.Bundle.Desk.Planner != "" {
		d.Script = at.To(f.Bundle.Desk.Planner)
	}
	if plan {
		d.Table = assets.Parcel{Packed: at.To(f.Table.Packed), Carried: at.To(f.Table.Carried)}
		d.Size += f.Table.Size
	}
	return d
}

// Policy is the Content-Security-Policy of a page: everything comes from the
// handbook itself, nothing stands inline, and WebAssembly runs only where a
// calculator is. A page with a base element names where that leads: it may be
// served from elsewhere, and then that is not the page's own server.
func Policy(desk bool, base string) string {
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
