package ebook

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"slipbook/generator/course"
)

// TestWellFormed wants whatever ends elsewhere than where XML wants it to be named.
func TestWellFormed(t *testing.T) {
	for source, want := range map[string]string{
		`<?xml version="1.0"?><!DOCTYPE html><html><p title="a>b" class='"'>c<br/></p></html>`: "",
		`<html><p>a</html>`:      "<p> is open where </html> stands",
		`<html><p>a<div>b</div>`: "<p> is open where </html> stands",
		`<html></p></html>`:      "<html> is open where </p> stands",
		`<html></html></p>`:      "</p> ends what never began",
		`<html><br></html>`:      "<br> is open where </html> stands",
		`<html><p title="a></p>`: "a tag has no end",
		`<`:                      "a tag has no end",
		`<>`:                     "a tag has no end",
	} {
		err := wellFormed([]byte(source))
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", source, err, want)
		}
	}
}

// TestIdentifier wants a UUID of version 5 that stays for as long as the course stands
// where it stands, and another for the instructor's copy.
func TestIdentifier(t *testing.T) {
	b := &Book{course: &course.Course{Title: "Colour", Language: "en-GB", PublishedAt: "http://www.example.com/"}}
	const want = "fcde3c85-2270-590f-9e7c-ee003d65e0e2" // by Python's uuid.uuid5(uuid.NAMESPACE_URL, …)
	if got := b.identifier(); got != want {
		t.Errorf("%s, want %s", got, want)
	}
	b.course.Title = "Another"
	if got := b.identifier(); got != want {
		t.Errorf("a new title makes it %s", got)
	}
	b.teaching = true
	seen := map[string]bool{want: true}
	for _, at := range []string{"http://www.example.com/", ""} {
		b.course.PublishedAt = at
		for _, title := range []string{"Colour", "Slip"} {
			b.course.Title = title
			if id := b.identifier(); seen[id] != (at != "" && title == "Slip") {
				t.Errorf("%q at %q is %s", title, at, id)
			}
			seen[b.identifier()] = true
		}
	}
}

// TestEditionIsTheNewestDay wants the newest day that a course tells, none that is
// still to come, and no clock.
func TestEditionIsTheNewestDay(t *testing.T) {
	c := &course.Course{}
	if got := edition(c); got != "" {
		t.Errorf("a course without a day is of %q", got)
	}
	page := func(day string) *course.Page { return &course.Page{Head: course.Head{Date: day}} }
	for _, one := range []struct {
		day string
		add func(day string)
	}{
		{"2026-01-01", func(day string) { c.Home = page(day) }},
		{"2026-01-02", func(day string) { c.Units = append(c.Units, &course.Unit{Page: page(day)}) }},
		{"2026-01-03", func(day string) { c.Units = append(c.Units, &course.Unit{Lessons: []*course.Page{page(day)}}) }},
		{"2026-01-04", func(day string) {
			c.Materials = append(c.Materials, &course.Material{Sheet: course.Sheet{Date: day, Review: "2036-01-01"}})
		}},
		{"2026-01-05", func(day string) { c.Materials = append(c.Materials, &course.Material{Sheet: course.Sheet{Read: day}}) }},
		{"2026-01-06", func(day string) {
			c.Recipes = append(c.Recipes, &course.Recipe{Versions: []course.Version{{Date: day}}})
		}},
		{"2026-01-07", func(day string) { c.Tiles = append(c.Tiles, &course.Tile{Made: day, Retest: "2036-01-01"}) }},
		{"2026-01-09", func(day string) { c.Leach = append(c.Leach, &course.Leach{Date: day, Until: "2036-01-01"}) }},
		{"2026-01-10", func(day string) { c.Tiles = append(c.Tiles, &course.Tile{Fired: day}) }},
	} {
		if one.add(one.day); edition(c) != one.day {
			t.Errorf("%q, want %s", edition(c), one.day)
		}
	}
}

// TestPackedIsWhole wants files to come out of a bound e-book as they went in, however
// they were packed, and all of one day.
func TestPackedIsWhole(t *testing.T) {
	data := []byte(strings.Repeat("<p>slip &amp; wash</p>", 5000))
	for documents, p := range map[int]*packer{1: hard, many: hard, many + 1: fast} {
		if packerFor(documents) != p {
			t.Errorf("%d documents are packed another way", documents)
		}
		e, err := p.pack("a.xhtml", data)
		if err != nil || len(e.packed) > len(data)/20 {
			t.Fatal(len(e.packed), err)
		}
		var out bytes.Buffer
		w := zip.NewWriter(&out)
		e.header.Name = e.name
		into, err := w.CreateRaw(&e.header)
		if err == nil {
			_, err = into.Write(e.packed)
		}
		if err == nil {
			err = w.Close()
		}
		if err != nil {
			t.Fatal(err)
		}
		r, err := zip.NewReader(bytes.NewReader(out.Bytes()), int64(out.Len()))
		if err != nil {
			t.Fatal(err)
		}
		f, err := r.Open("a.xhtml")
		if err != nil {
			t.Fatal(err)
		}
		if got, err := io.ReadAll(f); err != nil || !bytes.Equal(got, data) {
			t.Errorf("%d bytes, %v", len(got), err)
		}
		if day := r.File[0].Modified.Format("2006-01-02"); day != "1980-01-01" {
			t.Errorf("it is of %s", day)
		}
	}
}
