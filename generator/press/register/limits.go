package register

import (
	"slices"

	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// limitsView is what the law of the course's country asks about something; without a
// country, or where a page compares, what each law asks.
type limitsView struct {
	ID      string // of its heading; empty where it has none
	About   string // one of course.Topics
	Compare bool
	Laws    []lawView
}

// lawView is what one law asks, or several that ask the same.
type lawView struct {
	Laws []string
	*course.Limits
}

// Limits is the view of a limits block.
func (r *Register) Limits(b *markup.Block, id string) any {
	c := r.reading.Course
	v := limitsView{ID: id, About: b.Limits.About.ID, Compare: b.Limits.Compare || c.Law == ""}
	for _, l := range c.LimitsOf(v.About, v.Compare) {
		laws := l.Laws
		if !v.Compare {
			laws = slices.DeleteFunc(slices.Clone(laws), func(law string) bool { return law != c.Law })
		}
		v.Laws = append(v.Laws, lawView{laws, l})
	}
	return v
}
