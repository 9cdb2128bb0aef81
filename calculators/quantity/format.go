package quantity

import (
	"math"
	"strconv"

	"slipbook/calculators/letters"
)

// Format prints a number with the given count of significant digits (at least
// one) in the style, without exponent, groups of three separated by narrow
// no-break spaces from 10 000 on, trailing zeros after the mark dropped, a
// minus sign before negative numbers. What is rounded is the shortest decimal
// that stands for the number, halves away from zero: 2.675 with three digits is
// 2.68, as it would be on paper, and more than seventeen digits change nothing.
// NaN and the infinities are "not a number".
func Format(value float64, digits int, style Style) string {
	return layOut(value, digits, style, "\u202f", "\u2212")
}

// Round says which way FormatTo rounds.
type Round uint8

// The ways to round.
const (
	Nearest Round = iota // halves up
	Down
	Up
)

// hair is how near to a multiple of a step a number counts as one: what a
// computer's fractions lose is less.
const hair = 1e-9

// RoundTo returns a number that is not negative as a multiple of step (above 0),
// rounded the given way.
func RoundTo(value, step float64, way Round) float64 {
	steps := value / step
	switch way {
	case Down:
		steps = math.Floor(steps + hair)
	case Up:
		steps = math.Ceil(steps - hair)
	default:
		steps = math.Floor(steps + 0.5 + hair)
	}
	if parts := math.Floor(1/step + 0.5); step < 1 && math.Abs(float64(parts*step)-1) < hair {
		return steps / parts // 3 steps of 0.1 are 0.3, and not its neighbour
	}
	return float64(steps * step)
}

// FormatTo prints a number that is not negative as RoundTo rounds it, with as
// many digits after the mark as step has, zeros too: 53 to a step of 0.1 is
// "53.0".
func FormatTo(value, step float64, way Round, style Style) string {
	text := Format(RoundTo(value, step, way), 12, style)
	places := 0
	for scaled := step; places < 9 && math.Abs(scaled-math.Floor(scaled+0.5)) > hair; places++ {
		scaled = float64(scaled * 10)
	}
	return padded(text, places, style)
}

// padded fills a number's text up with zeros to so many digits after the mark.
func padded(text string, places int, style Style) string {
	if places == 0 {
		return text
	}
	mark := 0
	for mark < len(text) && text[mark] != style.mark() {
		mark++
	}
	if mark == len(text) {
		text += string(rune(style.mark()))
	}
	for len(text)-mark-1 < places {
		text += "0"
	}
	return text
}

// FormatPlaces is Format with at least so many digits after the mark: 1.50, not
// 1.5.
func FormatPlaces(value float64, digits, places int, style Style) string {
	return padded(Format(value, digits, style), places, style)
}

// plainText is Format with what a keyboard has, for sentences that say what to
// type.
func plainText(value float64, digits int, style Style) string {
	return layOut(value, digits, style, " ", "-")
}

func layOut(value float64, digits int, style Style, space, minus string) string {
	if value-value != 0 {
		return "not a number"
	}
	sign := ""
	if value < 0 {
		sign, value = minus, -value
	}
	figures, point := significant(value, digits)
	whole, after := "0", ""
	switch {
	case point <= 0:
		after = zeros(-point) + figures
	case point >= len(figures):
		whole = figures + zeros(point-len(figures))
	default:
		whole, after = figures[:point], figures[point:]
	}
	text := sign + group(whole, space)
	if after != "" {
		text += string(rune(style.mark())) + after
	}
	return text
}

// significant returns the figures of a number that is not negative, rounded to so
// many and without zeros at the end, and where the point stands: after so many
// of them, or, negative, so many zeros before them. Zero has no figures.
func significant(value float64, digits int) (figures string, point int) {
	if value == 0 {
		return "", 0
	}
	whole, after, _ := letters.Cut(strconv.FormatFloat(value, 'f', -1, 64), ".")
	all := letters.TrimLeft(whole+after, "0")
	point = len(whole) - (len(whole) + len(after) - len(all))
	kept, carried := round([]byte(all), max(digits, 1))
	if carried {
		point++
	}
	return string(kept), point
}

// round keeps the first n figures, halves rounded up, and drops zeros from the
// end. carried says that 9.99 became 10.
func round(figures []byte, n int) (kept []byte, carried bool) {
	if len(figures) > n {
		up := figures[n] >= '5'
		figures = figures[:n]
		for i := n - 1; up && i >= 0; i-- {
			up = figures[i] == '9'
			if up {
				figures[i] = '0'
			} else {
				figures[i]++
			}
		}
		if up {
			return []byte{'1'}, true
		}
	}
	for len(figures) > 1 && figures[len(figures)-1] == '0' {
		figures = figures[:len(figures)-1]
	}
	return figures, false
}

// group parts the digits of a whole number by threes when it has five or more.
func group(whole, space string) string {
	if len(whole) < 5 {
		return whole
	}
	first := (len(whole)-1)%3 + 1
	text := whole[:first]
	for i := first; i < len(whole); i += 3 {
		text += space + whole[i:i+3]
	}
	return text
}

func zeros(n int) string {
	b := make([]byte, n)
	for i := range b {
		b[i] = '0'
	}
	return string(b)
}
