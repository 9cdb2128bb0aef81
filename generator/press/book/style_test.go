package book

import "testing"

func TestStyleString(t *testing.T) {
	for text, want := range map[string]string{
		"plain (2.1)": `"plain (2.1)"`, `a "b"`: `"a \22 b\22 "`, `a\b`: `"a\5c b"`, "a\nb": `"a\a b"`, "é f": `"\e9  f"`, "—": `"\2014 "`,
	} {
		if got := styleString(text); got != want {
			t.Errorf("%q is written %s, want %s", text, got, want)
		}
	}
}
