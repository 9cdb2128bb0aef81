package theme

import (
	"bytes"
	"errors"
	"fmt"
	"html/template"
	"strings"
	"testing"
)

// jar is a view with what views hold.
type jar struct {
	shelf
	Name    string
	Of      *shelf
	Words   []string
	Label   template.HTML
	Litres  int
	Kind    kind
	Any     any
	Nothing *shelf
	ByName  map[string]string
	Open    bool
}

type shelf struct {
	Title, Address string
	Jars           []jar
}

func (s shelf) Long() bool            { return len(s.Title) > 3 }
func (s shelf) Tall() (string, error) { return s.Title + "<", nil }
func (s *shelf) Deep() template.HTML  { return template.HTML("<b>" + s.Title + "</b>") }
func twice(text string) string        { return text + text }
func bold(text string) template.HTML {
	return template.HTML("<b>" + template.HTMLEscapeString(text) + "</b>")
}
func joined(all ...any) (string, error) { return strings.Repeat("<", len(all)), nil }

type kind string

func (k kind) String() string { return "kind of " + string(k) }

func say(key string, values ...any) (string, error) {
	if key == "" {
		return "", errors.New("no key")
	}
	return key + fmt.Sprint(values...), nil
}

var testFunctions = template.FuncMap{"say": say, "twice": twice, "bold": bold, "joined": joined}

// called are templates that others call.
const called = `{{define "inner"}}[{{.Title}}{{$.Address}}]{{end}}{{define "none"}}{{if .}}x{{end}}-{{end}}` +
	`{{define "again"}}{{.Title}}{{range .Jars}}{{template "again" .}}{{end}}{{end}}{{define "tell"}}{{.Name}}{{end}}`

// both makes a page for html/template alone, and compiled.
func both(t *testing.T, text string) (*template.Template, *Templates) {
	t.Helper()
	parse := func() *template.Template {
		return template.Must(template.New("").Option("missingkey=error").Funcs(testFunctions).Parse(called + `{{define "page"}}` + text + `{{end}}`))
	}
	compiled, err := newTemplates(parse(), testFunctions)
	if err != nil {
		t.Fatal(err)
	}
	return parse(), compiled
}

// everyByte is text with each byte, in runes and by themselves.
func everyByte() string {
	var all strings.Builder
	for c := range 256 {
		all.WriteRune(rune(c))
		all.WriteByte(byte(c))
	}
	return all.String()
}

