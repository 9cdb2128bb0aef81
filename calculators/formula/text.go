package formula

// tie says how closely the pieces of a part hold together in a line of text; a
// part that holds less closely than its place asks for gets brackets.
type tie int

const (
	equation tie = iota // a = b
	sum                 // a + b
	product             // a × b, a / b
	raised              // a²
	single              // a letter, a number, something in brackets
)

func (l leaf) tie() tie     { return single }
func (k bracket) tie() tie  { return single }
func (f fraction) tie() tie { return product }
func (p power) tie() tie    { return raised }
func (r root) tie() tie     { return single }
func (s sub) tie() tie      { return single }
func (l lines) tie() tie    { return single }

func (o operator) tie() tie {
	switch o {
	case "+", "−", "-", "±":
		return sum
	case "×", "·", "÷", "/":
		return product
	}
	return equation
}

// tie of a row is that of its loosest piece; parts without a sign between them
// are a product.
func (r row) tie() tie {
	loosest := single
	if len(r) > 1 {
		loosest = product
	}
	for _, p := range r {
		loosest = min(loosest, p.tie())
	}
	return loosest
}

func (l leaf) text(b []byte) []byte { return append(b, l.words...) }

func (o operator) text(b []byte) []byte { return append(b, o...) }

// text of a row has a space on both sides of a sign that stands between two
// parts, none after one that stands before its first, and a space between
// parts without a sign.
func (r row) text(b []byte) []byte {
	for i, p := range r {
		if i > 0 && !r.before(i-1) {
			b = append(b, ' ')
		}
		b = p.text(b)
	}
	return b
}

// before reports whether the piece at i is a sign that belongs to the piece after
// it, as the minus of "−a" or of "b × −a".
func (r row) before(i int) bool {
	if _, sign := r[i].(operator); !sign {
		return false
	}
	if i == 0 {
		return true
	}
	_, sign := r[i-1].(operator)
	return sign
}

func (k bracket) text(b []byte) []byte {
	b = k.inside.text(append(b, '('))
	return append(b, ')')
}

func (f fraction) text(b []byte) []byte {
	b = within(b, f.above, product)
	b = append(b, " / "...)
	return within(b, f.below, raised)
}

func (p power) text(b []byte) []byte {
	b = within(b, p.base, single)
	if n, ok := p.exponent.(leaf); ok {
		if small, ok := superscript(n.words); ok {
			return append(b, small...)
		}
	}
	return within(append(b, '^'), p.exponent, single)
}

func (r root) text(b []byte) []byte { return within(append(b, "√"...), r.inside, single) }

func (s sub) text(b []byte) []byte {
	b = within(b, s.base, single)
	return within(append(b, '_'), s.index, single)
}

// text of lines is one line.
func (l lines) text(b []byte) []byte {
	for i, p := range l {
		if i > 0 {
			b = append(b, ' ')
		}
		b = p.text(b)
	}
	return b
}

// within writes a part, in brackets if it is tied less closely than least.
func within(b []byte, p Part, least tie) []byte {
	if p.tie() >= least {
		return p.text(b)
	}
	b = p.text(append(b, '('))
	return append(b, ')')
}

// superscript writes a whole number in small raised digits.
func superscript(digits string) (string, bool) {
	small := []string{"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"}
	s := ""
	for i := 0; i < len(digits); i++ {
		if digits[i] < '0' || digits[i] > '9' {
			return "", false
		}
		s += small[digits[i]-'0']
	}
	return s, s != ""
}
