package tile

// Letters are what the codes on the backs of tiles are made of: each shows
// which way up it is, and neither turned round nor in a mirror is any of them
// another, or a digit that the codes use. There are no digits in the codes: 6
// and 9 are each other upside down, and so are 3 and E, 7 and L, as scratched.
const Letters = "ACEFKLPRTY"

// MostCodes is how many different codes there are.
const MostCodes = len(Letters) * len(Letters)

// Codes returns so many (up to MostCodes) different codes in the order of the
// alphabet: one letter each as long as there are enough, else two.
func Codes(count int) []string {
	codes := make([]string, count)
	for i := range codes {
		second := i % len(Letters)
		if count > len(Letters) {
			first := i / len(Letters)
			codes[i] = Letters[first : first+1]
		}
		codes[i] += Letters[second : second+1]
	}
	return codes
}
