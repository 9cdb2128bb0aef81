package wash

import (
	"math"
	"testing"
)

func TestRoot(t *testing.T) {
	for _, x := range []float64{1, 0.999999, 0.5, 0.0625, 1e-3, 1e-9} {
		for n := 1; n <= 49; n++ {
			want := math.Pow(x, 1/float64(n))
			if got := root(x, n); math.Abs(got-want) > 4e-16*float64(n)*want+1e-16 {
				t.Errorf("root(%v, %d) = %v, want %v", x, n, got, want)
			}
		}
	}
}

func TestLadder(t *testing.T) {
	want := []Cup{{16, 40, 0}, {8, 20, 20}, {4, 10, 30}, {2, 5, 35}}
	for i, cup := range Ladder(16, 2, 40, 4) {
		if math.Abs(cup.Strength-want[i].Strength)+math.Abs(cup.Stock-want[i].Stock)+math.Abs(cup.Water-want[i].Water) > 1e-13 {
			t.Errorf("cup %d: %+v, want %+v", i+1, cup, want[i])
		}
	}
	if each := EachFrom(75, 16, 2, 4); math.Abs(each-40) > 1e-13 {
		t.Errorf("each %v, want 40", each)
	}
	for _, cup := range Ladder(10, 10, 30, 5) {
		if cup != (Cup{10, 30, 0}) {
			t.Errorf("equal strengths: %+v", cup)
		}
	}
}

func TestStockFor(t *testing.T) {
	if got := StockFor(20, 5, 30, 3); math.Abs(got-52.5) > 1e-12 {
		t.Errorf("cups of 20, 10 and 5, 30 mL each, take %v mL", got)
	}
}
