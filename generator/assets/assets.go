// Package assets makes the files that pages share: the theme's scripts and
// styles bundled by esbuild, the calculators compiled to WebAssembly, the
// icons. It exists so that everything a page loads has a name made from its
// content, and may be kept by a browser for ever.
//
// The rules the compiler cannot check: the same theme and the same sources of
// the calculators give the same bytes under the same names; a bundle is never
// changed once made, but for what it keeps of parcels, so pages may be laid out
// from it in parallel.
package assets

import (
	"crypto/sha256"
	"encoding/base32"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"
	"sync"
)

// Bundle is the shared files of a handbook: address and bytes of everything
// made, and where pages find it.
type Bundle struct {
	Files    map[string][]byte // by address from the handbook's root: "assets/page-1A2B3C4D.css"
	Style    string            // address of the style sheet of every page
	Gathered string            // address of the style sheet of the chart and of pages that are gathered from others, loaded besides; may be empty
	Plan     string            // address of the style sheet of pages with a plan, loaded besides; may be empty
	Book     string            // address of the style sheet of the whole handbook on one page; empty when the theme has none
	Page     string            // address of the script of every page; empty when the theme has none
	Wall     string            // address of the script of the wall of test tiles, loaded besides; may be empty
	Find     string            // address of the script that looks for words, loaded besides; may be empty
	Filter   string            // address of the script that leaves of a page what has some words, loaded besides; may be empty
	Share    string            // address of the script of the keys “print” and “share”, loaded besides; may be empty
	Resume   string            // address of the script that says what is open on the phone, loaded besides; may be empty
	Desk     Desk              // what a page with a calculator loads besides
	Lesson   Lesson            // what a lesson loads; empty when the theme has no such script
	Icon     string            // address of the icon
	Phone    Phone             // what keeps the handbook on a phone

	mutex   sync.Mutex
	wrapped map[string]wrapped // by name
}

// Desk is the addresses that a page with a calculator needs. Planner and Bench
// are empty when the theme has no such script.
type Desk struct {
	Script     string // the classic script that drives the forms
	Planner    string // the same with what plans need, for pages with a plan
	Bench      string // loaded when somebody wants bench mode, a mixing sheet or rows as a file
	BenchStyle string // loaded with it
	Engine     string // gzipped WebAssembly under a .bin name, fetched over http(s)
	Carried    string // classic script with the same bytes in base64, for file:
	Size       int    // bytes of Engine, and of what pages fetch with it
	Words      Parcel // what the calculators say; the press has it wrapped
	Table      Parcel // the course's decoration table, for pages with a plan; the press has it wrapped
}

// Lesson is the addresses that a lesson needs. StepView and StepStyle are empty when
// the theme has no such files.
type Lesson struct {
	Script    string // loads the rest when it is wanted: the step view, and the script that drives the forms
	StepView  string // shows one step to a screen
	StepStyle string // loaded with it
}

// Phone is what a handbook needs to stay on a phone. Each may be empty where the theme
// has no such file.
type Phone struct {
	Worker []byte // the script of the service worker: no file yet, since the list of files stands before it
	Script string // address of what tells of it, loaded where there is something to tell
	Style  string // loaded with it
	Icons  []Icon // for the home screen, in the order of phoneIcons
	Ground string // the colour that pages stand on in the light, "#f6f0e4"
}

// Icon is an icon for a home screen.
type Icon struct {
	Address string
	Side    int  // points
	Whole   bool // it may be cut to any shape
}

// The files that a theme gives by these names.
const (
	styleFile  = "styles/studio.css"
	pageFile   = "scripts/page.ts"
	deskFile   = "scripts/calculator.ts"
	wallFile   = "scripts/wall.ts"
	findFile   = "scripts/find.ts"
	filterFile = "scripts/filter.ts"
	shareFile  = "scripts/share.ts"
	resumeFile = "scripts/resume.ts"
	planFile   = "scripts/planner.ts"
	benchFile  = "scripts/bench.ts"
	benchLook  = "styles/bench.css"
	lessonFile = "scripts/lesson.ts"
	stepFile   = "scripts/stepview.ts"
	stepLook   = "styles/stepview.css"
	gatherLook = "styles/gathered.css"
	planLook   = "styles/plan.css"
	bookLook   = "styles/book.css"
	iconFile   = "icons/icon.svg"
	workerFile = "scripts/worker.ts"
	phoneFile  = "scripts/phone.ts"
	phoneLook  = "styles/phone.css"
)

// ground finds the colour of the ground in the style sheet of every page.
var ground = regexp.MustCompile(`--paper:\s*(#[0-9a-fA-F]{3,6})\b`)

