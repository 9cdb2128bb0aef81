package shrinkage

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// TestStudent checks every entry of the table against gonum's distribution,
// and against the first figures of the tables in statistics handbooks.
func TestStudent(t *testing.T) {
	for i, q := range student {
		exact := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(i + 1)}
		if got := exact.Quantile(0.975); math.Abs(got-q) > 1e-11*q {
			t.Errorf("%d degrees of freedom: table %v, gonum %v", i+1, q, got)
		}
		if got := exact.CDF(q); math.Abs(got-0.975) > 1e-12 {
			t.Errorf("%d degrees of freedom: %v is at %v", i+1, q, got)
		}
	}
	for df, printed := range map[int]float64{1: 12.706, 2: 4.303, 5: 2.571, 10: 2.228, 30: 2.042} {
		if math.Abs(student[df-1]-printed) > 0.0005 {
			t.Errorf("%d degrees of freedom: %v, printed %v", df, student[df-1], printed)
		}
	}
}

func TestOneBar(t *testing.T) {
	got := Test([]Bar{{Plastic: 100, Dry: 94, Fired: 88}}, 0.1)
	if !math.IsNaN(got.Half) || got.Total != 12 || got.Drying != 6 || got.FiringPlastic != 6 {
		t.Errorf("got %+v", got)
	}
}
