package ghs

import (
	"slices"
	"strings"
	"testing"
)

func TestPictograms(t *testing.T) {
	for codes, want := range map[string]string{
		"":                                     "",
		"H350i H372":                           "GHS08",
		"H410 H302":                            "GHS07 GHS09",
		"H301 H302":                            "GHS06", // the skull stands in for acute toxicity
		"H301 H312 H332":                       "GHS06",
		"H301+H311 H332":                       "GHS06",
		"H301 H315":                            "GHS06 GHS07", // and not for the skin
		"H301 H335":                            "GHS06 GHS07",
		"H301 H317":                            "GHS06 GHS07",
		"H314 H319":                            "GHS05",
		"H318 H315":                            "GHS05",
		"H290 H315":                            "GHS05",
		"H314 H302":                            "GHS05 GHS07",
		"H314 H317":                            "GHS05 GHS07",
		"H314 H335":                            "GHS05 GHS07",
		"H334 H317":                            "GHS08",
		"H334 H315 H319":                       "GHS08",
		"H334 H302":                            "GHS07 GHS08",
		"H334 H335":                            "GHS07 GHS08",
		"H350 H317":                            "GHS07 GHS08", // only the allergy of the lungs stands in for that of the skin
		"H350 H315":                            "GHS07 GHS08",
		"EUH208 H317":                          "GHS07",
		"H225 H280":                            "GHS02 GHS04",
		"H412 H413 H362":                       "",
		"P260 H999 h302":                       "",
		"H302 H317 H334 H341 H350i H360F H410": "GHS07 GHS08 GHS09",
	} {
		if got := strings.Join(Pictograms(strings.Fields(codes)), " "); got != want {
			t.Errorf("%s: %s; want %s", codes, got, want)
		}
	}
}

// TestPictogramsDoNotDependOnOrder turns every pair and triple around.
func TestPictogramsDoNotDependOnOrder(t *testing.T) {
	for _, a := range hazards {
		for _, b := range hazards {
			one, other := []string{a.code, b.code}, []string{b.code, a.code, b.code}
			if !slices.Equal(Pictograms(one), Pictograms(other)) || Signal(one) != Signal(other) {
				t.Errorf("%v: %v; %v: %v", one, Pictograms(one), other, Pictograms(other))
			}
			if found := Contradictions(one, Pictograms(one), Signal(one)); found != nil {
				t.Errorf("%v: our own label is said to be wrong: %v", one, found)
			}
			for _, s := range []statement{a, b} {
				if s.pictogram != "" && s.pictogram != "GHS07" && !slices.Contains(Pictograms(one), s.pictogram) {
					t.Errorf("%v: %s is lost, and only the exclamation mark ever gives way", one, s.pictogram)
				}
			}
		}
	}
}

func TestSignal(t *testing.T) {
	for codes, want := range map[string]string{
		"": "", "H413": "", "P260": "", "H302": Warning, "H302 H350": Danger, "H350 H302": Danger,
		"H373 H410": Warning, "H272": Danger, "H228 H302": Danger, "H411 H412": "", "H302+H332": Warning, "EUH201": "",
	} {
		if got := Signal(strings.Fields(codes)); got != want {
			t.Errorf("%s: %q; want %q", codes, got, want)
		}
	}
}

func TestContradictions(t *testing.T) {
	for _, c := range []struct{ codes, pictograms, signal, want string }{
		{"H350i H372", "GHS08", Danger, ""},
		{"H350i", "", Danger, "GHS08 is missing: H350i (May cause cancer by inhalation) calls for it"},
		{"H302", "GHS07 GHS08", Warning, "GHS08 is there, and no hazard code calls for it"},
		{"H350i", "GHS08", Warning, "the signal word is Warning, and the hazard codes call for Danger"},
		{"H302", "GHS07", Danger, "the signal word is Danger, and the hazard codes call for Warning"},
		{"H302", "GHS07", "", "the signal word is missing: the hazard codes call for Warning"},
		{"H413", "", Warning, "the signal word is Warning, and no hazard code calls for one"},
		{"H350i", "GHS08", "danger", "the signal word is danger, and the hazard codes call for Danger"},
		{"", "GHS08", "", "GHS08 is there, and no hazard code calls for it"},
		{"H350i", "ghs08", Danger, "GHS08 is missing: H350i (May cause cancer by inhalation) calls for it; ghs08 is there, and no hazard code calls for it"},
		// What rules differ in, or what is only more than is asked.
		{"H301 H317", "GHS06", Danger, ""},
		{"H301 H317", "GHS06 GHS07", Danger, ""},
		{"H334 H317", "GHS08", Danger, ""},
		{"H334 H317", "GHS07 GHS08", Danger, ""},
		{"H220 H280", "GHS02", Danger, ""},
		{"H272", "GHS03", Warning, ""},
		{"H272 H350", "GHS03 GHS08", Warning, "the signal word is Warning, and the hazard codes call for Danger"},
		{"H317", "GHS06", Danger, "GHS06 is there, and no hazard code calls for it; the signal word is Danger, and the hazard codes call for Warning"},
	} {
		got := strings.Join(Contradictions(strings.Fields(c.codes), strings.Fields(c.pictograms), c.signal), "; ")
		if got != c.want {
			t.Errorf("%v:\n%s\n%s", c, got, c.want)
		}
	}
}

func TestSymbols(t *testing.T) {
	all := Symbols()
	if len(all) != 9 || !slices.IsSortedFunc(all, func(a, b Symbol) int { return strings.Compare(a.Number, b.Number) }) {
		t.Errorf("%v", all)
	}
	for _, s := range all {
		if s.Name == "" || s.Shows == "" {
			t.Errorf("%v", s)
		}
	}
	all[0].Name = "changed"
	if Symbols()[0].Name != "Exploding bomb" {
		t.Error("who asks for the pictograms can change them")
	}
}
