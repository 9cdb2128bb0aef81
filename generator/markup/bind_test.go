package markup

import "testing"

func TestBind(t *testing.T) {
	const b = "\u00a0"
	tests := []struct{ name, in, want string }{
		{"unit", "Weigh 8 g of it.", "Weigh 8" + b + "g of it."},
		{"percent", "8 % of 812.5 g", "8" + b + "% of 812.5" + b + "g"},
		{"temperature", "450 °C", "450" + b + "°C"},
		{"sum", "1 + 1 + 10", "1" + b + "+" + b + "1" + b + "+" + b + "10"},
		{"ratio", "3 : 1 : 30", "3" + b + ":" + b + "1" + b + ":" + b + "30"},
		{"a word that begins like a unit", "8 glazes, 3 Larks, 5 in a row", "8 glazes, 3 Larks, 5 in a row"},
		{"nothing", "", ""},
	}
	for _, test := range tests {
		if got := Bind(test.in); got != test.want {
			t.Errorf("%s: got %q, want %q", test.name, got, test.want)
		}
	}
}
