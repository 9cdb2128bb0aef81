package course

import (
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

const svgSpace = "http://www.w3.org/2000/svg"

// A drawing stands inside the page, so that it follows light and dark and
// prints with the words. That is why it may hold so little: whatever could run,
// fetch, clash with the page's ids or bring colours of its own is refused. What
// is allowed is listed here, element by element, each attribute with the form
// of its value.
var (
	number    = regexp.MustCompile(`^[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)$`)
	numbers   = regexp.MustCompile(`^[-+0-9., ]+$`)
	curve     = regexp.MustCompile(`^[-+0-9., eEMmZzLlHhVvCcSsQqTtAa]+$`)
	transform = regexp.MustCompile(`^((matrix|translate|scale|rotate|skewX|skewY) ?\([-+0-9., ]*\)[ ,]*)+$`)
	anchor    = regexp.MustCompile(`^(start|middle|end)$`)
	classes   = regexp.MustCompile(`^(clay|slip|water|colour|glaze|paper|fine|ghost|words)( (clay|slip|water|colour|glaze|paper|fine|ghost|words))*$`)
)

// shapes are the attributes of each element beside those of every element.
var shapes = map[string]map[string]*regexp.Regexp{
	"g":        {},
	"path":     {"d": curve},
	"line":     {"x1": number, "y1": number, "x2": number, "y2": number},
	"polyline": {"points": numbers},
	"polygon":  {"points": numbers},
	"circle":   {"cx": number, "cy": number, "r": number},
	"ellipse":  {"cx": number, "cy": number, "rx": number, "ry": number},
	"rect":     {"x": number, "y": number, "width": number, "height": number, "rx": number, "ry": number},
	"text":     {"x": number, "y": number, "dx": number, "dy": number, "text-anchor": anchor, "font-size": number},
	"tspan":    {"x": number, "y": number, "dx": number, "dy": number, "text-anchor": anchor, "font-size": number},
}

var everyShape = map[string]*regexp.Regexp{"class": classes, "transform": transform}

// pen is what the root element must say, so that all drawings have one line.
var pen = []xml.Attr{
	{Name: xml.Name{Local: "fill"}, Value: "none"},
	{Name: xml.Name{Local: "stroke"}, Value: "currentColor"},
	{Name: xml.Name{Local: "stroke-width"}, Value: "2.5"},
	{Name: xml.Name{Local: "stroke-linecap"}, Value: "round"},
	{Name: xml.Name{Local: "stroke-linejoin"}, Value: "round"},
}

const (
	penHelp   = `Write on the svg element: viewBox="0 0 480 300" fill="none" stroke="currentColor" stroke-width="2.5" stroke-linecap="round" stroke-linejoin="round".`
	shapeHelp = "A drawing is made of g, path, line, polyline, polygon, circle, ellipse, rect, text and tspan."
	classHelp = "Areas take the classes clay, slip, water, colour, glaze and paper; lines fine and ghost; text words."
)

// deepest is how many elements a drawing may have around one.
const deepest = 50

// drawing is an SVG file being read and written anew.
type drawing struct {
	*source.Text
	decoder *xml.Decoder
	out     bytes.Buffer
	open    []string // elements, the root first
	tag     bool     // the last start tag is not closed yet
	done    bool     // the root element has ended
	said    map[string]bool
	picture *Picture
}

// readDrawing reads an SVG file. The picture is nil when the source has an
// error. What is made of it is the same for the same file: comments, titles,
// white space between elements and the XML declaration are left out.
func readDrawing(fsys fs.FS, file, language string) (*Picture, *source.Text) {
	s, ok := source.Read(fsys, file, outlineLimit)
	if ok && !forPage(s.Bytes) {
		return readOutline(s), s
	}
	if ok && len(s.Bytes) > drawingLimit {
		s, ok = source.Read(fsys, file, drawingLimit)
	}
	if !ok {
		return nil, s
	}
	digest := sha256.Sum256(append([]byte(language+"\x00"), s.Bytes...))
	if known, there := sound.drawing(digest); there {
		return &Picture{Path: file, Width: known.Width, Height: known.Height, SVG: known.SVG}, s
	}
	s.Language = language
	s.CheckHidden()
	d := &drawing{Text: s, decoder: xml.NewDecoder(bytes.NewReader(s.Bytes)), said: map[string]bool{}, picture: &Picture{Path: file}}
	d.decoder.CharsetReader = asItIs
	for d.next() {
	}
	if s.Found != nil {
		return nil, s
	}
	d.picture.SVG = bytes.Clone(d.out.Bytes()) // the room left over is not kept
	sound.keep(digest, d.picture)
	return d.picture, s
}

// next reads one token; it is false at the end, or where reading cannot go on.
func (d *drawing) next() bool {
	at := int(d.decoder.InputOffset())
	token, err := d.decoder.Token()
	switch {
	case err == io.EOF:
		if !d.done {
			d.say(0, "there is no svg element in this file", penHelp)
		}
		return false
	case err != nil:
		d.broken(err)
		return false
	}
	switch t := token.(type) {
	case xml.StartElement:
		return d.start(t, at)
	case xml.EndElement:
		d.end()
	case xml.CharData:
		d.text(t, at)
	case xml.ProcInst:
		if t.Target != "xml" {
			d.say(at, "a drawing has no `<?"+t.Target+"`", "Take it out.")
		}
	case xml.Directive:
		d.say(at, "a drawing has no `<!DOCTYPE` or other declaration", "Take it out.")
	}
	return true
}

// say reports a fault once a file, where it is first: a drawing program repeats
// its habits a thousand times.
func (d *drawing) say(offset int, text, do string) {
	if !d.said[text] {
		d.said[text] = true
		d.Report(offset, finding.DrawingForm, text, do)
	}
}

func (d *drawing) broken(err error) {
	d.say(int(d.decoder.InputOffset()), wellFormed(err), plainHelp)
}

const plainHelp = "Save the drawing again from the program it was drawn with, as plain SVG."

// wellFormed says what an XML decoder found wrong.
func wellFormed(err error) string {
	text := err.Error()
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		text = syntax.Msg
	}
	return "this is not well-formed XML: " + text
}

