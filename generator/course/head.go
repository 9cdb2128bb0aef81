package course

import (
	"bytes"
	"fmt"
	"path"
	"regexp"
	"strconv"
	"strings"
	"time"

	"slipbook/generator/finding"
)

// leaf is a page being read, with the places of what can only be checked when
// all pages are known.
type leaf struct {
	page          *Page
	source        *source
	end           int // of the opening block in the source
	lessons       value
	before, after []value
}

// readLeaf reads a page and its opening block. It knows the media of the
// decoration table and nothing of the other pages, so that many can be read at
// once. A file that is no text makes an empty page: links to it still lead
// somewhere, and one finding says what is wrong.
func (l *loader) readLeaf(e errand) *leaf {
	s, ok := readText(l.fsys, e.file, textLimit)
	lf := &leaf{
		page:   &Page{Kind: e.kind, File: e.file, Address: e.address, Unit: e.unit, Source: s.text},
		source: s,
	}
	if !ok {
		return lf
	}
	start, end, after := openingBlock(s.text)
	switch {
	case start < 0:
		s.report(0, finding.OpeningBlock, "the page does not start with its opening block",
			"Start the file with a line ---, then a line such as `title: Mix a slip`, then a line --- again.")
	case end < 0:
		s.report(0, finding.OpeningBlock, "the opening block that starts here is not closed",
			"Put a line of three hyphens, ---, between the last key and the text of the page.")
	default:
		lf.end = after
		l.readHead(lf, readHeadSheet(s, start, end))
	}
	return lf
}

// readHeadSheet reads the YAML of an opening block, an empty one being no
// different from one whose keys are missing.
func readHeadSheet(s *source, start, end int) value {
	root := readSheet(s, s.text[start:end], start)
	if root.absent() && s.found == nil {
		s.report(0, finding.MissingKey, "the opening block is empty", "Write at least a line such as `title: Mix a slip`.")
	}
	return root
}

// openingBlock finds the block between two lines of three hyphens: its YAML
// goes from start to end, and the page's text begins after. start is -1 when
// the text does not begin with such a line, end when no second one follows.
func openingBlock(text []byte) (start, end, after int) {
	line, next := lineAt(text, 0)
	if line != "---" {
		return -1, -1, -1
	}
	start = next
	for at := start; at < len(text); at = next {
		if line, next = lineAt(text, at); line == "---" {
			return start, at, next
		}
	}
	return start, -1, -1
}

// lineAt gives the line that starts at an offset, without white space at its
// end, and where the next one starts.
func lineAt(text []byte, at int) (line string, next int) {
	next = len(text)
	if n := bytes.IndexByte(text[at:], '\n'); n >= 0 {
		next = at + n + 1
	}
	return strings.TrimRight(string(text[at:next]), " \t\r\n"), next
}

// blank puts spaces in the place of the opening block, so that what follows
// keeps its offsets.
func (lf *leaf) blank() {
	for i, c := range lf.page.Source[:lf.end] {
		if c != '\n' && c != '\r' {
			lf.page.Source[i] = ' '
		}
	}
}

var headKeys = []string{"title", "description", "creator", "date", "teaches", "timeRequired", "medium", "technique", "needs", "before", "after"}

func (l *loader) readHead(lf *leaf, root value) {
	keys := headKeys
	if lf.page.Kind == UnitPage {
		keys = append(keys[:len(keys):len(keys)], "lessons")
	}
	f := root.fields(keys...)
	lf.page.Head = Head{
		Title:        f.need("title", "title: Mix a slip").text(),
		Description:  f.get("description").text(),
		Creator:      f.get("creator").text(),
		Date:         f.get("date").date(),
		Teaches:      f.get("teaches").texts(),
		TimeRequired: f.get("timeRequired").duration(),
		Medium:       l.medium(f.get("medium")),
		Technique:    f.get("technique").text(),
		Needs:        f.get("needs").texts(),
	}
	lf.before, lf.after = f.get("before").list(), f.get("after").list()
	if lf.page.Kind == UnitPage {
		lf.lessons = f.need("lessons", "lessons: [mix-a-slip]")
	}
}

// medium gives the id of a medium of the decoration table. When the table
// could not be read, any will do.
func (l *loader) medium(v value) string {
	id := v.text()
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
	v.report(finding.UnknownName, fmt.Sprintf("`%s` is not a medium of %s", id, tableFile), meant(id, ids)+"Write one of: "+strings.Join(ids, ", ")+".")
	return ""
}

func (v value) date() string {
	text := v.text()
	if text == "" {
		return ""
	}
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		v.report(finding.ValueForm, fmt.Sprintf("`%s` is not a date", text), "Write year, month and day as numbers, such as 2026-09-01.")
		return ""
	}
	return text
}

var isoDuration = regexp.MustCompile(`^PT(?:([0-9]{1,3})H)?(?:([0-9]{1,4})M)?$`)

// duration gives whole minutes of an ISO 8601 duration in hours and minutes.
func (v value) duration() Duration {
	text := v.text()
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
	v.report(finding.ValueForm, fmt.Sprintf("`%s` is not a time in hours and minutes", text), "Write PT20M for twenty minutes, PT1H30M for an hour and a half.")
	return 0
}

// pageNamed gives the content path that a relative path in this page means,
// or empty when it is no such path.
func (lf *leaf) pageNamed(v value) string {
	text := v.text()
	if text == "" {
		return ""
	}
	if !strings.HasSuffix(text, ".md") || path.IsAbs(text) {
		v.report(finding.UnknownName, fmt.Sprintf("`%s` does not lead to a page", text), "Write the path from this file to the page's .md file, such as `measure.md` or `../wash/unit.md`.")
		return ""
	}
	return path.Join(path.Dir(lf.page.File), text)
}
