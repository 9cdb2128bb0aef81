// Package address knows every address that a handbook will have: of pages that
// are written, of those that are made from the course and its tables, of
// headings, terms and pictures. It exists so that a reference in a lesson can be
// turned into what it leads to, or reported, before anything is printed and
// without a theme; whoever prints asks the same table.
//
// Addresses are counted from the root of the handbook and hold no "..":
// "slip/make-slip.html#sieve". Relative turns them into what a page writes.
package address

import (
	"strconv"
	"strings"
)

// The addresses of single pages that no Markdown file holds.
const (
	Home        = "index.html"
	Contents    = "contents.html"
	Glossary    = "glossary.html"
	NotFound    = "404.html"
	Calculators = CalculatorFolder + "index.html"
	Chart       = "chart.html"
	Answers     = "answers.html"
	Find        = "search.html"
	Faults      = "faults.html"
	Hazards     = "hazards.html"
	Notices     = "notices.html"
	Tried       = "tried.html"
	Teaching    = "teaching.html"
	Book        = "book.html"
	Ebook       = "handbook.epub"
	Cards       = "cards/index.html"
	Materials   = "materials/index.html"
	Recipes     = "recipes/index.html"
	Labels      = "labels/index.html"
	Wall        = "tiles/index.html"
	Classes     = "classes/index.html"
	Stock       = "stock/index.html"
	Paper       = "paper/index.html"
	Leach       = "leach/index.html"
	Eat         = "leach/may-i-eat.html"
	Phone       = "phone.html"

	CalculatorFolder = "calculators/" // where the calculators' own pages are
)

// What phones ask for beside pages: the service worker, which has to stand at the root
// of all that it keeps, and what tells a phone how to install the handbook.
const (
	Worker   = "sw.js"
	Manifest = "handbook.webmanifest"
)

// State returns where the page of a clay state is published.
func State(id string) string { return "states/" + id + ".html" }

// Medium returns where the page of a medium is published.
func Medium(id string) string { return "media/" + id + ".html" }

// Calculator returns where the page of a calculator is published.
func Calculator(name string) string { return CalculatorFolder + name + ".html" }

// Material returns where the page of a material of the studio's is published.
func Material(id string) string { return "materials/" + id + ".html" }

// Recipe returns where the page of a recipe is published.
func Recipe(id string) string { return "recipes/" + id + ".html" }

// RecipeLabel returns where the labels of a recipe are published, for a paper.
func RecipeLabel(id, paper string) string { return "labels/recipe-" + id + "-" + paper + ".html" }

// MaterialLabel returns where the labels of a material are published, for a paper.
func MaterialLabel(id, paper string) string { return "labels/material-" + id + "-" + paper + ".html" }

// Class returns where the sheet of a class is published.
func Class(id string) string { return "classes/" + id + ".html" }

// Poster returns where a poster is published, a sheet to hang up.
func Poster(id string) string { return "paper/poster-" + id + ".html" }

// Form returns where a form is published, a sheet to fill in by hand.
func Form(id string) string { return "paper/form-" + id + ".html" }

// LeachID returns the id of a leach test's report on the page of them all.
func LeachID(number string) string { return "report." + strings.ToLower(number) }

// LeachReport returns where a leach test's report stands.
func LeachReport(number string) string { return Leach + "#" + LeachID(number) }

// Card returns where the recap card of a medium is published.
func Card(medium string) string { return "cards/" + medium + ".html" }

// Volume returns where chapters of the book are published, from the one with a
// number on, where the book is too large to be a single page.
func Volume(number string) string { return "book/" + number + ".html" }

// Tile returns where a test tile hangs on the wall.
func Tile(code string) string { return Wall + "#" + TileID(code) }

// TileID returns the id of a tile on the wall.
func TileID(code string) string { return "tile." + strings.ToLower(code) }

// Hazard returns where a hazard is told in full.
func Hazard(id string) string { return Hazards + "#" + id }

// Term returns where a term of the glossary is explained.
func Term(id string) string { return Glossary + "#" + id }

// FaultOn returns where something that goes wrong is told on one of the pages of what
// goes wrong: Faults, or a further one where all do not fit it.
func FaultOn(page, id string) string { return page + "#" + id }

// Asked returns the id of something that students ask, in its lesson.
func Asked(number int) string { return "asked." + strconv.Itoa(number) }

// CalculatorID returns the id of a calculator on its page: 0 on its own, from 1
// in a lesson.
func CalculatorID(number int) string { return "calculator." + strconv.Itoa(number) }

// Further returns the address of the n-th page, from 1, of what is gathered on
// several.
func Further(first string, n int) string {
	if n == 1 {
		return first
	}
	return strings.TrimSuffix(first, ".html") + "-" + strconv.Itoa(n) + ".html"
}

// Relative returns the address of to as it is written in the page from: from
// "slip/index.html" to "glossary.html#bisque" it is "../glossary.html#bisque". A
// place on the page itself is its bare fragment. An empty to stays empty, since
// it stands for a file that the handbook does not have.
func Relative(from, to string) string {
	if to == "" {
		return ""
	}
	if rest, same := strings.CutPrefix(to, from+"#"); same {
		return "#" + rest
	}
	for {
		folder, rest, ok := strings.Cut(from, "/")
		if !ok || !strings.HasPrefix(to, folder+"/") {
			break
		}
		from, to = rest, to[len(folder)+1:]
	}
	return strings.Repeat("../", strings.Count(from, "/")) + to
}
