package course

import "testing"

func TestLanguageTag(t *testing.T) {
	for tag, want := range map[string]bool{
		"en": true, "en-GB": true, "gsw": true, "pt-BR": true, "zh-Hans-CN": true, "es-419": true, "de-1996": true, "ca-valencia": true, "sr-Latn": true,
		"": false, "e": false, "english": false, "en_GB": false, "en-": false, "-GB": false, "en GB": false, "en-GBR": false, "en-GB-": false, "französisch": false,
	} {
		if got := languageTag.MatchString(tag); got != want {
			t.Errorf("%q: %v, want %v", tag, got, want)
		}
	}
}

func TestDecimalMark(t *testing.T) {
	for tag, want := range map[string]byte{
		"en": '.', "en-GB": '.', "EN-us": '.', "en-ZA": ',', "de": ',', "de-DE": ',', "de-CH": '.', "fr-CH": ',', "fr": ',',
		"es": ',', "es-MX": '.', "ja": '.', "zh-Hant-TW": '.', "pt-BR": ',', "sv": ',',
	} {
		if got := decimalMark(tag); got != want {
			t.Errorf("%s: %c, want %c", tag, got, want)
		}
	}
}
