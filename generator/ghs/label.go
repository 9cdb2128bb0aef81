package ghs

import (
	"fmt"
	"slices"
)

// Symbol is one of the nine pictograms: a black drawing on white in a red square
// that stands on a corner.
type Symbol struct {
	Number string // "GHS08"
	Name   string // what the United Nations call it: "Health hazard"
	Shows  string // what is drawn, to draw it by and for whoever does not see it
}

// symbols are the pictograms in the order of their numbers.
var symbols = []Symbol{
	{"GHS01", "Exploding bomb", "a round bomb that bursts into pieces"},
	{"GHS02", "Flame", "a flame over a line"},
	{"GHS03", "Flame over circle", "a flame on top of a ring"},
	{"GHS04", "Gas cylinder", "a gas cylinder that lies slanting"},
	{"GHS05", "Corrosion", "two tilted test tubes that drip on a slab of metal and on a hand, and eat into both"},
	{"GHS06", "Skull and crossbones", "a skull before two crossed bones"},
	{"GHS07", "Exclamation mark", "a thick exclamation mark"},
	{"GHS08", "Health hazard", "the head and shoulders of a person with a star-shaped burst on the chest"},
	{"GHS09", "Environment", "a bare tree and a dead fish at the edge of water"},
}

// Symbols returns the nine pictograms, in the order of their numbers.
func Symbols() []Symbol { return slices.Clone(symbols) }

// known returns the lines of all hazard codes that are known, each once.
func known(codes []string) []statement {
	var found []statement
	for _, code := range codes {
		more, _ := parts(code)
		for _, s := range more {
			if s.kind != precaution && !slices.Contains(found, s) {
				found = append(found, s)
			}
		}
	}
	return found
}

// Pictograms returns the numbers of the pictograms that hazard codes call for,
// in order. Those are left out that a graver one stands in for, by
// 29 CFR 1910.1200 Appendix C.2.1: the exclamation mark is not shown for acute
// toxicity beside the skull, for skin and eyes beside corrosion, for skin and
// eyes and for allergy of the skin beside the health hazard of an allergy of the
// lungs. For what else it says it stays. (In Europe the skull takes the place of
// every exclamation mark; a label with both is the more careful one.) Unknown
// codes and precautions call for none.
func Pictograms(codes []string) []string {
	found := known(codes)
	shown := called(found)
	var left []string
	for _, s := range found {
		if s.pictogram != "" && !s.hidden(shown, found) {
			left = append(left, s.pictogram)
		}
	}
	return order(left)
}

// called returns the pictograms of all lines, hidden or not, in order.
func called(found []statement) []string {
	var all []string
	for _, s := range found {
		if s.pictogram != "" {
			all = append(all, s.pictogram)
		}
	}
	return order(all)
}

// order sorts, and leaves one of each.
func order(pictograms []string) []string {
	slices.Sort(pictograms)
	return slices.Compact(pictograms)
}

// hidden reports whether another pictogram stands in for that of a line.
func (s statement) hidden(shown []string, all []statement) bool {
	if s.pictogram != "GHS07" {
		return false
	}
	asthma := slices.ContainsFunc(all, func(o statement) bool { return o.kind == lungAllergy })
	return s.kind.acute() && slices.Contains(shown, "GHS06") ||
		s.kind == irritating && slices.Contains(shown, "GHS05") ||
		(s.kind == irritating || s.kind == skinAllergy) && asthma
}

// Signal returns the one signal word of hazard codes: Danger if any calls for it,
// else Warning if any calls for that, else "". H228 and H272 are Danger or Warning
// by their category, which the code does not tell; they count as Danger.
func Signal(codes []string) string {
	signal := ""
	for _, s := range known(codes) {
		switch s.signal {
		case Danger, either:
			return Danger
		case Warning:
			signal = Warning
		}
	}
	return signal
}

// Contradictions says in sentences where the pictograms and the signal word of a
// register do not agree with its hazard codes. What rules differ in is let pass:
// a pictogram that a graver one could stand in for, an exclamation mark that is
// missing beside the skull, a gas cylinder beside skull or flame, Warning where
// only the category would tell. Unknown codes are passed over; Statement finds
// them.
func Contradictions(codes, pictograms []string, signal string) []string {
	found := known(codes)
	var wrong []string
	for _, s := range found {
		if s.missing(pictograms, found) {
			wrong = append(wrong, fmt.Sprintf("%s is missing: %s (%s) calls for it", s.pictogram, s.code, s.words))
		}
	}
	for _, p := range pictograms {
		if !slices.Contains(called(found), p) {
			wrong = append(wrong, fmt.Sprintf("%s is there, and no hazard code calls for it", p))
		}
	}
	return append(wrong, misread(codes, signal)...)
}

// missing reports whether the pictogram of a line ought to be among those there.
func (s statement) missing(there []string, all []statement) bool {
	skull, flame := slices.Contains(there, "GHS06"), slices.Contains(there, "GHS02")
	excused := s.pictogram == "GHS07" && skull || s.pictogram == "GHS04" && (skull || flame)
	return s.pictogram != "" && !slices.Contains(there, s.pictogram) && !excused && !s.hidden(called(all), all)
}

// misread says what is wrong with a signal word.
func misread(codes []string, signal string) []string {
	want := Signal(codes)
	sure := slices.ContainsFunc(known(codes), func(s statement) bool { return s.signal == Danger })
	switch {
	case signal == want, signal == Warning && want == Danger && !sure:
		return nil
	case want == "":
		return []string{fmt.Sprintf("the signal word is %s, and no hazard code calls for one", signal)}
	case signal == "":
		return []string{fmt.Sprintf("the signal word is missing: the hazard codes call for %s", want)}
	}
	return []string{fmt.Sprintf("the signal word is %s, and the hazard codes call for %s", signal, want)}
}
