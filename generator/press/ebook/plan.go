package ebook

import (
	"fmt"
	"maps"
	"path"
	"slices"
	"strconv"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/imprint"
)

// contents is the address of the navigation: that of the handbook's own contents,
// which it stands for.
const contents = address.Contents

// part is a part of the e-book.
type part struct {
	number, title string
	opened        bool // by its first chapter, whose title it has
	chapters      []chapter
	answers       string // address of the answers to its questions; empty while it asks none
}

// chapter is a page of the handbook with its number, of which only units and lessons
// have one.
type chapter struct {
	number string
	sheet  *imprint.Sheet
}

// furtherPart is a part behind the units: its name, and the kinds of page that stand in
// it, in order.
type furtherPart struct {
	title string
	kinds []string
}

// further lists them. A kind that stands nowhere is on the
// site alone: labels, posters, forms and class sheets are sheets of paper, and the stock
// book changes from day to day.
func (b *Book) further() []furtherPart {
	t := b.theme
	return []furtherPart{
		{t.Say("strip"), []string{"state"}},
		{t.Say("chart-media"), []string{"chart", "medium"}},
		{t.Say("calculators"), []string{"calculators", "calculator-page"}},
		{t.Say("recipes"), []string{"recipes", "recipe-page", "wall"}},
		{t.Say("materials"), []string{"materials", "material"}},
		{t.Say("cards"), []string{"course-card", "card"}},
		{t.Say("extra"), []string{"answers", "faults", "hazards", "eat", "leach", "teaching-page", "glossary"}},
	}
}

// unitParts are the home page, and each unit with its lessons.
func (b *Book) unitParts() []part {
	var parts []part
	if home := b.course.Home; home != nil {
		parts = append(parts, b.withAnswers(part{opened: true, chapters: []chapter{{"", b.sheets[home.Address]}}}, "0"))
	}
	for n, u := range b.course.Units {
		p := part{number: strconv.Itoa(n + 1), title: u.ID}
		if u.Page != nil {
			p.opened = true
			p.chapters = append(p.chapters, chapter{p.number, b.sheets[u.Page.Address]})
		}
		for k, page := range u.Lessons {
			p.chapters = append(p.chapters, chapter{imprint.LessonNumber(p.number, k), b.sheets[page.Address]})
		}
		parts = append(parts, b.withAnswers(p, p.number))
	}
	return parts
}

// withAnswers gives a part that asks questions a document with the answers.
func (b *Book) withAnswers(p part, number string) part {
	if slices.ContainsFunc(p.chapters, func(c chapter) bool { return len(b.questions(c)) > 0 }) {
		p.answers = imprint.EbookAnswers + "-" + number + ".html"
	}
	return p
}

// questions are those of a chapter.
func (b *Book) questions(c chapter) []*markup.Block {
	if page := b.pages[c.sheet.Address]; page != nil {
		return page.Document.Named(markup.QuestionBlock)
	}
	return nil
}

// furtherParts are the parts behind the units; one without a page is left out.
func (b *Book) furtherParts(sheets []*imprint.Sheet) []part {
	byKind := map[string][]*imprint.Sheet{}
	for _, s := range sheets {
		if s.Kind != nil {
			byKind[s.Kind.Template] = append(byKind[s.Kind.Template], s)
		}
	}
	var parts []part
	for _, f := range b.further() {
		p := part{title: f.title}
		for _, kind := range f.kinds {
			for _, s := range byKind[kind] {
				p.chapters = append(p.chapters, chapter{"", s})
			}
		}
		if len(p.chapters) > 0 {
			parts = append(parts, p)
		}
	}
	return parts
}

// landmarks are the places that reading systems have keys for.
func (b *Book) landmarks(at imprint.Place) []landmark {
	all := []landmark{
		{"titlepage", b.course.Title, at.To(imprint.EbookTitle)},
		{"toc", b.theme.Say("contents"), "#" + contentsID},
	}
	if len(b.parts) > 0 && len(b.parts[0].chapters) > 0 {
		first := b.parts[0].chapters[0].sheet
		all = append(all, landmark{"bodymatter", first.Title, at.To(first.Address)})
	}
	if s := b.sheets[address.Glossary]; s != nil {
		all = append(all, landmark{"glossary", s.Title, at.To(s.Address)})
	}
	return all
}

// contentsID is the id of the navigation in its document.
const contentsID = "contents"

// answersDocument are the answers to the questions of a unit.
func (b *Book) answersDocument(e *imprint.Ebook, p part) document {
	at := imprint.Place{Page: p.answers, Ebook: e}
	v := answersView{}
	for _, c := range p.chapters {
		page := answersPage{Title: c.sheet.Title, Address: at.To(c.sheet.Address)}
		for _, q := range b.questions(c) {
			page.Answers = append(page.Answers, answerTo(at, c.sheet.Address, q))
		}
		if len(page.Answers) > 0 {
			v.Pages = append(v.Pages, page)
		}
	}
	title := b.theme.Say("ebook-answers-of", p.name())
	v.Title = title
	return document{p.answers, title, "answers", b.from("ebook-answers", v)}
}

// name is what a part is called.
func (p part) name() string {
	if p.opened {
		return p.chapters[0].sheet.Title
	}
	return p.title
}

func answerTo(at imprint.Place, page string, q *markup.Block) answer {
	a := answer{ID: imprint.AnswerID(page, q.Number), Back: at.To(page + "#question." + strconv.Itoa(q.Number)), Number: q.Number, Ask: markup.Bind(q.Ask.Ask)}
	for _, c := range q.Ask.Answers {
		one := told{markup.Bind(c.Text), markup.Bind(c.Because)}
		if c.Right {
			a.Right = append(a.Right, one)
		} else {
			a.Wrong = append(a.Wrong, one)
		}
	}
	return a
}

// edition is the newest day that a course says something was written, read, made,
// fired or tested on, in ISO 8601; empty where it says none. Days that are still to
// come, of reviews and new tests, are not asked.
func edition(c *course.Course) string {
	newest := ""
	see := func(days ...string) {
		for _, day := range days {
			if len(day) == len("2026-11-28") {
				newest = max(newest, day)
			}
		}
	}
	for _, u := range c.Units {
		if u.Page != nil {
			see(u.Page.Head.Date)
		}
		for _, l := range u.Lessons {
			see(l.Head.Date)
		}
	}
	if c.Home != nil {
		see(c.Home.Head.Date)
	}
	for _, m := range c.Materials {
		see(m.Sheet.Date, m.Sheet.Read)
	}
	for _, r := range c.Recipes {
		for _, v := range r.Versions {
			see(v.Date)
		}
	}
	for _, l := range c.Leach {
		see(l.Date)
	}
	for _, t := range c.Tiles {
		see(t.Made, t.Fired)
	}
	return newest
}

// sorted lists what a set holds.
func sorted(set map[string]bool) []string { return slices.Sorted(maps.Keys(set)) }

// up is the way from an address to the root.
func up(from string) string { return strings.Repeat("../", strings.Count(from, "/")) }

// inDocument says of an error in which document it is.
func inDocument(d document, err error) error {
	return fmt.Errorf("document %s of the e-book: %w", path.Join(root, imprint.Document(d.address)), err)
}
