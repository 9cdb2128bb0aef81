package formula

func (l leaf) mathML(b []byte) []byte {
	b = open(b, l.element)
	return shut(escape(b, l.words), l.element)
}

func (o operator) mathML(b []byte) []byte {
	b = open(b, "mo")
	return shut(escape(b, string(o)), "mo")
}

func (r row) mathML(b []byte) []byte { return element(b, "mrow", r...) }

func (k bracket) mathML(b []byte) []byte {
	b = operator("(").mathML(open(b, "mrow"))
	for _, p := range k.inside {
		b = p.mathML(b)
	}
	return shut(operator(")").mathML(b), "mrow")
}

func (f fraction) mathML(b []byte) []byte { return element(b, "mfrac", f.above, f.below) }

func (p power) mathML(b []byte) []byte { return element(b, "msup", p.base, p.exponent) }

func (r root) mathML(b []byte) []byte { return element(b, "msqrt", r.inside) }

func (s sub) mathML(b []byte) []byte { return element(b, "msub", s.base, s.index) }

// element writes parts inside an element. The elements that count their
// children (mfrac, msup, msub) get one for each part, as every part writes
// exactly one element.
func element(b []byte, name string, parts ...Part) []byte {
	b = open(b, name)
	for _, p := range parts {
		b = p.mathML(b)
	}
	return shut(b, name)
}

func open(b []byte, name string) []byte {
	b = append(b, '<')
	b = append(b, name...)
	return append(b, '>')
}

func shut(b []byte, name string) []byte {
	b = append(b, "</"...)
	b = append(b, name...)
	return append(b, '>')
}

// escape writes text as the content of an element.
func escape(b []byte, text string) []byte {
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '&':
			b = append(b, "&amp;"...)
		case '<':
			b = append(b, "&lt;"...)
		case '>':
			b = append(b, "&gt;"...)
		default:
			b = append(b, text[i])
		}
	}
	return b
}

func (l lines) mathML(b []byte) []byte {
	b = open(b, "mtable")
	for _, p := range l {
		b = shut(element(open(b, "mtr"), "mtd", p), "mtr")
	}
	return shut(b, "mtable")
}
