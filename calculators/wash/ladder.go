package wash

// Cup is one cup of a ladder of washes.
type Cup struct {
	Strength float64 // g dry per 100 mL
	Stock    float64 // mL of the strong wash
	Water    float64 // mL of water to fill it up
}

// Ladder returns cups (2 or more) from the strength from down to the strength
// to, both in, each the same ratio weaker than the one before: the eye sees
// equal ratios as equal steps. Every cup holds each mL.
// Holds for 0 < to <= from.
func Ladder(from, to, each float64, cups int) []Cup {
	ratio := root(to/from, cups-1)
	ladder := make([]Cup, cups)
	share := 1.0
	for i := range ladder {
		if i == cups-1 {
			share = to / from // exactly, whatever the root was rounded to
		}
		stock := float64(each * share)
		ladder[i] = Cup{Strength: float64(from * share), Stock: stock, Water: each - stock}
		share = float64(share * ratio)
	}
	return ladder
}

// StockFor returns the strong wash (mL) that such a ladder takes.
func StockFor(from, to, each float64, cups int) float64 {
	total := 0.0
	for _, cup := range Ladder(from, to, each, cups) {
		total += cup.Stock
	}
	return total
}

// EachFrom returns the cup size (mL) at which such a ladder uses up a volume
// (mL) of stock exactly.
func EachFrom(volume, from, to float64, cups int) float64 {
	return volume / StockFor(from, to, 1, cups)
}

// root returns the n-th root of x, for 0 < x <= 1 and n >= 1, by Newton's method
// from above, where it falls until rounding stops it; no logarithm, whose last
// bit differs between machines.
func root(x float64, n int) float64 {
	guess := 1.0
	for {
		power := 1.0
		for range n - 1 {
			power = float64(power * guess)
		}
		next := guess - (float64(power*guess)-x)/float64(float64(n)*power)
		if !(next < guess) {
			return guess
		}
		guess = next
	}
}
