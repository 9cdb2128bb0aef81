package quantity

import (
	"testing"
	"unicode/utf8"
)

// FuzzRead holds Read to what every caller relies on: it ends, it never
// panics, what it understands is finite and survives being printed and read
// again, and what it refuses it refuses in a short sentence.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"", "174.5 g", "1 745", "1,745", "1.745,5", "3,5 L", "4 1/2 in", "4-1/2\"", "4½", "5/8", "1/0", "2 lb 3 oz", "2 lb. 18 oz",
		"\u22125", "1\u202f745\u00a0g", "12 %", "68 °F", "145", "18 g/100 mL", "2 pints", "16 fl oz", "3 tbsp", "2 cups",
		"1e3", "0x1F", "1_000", "nan", "１２", "\xff", "4-5", "--5", "174·5", "2 US tbsp", "1 level tsp", "2.6 g/cm3", "12 g 5 mL", "9999999999999999999999999999999999999999999999999999999999999999",
	} {
		for i := range Kinds() {
			f.Add(seed, uint8(i), "", uint8(i))
		}
	}
	f.Add("2", uint8(0), "kg", uint8(0))
	f.Add("2", uint8(1), "pint", uint8(1))
	f.Add("2", uint8(2), "furlong", uint8(2))
	f.Fuzz(func(t *testing.T, text string, k uint8, chosen string, s uint8) {
		kind := Kinds()[int(k)%len(Kinds())]
		style := []Style{point, comma, us, uk}[int(s)%4]
		q, err := Read(text, kind, chosen, style)
		if err != nil {
			said := err.Error()
			if said == "" || len(said) >= 400 || !utf8.ValidString(said) {
				t.Fatalf("Read(%q, %s, %q) is refused with %d bytes: %q", text, kind, chosen, len(said), said)
			}
			return
		}
		if q.Value-q.Value != 0 || q.Given-q.Given != 0 {
			t.Fatalf("Read(%q, %s, %q) = %v, not finite", text, kind, chosen, q)
		}
		u, err := (&box{kind, style}).unit(q.Unit, &amount{})
		if err != nil || u.ID != q.Unit || q.Value != q.Given*u.Factor {
			t.Fatalf("Read(%q, %s, %q) = %v, which do not agree", text, kind, chosen, q)
		}
		printed := Format(q.Given, 17, style)
		if len(printed) > longest {
			return // a number with more digits than anybody may type
		}
		again, err := Read(printed, kind, q.Unit, style)
		if again.Step = q.Step; err != nil || again != q { // "4 1/2" is a half as typed, 4.5 a tenth
			t.Fatalf("Read(%q, %s, %q) = %v, printed %q, read again as %v, %v", text, kind, chosen, q, printed, again, err)
		}
	})
}
