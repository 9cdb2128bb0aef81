package course

import (
	"strconv"
	"testing"
)

// read reads one value of YAML and counts what was found.
func read(text string) (value, *source) {
	s := &source{path: "test.yaml", text: []byte("key: " + text + "\n")}
	return readSheet(s, s.text, 0).fields("key").get("key"), s
}

func TestCones(t *testing.T) {
	good := map[string]bool{}
	for n := 1; n <= 22; n++ {
		good["0"+strconv.Itoa(n)] = true
	}
	for n := 1; n <= 14; n++ {
		good[strconv.Itoa(n)] = true
	}
	if len(good) != 36 {
		t.Fatalf("%d cones, want 36", len(good))
	}
	for _, text := range []string{"00", "0", "023", "-6", "6.5", "Δ6", "six"} {
		good[text] = false
	}
	for n := 15; n < 30; n++ {
		good[strconv.Itoa(n)] = false
	}
	for text, want := range good {
		v, s := read(text)
		if got := v.cone(); (got == text) != want || (len(s.found) == 0) != want {
			t.Errorf("%s: %q with %d findings", text, got, len(s.found))
		}
	}
}

func TestDurations(t *testing.T) {
	for text, want := range map[string]Duration{
		"PT20M": 20, "PT1H": 60, "PT1H30M": 90, "PT90M": 90, "PT10H05M": 605,
		"PT": 0, "PT0M": 0, "P1D": 0, "PT1.5H": 0, "20M": 0, "pt20m": 0, "PT20S": 0, "PT99999M": 0, "PT-5M": 0,
	} {
		v, s := read(text)
		if got := v.duration(); got != want || (len(s.found) == 0) != (want > 0) {
			t.Errorf("%s: %d with %d findings, want %d", text, got, len(s.found), want)
		}
	}
}

func TestNumbers(t *testing.T) {
	for text, want := range map[string]float64{
		"12": 12, "12.5": 12.5, "0": 0, "30": 30, `"11"`: 11,
		"30.1": -1, "-1": -1, "1e1": -1, ".5": -1, "12%": -1, "12 %": -1, "NaN": -1, ".inf": -1, "0x10": -1, "1_0": -1, "١٢": -1, "12.": -1,
	} {
		v, s := read(text)
		got := v.number(0, 30, "a number")
		if good := want >= 0; (len(s.found) == 0) != good || good && got != want {
			t.Errorf("%s: %v with %d findings, want %v", text, got, len(s.found), want)
		}
	}
}

func TestPublishedAt(t *testing.T) {
	for text, want := range map[string]string{
		"https://example.org": "https://example.org/", "http://example.org/a/b": "http://example.org/a/b/", "https://example.org:8080/": "https://example.org:8080/",
		"example.org": "", "//example.org/": "", "mailto:a@example.org": "", "https://": "", "https:///a": "", "https://a:b@example.org/": "",
		"https://example.org/?q": "", "https://example.org/#top": "", "javascript:alert(1)": "", "https://exa mple.org": "", "https://:80/": "",
	} {
		v, s := read(strconv.Quote(text))
		if got := readPublishedAt(v); got != want || (len(s.found) == 0) != (want != "") {
			t.Errorf("%s: %q with %d findings, want %q", text, got, len(s.found), want)
		}
	}
}

func TestTextIsOneLine(t *testing.T) {
	for text, want := range map[string]string{
		"plain": "plain", "06": "06", "no": "no", "2026-09-01": "2026-09-01", "1_000": "1_000",
		"|\n  two\n  lines\n": "two lines", ">-\n  two\n  lines\n": "two lines", `"  a\tb "`: "a b", "'it''s'": "it's", `"~"`: "~",
	} {
		v, s := read(text)
		if got := v.text(); got != want || len(s.found) > 0 {
			t.Errorf("%q: %q with findings %v", text, got, s.found)
		}
	}
}
