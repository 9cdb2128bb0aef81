package proof

import (
	"runtime"
	"sync"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// parseAll reads pages, as many at once as there are processors. Documents and
// findings come back in the order of the pages, whichever was finished first.
func parseAll(pages []*course.Page, s markup.Surroundings) ([]*markup.Document, finding.List) {
	documents := make([]*markup.Document, len(pages))
	findings := make([]finding.List, len(pages))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(pages)) {
		workers.Go(func() {
			for i := range next {
				documents[i], findings[i] = markup.Parse(pages[i], s)
			}
		})
	}
	for i := range pages {
		next <- i
	}
	close(next)
	workers.Wait()
	var all finding.List
	for _, f := range findings {
		all = append(all, f...)
	}
	return documents, all
}
