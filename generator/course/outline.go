package course

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/photo"
	"slipbook/generator/source"
)

// A drawing that does not say stroke="currentColor" on its svg element was not made
// to stand in a page: a drawing program wrote it, with colours, styles and ids of its
// own. It is an outline here, and is shown as a picture from a file of its own. Two
// things make that safe. A browser that shows SVG in an img element runs no script
// in it and fetches nothing for it. And since somebody may open the file by itself,
// it is written anew without whatever could do either: scripts and addresses outside
// of it are findings, and what is not for drawing is left out, the names of the
// author, the file and its folder among it.
type outline struct {
	*source.Text
	decoder *xml.Decoder
	out     bytes.Buffer
	open    []string
	said    map[string]bool
	w, h    float64 // CSS pixels
}

// outlined are the elements that an outline keeps; all others go with what they hold.
var outlined = wordSet(`svg g defs symbol use switch path rect circle ellipse line polyline polygon image text tspan textPath style
	marker pattern clipPath mask linearGradient radialGradient stop filter feBlend feColorMatrix feComponentTransfer feComposite feConvolveMatrix
	feDiffuseLighting feDisplacementMap feDistantLight feDropShadow feFlood feFuncA feFuncB feFuncG feFuncR feGaussianBlur feImage feMerge feMergeNode
	feMorphology feOffset fePointLight feSpecularLighting feSpotLight feTile feTurbulence`)

func wordSet(list string) map[string]bool {
	set := map[string]bool{}
	for _, word := range strings.Fields(list) {
		set[word] = true
	}
	return set
}

const (
	scriptHelp  = "Take it out: a picture of a handbook only shows something."
	outsideHelp = "Put into the drawing what it shows, as drawing programs call “embed”, or take it out."
	deepestLine = 500 // elements around one in an outline
)

// forPage reports whether a drawing was made to stand in its page, or is so broken
// that this is the way to say so.
func forPage(data []byte) bool {
	decoder := xml.NewDecoder(bytes.NewReader(data))
	decoder.CharsetReader = asItIs
	for {
		token, err := decoder.Token()
		if err != nil {
			return true
		}
		if root, ok := token.(xml.StartElement); ok {
			return root.Name.Local != "svg" || root.Name.Space != svgSpace || valueOf(root.Attr, "stroke") == "currentColor"
		}
	}
}

// asItIs reads a file that was found to be UTF-8, whatever encoding it declares.
func asItIs(_ string, in io.Reader) (io.Reader, error) { return in, nil }

