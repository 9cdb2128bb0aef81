package press

import (
	"strings"

	"slipbook/generator/address"
)

// place is where something is set: on a page of its own, or in a chapter of the
// book. Views ask it for every address and id that they hold, so that the same
// view is right in both.
type place struct {
	page string    // the address of the page whose words are set
	book *bookPlan // nil on the page itself
}

// to returns what a place on the handbook is called from here, from an address
// counted from the root, which may carry a query and a fragment.
func (at place) to(to string) string {
	if at.book == nil || to == "" {
		return address.Relative(at.page, to)
	}
	return at.book.address(at.page, to)
}

// id returns an id as it is written here: in the book with the chapter's own word
// in front, since many pages stand on one.
func (at place) id(id string) string {
	if at.book == nil || id == "" {
		return id
	}
	return chapterKey(at.page) + "." + id
}

// chapterKey makes an id from an address: "page.slip.make-slip". Ids with a dot
// belong to the theme.
func chapterKey(address string) string {
	return "page." + strings.ReplaceAll(strings.TrimSuffix(address, ".html"), "/", ".")
}

// level returns the level of a heading here: in the book each page's own heading
// stands under that of the book.
func (at place) level(level int) int {
	if at.book == nil {
		return level
	}
	return min(level+1, 6)
}
