package source

import (
	"fmt"
	"strings"
	"testing"
)

// TestHiddenCharacters goes through every kind of character that cannot be
// seen, written plainly and as an escape, in languages that need it or not.
func TestHiddenCharacters(t *testing.T) {
	for _, c := range []struct {
		r        rune
		refused  string // languages, separated by spaces
		needed   string
		contains string
	}{
		{0x202e, "en-GB he ar-EG fa hi", "", "turns the direction"},
		{0x202a, "en he", "", "turns the direction"},
		{0x2066, "en hi", "he ar ks-Arab", "sets the direction"},
		{0x2069, "en", "fa-IR", "sets the direction"},
		{0x200e, "en de", "he", "sets the direction"},
		{0x200f, "en", "ur", "sets the direction"},
		{0x061c, "en hi", "ar", "sets the direction"},
		{0x200b, "en he hi", "", "takes no room"},
		{0x200c, "en de", "fa hi bn", "takes no room"},
		{0x200d, "en x", "he ml", "takes no room"},
		{0x2060, "en ar", "", "takes no room"},
		{0xfeff, "en ar", "", "takes no room"},
		{0x2028, "en ar", "", "ends a line"},
		{0x2029, "en", "", "ends a line"},
		{0xe0041, "en", "", "takes no room"},
		{0xfffa, "en", "", "takes no room"},
		{0x00ad, "", "en de", ""},
		{0xfe0f, "", "en", ""},
		{0x1f9d1, "", "en", ""},
		{'é', "", "en", ""},
		{' ', "", "en", ""},
	} {
		for _, language := range strings.Fields(c.refused) {
			for _, written := range []string{"key: a" + string(c.r) + "b\n", fmt.Sprintf("key: \"a\\U%08xb\"\n", c.r)} {
				if found := hiddenIn(language, written); len(found.Found) == 0 || found.Found[0].Rule.ID != "hidden-character" || !strings.Contains(said(found), fmt.Sprintf("%U", c.r)) || !strings.Contains(said(found), c.contains) {
					t.Errorf("%U in %s, %q: found %q", c.r, language, written, said(found))
				}
			}
		}
		for _, language := range strings.Fields(c.needed) {
			if found := hiddenIn(language, "key: a"+string(c.r)+"b\n"); len(found.Found) > 0 {
				t.Errorf("%U in %s: found %q", c.r, language, said(found))
			}
		}
	}
}

// hiddenIn reads a file of YAML as a course in a language does.
func hiddenIn(language, yaml string) *Text {
	t := New("a.yaml", []byte(yaml))
	t.Language = language
	t.CheckHidden()
	t.YAML()
	return t
}

func TestHiddenCharactersInTheirPlaces(t *testing.T) {
	const copied = " | Take it out; it may have come along with copied text."
	for _, c := range []struct{ name, yaml, want string }{
		{"escapes for control characters", `key: "Mix \u202ea \0\a\e[31m"` + "\n",
			"1:6: error: an escape stands here: this character, U+202E, turns the direction of the words behind it (hidden-character) | Take it out; where words of both directions meet, put the marks U+200E or U+200F beside them instead, in a course of a language written from right to left."},
		{"a bell", `key: "a\a"` + "\n", "1:6: error: an escape stands here: this character, U+0007, is a control character (hidden-character)" + copied},
		{"escapes that are seen", `key: "a\tb\n\u00e9\x41"` + "\n", ""},
		{"in a key", `"k\u200bey": a` + "\n", "1:1: error: an escape stands here: this character, U+200B, takes no room and cannot be seen (hidden-character)" + copied},
		{"each where it stands", "é: a\u200bb\nkey: c\u200b\n", "1:5: error: this character, U+200B, takes no room and cannot be seen (hidden-character)" + copied + "\n2:7: error: this character, U+200B, takes no room and cannot be seen (hidden-character)" + copied},
		{"one picture of several", "key: 🧑\u200d🏫\n", ""},
		{"another between two of them", "key: 🧑\u200b🏫\n", "1:7: error: this character, U+200B, takes no room and cannot be seen (hidden-character)" + copied},
		{"a joiner behind one alone", "key: 🧑\u200da\n", "1:7: error: this character, U+200D, takes no room and cannot be seen (hidden-character)" + copied},
		{"a joiner between letters", "key: a\u200db\n", "1:7: error: this character, U+200D, takes no room and cannot be seen (hidden-character)" + copied},
	} {
		if got := said(hiddenIn("en", c.yaml)); got != c.want {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}
