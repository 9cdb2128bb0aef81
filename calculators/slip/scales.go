package slip

// Twaddell returns degrees Twaddell for a specific gravity.
// Source: GNU units 2.22; Beringer, A Text-Book of Assaying.
func Twaddell(gravity float64) float64 { return float64(200 * (gravity - 1)) }

// Baume returns degrees Baumé, heavier than water, modulus 145 (60/60 °F), for a
// specific gravity of 1 or more. Other moduli are in print (144 to 146.78), so
// a figure in Baumé must name its own.
// Source: GNU units 2.22 (baumeconst 145).
func Baume(gravity float64) float64 { return 145 - 145/gravity }

// PintWeight returns ounces per imperial pint by the trade's convention that a
// pint of water weighs 20 oz (exact at 62 °F in air to 3 parts in 100 000).
// Source: Cardew, Pioneer Pottery p. 269, as quoted in a potter's
// mailing-list post (2000).
func PintWeight(gravity float64) float64 { return float64(20 * gravity) }
