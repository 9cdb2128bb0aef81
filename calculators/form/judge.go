package form

import "slipbook/calculators/letters"

// usual are the trade's usual numbers, which judge where the studio has none of
// its own. They are common practice; the shares of a wash follow from 1 part of
// stain and 1 of flux in 20 to 5 parts of water by weight, and take in both ends.
// Of how a slip runs, and of what fired clay drinks, there is no usual number: the
// one goes by the cup, the other by the clay.
var usual = []Working{
	{OfSlip, "judge.usual.brush", 1.30, 1.50},
	{OfSlip, "judge.usual.trail", 1.45, 1.60},
	{OfWash, "judge.usual.wash", 9.6, 36},
	{OfStain, "judge.usual.stain", 1, 15},
	{OfCoat, "judge.usual.coat", 0.4, 0.6},
}

// judgement is what is judged of a subject, and its words.
type judgement struct {
	nearness float64 // so far from a single number still counts as that number
	share    bool    // nearness is a share of the number
	more     string  // what more than all of them is
	less     string  // what less than all of them is
}

// judgementOf returns how a subject is judged.
func judgementOf(of Subject) judgement {
	switch of {
	case OfSlip:
		return judgement{0.02, false, "judge.thick", "judge.thin"}
	case OfWash:
		return judgement{0.1, true, "judge.strong", "judge.weak"}
	case OfCoat:
		return judgement{0.2, true, "judge.thick", "judge.thin"}
	case OfFlow:
		return judgement{0.1, true, "judge.slow", "judge.quick"}
	case OfAbsorption:
		return judgement{0.1, true, "judge.open", "judge.dense"}
	}
	return judgement{0.1, true, "judge.strong", "judge.pale"}
}

// Judge says in one sentence what a value, shown as text, is good for: by the
// studio's working numbers, or by the trade's usual ones, marked so. "1.60:
// thick. To brush or pour, near 1.45."
func (e *Evaluation) Judge(of Subject, value float64, text string) {
	known, usual := e.workingOf(of)
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
			others = append(others, e.Say("judge.besides", "for", w.For, "numbers", e.numbersOf(w)))
		}
	}
	verdict := e.Say("judge.between")
	switch {
	case len(fits) > 0:
		verdict = e.Say("judge.right", "for", e.Listing(fits))
	case above:
		verdict = e.Say(words.more)
	case below:
		verdict = e.Say(words.less)
	}
	key := "judge.verdict"
	if usual {
		key = "judge.verdict-usual"
	}
	sentence := e.Say(key, "value", text, "verdict", verdict)
	if len(others) > 0 {
		sentence = Join(sentence, letters.UpperFirst(letters.Join(others, "; "))+".")
	}
	e.Answer.Judged = append(e.Answer.Judged, sentence)
}

// workingOf returns the studio's working numbers of a subject, or the trade's
// marked as usual.
func (e *Evaluation) workingOf(of Subject) (known []Working, byTrade bool) {
	for _, w := range e.Settings.Working {
		if w.Of == of {
			known = append(known, w)
		}
	}
	if len(known) > 0 {
		return known, false
	}
	for _, w := range usual {
		if w.Of == of {
			w.For = e.Say(w.For)
			known = append(known, w)
		}
	}
	return known, true
}

// within returns the ends between which a value counts as the working number.
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
func (e *Evaluation) numbersOf(w Working) string {
	write := func(x float64) string {
		if w.Of == OfSlip {
			return e.Gravity(x)
		}
		return e.Text(x, 3)
	}
	if w.Low == w.High {
		return e.Say("judge.near", "number", write(w.Low))
	}
	return e.Say("judge.range", "low", write(w.Low), "high", write(w.High))
}
