package words

import "slipbook/calculators/letters"

// rules says which category a whole number from 0 on has, by language. The
// rules are those of the Unicode CLDR for whole numbers (plural rules,
// cardinals), read in version 47: https://cldr.unicode.org. What a language's
// file lacks falls back to "other", so that a file may have fewer forms.
var rules = [...]struct {
	languages string // their first parts, each between spaces
	choose    func(n int) string
}{
	{" en de nl sv da nb nn no fi et it es ca hu tr el ", oneOther},
	{" fr pt ", zeroAndOne},
	{" ru uk be ", russian},
	{" pl ", polish},
	{" cs sk ", czech},
}

// ruleOf returns the rule of a language, nil for those in which numbers change
// nothing.
func ruleOf(language string) func(int) string {
	first, _, _ := letters.Cut(language, "-")
	for _, r := range rules {
		if letters.Contains(r.languages, " "+first+" ") {
			return r.choose
		}
	}
	return nil
}

func oneOther(n int) string {
	if n == 1 {
		return "one"
	}
	return "other"
}

func zeroAndOne(n int) string {
	if n <= 1 {
		return "one"
	}
	return "other"
}

func russian(n int) string {
	if fewOf(n) {
		return "few"
	}
	if n%10 == 1 && n%100 != 11 {
		return "one"
	}
	return "many"
}

func polish(n int) string {
	if fewOf(n) {
		return "few"
	}
	if n == 1 {
		return "one"
	}
	return "many"
}

// fewOf reports whether a number ends in 2, 3 or 4 and not in 12, 13 or 14.
func fewOf(n int) bool {
	return n%10 >= 2 && n%10 <= 4 && (n%100 < 12 || n%100 > 14)
}

func czech(n int) string {
	switch {
	case n == 1:
		return "one"
	case n >= 2 && n <= 4:
		return "few"
	}
	return "other"
}
