package slip

import (
	"math/rand/v2"
	"testing"
)

func TestLoads(t *testing.T) {
	for _, test := range [][3]float64{{999, 1000, 1}, {1000, 1000, 1}, {1000.1, 1000, 2}, {2000, 1000, 2}, {3656.25, 2000, 2}, {0, 5, 1}, {0.3, 0.1, 3}} {
		if got := Loads(test[0], test[1]); got != test[2] {
			t.Errorf("%v g on a scale that bears %v: %v loads, want %v", test[0], test[1], got, test[2])
		}
	}
	random := rand.New(rand.NewPCG(1, 2026))
	for range 100_000 {
		limit := 10 + 5000*random.Float64()
		mass := limit * float64(random.IntN(50)) * (1 + 1e-15*random.Float64())
		loads := Loads(mass, limit)
		if mass/loads > limit || loads > 1 && mass/(loads-1) < limit*(1-1e-12) {
			t.Fatalf("%v g on a scale that bears %v: %v loads", mass, limit, loads)
		}
	}
}
