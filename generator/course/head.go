package course

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strconv"
	"strings"
	"time"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// parsedPage is a page being read, with the places of what can only be checked
// when all pages are known.
type parsedPage struct {
	page          *Page
	source        *source.Text
	end           int     // of the opening block in the source
	lessons       []named // that a unit's page lists
	listed        bool    // that list is there; where it is not, that was said
	before, after []source.Value

	job     loadJob
	key     pageKey
	mayKeep bool      // it has a key
	kept    *keptPage // it was not read now
}

// parsePage reads a page, or takes it as it was read before.
func (l *loader) parsePage(job loadJob) *parsedPage {
	key, ok := l.pageKey(job)
	if ok {
		if p := l.recall(job, key); p != nil {
			return p
		}
	}
	p := l.parseAnew(job)
	p.key, p.mayKeep = key, ok
	return p
}

// parseAnew reads a page and its opening block. It knows the media of the
// decoration table and nothing of the other pages, so that many can be read at
// once. A file that is no text makes an empty page: links to it still lead
// somewhere, and one finding says what is wrong.
func (l *loader) parseAnew(job loadJob) *parsedPage {
	s, ok := source.Read(l.fsys, job.file, textLimit)
	p := &parsedPage{
		page:   &Page{Kind: job.kind, File: job.file, Address: job.address, Unit: job.unit, Source: s.Bytes},
		source: s,
		job:    job,
	}
	if !ok {
		p.page.NoHead, p.page.NoText = true, true
		return p
	}
	s.Language, p.page.Language = l.course.Language, l.course.Language
	s.CheckHidden()
	head, after := s.Opening()
	p.end = after
	p.page.NoHead = head.Absent()
	p.page.NoText = head.Absent() && after == len(s.Bytes)
	l.readHead(p, head)
	return p
}

var headKeys = []string{"title", "description", "creator", "date", "teaches", "timeRequired", "learningResourceType", "medium", "technique", "needs", "before", "after"}

func (l *loader) readHead(p *parsedPage, root source.Value) {
	keys := headKeys
	if p.page.Kind == UnitPage {
		keys = append(keys[:len(keys):len(keys)], "lessons")
	}
	f := root.Fields(keys...)
	p.page.Head = Head{
		Title:        f.Need("title", "title: Mix a slip").Text(),
		Description:  f.Get("description").Text(),
		Creator:      f.Get("creator").Text(),
		Date:         date(f.Get("date")),
		Teaches:      f.Get("teaches").Texts(),
		TimeRequired: duration(f.Get("timeRequired")),
		Type:         resourceType(f.Get("learningResourceType")),
		Medium:       l.medium(f.Get("medium")),
		Technique:    f.Get("technique").Text(),
		Needs:        f.Get("needs").Texts(),
	}
	p.before, p.after = f.Get("before").List(), f.Get("after").List()
	if p.page.Kind == UnitPage {
		list := f.Need("lessons", "lessons: [mix-a-slip]")
		p.lessons, p.listed = readNames(list), !list.Absent()
	}
}

// medium returns the id of a medium of the decoration table. When the table
// could not be read, any will do.
func (l *loader) medium(v source.Value) string {
	id := v.Text()
	if id == "" || len(l.course.Decoration.Media) == 0 {
		return id
	}
	if _, ok := l.course.Decoration.FindMedium(id); ok {
		return id
	}
	var ids []string
	for _, m := range l.course.Decoration.Media {
		ids = append(ids, m.ID)
	}
	v.Report(finding.UnknownName, fmt.Sprintf("`%s` is not a medium of %s", id, tableFile), source.Meant(id, ids)+"Write one of: "+strings.Join(ids, ", ")+".")
	return ""
}

// resourceType returns what a page is for its reader.
func resourceType(v source.Value) ResourceType {
	if typed := v.Choice("lesson", string(ForReading), string(ForPaper)); typed != "lesson" {
		return ResourceType(typed)
	}
	return ForBench
}

func date(v source.Value) string {
	text := v.Text()
	if text == "" {
		return ""
	}
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not a date", text), "Write year, month and day as numbers, such as 2026-09-01.")
		return ""
	}
	return text
}

var isoDuration = regexp.MustCompile(`^PT(?:([0-9]{1,3})H)?(?:([0-9]{1,4})M)?$`)

// duration returns whole minutes of an ISO 8601 duration in hours and minutes.
func duration(v source.Value) Duration {
	text := v.Text()
	if text == "" {
		return 0
	}
	if m := isoDuration.FindStringSubmatch(text); m != nil {
		hours, _ := strconv.Atoi("0" + m[1]) // digits alone, by the pattern
		minutes, _ := strconv.Atoi("0" + m[2])
		if total := 60*hours + minutes; total > 0 {
			return Duration(total)
		}
	}
	v.Report(finding.ValueForm, fmt.Sprintf("`%s` is not a time in hours and minutes", text), "Write PT20M for twenty minutes, PT1H30M for an hour and a half.")
	return 0
}

// pageNamed returns the content path that a relative path in this page means,
// or empty when it is no such path.
func (p *parsedPage) pageNamed(v source.Value) string {
	text := v.Text()
	if text == "" {
		return ""
	}
	if !strings.HasSuffix(text, ".md") || path.IsAbs(text) {
		v.Report(finding.UnknownName, fmt.Sprintf("`%s` does not lead to a page", text), "Write the path from this file to the page's .md file, such as `measure.md` or `../wash/unit.md`.")
		return ""
	}
	return path.Join(path.Dir(p.page.File), text)
}

// loadJob is a page to be read.
type loadJob struct {
	kind    PageKind
	file    string
	address string
	unit    *Unit
	entry   fs.DirEntry // in its folder; nil for a page outside of the units
	info    fs.FileInfo // before it was read; nil if the disk has none
}