// TestCompiled wants compiled templates to print what html/template prints.
func TestCompiled(t *testing.T) {
	of := &shelf{Title: "Top & left", Address: "a/b.html?x=1&y=2#z", Jars: []jar{{Name: "<i>"}, {Name: "+"}}}
	views := []jar{
		{},
		{Name: `"Slip" & 'wash'`, shelf: *of, Of: of, Words: []string{"one", "two"}, Label: `<b title="x">&amp;+</b>`, Litres: -3, Kind: "raw", Any: 1.5, ByName: map[string]string{"a": "<"}, Open: true},
		{Name: everyByte(), shelf: shelf{Title: "s", Address: "javascript:alert"}, Of: &shelf{Address: "ä b%20(c)"}, Any: of, Litres: 1 << 40},
		{Name: "plain", shelf: shelf{Address: "../x y.html\t2.1"}, Of: &shelf{Address: everyByte()}, Any: template.URL("javascript:x")},
		{Any: template.HTML("<u>"), Words: []string{""}, Of: &shelf{Title: "http://a.example/?q=a+b"}},
	}
	for _, text := range []string{
		`a{{.Name}}b{{.Litres}}c{{.Kind}}d{{.Any}}e{{.Open}}f{{.Label}}g{{.Words}}`,
		`<p title="{{.Name}} {{.Litres}} {{.Kind}} {{.Any}} {{.Label}}">`,
		`<a href="{{.Address}}">{{.Title}}</a>`,
		`<a href="#{{.Address}}{{.Litres}}">`,
		`<title>{{.Name}}{{.Label}}</title>`,
		`<a href="{{.Any}}" class="x{{if .Open}} open{{end}}">`,
		`{{if .Of}}{{.Of.Title}}{{.Of.Long}}{{.Of.Tall}}{{.Of.Deep}}<a href="{{.Of.Address}}">{{range .Of.Jars}}{{.Name}};{{end}}{{end}}`,
		`{{range $n, $w := .Words}}{{if $n}}, {{end}}{{$w}}{{$.Name}}{{else}}none{{end}}{{range $w := .Words}}{{$w}}{{end}}`,
		`{{$name := .Name}}{{with .Of}}{{$name}}{{$name := .Title}}{{$name}}{{end}}{{$name}}{{with .Any}}x{{else}}y{{end}}`,
		`{{if and .Open .Words (not .Nothing)}}1{{end}}{{if or .Open .Nothing}}2{{else if .Name}}3{{end}}{{or .Name "unnamed"}}{{and .Name .Title}}`,
		`{{if eq .Name "plain"}}1{{end}}{{if ne .Name .Title}}2{{end}}{{if gt (len .Words) 1}}3{{end}}{{if eq .Litres -3}}4{{end}}{{len .Name}}`,
		`{{twice .Name}}{{.Title | twice}}{{bold .Name}}{{.Title | bold}}{{joined}}{{joined .Name 1 "x"}}{{say "key"}}{{say "<" .Any .Title .Nothing}}`,
		`{{say .Name .Litres}}`,
		`{{if .Of}}{{template "inner" .Of}}{{end}}{{template "inner" .}}{{template "none"}}{{template "none" 1}}{{template "again" .}}`,
		`<p title="{{template "tell" .}}">{{template "tell" .}}</p>`,
		`{{if .ByName}}{{.ByName.a}}{{end}}`,
	} {
		plain, compiled := both(t, text)
		if compiled.compiled["page"] == nil && !strings.Contains(text, `"tell"`) {
			t.Errorf("%s is not compiled", text)
		}
		for n := range views {
			var want, got bytes.Buffer
			wanted, err := plain.ExecuteTemplate(&want, "page", views[n]), compiled.ExecuteTemplate(&got, "page", views[n])
			if (wanted == nil) != (err == nil) || want.String() != got.String() {
				t.Errorf("%s of view %d:\n%q, %v, want\n%q, %v", text, n, got.String(), err, want.String(), wanted)
			}
		}
	}
}

// TestCompiledErrors wants what html/template refuses to be refused, with the name of
// the template.
func TestCompiledErrors(t *testing.T) {
	for _, text := range []string{
		`{{.Missing}}`, `{{.Nothing.Title}}`, `{{.Of.Deep.Title}}`, `{{.ByName.missing}}`, `{{range .Name}}{{end}}`, `{{range .Litres.Deep}}{{end}}`,
		`{{twice .Litres}}`, `{{say .Litres}}`, `{{say "x" .Missing}}`, `{{twice .Any}}`, `{{if eq .Name .Litres}}{{end}}`, `{{len .Litres}}`, `{{template "inner" .Nothing}}`,
	} {
		plain, compiled := both(t, text)
		var out bytes.Buffer
		view := jar{Of: &shelf{}, Name: "x"}
		if plain.ExecuteTemplate(&out, "page", view) == nil {
			t.Errorf("html/template prints %s", text)
		}
		if err := compiled.ExecuteTemplate(&out, "page", view); err == nil || compiled.compiled["page"] == nil || !strings.Contains(err.Error(), `"page"`) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// TestUnknownIsPrinted wants what the compiler does not know to be printed by
// html/template, also within what it knows, and what nobody can make safe to be an error.
func TestUnknownIsPrinted(t *testing.T) {
	_, all := both(t, `<b>{{.Name}}{{template "quoted" .}}{{end}}{{define "quoted"}}{{printf "%q" .Name}}{{if .Open}}{{template "page" .}}{{end}}`)
	if all.compiled["page"] == nil || all.compiled["quoted"] != nil {
		t.Fatalf("compiled: %v", all.compiled)
	}
	var out bytes.Buffer
	if err := all.ExecuteTemplate(&out, "page", jar{Name: "a<"}); err != nil || out.String() != `<b>a&lt;&#34;a&lt;&#34;` {
		t.Errorf("%q, %v", out.String(), err)
	}
	unsafe := template.Must(template.New("").Parse(`{{define "x"}}<a href={{if .}}"{{end}}>{{end}}`))
	if _, err := newTemplates(unsafe, nil); err == nil {
		t.Error("what ends in two ways is printed")
	}
}