func (d *drawing) start(t xml.StartElement, at int) bool {
	places := attributePlaces(d.Bytes[at:d.decoder.InputOffset()], at, len(t.Attr))
	name := t.Name.Local
	switch {
	case len(d.open) == 0:
		return d.root(t, at, places)
	case t.Name.Space == svgSpace && (name == "title" || name == "desc"):
		return d.skip()
	case t.Name.Space != svgSpace || shapes[name] == nil:
		d.say(at, fmt.Sprintf("a drawing cannot hold the element `%s`", name), shapeHelp)
		return d.skip()
	case len(d.open) > deepest:
		d.say(at, "the groups of the drawing are nested too deep", "Take groups out.")
		return d.skip()
	case name == "tspan" && d.inside() != "text" && d.inside() != "tspan", name != "tspan" && d.inside() != "svg" && d.inside() != "g":
		d.say(at, fmt.Sprintf("the element `%s` cannot stand inside `%s`", name, d.inside()), "Close the one before it first; only g holds shapes, and only text holds tspan.")
		return d.skip()
	}
	d.begin(name)
	d.attributes(name, t.Attr, places)
	return true
}

// attributes checks and writes the attributes of a shape.
func (d *drawing) attributes(name string, attributes []xml.Attr, places []int) {
	seen := map[string]bool{}
	for i, a := range attributes {
		key, value := a.Name.Local, strings.Join(strings.Fields(a.Value), " ")
		form := shapes[name][key]
		if form == nil {
			form = everyShape[key]
		}
		switch {
		case a.Name.Space != "" || form == nil:
			d.say(places[i], fmt.Sprintf("the attribute `%s` cannot stand on `%s`", key, name), "Take it out. "+classHelp)
		case seen[key]:
			d.say(places[i], fmt.Sprintf("the attribute `%s` stands twice", key), "Keep one of the two.")
		case !form.MatchString(value):
			d.say(places[i], fmt.Sprintf("`%s` of `%s` cannot be `%s`", key, name, shorten(value)), valueHelp(form))
		default:
			d.attribute(key, value)
		}
		seen[key] = true
	}
}

func (d *drawing) inside() string { return d.open[len(d.open)-1] }

func valueHelp(form *regexp.Regexp) string {
	switch form {
	case classes:
		return classHelp
	case number:
		return "Write a number alone, without a unit."
	case anchor:
		return "Write start, middle or end."
	}
	return "Write numbers, and only the letters that SVG has for this."
}

