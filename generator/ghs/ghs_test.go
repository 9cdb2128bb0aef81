package ghs

import (
	"slices"
	"strings"
	"testing"
)

func TestStatement(t *testing.T) {
	for code, want := range map[string]string{
		"H350i":                "May cause cancer by inhalation",
		" H302 ":               "Harmful if swallowed",
		"H302+H332":            "Harmful if swallowed or if inhaled",
		"H301+H311+H331":       "Toxic if swallowed, in contact with skin or if inhaled",
		"P260":                 "Do not breathe dust/fume/gas/mist/vapors/spray.",
		"P301 + P310":          "IF SWALLOWED: Immediately call a POISON CENTER/doctor.",
		"P305+P351+P338":       "IF IN EYES: Rinse cautiously with water for several minutes. Remove contact lenses, if present and easy to do. Continue rinsing.",
		"P362+P364":            "Take off contaminated clothing and wash it before reuse.",
		"P304+P340+P312":       "IF INHALED: Remove person to fresh air and keep comfortable for breathing. Call a POISON CENTER/doctor if you feel unwell.",
		"":                     "",
		"+":                    "",
		"P":                    "",
		"H":                    "",
		"H999":                 "",
		"h302":                 "",
		"H350I":                "",
		"H302+P301":            "",
		"P301":                 "",
		"P301+":                "",
		"P364":                 "",
		"P352+P302":            "",
		"H302+H311":            "", // two degrees
		"H332+H302":            "", // the standard names the mouth first
		"H302+H302":            "",
		"H315+H319":            "",
		"H304+H332":            "",
		"H300+H304":            "",
		"P301+P310+P999":       "",
		"H302,H332":            "",
		"Harmful if swallowed": "",
	} {
		got, ok := Statement(code)
		if ok != (want != "") || ok && got != want {
			t.Errorf("%q: %q, %v; want %q", code, got, ok, want)
		}
	}
}

// TestCasesOfLettersAreTwoHarms keeps apart what differs in one letter's case.
func TestCasesOfLettersAreTwoHarms(t *testing.T) {
	sure, _ := Statement("H360FD")
	suspected, _ := Statement("H360Fd")
	if sure == suspected || !strings.Contains(suspected, "Suspected") {
		t.Errorf("H360FD: %q, H360Fd: %q", sure, suspected)
	}
}

// TestTable holds what every line must be like.
func TestTable(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range slices.Concat(hazards, precautions) {
		if seen[s.code] || s.words == "" || s.words != strings.TrimSpace(s.words) {
			t.Errorf("%q: %q", s.code, s.words)
		}
		seen[s.code] = true
		if stop := strings.HasSuffix(s.words, ".") || strings.HasSuffix(s.words, ":"); stop != (s.kind == precaution) {
			t.Errorf("%s ends with the wrong sign: %q", s.code, s.words)
		}
		if known := slices.ContainsFunc(symbols, func(p Symbol) bool { return p.Number == s.pictogram }); !known && s.pictogram != "" {
			t.Errorf("%s: there is no pictogram %s", s.code, s.pictogram)
		}
		if s.pictogram > "GHS05" && s.signal == "" && s.code != "H411" {
			t.Errorf("%s has a pictogram and no signal word", s.code)
		}
	}
}

// TestWordsAndKindsAgree reads in the words what a line is about.
func TestWordsAndKindsAgree(t *testing.T) {
	for _, s := range hazards {
		if strings.Contains(s.words, "inhal") != (s.kind == breathed || s.kind == lungAllergy || s.code == "H350i") {
			t.Errorf("%s is of the kind %d and says: %s", s.code, s.kind, s.words)
		}
		if strings.HasPrefix(s.words, "Fatal") != (s.signal == Danger && s.pictogram == "GHS06" && !strings.HasPrefix(s.words, "Toxic")) {
			t.Errorf("%s: %s, %s", s.code, s.signal, s.pictogram)
		}
		if strings.HasPrefix(s.words, "Suspected") && s.signal != Warning {
			t.Errorf("%s: what is only suspected is a Warning, not %q", s.code, s.signal)
		}
	}
}

// TestContact wants what happens to skin and eyes, which a wet mix does as well, and
// nothing that powder in the air or in the mouth does alone.
func TestContact(t *testing.T) {
	for _, code := range strings.Fields("H310 H311 H312 H313 H314 H315 H316 H317 H318 H319 H320 EUH066 EUH070 EUH203 EUH208 H302+H312") {
		if !Contact(code) {
			t.Errorf("%s may hurt skin or eyes", code)
		}
	}
	for _, code := range strings.Fields("H225 H300 H302 H304 H330 H332 H334 H335 H350i H350 H360F H372 H373 H410 EUH071 EUH201 EUH210 P280 H999 + H302+H332") {
		if Contact(code) {
			t.Errorf("%s does not speak of skin or eyes", code)
		}
	}
}

func TestRespiratory(t *testing.T) {
	for _, code := range strings.Fields("H330 H331 H332 H333 H334 H335 H336 H314 H340 H341 H350 H350i H351 H360 H360FD H360Df " +
		"H361 H361d H362 H370 H371 H372 H373 EUH029 EUH031 EUH032 EUH071 EUH207 EUH208 H302+H332") {
		if !Respiratory(code) {
			t.Errorf("%s may hurt when breathed in", code)
		}
	}
	for _, code := range strings.Fields("H225 H272 H290 H300 H301 H302 H304 H305 H310 H312 H315 H317 H318 H319 H400 H410 H413 H420 EUH066 EUH201 EUH203 EUH210 P260 P304 H999 H302+H312 +") {
		if Respiratory(code) {
			t.Errorf("%s does not speak of breathing", code)
		}
	}
	if Respiratory("") {
		t.Error("nothing hurts nobody")
	}
}
