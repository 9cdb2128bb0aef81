package imprint

import (
	"bytes"
	"errors"
	"html/template"
	"strings"
	"testing"
)

// slotted is a view with values in slots and one that is printed as it is.
type slotted struct {
	Framed
	First, Second template.HTML
	Plain         string
}

// TestSlotsAreFilledInPlace wants what a slot stands for right where a template
// prints it, as often as it does, and its error to be that of the printing.
func TestSlotsAreFilledInPlace(t *testing.T) {
	page := template.Must(template.New("page").Parse(`a{{.First}}b{{.Plain}}{{if .Second}}{{.Second}}{{end}}{{.First}}c`))
	says := func(text string, err error) func(*bytes.Buffer) error {
		return func(out *bytes.Buffer) error {
			out.WriteString(text)
			return err
		}
	}
	v := slotted{Plain: "\x000<"}
	v.First, v.Second = v.Slot(says("<i>1</i>", nil)), v.Slot(says("", nil))
	var out bytes.Buffer
	if err := Fill(&out, page, "page", v); err != nil {
		t.Fatal(err)
	}
	if got, want := out.String(), "a<i>1</i>b\ufffd0&lt;<i>1</i>c"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	v.slots[1] = says("", errors.New("spilt"))
	if err := Fill(&out, page, "page", v); err == nil || !strings.Contains(err.Error(), "spilt") {
		t.Errorf("error %v", err)
	}
}