// phoneIcons are the icons for home screens that a theme may have.
var phoneIcons = []struct {
	file string
	Icon
}{
	{"icons/icon-192.png", Icon{Side: 192}},
	{"icons/icon-512.png", Icon{Side: 512}},
	{"icons/maskable-512.png", Icon{Side: 512, Whole: true}},
}

// folder is where the shared files are published.
const folder = "assets"

// Make bundles what a theme's pages share. engine is what Calculators returned. A theme must have styles/studio.css, scripts/calculator.ts and
// icons/icon.svg; scripts/page.ts, scripts/wall.ts, scripts/find.ts, scripts/filter.ts, scripts/share.ts, scripts/resume.ts, scripts/planner.ts, scripts/bench.ts with
// styles/bench.css, scripts/lesson.ts, scripts/stepview.ts with styles/stepview.css, scripts/worker.ts,
// scripts/phone.ts with styles/phone.css, styles/gathered.css, styles/plan.css, styles/book.css and the
// icons for home screens
// may be left out. The error names every fault that was found, each with its
// file, line and column in the theme.
func Make(theme fs.FS, engine []byte) (*Bundle, error) {
	b := &Bundle{Files: map[string][]byte{}}
	made, err := bundle(theme)
	if err != nil {
		return nil, err
	}
	places := b.places()
	for _, m := range made {
		if m.from == workerFile {
			b.Phone.Worker = m.data
			continue
		}
		b.Files[m.address] = m.data
		if at := places[m.from]; at != nil {
			*at = m.address
		}
		if found := ground.FindSubmatch(m.data); found != nil && m.from == styleFile {
			b.Phone.Ground = string(found[1])
		}
	}
	b.Desk.Engine, b.Desk.Size = b.keep("calculators.bin", engine), len(engine)
	b.Desk.Carried = b.keep("calculators.js", carriedScript(engine))
	icon, err := fs.ReadFile(theme, iconFile)
	if err != nil {
		return nil, missing(iconFile)
	}
	b.Icon = b.keep(path.Base(iconFile), icon)
	b.keepIcons(theme)
	return b, nil
}

// places says where the address of what was made of each of the theme's files stands.
func (b *Bundle) places() map[string]*string {
	return map[string]*string{
		styleFile: &b.Style, gatherLook: &b.Gathered, planLook: &b.Plan, bookLook: &b.Book,
		pageFile: &b.Page, wallFile: &b.Wall, findFile: &b.Find, filterFile: &b.Filter, shareFile: &b.Share, resumeFile: &b.Resume,
		deskFile: &b.Desk.Script, planFile: &b.Desk.Planner, benchFile: &b.Desk.Bench, benchLook: &b.Desk.BenchStyle,
		lessonFile: &b.Lesson.Script, stepFile: &b.Lesson.StepView, stepLook: &b.Lesson.StepStyle,
		phoneFile: &b.Phone.Script, phoneLook: &b.Phone.Style,
	}
}

// keepIcons adds the icons for home screens that the theme has.
func (b *Bundle) keepIcons(theme fs.FS) {
	for _, i := range phoneIcons {
		if data, err := fs.ReadFile(theme, i.file); err == nil {
			i.Address = b.keep(path.Base(i.file), data)
			b.Phone.Icons = append(b.Phone.Icons, i.Icon)
		}
	}
}

// missing says that a theme lacks a file.
func missing(file string) error {
	return fmt.Errorf("%s: the theme has no such file; every theme needs it", file)
}

// keep adds a file under a name made from its content and returns its address.
func (b *Bundle) keep(name string, data []byte) string {
	address := Address(name, data)
	b.Files[address] = data
	return address
}

// Address is where a shared file is published: its name, "page.css", with a
// fingerprint of its content.
func Address(name string, data []byte) string {
	ext := path.Ext(name)
	return path.Join(folder, strings.TrimSuffix(name, ext)+"-"+fingerprint(data)+ext)
}

// Fingerprinted reports whether an address has a fingerprint of its file's
// content in its name, as Address makes it: such a file never changes.
func Fingerprinted(address string) bool {
	stem, _, _ := strings.Cut(path.Base(address), ".")
	at := strings.LastIndexByte(stem, '-')
	return at >= 0 && len(stem)-at-1 == 8 && strings.Trim(stem[at+1:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") == ""
}

// fingerprint is eight letters and digits that change whenever data does.
func fingerprint(data []byte) string {
	sum := sha256.Sum256(data)
	return base32.StdEncoding.EncodeToString(sum[:5])
}
