package gathered

import (
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/press/imprint"
)

// What is gathered from all lessons of a large course stands on several pages, each
// of them thought to be at most largestGathered bytes: phones take long over larger
// ones. A part is never divided.
const largestGathered = 1_700_000

// gathering is what one kind of page gathers, part by part.
type gathering[P any] struct {
	address            string // of its first page
	title, description string
	parts              []P
	size               func(P) int    // of a part, in bytes, as it is thought to be
	name               func(P) string // of a part, in words
	view               func(at imprint.Place, g gatheredPage, parts []P) (imprint.PageView, error)
	found              func(part P, address string) // is told on which page a part stands; may be nil
}

// gatheredPage is what is said of one page of a gathering.
type gatheredPage struct {
	title, description string
	further            []imprint.Link // the other pages, from the root, by the name of the first part on each
}

// sheets divides a gathering into pages; it has none while there are no parts.
func (g gathering[P]) sheets() []imprint.Sheet {
	runs, sizes := g.runs()
	pages := make([]imprint.Link, len(runs))
	for n, run := range runs {
		pages[n] = imprint.Link{Title: g.name(run[0]), Address: address.Further(g.address, n+1)}
	}
	var all []imprint.Sheet
	for n, run := range runs {
		page := gatheredPage{title: g.title, description: g.description}
		for other := range pages {
			if other != n {
				page.further = append(page.further, pages[other])
			}
		}
		if n > 0 {
			page.title += " (" + strconv.Itoa(n+1) + ")"
		}
		for _, part := range run {
			if g.found != nil {
				g.found(part, pages[n].Address)
			}
		}
		all = append(all, imprint.Sheet{Address: pages[n].Address, Title: page.title, Description: g.description, Size: sizes[n], View: func(at imprint.Place) (imprint.PageView, error) {
			return g.view(at, page, run)
		}})
	}
	return all
}

// runs puts parts that follow one another on as few pages as may be.
func (g gathering[P]) runs() (runs [][]P, sizes []int) {
	begin := 0
	for n, part := range g.parts {
		size := g.size(part)
		if last := len(runs) - 1; last >= 0 && sizes[last]+size <= largestGathered {
			runs[last], sizes[last] = g.parts[begin:n+1], sizes[last]+size
			continue
		}
		begin = n
		runs, sizes = append(runs, g.parts[n:n+1]), append(sizes, size)
	}
	return runs, sizes
}

// links are the ways to the other pages.
func (g gatheredPage) links(at imprint.Place) []imprint.Link {
	var all []imprint.Link
	for _, p := range g.further {
		all = append(all, imprint.Link{Title: p.Title, Address: at.To(p.Address)})
	}
	return all
}