// valueOf returns the value of an attribute without a name space; "" for none.
func valueOf(attributes []xml.Attr, name string) string {
	for _, a := range attributes {
		if a.Name.Space == "" && a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// readOutline writes an outline anew. The picture is nil when it has an error.
func readOutline(s *source.Text) *Picture {
	o := &outline{Text: s, decoder: xml.NewDecoder(bytes.NewReader(s.Bytes)), said: map[string]bool{}}
	o.decoder.CharsetReader = asItIs
	for o.next() {
	}
	if s.Found != nil {
		return nil
	}
	width := min(math.Ceil(o.w), photo.Column)
	return Whole(s.Path, int(width), max(1, int(math.Ceil(o.h*width/math.Ceil(o.w)))), bytes.Clone(o.out.Bytes()))
}

func (o *outline) say(at int, text, do string) {
	if !o.said[text] {
		o.said[text] = true
		o.Report(at, finding.DrawingForm, text, do)
	}
}

// next reads one token; it is false at the end, or where reading cannot go on.
func (o *outline) next() bool {
	at := int(o.decoder.InputOffset())
	token, err := o.decoder.Token()
	if err == io.EOF {
		return false
	}
	if err != nil {
		o.say(int(o.decoder.InputOffset()), wellFormed(err), plainHelp)
		return false
	}
	switch t := token.(type) {
	case xml.StartElement:
		return o.start(t, at)
	case xml.EndElement:
		o.out.WriteString("</" + o.open[len(o.open)-1] + ">")
		o.open = o.open[:len(o.open)-1]
	case xml.CharData:
		o.text(string(t), at)
	}
	return true
}

func (o *outline) start(t xml.StartElement, at int) bool {
	name := t.Name.Local
	switch {
	case name == "script": // of whatever name space
		o.say(at, "the drawing holds a script", scriptHelp)
	case t.Name.Space != svgSpace:
	case len(o.open) == 0 && o.out.Len() > 0:
		o.say(at, "a second element follows the svg element", "Keep one drawing in a file.")
	case name == "a":
		name = "g" // what a link holds is drawn; where it leads is not
	case len(o.open) == deepestLine:
		o.say(at, "the groups of the drawing are nested too deep", "Take groups out.")
	}
	if t.Name.Space != svgSpace || !outlined[name] || len(o.open) == deepestLine {
		if err := o.decoder.Skip(); err != nil {
			o.say(int(o.decoder.InputOffset()), wellFormed(err), plainHelp)
			return false
		}
		return true
	}
	o.out.WriteString("<" + name)
	if len(o.open) == 0 {
		o.out.WriteString(` xmlns="` + svgSpace + `"`)
		o.size(t.Attr, at)
	}
	o.open = append(o.open, name)
	for _, a := range t.Attr {
		o.attribute(name, a, at)
	}
	o.out.WriteString(">")
	return true
}

// attribute writes an attribute, if it belongs to what is drawn.
func (o *outline) attribute(element string, a xml.Attr, at int) {
	key, value := a.Name.Local, a.Value
	switch {
	case a.Name.Space == xlinkSpace && key == "href":
	case a.Name.Space == xmlSpace && key == "space":
		key = "xml:space"
	case a.Name.Space != "" || key == "xmlns":
		return
	case len(key) > 2 && strings.EqualFold(key[:2], "on"):
		o.say(at, fmt.Sprintf("the attribute `%s` runs a script", key), scriptHelp)
		return
	}
	if key == "href" && element == "g" { // of a link
		return
	}
	if key == "href" {
		value = o.href(element, value, at)
	} else {
		o.styled(value, at)
	}
	o.out.WriteString(" " + key + `="`)
	escape(&o.out, value)
	o.out.WriteString(`"`)
}

// The name spaces of attributes that an outline keeps.
const (
	xlinkSpace = "http://www.w3.org/1999/xlink"
	xmlSpace   = "http://www.w3.org/XML/1998/namespace"
)

// href returns what an element refers to: a part of the drawing, or a picture within
// it, which loses what a camera wrote into it.
func (o *outline) href(element, value string, at int) string {
	value = strings.TrimSpace(value)
	if strings.HasPrefix(value, "#") {
		return value
	}
	kind, data, ok := strings.Cut(strings.TrimPrefix(value, "data:image/"), ";base64,")
	if element != "image" && element != "feImage" || !strings.HasPrefix(value, "data:image/") || !ok {
		o.say(at, fmt.Sprintf("the drawing fetches `%s` from outside", shorten(value)), outsideHelp)
		return ""
	}
	plain, err := photo.Embedded(data)
	if err != nil {
		o.say(at, fmt.Sprintf("a picture of kind %s within the drawing is %v", shorten(kind), err), "Put it into the drawing anew, upright, as PNG or JPEG.")
	}
	return "data:image/" + plain
}

// styled looks at what may be a style: nothing is fetched but from the drawing
// itself, or a font that it holds.
func (o *outline) styled(value string, at int) {
	small := strings.ToLower(value)
	if strings.Contains(small, "@import") || strings.Contains(small, "image-set") || strings.Contains(small, "\\") && strings.ContainsAny(small, "(@") {
		o.say(at, "a style of the drawing fetches something from outside", outsideHelp)
	}
	for {
		_, rest, ok := strings.Cut(small, "url(")
		if !ok {
			return
		}
		small = rest
		to := strings.TrimLeft(rest, " \t\r\n\"'")
		if !strings.HasPrefix(to, "#") && !strings.HasPrefix(to, "data:font/") && !strings.HasPrefix(to, "data:application/") {
			o.say(at, "a style of the drawing fetches something from outside", outsideHelp)
		}
	}
}

// text writes words and styles. Outside of their elements there is only white space.
func (o *outline) text(words string, at int) {
	if len(o.open) == 0 || strings.TrimSpace(words) == "" && o.open[len(o.open)-1] != "text" && o.open[len(o.open)-1] != "tspan" {
		return
	}
	if o.open[len(o.open)-1] == "style" {
		o.styled(words, at)
	}
	escape(&o.out, words)
}

// units are the lengths that SVG knows, in CSS pixels.
var units = map[string]float64{"": 1, "px": 1, "pt": 96.0 / 72, "pc": 16, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96}

// size reads how large an outline is: by its width and height, or by its viewBox.
func (o *outline) size(attributes []xml.Attr, at int) {
	o.w, o.h = length(valueOf(attributes, "width")), length(valueOf(attributes, "height"))
	if box := strings.Fields(strings.ReplaceAll(valueOf(attributes, "viewBox"), ",", " ")); (o.w == 0 || o.h == 0) && len(box) == 4 {
		o.w, o.h = length(box[2]), length(box[3])
	}
	if o.w == 0 || o.h == 0 {
		o.say(at, "the svg element says neither its width and height nor a viewBox", plainHelp)
	}
}

// length reads a length; whatever is none, or out of all bounds, is 0.
func length(s string) float64 {
	digits := strings.TrimRight(s, "abcdefghijklmnopqrstuvwxyz%")
	n, err := strconv.ParseFloat(digits, 64)
	per, ok := units[s[len(digits):]]
	if n *= per; err != nil || !ok || !(n > 0 && n <= 10*largest) {
		return 0
	}
	return n
}
