package source

import (
	"strings"
	"testing"
)

// read reads one value of YAML.
func read(text string) (Value, *Text) {
	t := New("test.yaml", []byte("key: "+text+"\n"))
	return t.YAML().Fields("key").Get("key"), t
}

func TestNumbers(t *testing.T) {
	for text, want := range map[string]float64{
		"12": 12, "12.5": 12.5, "0": 0, "30": 30, `"11"`: 11,
		"30.1": -1, "-1": -1, "1e1": -1, ".5": -1, "12%": -1, "12 %": -1, "NaN": -1, ".inf": -1, "0x10": -1, "1_0": -1, "١٢": -1, "12.": -1,
	} {
		v, s := read(text)
		got := v.Number(0, 30, "a number")
		if good := want >= 0; (len(s.Found) == 0) != good || good && got != want {
			t.Errorf("%s: %v with %d findings, want %v", text, got, len(s.Found), want)
		}
	}
}

func TestTextIsOneLine(t *testing.T) {
	for text, want := range map[string]string{
		"plain": "plain", "06": "06", "no": "no", "2026-09-01": "2026-09-01", "1_000": "1_000",
		"|\n  two\n  lines\n": "two lines", ">-\n  two\n  lines\n": "two lines", `"  a\tb "`: "a b", "'it''s'": "it's", `"~"`: "~",
	} {
		v, s := read(text)
		if got := v.Text(); got != want || len(s.Found) > 0 {
			t.Errorf("%q: %q with findings %v", text, got, s.Found)
		}
	}
}

func TestIDs(t *testing.T) {
	for text, want := range map[string]string{
		"leather-hard": "", "a1": "", "console": "", "com10": "",
		"con": "Windows keeps", "aux": "Windows keeps", "com1": "Windows keeps", "lpt9": "Windows keeps", "nul": "Windows keeps", "prn": "Windows keeps",
		"Con": "cannot be an id", "a.": "cannot be an id", "a--b": "cannot be an id", "-a": "cannot be an id", "a b": "cannot be an id", "é": "cannot be an id",
	} {
		v, file := read(text)
		if got := v.ID(); got != text || (want == "") != (len(file.Found) == 0) || !strings.Contains(said(file), want) {
			t.Errorf("%s: %q, found %q", text, got, said(file))
		}
	}
}

func TestOpeningBlocks(t *testing.T) {
	const missing = "1:1: error: the page does not start with its opening block (opening-block) | Start the file with a line ---, then a line such as `title: Mix a slip`, then a line --- again."
	const open = "1:1: error: the opening block that starts here is not closed (opening-block) | Put a line of three hyphens, ---, between the last key and the text of the page."
	for _, c := range []struct{ name, text, title, rest, want string }{
		{"plain", "---\ntitle: Mix\n---\nStir.\n", "Mix", "Stir.\n", ""},
		{"CRLF and spaces", "--- \r\ntitle: Mix\r\n---\t\r\nStir.", "Mix", "Stir.", ""},
		{"to the end", "---\ntitle: Mix\n---", "Mix", "", ""},
		{"none", "title: Mix\n---\n", "", "", missing},
		{"four hyphens", "----\ntitle: Mix\n---\n", "", "", missing},
		{"nothing", "", "", "", missing},
		{"not closed", "---\ntitle: Mix\n----\n", "", "", open},
		{"empty", "---\n# nothing\n---\nStir.", "", "Stir.", "1:1: error: the opening block is empty (missing-key) | Write at least a line such as `title: Mix a slip`."},
		{"broken", "---\né: ü: x\n---\nStir.", "", "Stir.", "2:5: error: there is a second colon in this line, or the line does not start where its neighbours do (yaml-form) | Put a value that has a colon in it in double quotes, and start keys of one kind in the same column."},
		{"a list", "---\n- a\n---\n", "", "", "2:1: error: this is a list, but the opening block wants a set of keys with values (value-kind) | Write each key on a line of its own, as `key: value`."},
	} {
		text := New("a.md", []byte(c.text))
		head, after := text.Opening()
		title := head.Fields("title").Get("title").Text()
		rest := ""
		if after > 0 {
			rest = string(text.Bytes[after:])
		}
		if words := said(text); words != c.want || title != c.title || rest != c.rest {
			t.Errorf("%s: title %q, rest %q, found\n%s\nwant\n%s", c.name, title, rest, words, c.want)
		}
		text.Blank(after)
		if got := string(text.Bytes); len(got) != len(c.text) || strings.TrimSpace(got[:after]) != "" || strings.Count(got, "\n") != strings.Count(c.text, "\n") || strings.Count(got, "\r") != strings.Count(c.text, "\r") {
			t.Errorf("%s: blanked %q", c.name, got)
		}
	}
}

func TestOneFileOverAnother(t *testing.T) {
	lower := New("lower.yaml", []byte("media:\n  - {id: slip, name: Slip, coats: 2}\n  - {id: wax, name: Wax}\nplace: booth\n")).YAML()
	upper := New("upper.yaml", []byte("media:\n  - {id: wash, name: Wash}\n  - {id: slip, name: Our slip}\n"))
	f := upper.YAML().Over(lower).Merged("media", "place")
	var got []string
	for _, v := range f.Get("media").Entries() {
		e := v.Merged("id", "name", "coats")
		got = append(got, e.Get("name").Text()+" "+e.Get("coats").Text()+" "+map[bool]string{true: "lower", false: "upper"}[v.Inherited()])
	}
	if want := "Our slip 2 upper|Wax  lower|Wash  upper"; strings.Join(got, "|") != want {
		t.Errorf("got %s, want %s", strings.Join(got, "|"), want)
	}
	place := f.Get("place")
	if !place.Inherited() || place.Text() != "booth" || !place.Below().Absent() || place.Line() != "the program's own table" {
		t.Errorf("place: %+v", place)
	}
	place.Choice("shed")
	if want := "1:1: error: `place` cannot be `booth` (value-form) | Write one of: shed."; said(upper) != want {
		t.Errorf("found %s, want %s", said(upper), want)
	}
}

// TestReportsEnd shows that a file of faults costs little, and that what is
// left out is counted and owned up to.
func TestReportsEnd(t *testing.T) {
	text := New("a.yaml", []byte("a\n"))
	for range 3 * MostFindings {
		text.YAMLAt([]byte("- a: ["), "it", func(int) int { return 1 })
	}
	last := text.Found[len(text.Found)-1]
	if len(text.Found) != MostFindings+1 || text.Reported() != 3*MostFindings || !text.Full() || last.Rule.ID != "too-many" {
		t.Errorf("%d found, %d reported, last %v", len(text.Found), text.Reported(), last)
	}
}
