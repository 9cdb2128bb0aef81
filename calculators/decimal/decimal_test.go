package decimal

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
)

// same compares Parse with the standard library's.
func same(t *testing.T, text string) {
	t.Helper()
	want, err := strconv.ParseFloat(text, 64)
	got, ok := Parse(text)
	if !ok || err != nil || math.Float64bits(got) != math.Float64bits(want) {
		t.Errorf("%q is %v (%v), want %v", text, got, ok, want)
	}
}

func TestParse(t *testing.T) {
	for _, text := range []string{"0", "1", "-1", "00.100", ".5", "5.", "-0", "1745.5", "2.675", "1e"[:1], "4294967295", "4294967296", "9007199254740993",
		"9007199254740992.5", "9007199254740993.0000000000000000000000000000000001", "18014398509481985", "18014398509481983", "0.1", "0.000000000000000000000000000000000001",
		"179769313486231570814527423731704356798070", "1.00000000000000011102230246251565404", "1.00000000000000011102230246251565405", "123456789012345678901234567890.123456789",
		"0.30000000000000004", strings.Repeat("9", 300), "0." + strings.Repeat("0", 250) + "1", "7.2057594037927933e16"[:18]} {
		same(t, text)
	}
	random := rand.New(rand.NewPCG(1, 2))
	for range 200000 {
		same(t, strconv.FormatFloat(math.Ldexp(random.Float64(), random.IntN(240)-120), 'f', -1, 64))
		digits := strconv.FormatUint(random.Uint64(), 10)
		cut := random.IntN(len(digits))
		same(t, digits[:cut]+"."+digits[cut:])
	}
	for _, text := range []string{"", "-", ".", "-.", "1.2.3", "1e3", "+1", "0x1", "inf", "NaN", "1 2", "1,2", "١", "--1", "1_0", strings.Repeat("1", 301)} {
		if v, ok := Parse(text); ok || v != 0 {
			t.Errorf("%q is taken as %v", text, v)
		}
	}
}

func TestNatural(t *testing.T) {
	for text, want := range map[string]int{"0": 0, "007": 7, "999999999": 999999999} {
		if got, ok := Natural(text); got != want || !ok {
			t.Errorf("%q is %d, %v", text, got, ok)
		}
	}
	for _, text := range []string{"", "-1", "1.0", "1000000000", "a"} {
		if got, ok := Natural(text); ok {
			t.Errorf("%q is %d", text, got)
		}
	}
}

func TestBits(t *testing.T) {
	for text, want := range map[string]uint64{"0": 0, "18446744073709551615": 1<<64 - 1, "00000000000000000000000012": 12} {
		if got, ok := Bits(text); got != want || !ok {
			t.Errorf("%q is %d, %v", text, got, ok)
		}
	}
	for _, text := range []string{"", "18446744073709551616", "99999999999999999999", "-1", "1 "} {
		if got, ok := Bits(text); ok || got != 0 {
			t.Errorf("%q is %d", text, got)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add("1745.5")
	f.Add("-0.00012")
	f.Fuzz(func(t *testing.T, text string) {
		got, ok := Parse(text)
		want, err := strconv.ParseFloat(text, 64)
		if ok && (err != nil || math.Float64bits(got) != math.Float64bits(want)) {
			t.Fatalf("%q is %v, want %v, %v", text, got, want, err)
		}
	})
}
