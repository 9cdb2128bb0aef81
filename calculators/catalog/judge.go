package catalog

import (
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
)

// usual are the trade's usual numbers, which judge where the studio has none of
// its own. They are common practice; the shares of a wash follow from 1 part of
// stain and 1 of flux in 20 to 5 parts of water by weight, and take in both ends.
var usual = []Working{
	{OfSlip, "to brush, dip or pour", 1.30, 1.50},
	{OfSlip, "to trail", 1.45, 1.60},
	{OfWash, "for a wash of stain and flux", 9.6, 36},
	{OfStain, "for colour in a slip", 1, 15},
}

// judgement is what is judged of a subject, and its words.
type judgement struct {
	nearness float64 // so far from a single number still counts as that number
	share    bool    // nearness is a share of the number
	more     string  // what more than all of them is
	less     string  // what less than all of them is
}

// judgementOf gives how a subject is judged.
func judgementOf(of Subject) judgement {
	switch of {
	case OfSlip:
		return judgement{0.02, false, "thick", "thin"}
	case OfWash:
		return judgement{0.1, true, "strong", "weak"}
	}
	return judgement{0.1, true, "strong", "pale"}
}

// The specific gravities between which a weighed jar tells something of a slip.
const (
	thinnest = 1.15
	thickest = 1.9
)

// judgeGravity judges the specific gravity of a slip, and warns of one that no
// slip in use has.
func (b *bench) judgeGravity(gravity float64) {
	text := quantity.FormatPlaces(gravity, 3, 2, b.settings.Style)
	switch {
	case gravity > thickest:
		b.answer.Judged = append(b.answer.Judged, text+": thicker than any slip that moves, which ends near "+b.text(thickest, 2)+". Check the numbers.")
	case gravity < thinnest:
		b.answer.Judged = append(b.answer.Judged, text+": too thin to be judged by weighing a jar, which begins near "+b.text(thinnest, 3)+". A small error in the weight becomes a large one in the dry clay: go by what was weighed in.")
	default:
		b.judge(OfSlip, gravity, text)
	}
}

// judge says in one sentence what a value, shown as text, is good for: by the
// studio's working numbers, or by the trade's usual ones, marked so. "1.60:
// thick. To brush or pour, near 1.45."
func (b *bench) judge(of Subject, value float64, text string) {
	known, marked := b.workingOf(of)
	if len(known) == 0 {
		return
	}
	words := judgementOf(of)
	var fits, others []string
	above, below := true, true
	for _, w := range known {
		low, high := w.within(words)
		above, below = above && value > high, below && value < low
		if value >= low && value <= high {
			fits = append(fits, w.For)
		} else {
			others = append(others, w.For+", "+b.numbersOf(w))
		}
	}
	verdict := "between what is usual"
	switch {
	case len(fits) > 0:
		verdict = "right " + listing(fits)
	case above:
		verdict = words.more
	case below:
		verdict = words.less
	}
	sentence := text + ": " + verdict + marked + "."
	if len(others) > 0 {
		sentence += " " + upperFirst(letters.Join(others, "; ")) + "."
	}
	b.answer.Judged = append(b.answer.Judged, sentence)
}

// workingOf gives the studio's working numbers of a subject, or the trade's
// with the words that mark them.
func (b *bench) workingOf(of Subject) (known []Working, marked string) {
	for _, w := range b.settings.Working {
		if w.Of == of {
			known = append(known, w)
		}
	}
	if len(known) > 0 {
		return known, ""
	}
	for _, w := range usual {
		if w.Of == of {
			known = append(known, w)
		}
	}
	return known, " (by what is usual in the trade)"
}

// within gives the ends between which a value counts as the working number.
func (w Working) within(j judgement) (low, high float64) {
	if w.Low < w.High {
		return w.Low, w.High
	}
	off := j.nearness
	if j.share {
		off = float64(off * w.Low)
	}
	return w.Low - off, w.High + off
}

// numbersOf writes a working number: "near 1.45", or "1.30 to 1.50".
func (b *bench) numbersOf(w Working) string {
	write := func(x float64) string {
		if w.Of == OfSlip {
			return b.gravity(x)
		}
		return b.text(x, 3)
	}
	if w.Low == w.High {
		return "near " + write(w.Low)
	}
	return write(w.Low) + " to " + write(w.High)
}
