package shrinkage

import "math"

// MostBars is the largest number of bars that Test takes.
const MostBars = 60

// student holds the 0.975 quantiles of Student's t for 1 to MostBars-1 degrees
// of freedom, to 12 decimals. A table, because the quantile needs functions
// whose last bits differ between machines. The test checks every entry
// against gonum's distribution.
var student = [MostBars - 1]float64{
	12.706204736175, 4.302652729749, 3.182446305284, 2.776445105198, 2.570581835636, 2.446911851145,
	2.364624251593, 2.306004135204, 2.262157162798, 2.228138851986, 2.200985160092, 2.178812829667,
	2.160368656463, 2.144786687918, 2.131449545560, 2.119905299221, 2.109815577833, 2.100922040241,
	2.093024054408, 2.085963447266, 2.079613844728, 2.073873067904, 2.068657610419, 2.063898561628,
	2.059538552753, 2.055529438643, 2.051830516480, 2.048407141795, 2.045229642133, 2.042272456301,
	2.039513446396, 2.036933343460, 2.034515297449, 2.032244509318, 2.030107928250, 2.028094000980,
	2.026192463029, 2.024394163912, 2.022690920037, 2.021075390306, 2.019540970441, 2.018081702818,
	2.016692199228, 2.015367574444, 2.014103388881, 2.012895598919, 2.011740513730, 2.010634757624,
	2.009575237129, 2.008559112101, 2.007583770316, 2.006646805062, 2.005745995318, 2.004879288188,
	2.004044783289, 2.003240718848, 2.002465459291, 2.001717484145, 2.000995378088,
}

// Scatter returns the mean of up to MostBars values, and the half-width of the
// 95 % confidence interval of that mean by Student's t; NaN for a single value.
func Scatter(values []float64) (mean, half float64) {
	n := float64(len(values))
	for _, v := range values {
		mean += v
	}
	mean /= n
	if len(values) < 2 {
		return mean, math.NaN()
	}
	squares := 0.0
	for _, v := range values {
		squares += float64((v - mean) * (v - mean))
	}
	return mean, student[len(values)-2] * math.Sqrt(squares/(n-1)) / math.Sqrt(n)
}
