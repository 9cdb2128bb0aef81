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
	Callipers     float64 // what the callipers alone leave uncertain in Total, ± (95 %)
	Half          float64 // half-width of the 95 % confidence interval of Total, never less than Callipers; NaN for one bar
}

// Test works out a set of one to MostBars bars, measured with callipers that
// show steps of step (in the bars' unit).
func Test(bars []Bar, step float64) Bars {
	n := float64(len(bars))
	mean := func(of func(Bar) float64) float64 {
		sum := 0.0
		for _, bar := range bars {
			sum += of(bar)
		}
		return sum / n
	}
	totals := make([]float64, len(bars))
	for i, bar := range bars {
		totals[i] = Linear(bar.Plastic, bar.Fired)
	}
	total, scatter := Scatter(totals)
	result := Bars{
		Drying:        mean(func(b Bar) float64 { return Linear(b.Plastic, b.Dry) }),
		Firing:        mean(func(b Bar) float64 { return Linear(b.Dry, b.Fired) }),
		FiringPlastic: mean(func(b Bar) float64 { return 100 * (b.Dry - b.Fired) / b.Plastic }),
		Total:         total,
		Callipers:     mean(func(b Bar) float64 { return reading(b, step) }),
		Half:          scatter,
	}
	if len(bars) > 1 {
		result.Half = math.Max(scatter, result.Callipers)
	}
	return result
}

// reading returns by how much (%, 95 %) a bar's total may be off because the
// callipers show no finer step: step/√12 for each of the two readings (JCGM
// 100, 4.3.7), coverage factor 2. More bars do not make it smaller, since bars
// of one length are all misread alike.
func reading(b Bar, step float64) float64 {
	ratio := b.Fired / b.Plastic
	return float64(200 * step / b.Plastic * math.Sqrt((1+float64(ratio*ratio))/12))
}

// Astray finds the value that lies farthest from the others: its place, and
// how far it is from the median of the rest. With a single value nothing is
// astray; of two, the second is named.
func Astray(values []float64) (place int, from, off float64) {
	if len(values) < 2 {
		return 0, values[0], 0
	}
	for i, v := range values {
		rest := append(append([]float64(nil), values[:i]...), values[i+1:]...)
		if m := median(rest); math.Abs(v-m) >= math.Abs(off) {
			place, from, off = i, m, v-m
		}
	}
	return place, from, off
}

// median returns the middle of some values, which it puts in order.
func median(values []float64) float64 {
	for i := range values {
		for j := i; j > 0 && values[j] < values[j-1]; j-- {
			values[j], values[j-1] = values[j-1], values[j]
		}
	}
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}
