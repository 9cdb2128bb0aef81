package course

import (
	"slices"
	"sync"
)

// Laws are the countries whose law a course can name, in the order in which they are
// compared.
var Laws = []string{"US", "EU", "GB", "AU"}

// LawUS is that of the United States, by which labels take other words.
const LawUS = "US"

// Topics are what a limits block can ask for.
var Topics = []string{"food-leach", "silica-air", "carbon-monoxide", "mask-factors", "labels"}

// Limits is what some laws ask about one thing. Figures stand here only where their
// source was read; where none was, Rows is empty and Ask alone answers.
type Limits struct {
	About  string // one of Topics
	Laws   []string
	Ask    string // the authority, in the middle of a sentence
	Rows   []Limit
	Source string
	Read   string // ISO 8601 date
}

// Limit is one figure of a law, with its unit, and what it is of.
type Limit struct{ Of, Most string }

// LimitsOf returns what the law of a course asks about something; of a course that
// names no law, or where all are to be compared, of each law in turn.
func (c *Course) LimitsOf(about string, compare bool) []*Limits {
	var all []*Limits
	for _, law := range Laws {
		if c.Law != "" && c.Law != law && !compare {
			continue
		}
		for _, l := range ownLimits() {
			if l.About == about && slices.Contains(l.Laws, law) && !slices.Contains(all, l) {
				all = append(all, l)
			}
		}
	}
	return all
}

const limitsFile = "limits.yaml"

// ownLimits reads the program's own list, once.
var ownLimits = sync.OnceValue(func() []*Limits {
	var all []*Limits
	root := readOwn(limitsFile).root
	for _, item := range root.Fields("limits").Need("limits", "limits: []").List() {
		f := item.Fields("about", "law", "ask", "rows", "source", "read")
		l := &Limits{About: f.Need("about", "about: silica-air").Choice(Topics...), Laws: f.Need("law", "law: [GB]").Texts(), Ask: f.Need("ask", "ask: the authority").Text(),
			Source: f.Get("source").Text(), Read: date(f.Get("read"))}
		for _, row := range f.Get("rows").List() {
			r := row.Fields("of", "most")
			l.Rows = append(l.Rows, Limit{r.Need("of", "of: Lead").Text(), r.Need("most", "most: 1 mg/L").Text()})
		}
		all = append(all, l)
	}
	return all
})