// shorten keeps a message to a line.
func shorten(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// root reads the svg element: its size, and that it says how lines are drawn.
func (d *drawing) root(t xml.StartElement, at int, places []int) bool {
	switch {
	case d.done:
		d.say(at, "a second element follows the svg element", "Keep one drawing in a file.")
		return false
	case t.Name.Local != "svg" || t.Name.Space != svgSpace:
		d.say(at, "the file does not start with an svg element", `Start with <svg xmlns="`+svgSpace+`" and the rest. `+penHelp)
		return false
	}
	d.begin("svg")
	given := d.rootAttributes(t.Attr, places)
	d.size(given, at)
	d.attribute("viewBox", given["viewBox"])
	for _, p := range pen {
		if given[p.Name.Local] != p.Value {
			d.say(at, fmt.Sprintf("the svg element must say %s=%q", p.Name.Local, p.Value), penHelp)
		}
		d.attribute(p.Name.Local, p.Value)
	}
	return true
}

// rootAttributes reads what the svg element says, and reports what it may not.
func (d *drawing) rootAttributes(attributes []xml.Attr, places []int) map[string]string {
	given := map[string]string{}
	for i, a := range attributes {
		key := a.Name.Local
		if a.Name.Space != "" {
			key = a.Name.Space + ":" + key
		}
		known := a.Name.Space == "xmlns" || slices.Contains([]string{"xmlns", "viewBox", "width", "height"}, key) || slices.ContainsFunc(pen, func(p xml.Attr) bool { return p.Name.Local == key })
		_, twice := given[key]
		switch {
		case !known:
			d.say(places[i], fmt.Sprintf("the attribute `%s` cannot stand on `svg`", key), "Take it out.")
		case twice:
			d.say(places[i], fmt.Sprintf("the attribute `%s` stands twice", key), "Keep one of the two.")
		}
		given[key] = strings.Join(strings.Fields(a.Value), " ")
	}
	return given
}

// largest bounds a drawing's sides, in CSS pixels.
const largest = 10_000

// size takes the width and height given, or else those of the viewBox, and
// rounds them up.
func (d *drawing) size(given map[string]string, at int) {
	box := strings.Fields(strings.ReplaceAll(given["viewBox"], ",", " "))
	width, height := 0.0, 0.0
	if len(box) == 4 && !slices.ContainsFunc(box, func(n string) bool { return !number.MatchString(n) }) {
		width, height = side(box[2]), side(box[3])
	}
	if width == 0 || height == 0 {
		d.say(at, "the svg element has no viewBox of four numbers", penHelp)
		return
	}
	if w, h := side(given["width"]), side(given["height"]); w > 0 && h > 0 {
		width, height = w, h
	}
	d.picture.Width, d.picture.Height = int(math.Ceil(width)), int(math.Ceil(height))
}

// side reads a length in CSS pixels; whatever else stands there is 0.
func side(s string) float64 {
	s = strings.TrimSuffix(s, "px")
	n, err := strconv.ParseFloat(s, 64)
	if err != nil || !number.MatchString(s) || n > largest || n < 0 {
		return 0
	}
	return n
}

func (d *drawing) begin(name string) {
	d.closeTag()
	d.out.WriteString("<" + name)
	d.open, d.tag = append(d.open, name), true
}

func (d *drawing) attribute(key, value string) {
	d.out.WriteString(" " + key + `="`)
	escape(&d.out, value)
	d.out.WriteString(`"`)
}

func (d *drawing) closeTag() {
	if d.tag {
		d.out.WriteString(">")
		d.tag = false
	}
}

func (d *drawing) end() {
	name := d.inside()
	if d.tag {
		d.out.WriteString("/>")
		d.tag = false
	} else {
		d.out.WriteString("</" + name + ">")
	}
	d.open = d.open[:len(d.open)-1]
	d.done = len(d.open) == 0
}

// skip passes over an element with all it holds.
func (d *drawing) skip() bool {
	if err := d.decoder.Skip(); err != nil {
		d.broken(err)
		return false
	}
	return true
}

var spaces = regexp.MustCompile(`[ \t\r\n]+`)

func (d *drawing) text(data []byte, at int) {
	within := len(d.open) > 0 && (d.inside() == "text" || d.inside() == "tspan")
	switch {
	case within:
		d.closeTag()
		d.hidden(data, at)
		escape(&d.out, spaces.ReplaceAllString(string(data), " "))
	case len(bytes.TrimSpace(data)) > 0:
		d.say(at+len(data)-len(bytes.TrimLeft(data, " \t\r\n")), "words stand outside a text element", `Put them into <text class="words" x="…" y="…">.`)
	}
}

// hidden reports a reference for a character that cannot be seen; one that
// stands in the file itself has been reported.
func (d *drawing) hidden(data []byte, at int) {
	for _, r := range string(data) {
		if text, do := source.Hidden(d.Language, r); text != "" && r != '\r' && !bytes.ContainsRune(d.Bytes, r) {
			d.Report(at, finding.HiddenCharacter, text, do)
			return
		}
	}
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(out *bytes.Buffer, s string) { out.WriteString(escaper.Replace(s)) }

// attributePlaces finds where the n attributes of a start tag begin; at is the
// offset of the tag, which the decoder has found well formed.
func attributePlaces(tag []byte, at, n int) []int {
	places := make([]int, 0, n)
	i := 1
	for i < len(tag) && !isSpace(tag[i]) {
		i++ // the element's name
	}
	for len(places) < n {
		for i < len(tag) && isSpace(tag[i]) {
			i++
		}
		places = append(places, at+i)
		if quote := bytes.IndexAny(tag[i:], `"'`); quote >= 0 {
			i += quote
			i += 2 + bytes.IndexByte(tag[i+1:], tag[i])
		}
	}
	return places
}

func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }
