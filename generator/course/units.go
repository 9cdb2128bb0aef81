package course

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/pool"
	"slipbook/generator/source"
)

// pages reads home.md and style.md, then the units' opening pages, which name the lessons,
// then the lessons. known is false when the list of units could not be read.
func (l *loader) pages(units []named, known bool) {
	folders := l.listing(unitsFolder)
	taken := addresses{}
	jobs := append(l.home(), l.style()...)
	var there []string
	for _, n := range units {
		if folders.has(n.id) {
			there = append(there, path.Join(unitsFolder, n.id))
		}
	}
	l.listAll(there)
	for _, n := range units {
		if u := l.unit(n, folders, taken); u != nil {
			jobs = append(jobs, loadJob{kind: UnitPage, file: path.Join(unitsFolder, u.ID, unitFile), address: unitAddress(u.ID), unit: u, entry: l.listing(path.Join(unitsFolder, u.ID)).entry(unitFile)})
		}
	}
	parsed := l.readAll(jobs)
	jobs = nil
	for _, p := range parsed {
		if p.page.Kind == UnitPage {
			jobs = append(jobs, l.lessons(p, taken)...)
		}
	}
	parsed = append(parsed, l.readAll(jobs)...)
	if known {
		l.unlistedUnits(units, folders)
	}
	l.bind(parsed)
}

// home is the job for home.md, if there is one.
func (l *loader) home() []loadJob {
	if !source.Exists(l.fsys, homeFile) {
		l.report(homeFile, finding.CourseNeeds, "there is no home.md", "Write it, with a title in its opening block: its words stand on the handbook's home page.")
		return nil
	}
	return []loadJob{{kind: HomePage, file: homeFile, address: "index.html"}}
}

// style is the job for style.md, which a course may have.
func (l *loader) style() []loadJob {
	if !source.Exists(l.fsys, styleFile) {
		return nil
	}
	return []loadJob{{kind: StylePage, file: styleFile, address: "style.html"}}
}

// readAll reads pages in parallel and returns them in order.
func (l *loader) readAll(jobs []loadJob) []*parsedPage {
	jobs = l.withinLimit(jobs)
	parsed := pool.Map(len(jobs), func(i int) *parsedPage { return l.parsePage(jobs[i]) })
	for _, p := range parsed {
		l.open = append(l.open, p.source)
	}
	return parsed
}

// withinLimit returns the jobs up to the size that all pages may have
// together, so that a course that is read at all is read in bounded memory. What
// the disk says of each file it notes in the job.
func (l *loader) withinLimit(jobs []loadJob) []loadJob {
	pool.Each(len(jobs), func(i int) {
		if info, err := l.stat(jobs[i]); err == nil {
			jobs[i].info = info
		} // else it is said by whoever reads it
	})
	for i, job := range jobs {
		if job.info == nil {
			continue
		}
		if l.pageBytes += job.info.Size(); l.pageBytes > pagesLimit {
			l.report(job.file, finding.Unreadable, fmt.Sprintf("up to this one, all pages together are larger than %d MiB", pagesLimit>>20), "Divide the course in two.")
			return jobs[:i]
		}
	}
	return jobs
}

// stat returns what the disk says of a page's file. An entry of a listed folder
// knows without a walk from the root, which for thousands of lessons is most of the
// time that a save takes here; what a link leads to, only the root may say.
func (l *loader) stat(job loadJob) (fs.FileInfo, error) {
	if job.entry != nil && job.entry.Type().IsRegular() {
		return job.entry.Info()
	}
	return fs.Stat(l.fsys, job.file)
}

// unit makes the unit that course.yaml names, or nil when it cannot be had.
func (l *loader) unit(n named, folders listing, taken addresses) *Unit {
	switch {
	case Reserved(n.id):
		n.Report(finding.SharedAddress, fmt.Sprintf("a unit cannot be called `%s`: the handbook publishes a folder of its own under that name", n.id), "Rename the unit's folder, and its name here.")
		return nil
	case !folders.has(n.id) && !source.IsID(n.id): // reported with its form
		return nil
	case !folders.has(n.id):
		n.Report(finding.MissingFile, fmt.Sprintf("there is no folder %s/%s", unitsFolder, n.id), source.Meant(n.id, folders.names())+"Make the folder with a unit.md in it, or take the name out.")
		return nil
	case !l.listing(path.Join(unitsFolder, n.id)).has(unitFile):
		n.Report(finding.MissingFile, fmt.Sprintf("there is no file %s/%s/%s", unitsFolder, n.id, unitFile), "Write the unit's opening page, or take the name out.")
		return nil
	case !taken.take(n, unitAddress(n.id), path.Join(unitsFolder, n.id, unitFile)):
		return nil
	}
	return &Unit{ID: n.id}
}

