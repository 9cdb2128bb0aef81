// Package sketch draws the answers: small SVG drawings to scale, by the same
// Go code in the page and in the generator. It exists so that every drawing
// speaks one language of lines and colours (classes that the theme's style
// sheet knows), stays small, and never comes out different by a last digit.
//
// A drawing carries no style of its own: shapes have classes (clay, slip,
// water, colour, glaze, paper for areas; ink, fine, ghost for lines; words for
// text) and the theme colours them, light and dark, on screen and paper.
package sketch

import (
	"strconv"

	"slipbook/calculators/letters"
)

// Drawing is an SVG drawing being made.
type Drawing struct{ svg []byte }

// New starts a drawing of a width and height in its own units (the page
// scales it), with a text alternative that says what it shows.
func New(width, height float64, alternative string) *Drawing {
	d := &Drawing{}
	d.write(`<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="0 0 `)
	d.number(width)
	d.write(" ")
	d.number(height)
	d.write(`" role="img" aria-label="`)
	d.words(alternative)
	d.write(`">`)
	return d
}

// Box draws a rectangle from its upper left corner.
func (d *Drawing) Box(class string, x, y, width, height float64) {
	d.open("rect", class)
	d.attribute("x", x)
	d.attribute("y", y)
	d.attribute("width", width)
	d.attribute("height", height)
	d.write("/>")
}

// Line draws a straight line.
func (d *Drawing) Line(class string, x1, y1, x2, y2 float64) {
	d.open("line", class)
	d.attribute("x1", x1)
	d.attribute("y1", y1)
	d.attribute("x2", x2)
	d.attribute("y2", y2)
	d.write("/>")
}

// Path draws a path: letters of SVG path data with numbers between.
func (d *Drawing) Path(class string, steps ...any) {
	d.open("path", class)
	d.write(` d="`)
	for i, step := range steps {
		switch s := step.(type) {
		case string:
			d.write(s)
		case float64:
			if i > 0 {
				if _, after := steps[i-1].(float64); after {
					d.write(" ")
				}
			}
			d.number(s)
		}
	}
	d.write(`"/>`)
}

// Dot draws a small disc.
func (d *Drawing) Dot(class string, x, y, radius float64) {
	d.open("circle", class)
	d.attribute("cx", x)
	d.attribute("cy", y)
	d.attribute("r", radius)
	d.write("/>")
}

// Words writes text, all of one size; anchor is "start", "middle" or "end".
func (d *Drawing) Words(text string, x, y float64, anchor string) {
	d.open("text", "words")
	d.attribute("x", x)
	d.attribute("y", y)
	d.attribute("font-size", TextSize)
	if anchor != "start" {
		d.write(` text-anchor="` + anchor + `"`)
	}
	d.write(">")
	d.words(text)
	d.write("</text>")
}

// String ends the drawing and returns it as SVG.
func (d *Drawing) String() string { return string(d.svg) + "</svg>" }

func (d *Drawing) write(text string) { d.svg = append(d.svg, text...) }

func (d *Drawing) open(element, class string) {
	d.write("<" + element + ` class="` + class + `"`)
}

func (d *Drawing) attribute(name string, value float64) {
	d.write(" " + name + `="`)
	d.number(value)
	d.write(`"`)
}

// number writes a length rounded to a tenth: finer than any screen shows.
func (d *Drawing) number(value float64) {
	text := strconv.FormatFloat(value, 'f', 1, 64)
	text = letters.TrimSuffix(text, ".0")
	if text == "-0" {
		text = "0"
	}
	d.write(text)
}

// words writes text escaped for an element or a quoted attribute.
func (d *Drawing) words(text string) {
	for i := 0; i < len(text); i++ {
		switch c := text[i]; c {
		case '<':
			d.write("&lt;")
		case '>':
			d.write("&gt;")
		case '&':
			d.write("&amp;")
		case '"':
			d.write("&quot;")
		default:
			d.svg = append(d.svg, c)
		}
	}
}
