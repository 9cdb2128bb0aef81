package shrinkage

import "math"

// Bar is one test bar's mark lengths.
type Bar struct{ Plastic, Dry, Fired float64 }

// Bars is what a set of bars says: each figure the mean of the bars' own
// percentages.
type Bars struct {
	Drying        float64 // % of plastic length
	Firing        float64 // % of dry length
	FiringPlastic float64 // % of plastic length
	Total         float64 // % of plastic length
	Half          float64 // half-width of the 95 % confidence interval of Total; NaN for one bar
}

// Test reckons a set of one to MostBars bars.
func Test(bars []Bar) Bars {
	n := float64(len(bars))
	mean := func(of func(Bar) float64) float64 {
		sum := 0.0
		for _, bar := range bars {
			sum += of(bar)
		}
		return sum / n
	}
	total := func(b Bar) float64 { return Linear(b.Plastic, b.Fired) }
	result := Bars{
		Drying:        mean(func(b Bar) float64 { return Linear(b.Plastic, b.Dry) }),
		Firing:        mean(func(b Bar) float64 { return Linear(b.Dry, b.Fired) }),
		FiringPlastic: mean(func(b Bar) float64 { return 100 * (b.Dry - b.Fired) / b.Plastic }),
		Total:         mean(total),
		Half:          math.NaN(),
	}
	if len(bars) > 1 {
		squares := float64(n * mean(func(b Bar) float64 {
			off := total(b) - result.Total
			return float64(off * off)
		}))
		result.Half = student[len(bars)-2] * math.Sqrt(squares/(n-1)) / math.Sqrt(n)
	}
	return result
}
