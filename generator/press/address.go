package press

import (
	"strconv"
	"strings"
)

// The addresses of pages that no Markdown file holds, from the root.
const (
	homeAddress        = "index.html"
	contentsAddress    = "contents.html"
	glossaryAddress    = "glossary.html"
	notFoundAddress    = "404.html"
	calculatorsAddress = "calculators/index.html"
	chartAddress       = "chart.html"
	answersAddress     = "answers.html"
	faultsAddress      = "faults.html"
	hazardsAddress     = "hazards.html"
	noticesAddress     = "notices.html"
	teachingAddress    = "teaching.html"
	bookAddress        = "book.html"
	cardsAddress       = "cards/index.html"
)

// stateAddress is where the page of a clay state is published.
func stateAddress(id string) string { return "states/" + id + ".html" }

// mediumAddress is where the page of a medium is published.
func mediumAddress(id string) string { return "media/" + id + ".html" }

// calculatorAddress is where the page of a calculator is published.
func calculatorAddress(name string) string { return calculatorFolder + name + ".html" }

// calculatorFolder is where the calculators' own pages are published.
const calculatorFolder = "calculators/"

// cardAddress is where the recap card of a medium is published.
func cardAddress(medium string) string { return "cards/" + medium + ".html" }

// hazardAddress is where a hazard is told in full.
func hazardAddress(id string) string { return hazardsAddress + "#" + id }

// askedID is where something that students ask stands in its lesson.
func askedID(number int) string { return "asked." + strconv.Itoa(number) }

// termAddress is where a term of the glossary is explained.
func termAddress(id string) string { return glossaryAddress + "#" + id }

// relative gives the address of to as it is written in the page from, both
// counted from the handbook's root: from "slip/index.html" to
// "glossary.html#bisque" it is "../glossary.html#bisque". A place on the page
// itself is its bare fragment. An empty to stays empty, since it stands for a
// file that the handbook does not have.
func relative(from, to string) string {
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
