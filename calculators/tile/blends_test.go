package tile

import (
	"math"
	"slices"
	"testing"
)

func TestLine(t *testing.T) {
	if got, want := Line(0, 10, 5), []float64{0, 2.5, 5, 7.5, 10}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	for points := 2; points <= 100; points++ {
		line := Line(0.3, 7.7, points)
		if line[0] != 0.3 || line[points-1] != 7.7 {
			t.Errorf("%d points: from %v to %v", points, line[0], line[points-1])
		}
		for i := 1; i < points; i++ {
			if step := line[i] - line[i-1]; math.Abs(step-7.4/float64(points-1)) > 1e-12 {
				t.Errorf("%d points: step %d is %v", points, i, step)
			}
		}
	}
}

func TestDoubling(t *testing.T) {
	if got, want := Doubling(0.25, 5), []float64{0.25, 0.5, 1, 2, 4}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestTriaxial(t *testing.T) {
	want := [][3]float64{{100, 0, 0}, {50, 50, 0}, {50, 0, 50}, {0, 100, 0}, {0, 50, 50}, {0, 0, 100}}
	if got := Triaxial(3); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	for side := 2; side <= 13; side++ {
		blends := Triaxial(side)
		different := map[[3]float64]bool{}
		for _, b := range blends {
			different[b] = true
			if math.Abs(b[0]+b[1]+b[2]-100) > 1e-12 {
				t.Errorf("%d along a side: %v", side, b)
			}
		}
		if len(blends) != Count(side) || len(different) != Count(side) {
			t.Errorf("%d along a side: %d blends, %d different, want %d", side, len(blends), len(different), Count(side))
		}
	}
}
