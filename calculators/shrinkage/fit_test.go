package shrinkage

import (
	"math"
	"testing"
)

// TestFitByState holds the figures that the state table was made with: a body
// that shrinks 12 % under a slip of itself and under a low-clay engobe.
func TestFitByState(t *testing.T) {
	tests := []struct {
		name              string
		sofar, slip, want float64
		fit               Fit
	}{
		{"body slip, wet", 0, 12, 0, Fits},
		{"body slip, leather-hard", 3, 12, 3.1, Fits},
		{"body slip, bone dry", 6, 12, 6.4, Peels},
		{"body slip, bisque", 7, 12, 7.5, Peels},
		{"engobe, wet", 0, 9.5, -2.8, Lifts},
		{"engobe, leather-hard", 3, 9.5, 0.2, Fits},
		{"engobe, bone dry", 6, 9.5, 3.4, Fits},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := Mismatch(Remaining(12, test.sofar), test.slip)
			if math.Abs(got-test.want) > 0.05 || Judge(got) != test.fit {
				t.Errorf("%v, fit %d; want %v, fit %d", got, Judge(got), test.want, test.fit)
			}
		})
	}
}

func TestJudge(t *testing.T) {
	for mismatch, want := range map[float64]Fit{-1.01: Lifts, -1: Fits, 0: Fits, 4.5: Fits, 4.51: Risks, 6: Risks, 6.01: Peels} {
		if got := Judge(mismatch); got != want {
			t.Errorf("%v %%: fit %d, want %d", mismatch, got, want)
		}
	}
	for percent := 0.0; percent <= 50; percent += 0.1 {
		if got := Mismatch(Remaining(percent, 0), percent); got != 0 {
			t.Errorf("a slip of the body itself, %v %%, on fresh clay: %v", percent, got)
		}
	}
}
