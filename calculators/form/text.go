package form

import (
	"strconv"

	"slipbook/calculators/quantity"
)

// Listing joins words: "a, b and c".
func Listing(list []string) string {
	text := ""
	for i, w := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			text += " and "
		default:
			text += ", "
		}
		text += w
	}
	return text
}

// Clip shortens what was typed so that a message stays readable, at a
// character's edge, without characters that cannot be seen.
func Clip(text string) string {
	const most = 40
	text = quantity.Visible(text)
	if len(text) <= most {
		return text
	}
	end := most
	for end > 0 && text[end]&0xC0 == 0x80 {
		end--
	}
	return text[:end] + "…"
}

// WithUnit joins a number's text and its unit; "1" is no unit.
func WithUnit(text, unit string) string {
	if unit == "1" || unit == "" {
		return text
	}
	return text + "\u00a0" + unit
}

// Plural words a number of things: "1 cup", "2 cups".
func Plural(count int, word string) string {
	if count == 1 {
		return "1 " + word
	}
	return strconv.Itoa(count) + " " + word + "s"
}

// Join puts two sentences one after the other, where there are two.
func Join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}
