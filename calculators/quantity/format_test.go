package quantity

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestFormat(t *testing.T) {
	tests := []struct {
		name   string
		value  float64
		digits int
		style  Style
		want   string
	}{
		{"whole", 150, 4, point, "150"},
		{"decimals", 1.745, 4, point, "1.745"},
		{"decimal comma", 1.745, 4, comma, "1,745"},
		{"zeros at the end dropped", 1.5, 4, point, "1.5"},
		{"rounded down", 18.8349, 4, point, "18.83"},
		{"rounded up", 18.8351, 4, point, "18.84"},
		{"half away from zero", 2.5, 1, point, "3"},
		{"half of the decimal that is meant", 2.675, 3, point, "2.68"},
		{"half below zero", -2.5, 1, point, "\u22123"},
		{"carried through nines", 9.996, 3, point, "10"},
		{"carried into a group", 9999.96, 5, point, "10\u202f000"},
		{"whole digits rounded", 123456, 3, point, "123\u202f000"},
		{"four digits ungrouped", 1745, 4, point, "1745"},
		{"nearly ten thousand", 9999, 4, point, "9999"},
		{"five digits grouped", 10000, 5, point, "10\u202f000"},
		{"seven digits grouped", 1234567, 7, point, "1\u202f234\u202f567"},
		{"groups and decimals", 12345.678, 8, comma, "12\u202f345,678"},
		{"small", 0.00012345, 3, point, "0.000123"},
		{"one", 1, 17, point, "1"},
		{"no more digits than the number has", 0.1, 17, point, "0.1"},
		{"seventeen digits", 1.0 / 3, 17, point, "0.3333333333333333"},
		{"negative", -5.25, 4, point, "\u22125.25"},
		{"zero", 0, 4, point, "0"},
		{"negative zero", math.Copysign(0, -1), 4, point, "0"},
		{"no digits asked for", 174.5, 0, point, "200"},
		{"no exponent when large", 1e21, 4, point, "1\u202f000\u202f000\u202f000\u202f000\u202f000\u202f000\u202f000"},
		{"no exponent when small", 1e-9, 4, point, "0.000000001"},
		{"no number", math.NaN(), 4, point, "not a number"},
		{"infinite", math.Inf(-1), 4, point, "not a number"},
		{"no style set", 1.5, 4, Style{}, "1.5"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Format(tt.value, tt.digits, tt.style); got != tt.want {
				t.Errorf("Format(%v, %d) = %q, want %q", tt.value, tt.digits, got, tt.want)
			}
		})
	}
}

// somewhere returns numbers of every size from a billionth to a thousand
// billions, of either sign, with many digits or few.
func somewhere(r *rand.Rand) float64 {
	v := r.Float64() * math.Pow(10, float64(r.IntN(22)-9))
	if r.IntN(2) == 0 {
		v = math.Round(v*1000) / 1000
	}
	if r.IntN(4) == 0 {
		v = -v
	}
	return v
}

func TestReadUndoesFormat(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		v := somewhere(r)
		for _, style := range []Style{point, comma} {
			text := Format(v, 17, style)
			q, err := Read(text, Number, "", style)
			if err != nil {
				t.Fatalf("Read(Format(%v)) = Read(%q): %v", v, text, err)
			}
			if q.Value != v {
				t.Fatalf("Read(Format(%v)) = Read(%q) = %v", v, text, q.Value)
			}
		}
	}
}

// TestFormatIsNear holds Format to what rounding may do: half a step of the
// last digit that is kept.
func TestFormatIsNear(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 20000 {
		v, digits := somewhere(r), 1+r.IntN(12)
		if v == 0 {
			continue
		}
		q, err := Read(Format(v, digits, point), Number, "", point)
		if err != nil {
			t.Fatalf("Format(%v, %d): %v", v, digits, err)
		}
		step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-float64(digits-1))
		if math.Abs(q.Value-v) > step*(0.5+1e-3) {
			t.Fatalf("Format(%v, %d) = %s, more than half of %v away", v, digits, Format(v, digits, point), step)
		}
	}
}
