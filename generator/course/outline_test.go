package course

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"image"
	"image/jpeg"
	"io"
	"strings"
	"testing"
)

const outlineStart = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:p="urn:program" width="210mm" height="105mm" viewBox="0 0 210 105">`

// TestOutlines wants a drawing of a drawing program to be published as a file of its
// own, without what names its author and without links.
func TestOutlines(t *testing.T) {
	p, found := drawn("<?xml version=\"1.0\"?>\n<?xml-stylesheet href=\"http://a/b.css\"?><!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"http://www.w3.org/a.dtd\"><!-- /home/somebody -->" + strings.Replace(outlineStart, ">", ` p:file="/home/somebody/jar.svg">`, 1) +
		`<title>somebody</title><metadata><rdf/></metadata><p:view name="somebody"/><style>.a{fill:url(#g)}</style><defs><linearGradient id="g"/></defs>` +
		`<a xlink:href="https://somebody.example/"><path class="a" d="M0 0" style="fill:red;filter:url('#f')"/></a><use xlink:href="#g"/><text xml:space="preserve">a &lt; <tspan> b</tspan></text><animate attributeName="href"/><foreignObject><b/></foreignObject></svg>`)
	const want = `<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="105mm" viewBox="0 0 210 105">` +
		`<style>.a{fill:url(#g)}</style><defs><linearGradient id="g"></linearGradient></defs><g><path class="a" d="M0 0" style="fill:red;filter:url('#f')"></path></g><use href="#g"></use><text xml:space="preserve">a &lt; <tspan> b</tspan></text></svg>`
	if p == nil {
		t.Fatal(found)
	}
	if got := string(fileOf(t, p)); got != want || p.SVG != nil || p.Width != 544 || p.Height != 272 {
		t.Errorf("%d by %d\n%s\nwant\n%s", p.Width, p.Height, got, want)
	}
}

// TestOutlineFindings wants whatever runs or fetches in such a drawing to be refused.
func TestOutlineFindings(t *testing.T) {
	const outside, style = "the drawing fetches `", "a style of the drawing fetches something from outside"
	for _, c := range []struct{ inside, want string }{
		{`<script>alert(1)</script>`, "the drawing holds a script"},
		{`<p:script/>`, "the drawing holds a script"},
		{`<s:script xmlns:s="http://www.w3.org/2000/svg"/>`, "the drawing holds a script"},
		{`<path onclick="x()"/>`, "the attribute `onclick` runs a script"},
		{`<path OnLoad="x()"/>`, "the attribute `OnLoad` runs a script"},
		{`<image href="photo.jpg"/>`, outside + "photo.jpg` from outside"},
		{`<image xlink:href="file:///home/a/photo.jpg"/>`, outside + "file:///home/a/photo.jpg` from outside"},
		{`<use href="javascript:x()"/>`, outside + "javascript:x()` from outside"},
		{`<use href="data:image/png;base64,AA"/>`, outside + "data:image/png;base64,AA` from outside"},
		{`<image href="data:image/svg+xml,x"/>`, outside + "data:image/svg+xml,x` from outside"},
		{`<image href="data:image/png;base64,AAAA"/>`, "a picture of kind png within the drawing is of a kind that many browsers cannot show"},
		{`<path style="fill:url(http://a/b)"/>`, style},
		{`<path fill="URL( 'http://a/b')"/>`, style},
		{`<path style="fill:\75rl(http://a/b)"/>`, style},
		{`<style>@import "http://a/b";</style>`, style},
		{`<style>a{b:image-set("http://a/b")}</style>`, style},
		{`</svg>` + outlineStart, "a second element follows the svg element"},
		{strings.Repeat("<g>", 600) + strings.Repeat("</g>", 600), "the groups of the drawing are nested too deep"},
		{`<g>`, "this is not well-formed XML: element <g> closed by </svg>"},
		{`&ns;`, "this is not well-formed XML: invalid character entity &ns;"},
	} {
		p, found := drawn(outlineStart + c.inside + "</svg>")
		if p != nil || len(found) != 1 || found[0].Text != c.want || found[0].Do == "" {
			t.Errorf("%s: %v, %v", c.inside, p, found)
		}
	}
	if p, found := drawn(`<svg xmlns="http://www.w3.org/2000/svg" width="100%"/>`); p != nil || len(found) != 1 {
		t.Errorf("without a size: %v", found)
	}
}

// TestPictureInAnOutline wants a photo within a drawing to lose what a camera wrote.
func TestPictureInAnOutline(t *testing.T) {
	const secret = "54.3 N 9.7 E, kiln room"
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, 3, 2)), nil); err != nil {
		t.Fatal(err)
	}
	color := &bytes.Buffer{}
	if err := jpeg.Encode(color, image.NewYCbCr(image.Rect(0, 0, 3, 2), image.YCbCrSubsampleRatio420), nil); err != nil {
		t.Fatal(err)
	}
	told := append(append(append([]byte{}, color.Bytes()[:2]...), "\xff\xfe\x00\x19"+secret...), color.Bytes()[2:]...)
	p, found := drawn(outlineStart + `<image href="data:image/jpeg;base64,` + base64.StdEncoding.EncodeToString(told) + `"/></svg>`)
	if p == nil {
		t.Fatal(found)
	}
	if want := base64.StdEncoding.EncodeToString(color.Bytes()); !strings.Contains(string(fileOf(t, p)), `"data:image/jpeg;base64,`+want+`"`) {
		t.Errorf("%s, want the photo %s", fileOf(t, p), want)
	}
}

// onlyOutline wants nothing in an outline that could run or fetch.
func onlyOutline(t *testing.T, p *Picture) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(fileOf(t, p)))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return
		}
		if err != nil {
			t.Fatalf("%s: %v", fileOf(t, p), err)
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if start.Name.Space != svgSpace || !outlined[start.Name.Local] {
			t.Errorf("element %v", start.Name)
		}
		for _, a := range start.Attr {
			if strings.HasPrefix(strings.ToLower(a.Name.Local), "on") && len(a.Name.Local) > 2 || a.Name.Local == "href" && !strings.HasPrefix(a.Value, "#") && !strings.HasPrefix(a.Value, "data:image/") {
				t.Errorf("attribute %v", a)
			}
		}
	}
}
