package theme

import (
	"bytes"
	"html/template"
	"reflect"
	"strconv"
	"strings"
)

// escaperPrefix begins the names of the functions by which html/template makes what is
// printed safe.
const escaperPrefix = "_html_template_"

// escaping is how html/template escapes a value in one kind of place. What is nothing
// but text, or plain in an address, is escaped here; all else by html/template itself,
// in a template that holds nothing but such a place.
type escaping struct {
	plain   *[256]bool // bytes that stay as they are but for HTML; nil: all
	whole   bool       // finished HTML stays as it is
	by      *template.Template
	around  int // bytes before the value in that template
	trailed int // bytes behind it
}

// escapings are known by the names of html/template's functions.
var escapings = map[string]*escaping{
	escaperPrefix + "htmlescaper":   newEscaping("", "", nil),
	escaperPrefix + "rcdataescaper": newEscaping("<title>", "</title>", nil),
	escaperPrefix + "attrescaper":   newEscaping(`<p title="`, `">`, nil),
	escaperPrefix + "urlfilter " + escaperPrefix + "urlnormalizer " + escaperPrefix + "attrescaper": newEscaping(`<a href="`, `">`, bytesOf(plainInName+"/#?=&")),
	escaperPrefix + "urlescaper " + escaperPrefix + "attrescaper":                                   newEscaping(`<a href="#`, `">`, bytesOf(plainInName)),
}

// plainInName are the bytes that stand for themselves anywhere in an address.
const plainInName = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~"

func newEscaping(before, behind string, plain *[256]bool) *escaping {
	return &escaping{plain: plain, whole: before == "", by: template.Must(template.New("").Parse(before + "{{.}}" + behind)), around: len(before), trailed: len(behind)}
}

func bytesOf(text string) *[256]bool {
	table := new([256]bool)
	for i := range len(text) {
		table[text[i]] = true
	}
	return table
}

var finished = reflect.TypeFor[template.HTML]()

// write prints a value.
func (e *escaping) write(p *place, v reflect.Value) error {
	if v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	p.room = p.room[:0]
	switch {
	case v.Kind() == reflect.String && v.Type() == finished && e.whole:
		p.room = append(p.room, v.String()...)
	case v.Kind() == reflect.String && isPlainType(v.Type()) && e.isPlain(v.String()):
		p.room = appendEscaped(p.room, v.String())
	case v.CanInt() && isPlainType(v.Type()):
		p.room = strconv.AppendInt(p.room, v.Int(), 10)
	default:
		return e.otherwise(p, v)
	}
	_, err := p.out.Write(p.room)
	return err
}

// isPlainType reports whether values of a type are printed as what they hold: neither
// a method nor html/template's own types say otherwise.
func isPlainType(t reflect.Type) bool {
	return t.NumMethod() == 0 && !strings.HasPrefix(t.PkgPath(), "html/")
}

func (e *escaping) isPlain(text string) bool {
	if e.plain == nil {
		return true
	}
	for i := range len(text) {
		if !e.plain[text[i]] {
			return false
		}
	}
	return true
}

// otherwise has html/template print a value.
func (e *escaping) otherwise(p *place, v reflect.Value) error {
	var out bytes.Buffer
	if err := e.by.Execute(&out, held(v)); err != nil {
		return err
	}
	_, err := p.out.Write(out.Bytes()[e.around : out.Len()-e.trailed])
	return err
}

// entities are the characters that HTML gives a meaning, and the plus sign, which old
// browsers took for one, as html/template writes them.
var entities = [256]string{0: "\uFFFD", '"': "&#34;", '&': "&amp;", '\'': "&#39;", '+': "&#43;", '<': "&lt;", '>': "&gt;"}

// appendEscaped appends text as it stands in HTML.
func appendEscaped(to []byte, text string) []byte {
	done := 0
	for i := range len(text) {
		if entity := entities[text[i]]; entity != "" {
			to = append(append(to, text[done:i]...), entity...)
			done = i + 1
		}
	}
	return append(to, text[done:]...)
}
