package source

import (
	"strings"
	"testing"
)

// TestSyntax has a case for each mistake known, and for what is not.
func TestSyntax(t *testing.T) {
	tests := []struct{ name, yaml, want string }{
		{"second colon", "title: Slip: how to mix it\n", "1:12: there is a second colon in this line, or the line does not start where its neighbours do"},
		{"wrong indent", "title: Slip\n  word: x\n", "2:7: there is a second colon in this line, or the line does not start where its neighbours do"},
		{"tab before a key", "\ttitle: x\n", "1:1: this line is indented with a tab"},
		{"tab in a block", "key:\n\tword: x\n", "2:1: this line is indented with a tab"},
		{"tab after text", "key: x\n\ty: 2\n", "2:1: this line is indented with a tab"},
		{"no colon", "title: x\nword\nother: y\n", "2:1: this line has no colon after its key"},
		{"list not closed", "key: [a, b\nother: x\n", "1:6: the list that opens here with [ is not closed"},
		{"keys not closed", "key: {a: 1\nother: x\n", "1:6: the keys that open here with { are not closed"},
		{"quotation not closed", "key: \"a\nother: x\n", "1:6: the quotation that opens here is not closed, or has a backslash in it that means nothing"},
		{"backslash", `key: "a\p"` + "\n", "1:6: the quotation that opens here is not closed, or has a backslash in it that means nothing"},
		{"apostrophe in quotes", "key: 'it's'\n", "1:10: this does not fit what stands before it"},
		{"text after a quotation", "key: \"a\" b\n", "1:10: this does not fit what stands before it"},
		{"list that does not go on", "key:\n  - a\n  b\n  - c\n", "3:3: this line has no colon after its key"},
		{"key in a list", "key:\n  - a\n  b: x\n", "3:3: this does not fit the list before it"},
		{"list in a line", "key: - a\n", "1:6: a list cannot start here"},
		{"asterisk", "key: *bold*\n", "1:6: a value cannot start with an asterisk"},
		{"ampersand alone", "key: & x\n", "1:7: a value cannot start with * or &"},
		{"at sign", "key: @x\n", "1:6: a value cannot start with '@'"},
		{"per cent", "key: %x\n", "1:6: a value cannot start with '%'"},
		{"backquote", "key: `x`\n", "1:6: a value cannot start with '`'"},
		{"question mark", "key: ? x\n", "1:6: a value cannot start with a question mark and a space"},
		{"bar with words", "key: | x\n", "1:8: the sign | or > is followed by something that does not belong there"},
		{"directive", "%FOO\nkey: x\n", "1:5: a line cannot start with %"},
		{"old version", "%YAML 1.2\n---\nkey: x\n", "1:1: a line cannot start with %"},
		{"nested too deep", "key: " + strings.Repeat("[", 20_000) + "\n", "1:10006: lists and keys are nested too deep"},
		{"unknown to us", "key: !<x y\n", "1:9: this is not well-formed YAML: did not find the expected '>'"},
		{"letters before it", "é: Größe: x\n", "1:9: there is a second colon in this line, or the line does not start where its neighbours do"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := New("x", []byte(tt.yaml))
			s.YAML()
			if len(s.Found) != 1 {
				t.Fatalf("%d findings, want 1: %v", len(s.Found), s.Found)
			}
			got, _, _ := strings.Cut(strings.TrimPrefix(s.Found[0].String(), "x:"), " (yaml-form)")
			if got = strings.Replace(got, " error:", "", 1); got != tt.want {
				t.Errorf("got  %s\nwant %s", got, tt.want)
			}
		})
	}
}