// lessons returns the jobs for the lessons that a unit's page lists, and
// reports files of the unit's folder that it does not.
func (l *loader) lessons(p *parsedPage, taken addresses) []loadJob {
	u := p.page.Unit
	folder := path.Join(unitsFolder, u.ID)
	files := l.listing(folder)
	var jobs []loadJob
	listed := map[string]bool{unitFile: true}
	for _, n := range p.lessons {
		file := n.id + ".md"
		address := u.ID + "/" + n.id + ".html"
		switch {
		case file == unitFile:
			n.Report(finding.ValueForm, "unit.md is the unit's own page, not a lesson", "Take `unit` out of the list.")
		case !files.has(file) && !source.IsID(n.id): // reported with its form
		case !files.has(file):
			n.Report(finding.MissingFile, fmt.Sprintf("there is no file %s/%s", folder, file), source.Meant(n.id, files.pages())+"Write the lesson, or take its name out.")
		case taken.take(n, address, path.Join(folder, file)):
			jobs = append(jobs, loadJob{kind: LessonPage, file: path.Join(folder, file), address: address, unit: u, entry: files.entry(file)})
		}
		listed[file] = true
	}
	for _, f := range files.names() {
		switch {
		case listed[f]:
		case !strings.HasSuffix(f, ".md"):
			l.stray(path.Join(folder, f), "Move it out of the folder; pictures belong in "+picturesFolder+"/.")
		case p.listed:
			l.report(path.Join(folder, f), finding.UnlistedFile, "no list names this lesson",
				fmt.Sprintf("Add `- %s` to `lessons` in %s/%s, or move the file out of the folder.", strings.TrimSuffix(f, ".md"), folder, unitFile))
		}
	}
	return jobs
}

// unlistedUnits reports folders that course.yaml does not name.
func (l *loader) unlistedUnits(units []named, folders listing) {
	for _, entry := range folders {
		name := entry.Name()
		at := path.Join(unitsFolder, name)
		switch {
		case slices.ContainsFunc(units, func(n named) bool { return n.id == name }):
		case !entry.IsDir():
			l.stray(at, "Put it into a unit's folder, or move it out of "+unitsFolder+"/.")
		default:
			if l.listing(at).has(unitFile) {
				at = path.Join(at, unitFile)
			}
			l.report(at, finding.UnlistedFile, "no list names this unit", fmt.Sprintf("Add `- %s` to `units` in %s, or move the folder away.", name, settingsFile))
		}
	}
}

// bind puts the pages into the course, follows the links of their opening
// blocks, and blanks these: the last thing that needs their text is done.
func (l *loader) bind(parsed []*parsedPage) {
	c := l.course
	c.pages = map[string]*Page{}
	for _, p := range parsed {
		c.pages[p.page.File] = p.page
		switch u := p.page.Unit; p.page.Kind {
		case HomePage:
			c.Home = p.page
		case StylePage:
			c.Style = p.page
		case UnitPage:
			u.Page = p.page
			c.Units = append(c.Units, u)
		case LessonPage:
			u.Lessons = append(u.Lessons, p.page)
		}
	}
	for _, p := range parsed {
		l.follow(p)
	}
	for _, p := range parsed {
		p.source.Blank(p.end)
	}
	l.keep(parsed)
}

// links follows paths written in an opening block to the pages they mean.
func (l *loader) links(p *parsedPage, items []source.Value) []Link {
	var links []Link
	for _, item := range items {
		file := p.pageNamed(item)
		if file == "" {
			continue
		}
		if _, ok := l.course.FindPage(file); !ok {
			item.Report(finding.UnknownName, fmt.Sprintf("there is no page %s", file), source.Meant(item.Text(), l.pathsFrom(p.page.File))+"Write the path from this file to the page's .md file.")
			continue
		}
		links = append(links, Link{file})
	}
	return links
}

// addresses are those already given out, in small letters, each with its file:
// many servers and disks do not tell capital letters from small ones.
type addresses map[string]string

// take gives an address to a file, or reports whose it is already.
func (a addresses) take(n named, address, file string) bool {
	key := strings.ToLower(address)
	if other, ok := a[key]; ok {
		n.Report(finding.SharedAddress, fmt.Sprintf("%s would be published at %s, where %s is already", file, address, other), "Rename the file, and its name here.")
		return false
	}
	a[key] = file
	return true
}
