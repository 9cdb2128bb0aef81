package finding

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The rules of these tests are not in the list of Rules.
var (
	broken = &Rule{ID: "broken", Severity: Error, Means: "Nothing is broken."}
	odd    = &Rule{ID: "odd", Severity: Warning, Means: "Nothing is odd."}
)

var sample = List{
	{"units/slip/unit.md", 2, 7, odd, "b is odd", "Leave b."},
	{"home.md", 12, 1, broken, "a <b> is broken", "Mend a."},
	{"home.md", 3, 4, broken, "a is broken", "Mend a."},
	{"home.md", 3, 4, broken, "a is broken", "Mend a."},
}

func TestWrite(t *testing.T) {
	tests := []struct {
		name, format string
		list         List
		want         string
	}{
		{"text", "text", sample, `home.md:3:4: error: a is broken (broken)
    Mend a.

home.md:12:1: error: a <b> is broken (broken)
    Mend a.

units/slip/unit.md:2:7: warning: b is odd (odd)
    Leave b.

2 errors, 1 warning
`},
		{"text of nothing", "text", nil, "0 errors, 0 warnings\n"},
		{"text keeps the terminal safe", "text", List{{"a\x1b[2J\n.md", 1, 1, odd, "x\ty", "z."}},
			"a\uFFFD[2J\uFFFD.md:1:1: warning: x\uFFFDy (odd)\n    z.\n\n0 errors, 1 warning\n"},
		{"json", "json", sample[:1], `{
  "findings": [
    {
      "file": "units/slip/unit.md",
      "line": 2,
      "column": 7,
      "severity": "warning",
      "rule": "odd",
      "text": "b is odd",
      "do": "Leave b."
    }
  ],
  "errors": 0,
  "warnings": 1
}
`},
		{"json of nothing", "json", nil, "{\n  \"findings\": [],\n  \"errors\": 0,\n  \"warnings\": 0\n}\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var out bytes.Buffer
			if err := tt.list.Write(&out, tt.format); err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(tt.want, out.String()); d != "" {
				t.Error(d)
			}
		})
	}
	if sample[0].File != "units/slip/unit.md" {
		t.Error("Write sorted its receiver")
	}
}

func TestWriteUnknownFormat(t *testing.T) {
	err := sample.Write(&bytes.Buffer{}, "xml")
	const want = `there is no format "xml"; write one of: text, json, sarif`
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func TestWriteReportsFailure(t *testing.T) {
	for _, format := range Formats() {
		if err := sample.Write(full{}, format); !errors.Is(err, errFull) {
			t.Errorf("%s: got %v, want %v", format, err, errFull)
		}
	}
}

var errFull = errors.New("no room")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWriteSARIF(t *testing.T) {
	list := List{
		{"units/my slip/größe.md", 3, 4, Unreadable, "it cannot be read", "Mend it."},
		{"a:b.md", 1, 1, Unreadable, "neither can this", "Rename it."},
	}
	var out bytes.Buffer
	if err := list.Write(&out, "sarif"); err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(out.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	run := got["runs"].([]any)[0].(map[string]any)
	driver := run["tool"].(map[string]any)["driver"].(map[string]any)
	rules := driver["rules"].([]any)
	if got["version"] != "2.1.0" || driver["name"] != "slipbook" || run["columnKind"] != "unicodeCodePoints" {
		t.Errorf("version %v, tool %v, columns %v", got["version"], driver["name"], run["columnKind"])
	}
	if len(rules) != len(Rules()) {
		t.Errorf("%d rules, want %d", len(rules), len(Rules()))
	}
	index := slices.Index(Rules(), Unreadable)
	if id := rules[index].(map[string]any)["id"]; id != Unreadable.ID {
		t.Errorf("rule %d is %v", index, id)
	}
	want := []any{
		sarifWant("./a:b.md", 1, 1, "neither can this. Rename it.", index),
		sarifWant("units/my%20slip/gr%C3%B6%C3%9Fe.md", 3, 4, "it cannot be read. Mend it.", index),
	}
	if d := cmp.Diff(want, run["results"]); d != "" {
		t.Error(d)
	}
	base := want[0].(map[string]any)["locations"].([]any)[0].(map[string]any)["physicalLocation"].(map[string]any)["artifactLocation"].(map[string]any)["uriBaseId"]
	if _, ok := run["originalUriBaseIds"].(map[string]any)[base.(string)]; !ok {
		t.Errorf("base %v is not described", base)
	}
}

func sarifWant(uri string, line, column float64, message string, rule int) any {
	return map[string]any{
		"ruleId": "unreadable-file", "ruleIndex": float64(rule), "level": "error",
		"message": map[string]any{"text": message},
		"locations": []any{map[string]any{"physicalLocation": map[string]any{
			"artifactLocation": map[string]any{"uri": uri, "uriBaseId": "CONTENT"},
			"region":           map[string]any{"startLine": line, "startColumn": column},
		}}},
	}
}
