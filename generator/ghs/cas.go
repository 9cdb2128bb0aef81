package ghs

import (
	"fmt"
	"strings"
)

// CAS reports what is wrong with the form or the check digit of a CAS Registry
// Number, and nothing if both are right: two to seven digits, two digits and a
// check digit, with hyphens between, as in 7732-18-5. The error says what would
// be right.
//
// A number that fits need not be the right one: that of another substance fits as
// well, and the check digit does not notice every slip. It is the last figure of
// the sum of all digits, each times its place from the right, so that a digit in
// an even place may be 5 too high or too low, one in the fifth place any even
// number. Two neighbors exchanged it always notices, unless the check digit is
// one of them.
func CAS(number string) error {
	body, check, ok := dissect(number)
	if !ok {
		return malformed(number)
	}
	if fits := checkDigit(body); fits != check {
		return fmt.Errorf("%s is no CAS Registry Number: its last digit would be %c, so either that is wrong or one before it; "+
			"compare it with the supplier's sheet (%s%c would fit, but may be another substance)",
			number, fits, number[:len(number)-1], fits)
	}
	return nil
}

// dissect takes a number of the right form apart: its digits without the check
// digit, and that.
func dissect(number string) (body string, check byte, ok bool) {
	group := strings.Split(number, "-")
	if len(group) != 3 || len(group[0]) < 2 || len(group[0]) > 7 || len(group[1]) != 2 || len(group[2]) != 1 {
		return "", 0, false
	}
	body = group[0] + group[1]
	return body, group[2][0], digits(body+group[2]) && body[0] != '0'
}

// digits reports whether there are digits only.
func digits(text string) bool { return strings.Trim(text, "0123456789") == "" }

// checkDigit works out the check digit: 1 × the last digit + 2 × the one before it
// and so on, of which only the last figure counts.
func checkDigit(body string) byte {
	sum := 0
	for i := range len(body) {
		sum += (len(body) - i) * int(body[i]-'0')
	}
	return '0' + byte(sum%10)
}

// dashes are what people and programs write in place of hyphens.
var dashes = strings.NewReplacer("‐", "-", "‑", "-", "‒", "-", "–", "-", "—", "-", "−", "-", " ", "")

// malformed says that a number has not the form of one. If only its hyphens are
// missing or odd, the error says how it is written.
func malformed(number string) error {
	plain := strings.ReplaceAll(dashes.Replace(number), "-", "")
	if n := len(plain); n >= 5 && n <= 10 && digits(plain) {
		as := plain[:n-3] + "-" + plain[n-3:n-1] + "-" + plain[n-1:]
		if body, check, ok := dissect(as); ok && checkDigit(body) == check {
			return fmt.Errorf("%q is not written as a CAS Registry Number is: write %s", number, as)
		}
	}
	return fmt.Errorf("%q is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5", number)
}
