package course

import (
	"strconv"
	"testing"

	"slipbook/generator/source"
)

// read reads one value of YAML and counts what was found.
func read(text string) (source.Value, *source.Text) {
	s := source.New("test.yaml", []byte("key: "+text+"\n"))
	return s.YAML().Fields("key").Get("key"), s
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
		if got := cone(v); (got == text) != want || (len(s.Found) == 0) != want {
			t.Errorf("%s: %q with %d findings", text, got, len(s.Found))
		}
	}
}

func TestDurations(t *testing.T) {
	for text, want := range map[string]Duration{
		"PT20M": 20, "PT1H": 60, "PT1H30M": 90, "PT90M": 90, "PT10H05M": 605,
		"PT": 0, "PT0M": 0, "P1D": 0, "PT1.5H": 0, "20M": 0, "pt20m": 0, "PT20S": 0, "PT99999M": 0, "PT-5M": 0,
	} {
		v, s := read(text)
		if got := duration(v); got != want || (len(s.Found) == 0) != (want > 0) {
			t.Errorf("%s: %d with %d findings, want %d", text, got, len(s.Found), want)
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
		if got := readPublishedAt(v); got != want || (len(s.Found) == 0) != (want != "") {
			t.Errorf("%s: %q with %d findings, want %q", text, got, len(s.Found), want)
		}
	}
}
