package catalog

import (
	"errors"
	"net/url"
	"strings"
	"testing"
	"unicode/utf8"

	"slipbook/calculators/form"
)

// FuzzRequest sends anything to the calculators: the answer can always be
// decoded, stays small, and has either an error or an answer, and no panic.
func FuzzRequest(f *testing.F) {
	for _, c := range All() {
		f.Add(Request(c.Name, c.Example.Given))
	}
	f.Add("calculator=shrinkage-test&plastic=100 100;1/2&dry=94&fired=%zz")
	f.Add("calculator=slip-density&mass=%F0%9F&mass.unit=g&&=&calculator=x")
	f.Fuzz(func(t *testing.T, request string) {
		answer := string(Respond([]byte(request), studio()))
		fields, err := fieldsOf(strings.ReplaceAll(answer, "drawing=", "drawing=x"))
		if err != nil && len(answer) < 16<<10 {
			t.Fatalf("the answer cannot be read: %v", err)
		}
		if len(answer) > 64<<10 && len(answer) > 20*len(request) {
			t.Fatalf("%d bytes for a request of %d", len(answer), len(request))
		}
		refused, answered := strings.Contains(answer, "&error."), strings.Contains(answer, "&headline=")
		if refused == answered {
			t.Fatalf("refused %v, answered %v: %s", refused, answered, answer)
		}
		if failed := british().Words.Text("form.failed"); strings.Contains(unescape(answer), failed) {
			t.Fatalf("a panic: %s", unescape(answer))
		}
		for _, field := range fields {
			if !utf8.ValidString(field.Text) {
				t.Fatalf("%s is cut inside a letter: %q", field.Name, field.Text)
			}
		}
	})
}

// fieldsOf takes an encoded answer apart as the standard library reads such forms.
func fieldsOf(encoded string) ([]form.Setting, error) {
	var fields []form.Setting
	for pair := range strings.SplitSeq(encoded, "&") {
		name, value, _ := strings.Cut(pair, "=")
		name, failed := url.QueryUnescape(name)
		value, err := url.QueryUnescape(value)
		if err = errors.Join(failed, err); err != nil {
			return fields, err
		}
		fields = append(fields, form.Setting{Name: name, Text: value})
	}
	return fields, nil
}
