package register

import (
	"math"
	"slices"
	"strings"
)

// posterSize is a size of a poster's type: a class of the theme's style sheet, which
// sets it.
type posterSize struct {
	Size          string
	points, lists float64 // of the type, and of that of lists of tubs
}

// posterSizes lists them, the largest first. The least is read
// from more than a metre away; lists of tubs are smaller, and read from near by.
var posterSizes = []posterSize{
	{"poster-1", 28, 17.4}, {"poster-2", 26, 16.1}, {"poster-3", 24, 14.9}, {"poster-4", 22.5, 13.9}, {"poster-5", 21, 13},
	{"poster-6", 19.5, 12.1}, {"poster-7", 18, 11.2}, {"poster-8", 17, 10.5}, {"poster-9", 16, 9.9}, {"poster-10", 15, 9.3},
	{"poster-11", 14, 9.3}, {"poster-12", 13.2, 9.3}, {"poster-13", 12.4, 9.3},
}

// What the style sheet makes of a poster, in points or in sizes of its type. The
// trial prints every poster and finds out whether these are true.
const (
	posterAround = 128 // title, foot, the lines to fill in, the code
	letterWide   = 0.53
	lineHigh     = 1.25
	headHigh     = 1.8
	groupHigh    = 0.9 // what pictograms add to a line
)

// mostNames are how many tubs a list names, the first that fits; the rest is counted.
var mostNames = []int{math.MaxInt, 60, 40, 30, 22, 16, 12, 8, 5, 3}

// settle gives a poster the largest type in which it fits one sheet, and counts tubs
// instead of naming them where it fits in none. A hazard is never left out.
func (v *posterView) settle(word func(string) string) {
	whole := *v
	for _, most := range mostNames {
		*v = whole.naming(most)
		for _, size := range posterSizes {
			v.posterSize = size
			if v.fits(word) {
				return
			}
		}
	}
}

// fits reports whether a poster is thought to fit both papers.
func (v posterView) fits(word func(string) string) bool {
	return v.height(a4Wide, word) <= a4High && v.height(letterPaperWide, word) <= letterPaperHigh
}

// Inside the margins of a poster, in points, with a little to spare.
const (
	a4Wide, a4High                   = 525, 775
	letterPaperWide, letterPaperHigh = 542, 708
)

// naming returns the poster with at most some names in each list.
func (v posterView) naming(most int) posterView {
	tubs, waste := v.Tubs, v.Waste
	v.Tubs, v.Waste = nil, nil
	for _, g := range tubs {
		g.Names, g.More = some(g.Names, most)
		v.Tubs = append(v.Tubs, g)
	}
	for _, g := range waste {
		g.Names, g.More = some(g.Names, most)
		v.Waste = append(v.Waste, g)
	}
	return v
}

func some(names []string, most int) (first []string, more int) {
	if len(names) <= most {
		return names, 0
	}
	return names[:most], len(names) - most
}

// height is about how high a poster is on paper of some width, in points.
func (v posterView) height(width float64, word func(string) string) float64 {
	text := func(size, columns float64, words ...string) float64 {
		letters := float64(len([]rune(strings.Join(words, ", ")))) + 2
		return size * lineHigh * math.Ceil(letters*letterWide*size*columns/width) / columns
	}
	high := posterAround + v.points*headHigh // of what to do first
	for _, h := range v.Safety.Hazards {
		high += text(v.points, 1, h.Title, h.Short)
	}
	high += text(1.1*v.points, 1, append(slices.Clone(v.Gear.Wear), v.Gear.Places...)...) + text(v.points, 1)
	for _, a := range v.Allowed {
		high += text(v.points, 1, append(slices.Clone(a.What), word(a.Safety.Who))...)
	}
	for _, key := range v.Aid {
		high += text(v.points, 2, word(key))
	}
	return high + v.heightOfTubs(text, word)
}

// heightOfTubs is that of the lists of tubs.
func (v posterView) heightOfTubs(text func(size, columns float64, words ...string) float64, word func(string) string) (high float64) {
	if len(v.Tubs) > 0 {
		high += v.points * headHigh
	}
	if v.Doctor {
		high += text(v.lists, 1, word("class-first"))
	}
	for _, g := range v.Tubs {
		var titles []string
		for _, h := range g.Safety.Hazards {
			titles = append(titles, h.Title)
		}
		high += v.lists*groupHigh + text(v.lists, 1, slices.Concat([]string{groupHead}, g.Names, g.Class.Unclear, g.Class.Unclear)...) + text(v.lists, 1, append(titles, g.Safety.Wear...)...)
	}
	if len(v.Waste) > 0 {
		high += v.points * headHigh
	}
	for _, g := range v.Waste {
		high += text(v.lists, 2, append(slices.Clone(g.Names), g.Where)...)
	}
	return high
}

// groupHead stands for what a group of tubs begins with: who may, the signal word and
// pictograms.
const groupHead = "with the instructor Warning ## ## ##"
