package ghs

import (
	"strings"
	"testing"
)

func TestCAS(t *testing.T) {
	for number, want := range map[string]string{
		"7732-18-5": "", "107-07-3": "", "71-23-8": "", "50-00-0": "", "102184-95-2": "",
		"7732-18-6":     "7732-18-6 is no CAS Registry Number: its last digit would be 5, so either that is wrong or one before it; compare it with the supplier's sheet (7732-18-5 would fit, but may be another substance)",
		"":              `"" is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5`,
		"7732185":       `"7732185" is not written as a CAS Registry Number is: write 7732-18-5`,
		"7732–18–5":     `"7732–18–5" is not written as a CAS Registry Number is: write 7732-18-5`,
		" 7732-18-5":    `" 7732-18-5" is not written as a CAS Registry Number is: write 7732-18-5`,
		"7732-185":      `"7732-185" is not written as a CAS Registry Number is: write 7732-18-5`,
		"773-218-5":     `"773-218-5" is not written as a CAS Registry Number is: write 7732-18-5`,
		"7732186":       `"7732186" is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5`,
		"00012-34-5":    `"00012-34-5" is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5`,
		"7732-18-x":     `"7732-18-x" is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5`,
		"5-00-0":        `"5-00-0" is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5`,
		"12345678-12-1": `"12345678-12-1" is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5`,
		"٧٧٣٢-١٨-٥":     `"٧٧٣٢-١٨-٥" is no CAS Registry Number: it has two to seven digits, two digits and one, with hyphens between, as in 7732-18-5`,
	} {
		got := ""
		if err := CAS(number); err != nil {
			got = err.Error()
		}
		if got != want {
			t.Errorf("%q:\n%s\n%s", number, got, want)
		}
	}
}

// places counts the digits behind a place, so that the check digit has 0.
func places(number string, at int) int {
	return len(strings.ReplaceAll(number[at+1:], "-", ""))
}

// TestOneDigitChanged changes every digit of every published number into every
// other. By the arithmetic of the check digit, a digit in place p that is d too
// high or low goes unnoticed if p times d ends in 0; all else must be noticed.
func TestOneDigitChanged(t *testing.T) {
	noticed, all := 0, 0
	for _, row := range rows(t, "cas.csv") {
		number := row["number"]
		for i, old := range number {
			for digit := '0'; digit <= '9' && old != '-'; digit++ {
				if digit == old {
					continue
				}
				changed := number[:i] + string(digit) + number[i+1:]
				lost := places(number, i)*int(digit-old)%10 == 0 && places(number, i) > 0 && changed[0] != '0'
				if err := CAS(changed); (err == nil) != lost {
					t.Errorf("%s for %s: %v", changed, number, err)
				} else if err != nil {
					noticed++
				}
				all++
			}
		}
	}
	if share := float64(noticed) / float64(all); share < 0.85 {
		t.Errorf("%d of %d slips are noticed", noticed, all)
	} else {
		t.Logf("%d of %d slips of one digit are noticed, %.1f %%", noticed, all, 100*share)
	}
}

// TestTwoDigitsExchanged exchanges neighbors before the check digit.
func TestTwoDigitsExchanged(t *testing.T) {
	for _, row := range rows(t, "cas.csv") {
		number := row["number"]
		for i := range len(number) - 3 {
			j := i + 1
			if number[j] == '-' {
				j++
			}
			if number[i] == '-' || number[i] == number[j] {
				continue
			}
			swapped := []byte(number)
			swapped[i], swapped[j] = swapped[j], swapped[i]
			if CAS(string(swapped)) == nil {
				t.Errorf("%s passes for %s", swapped, number)
			}
		}
	}
}

// FuzzCAS checks any text: what passes has the form and adds up, and what an
// error tells to write passes.
func FuzzCAS(f *testing.F) {
	for _, seed := range []string{"7732-18-5", "7732-18-6", "7732185", "00012-34-5", "7732–18–5", "", "-", "--", "0-00-0", "99999999999", "1 2 3 4 5", "\xff-00-0"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, number string) {
		err := CAS(number)
		if err == nil {
			sum := 0
			for i, c := range number {
				if c != '-' {
					sum += places(number, i) * int(c-'0')
				}
			}
			if len(number) < 7 || len(number) > 12 || sum%10 != int(number[len(number)-1]-'0') {
				t.Errorf("%q passes", number)
			}
			return
		}
		if _, write, found := strings.Cut(err.Error(), ": write "); found && CAS(write) != nil {
			t.Errorf("%q: %v; and that is none either", number, err)
		}
		if before, _, found := strings.Cut(err.Error(), " would fit, but"); found && CAS(before[strings.LastIndexByte(before, '(')+1:]) != nil {
			t.Errorf("%q: %v; and that does not fit", number, err)
		}
	})
}
