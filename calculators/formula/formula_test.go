package formula

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"
)

// The formulas of the trade that use every part.
func dryContent() Part {
	return Equal(Letter("D"), Fraction(
		Row(Bracket(Letter("M"), Op("−"), Letter("V")), Op("×"), Letter("s")),
		Row(Letter("s"), Op("−"), Number("1"))))
}

func uncertainty() Part {
	relative := func(of string) Part {
		return Power(Bracket(Fraction(Sub(Letter("u"), Letter(of)), Letter(of))), Number("2"))
	}
	return Equal(Letter("u"), Row(Letter("d"), Op("×"), Root(Row(relative("m"), Op("+"), relative("V")))))
}

func shrinkage() Part {
	left := func(of string) Part {
		return Bracket(Number("1"), Op("−"), Fraction(Sub(Letter("S"), Letter(of)), Number("100")))
	}
	return Equal(Letter("S"), Row(Number("100"), Op("×"),
		Bracket(Number("1"), Op("−"), left("d"), Op("×"), left("f"))))
}

func TestText(t *testing.T) {
	a, b, c := Letter("a"), Letter("b"), Letter("c")
	tests := []struct {
		name string
		math Part
		want string
	}{
		{"dry content", dryContent(), "D = (M − V) × s / (s − 1)"},
		{"uncertainty", uncertainty(), "u = d × √((u_m / m)² + (u_V / V)²)"},
		{"shrinkage", shrinkage(), "S = 100 × (1 − (1 − S_d / 100) × (1 − S_f / 100))"},
		{"in words", Equal(Words("dry content"), Fraction(Row(Words("weight"), Op("−"), Words("volume")), Letter("s"))),
			"dry content = (weight − volume) / s"},
		{"product above, none below", Fraction(Row(a, Op("×"), b), c), "a × b / c"},
		{"product below", Fraction(a, Row(b, Op("×"), c)), "a / (b × c)"},
		{"side by side below", Fraction(a, Row(Number("2"), c)), "a / (2 c)"},
		{"fraction above", Fraction(Fraction(a, b), c), "a / b / c"},
		{"fraction below", Fraction(a, Fraction(b, c)), "a / (b / c)"},
		{"bracket below is enough", Fraction(a, Bracket(b, Op("−"), c)), "a / (b − c)"},
		{"row of one below", Fraction(a, Row(b)), "a / b"},
		{"power below", Fraction(a, Power(b, Number("2"))), "a / b²"},
		{"minus in front", Equal(a, Row(Op("−"), b)), "a = −b"},
		{"minus in front of the first", Row(Op("−"), a, Op("+"), b), "−a + b"},
		{"minus after a sign", Row(a, Op("×"), Op("−"), b), "a × −b"},
		{"power of ten digits", Power(a, Number("10")), "a¹⁰"},
		{"letter as exponent", Power(a, Letter("n")), "a^n"},
		{"sum as exponent", Power(a, Row(b, Op("−"), Number("1"))), "a^(b − 1)"},
		{"fraction as exponent", Power(a, Fraction(Number("1"), b)), "a^(1 / b)"},
		{"decimals as exponent", Power(a, Number("0.5")), "a^0.5"},
		{"power of a power", Power(Power(a, Number("2")), Number("3")), "(a²)³"},
		{"root of one letter", Root(a), "√a"},
		{"root of a power", Root(Power(a, Number("2"))), "√(a²)"},
		{"root of a bracket", Root(Bracket(a, Op("+"), b)), "√(a + b)"},
		{"longer index", Sub(a, Row(b, c)), "a_(b c)"},
		{"about", Row(a, Op("≈"), b), "a ≈ b"},
		{"lines", Equal(a, Lines(Words("this,"), Words("then that"))), "a = this, then that"},
		{"not escaped", Row(a, Op("<"), b), "a < b"},
		{"empty row", Row(), ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := (Formula{Math: tt.math}).Text(); got != tt.want {
				t.Errorf("Text is %q, want %q", got, tt.want)
			}
		})
	}
}

func TestMathML(t *testing.T) {
	tests := []struct {
		name string
		math Part
		want string
	}{
		{"dry content", dryContent(), "<mrow><mi>D</mi><mo>=</mo><mfrac>" +
			"<mrow><mrow><mo>(</mo><mi>M</mi><mo>−</mo><mi>V</mi><mo>)</mo></mrow><mo>×</mo><mi>s</mi></mrow>" +
			"<mrow><mi>s</mi><mo>−</mo><mn>1</mn></mrow></mfrac></mrow>"},
		{"power, root and index", Root(Power(Sub(Letter("u"), Letter("m")), Number("2"))),
			"<msqrt><msup><msub><mi>u</mi><mi>m</mi></msub><mn>2</mn></msup></msqrt>"},
		{"words", Words("dry content"), "<mtext>dry content</mtext>"},
		{"lines", Lines(Letter("a"), Words("b")), "<mtable><mtr><mtd><mi>a</mi></mtd></mtr><mtr><mtd><mtext>b</mtext></mtd></mtr></mtable>"},
		{"escaped", Row(Words("A & B"), Op("<"), Letter("c>d")), "<mrow><mtext>A &amp; B</mtext><mo>&lt;</mo><mi>c&gt;d</mi></mrow>"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			want := `<math xmlns="http://www.w3.org/1998/Math/MathML" display="block">` + tt.want + "</math>"
			if got := (Formula{Math: tt.math}).MathML(); got != want {
				t.Errorf("MathML is\n\t%s\nwant\n\t%s", got, want)
			}
		})
	}
}

func TestNoFormula(t *testing.T) {
	var f Formula
	if f.MathML() != "" || f.Text() != "" {
		t.Errorf("no formula prints %q and %q", f.MathML(), f.Text())
	}
}

// TestMathMLIsMathMLCore parses what is printed: well formed, nothing but
// elements of MathML Core, and as many children as each of them takes.
func TestMathMLIsMathMLCore(t *testing.T) {
	children := map[string]int{"mi": 0, "mn": 0, "mo": 0, "mtext": 0, "mfrac": 2, "msup": 2, "msub": 2, "msqrt": 1, "mrow": -1, "math": 1}
	for _, f := range []Part{dryContent(), uncertainty(), shrinkage()} {
		printed := Formula{Math: f}.MathML()
		var names []string
		var counts []int
		in := xml.NewDecoder(strings.NewReader(printed))
		for {
			token, err := in.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", printed, err)
			}
			switch e := token.(type) {
			case xml.StartElement:
				if len(counts) > 0 {
					counts[len(counts)-1]++
				}
				names, counts = append(names, e.Name.Local), append(counts, 0)
			case xml.EndElement:
				last := len(names) - 1
				want, known := children[names[last]]
				if !known || want >= 0 && counts[last] != want {
					t.Errorf("%s: <%s> has %d children, want %d", printed, names[last], counts[last], want)
				}
				names, counts = names[:last], counts[:last]
			}
		}
	}
}
