// Package decimal turns decimal texts into numbers. It stands in for the
// standard library's strconv in that direction, which brings hexadecimal and
// infinities, its own errors and the tables of Unicode to quote with into the
// WebAssembly reactor. What it gives is the same to the last bit, and its test
// compares the two.
package decimal

// Parse returns the number nearest to a text of ASCII digits with at most one
// point among them and a minus before them, a tie to the even one. ok is false
// for anything else, and for more than 300 digits.
func Parse(text string) (value float64, ok bool) {
	negative := len(text) > 0 && text[0] == '-'
	if negative {
		text = text[1:]
	}
	if len(text) == 0 || len(text) > most {
		return 0, false
	}
	var figures natural
	places, point, count := 0, false, 0
	for i := range len(text) {
		switch c := text[i]; {
		case c >= '0' && c <= '9':
			figures = figures.times(10, uint32(c-'0'))
			count++
			if point {
				places++
			}
		case c == '.' && !point:
			point = true
		default:
			return 0, false
		}
	}
	if count == 0 {
		return 0, false
	}
	value = quotient(figures, places)
	if negative {
		value = -value
	}
	return value, true
}

// most is how many characters a number may have. It keeps the value far from
// the smallest numbers, which have fewer bits.
const most = 300

// Natural returns a whole number of ASCII digits; ok is false for anything else,
// and for more than nine of them.
func Natural(text string) (n int, ok bool) {
	if len(text) > 9 {
		return 0, false
	}
	whole, ok := Bits(text)
	return int(whole), ok
}

// Bits returns a whole number of ASCII digits that fits into 64 bits; ok is false
// for anything else.
func Bits(text string) (n uint64, ok bool) {
	if len(text) == 0 {
		return 0, false
	}
	for i := range len(text) {
		figure := uint64(text[i]) - '0'
		if figure > 9 || n > (1<<64-1-figure)/10 {
			return 0, false
		}
		n = n*10 + figure
	}
	return n, true
}

// quotient returns figures divided by ten places times, rounded once.
func quotient(figures natural, places int) float64 {
	if figures.isZero() {
		return 0
	}
	if len(figures) == 1 && places < len(exact) { // both are exact, and a division rounds once
		return float64(figures[0]) / exact[places]
	}
	divisor := natural{1}
	for range places {
		divisor = divisor.times(10, 0)
	}
	// So many bits that a float64 rounds the last of them: 54 to 56 of the
	// quotient, and below them whether anything is left.
	shift := 55 + divisor.bits() - figures.bits()
	if shift > 0 {
		figures = figures.shifted(shift)
	} else {
		divisor = divisor.shifted(-shift)
	}
	whole, left := figures.over(divisor)
	if left {
		whole |= 1
	}
	return scaled(float64(whole), -shift)
}

// exact are the powers of ten up to the largest that a small division needs.
var exact = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// scaled returns a number times two to a power, exactly.
func scaled(value float64, power int) float64 {
	for ; power > 0; power-- {
		value = float64(value * 2)
	}
	for ; power < 0; power++ {
		value /= 2
	}
	return value
}

// natural is a whole number, its lowest 32 bits first, without noughts at its
// end; none is zero.
type natural []uint32

func (n natural) isZero() bool { return len(n) == 0 }

// times returns n times a small number and another added.
func (n natural) times(by, more uint32) natural {
	carry := uint64(more)
	for i := range n {
		carry += uint64(n[i]) * uint64(by)
		n[i] = uint32(carry)
		carry >>= 32
	}
	if carry > 0 {
		n = append(n, uint32(carry))
	}
	return n
}

// bits counts the binary digits.
func (n natural) bits() int {
	count := 32 * len(n)
	for top := uint32(1 << 31); count > 0 && n[len(n)-1]&top == 0; top >>= 1 {
		count--
	}
	return count
}

// shifted returns n times two to a power.
func (n natural) shifted(power int) natural {
	moved := make(natural, power/32, len(n)+power/32+1)
	carry := uint64(0)
	for _, word := range n {
		carry |= uint64(word) << (power % 32)
		moved = append(moved, uint32(carry))
		carry >>= 32
	}
	if carry > 0 {
		moved = append(moved, uint32(carry))
	}
	return moved
}

// over divides, the quotient being of fewer than 60 bits, and reports whether
// anything is left.
func (n natural) over(divisor natural) (whole uint64, left bool) {
	for bit := n.bits() - divisor.bits(); bit >= 0; bit-- {
		whole <<= 1
		if part := divisor.shifted(bit); !n.less(part) {
			n = n.minus(part)
			whole |= 1
		}
	}
	return whole, !n.isZero()
}

func (n natural) less(than natural) bool {
	if len(n) != len(than) {
		return len(n) < len(than)
	}
	for i := len(n) - 1; i >= 0; i-- {
		if n[i] != than[i] {
			return n[i] < than[i]
		}
	}
	return false
}

// minus takes a number away that is not larger.
func (n natural) minus(less natural) natural {
	borrow := uint64(0)
	for i := range n {
		take := borrow
		if i < len(less) {
			take += uint64(less[i])
		}
		borrow = 0
		if uint64(n[i]) < take {
			borrow = 1
		}
		n[i] -= uint32(take)
	}
	for len(n) > 0 && n[len(n)-1] == 0 {
		n = n[:len(n)-1]
	}
	return n
}
