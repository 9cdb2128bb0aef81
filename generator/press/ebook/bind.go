package ebook

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"crypto/sha1"
	"encoding/xml"
	"fmt"
	"hash/crc32"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"slipbook/generator/pool"
	"slipbook/generator/press/imprint"
)

// The files of an e-book.
const (
	mimetype    = "application/epub+zip"
	root        = "EPUB"
	packageFile = "package.opf"
	styleFile   = "style.css"
)

// entry is a file of the e-book, packed.
type entry struct {
	name       string // from root
	title      string
	properties []string // of a document, as the package names them
	header     zip.FileHeader
	packed     []byte
}

// newDocument packs a document, and finds what a package must say of it.
func newDocument(p *packer, d document, data []byte) (*entry, error) {
	e, err := p.pack(imprint.Document(d.address), data)
	if err != nil {
		return nil, err
	}
	e.title = d.title
	if d.address == contents {
		e.properties = append(e.properties, "nav")
	}
	for _, has := range []struct{ begins, property string }{{"<math", "mathml"}, {"<svg", "svg"}} {
		if bytes.Contains(data, []byte(has.begins)) {
			e.properties = append(e.properties, has.property)
		}
	}
	return e, nil
}

// packer packs files; what it works with is large, and is used again.
type packer struct{ writers sync.Pool }

// The two ways of packing. Of a course of 2,000 lessons hard packing takes as long as
// printing the e-book, and makes it an eighth smaller.
var hard, fast = newPacker(flate.DefaultCompression), newPacker(flate.BestSpeed)

// many documents are packed fast.
const many = 600

// packerFor is how that many documents are packed.
func packerFor(documents int) *packer {
	if documents > many {
		return fast
	}
	return hard
}

func newPacker(level int) *packer {
	p := &packer{}
	p.writers.New = func() any {
		w, err := flate.NewWriter(nil, level)
		if err != nil {
			panic(err) // the levels are good ones
		}
		return w
	}
	return p
}

// pack packs a file.
func (p *packer) pack(name string, data []byte) (*entry, error) {
	e := stored(name, data)
	w := p.writers.Get().(*flate.Writer)
	defer p.writers.Put(w)
	packed, err := imprint.Output(func(out *bytes.Buffer) error {
		w.Reset(out)
		if _, err := w.Write(data); err != nil {
			return err
		}
		return w.Close()
	})
	e.header.Method, e.packed = zip.Deflate, packed
	e.header.CompressedSize64 = uint64(len(packed))
	return e, err
}

// stored is a file as it is: a picture, which is packed already.
func stored(name string, data []byte) *entry {
	return &entry{name: name, packed: data, header: zip.FileHeader{
		Method: zip.Store, CRC32: crc32.ChecksumIEEE(data),
		//lint:ignore SA1019 what is written raw is dated by nothing else, and Modified would bring a field that the first file may not have
		ModifiedDate:     firstDay,
		CompressedSize64: uint64(len(data)), UncompressedSize64: uint64(len(data)),
	}}
}

// firstDay is 1 January 1980, the first that a zip file can say: all files of an
// e-book are of that day, so that the same course gives the same bytes.
const firstDay = 1<<5 | 1

// pictures packs the pictures that documents show, by name.
func (b *Book) pictures(e *imprint.Ebook) ([]*entry, error) {
	shown := e.Shown()
	names := slices.Sorted(maps.Keys(shown))
	entries := make([]*entry, len(names))
	err := pool.Try(len(names), 1, func(n int) error {
		data, err := shown[names[n]].Data()
		if err != nil {
			return fmt.Errorf("%s: %w", names[n], err)
		}
		entries[n] = stored(names[n], data)
		return nil
	})
	return entries, err
}

// bind writes the files into one: its kind first and unpacked, as the standard wants
// it, then what names the package, the package, and the rest.
func (b *Book) bind(documents, pictures []*entry) ([]byte, error) {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	container, err := hard.pack("META-INF/container.xml", []byte(containerXML))
	if err != nil {
		return nil, err
	}
	opf, err := hard.pack(path.Join(root, packageFile), b.packageXML(documents, pictures))
	if err != nil {
		return nil, err
	}
	style, err := hard.pack(path.Join(root, styleFile), b.theme.EbookStyle)
	if err != nil {
		return nil, err
	}
	all := []*entry{stored("mimetype", []byte(mimetype)), container, opf, style}
	for _, e := range slices.Concat(documents, pictures) {
		e.name = path.Join(root, e.name)
		all = append(all, e)
	}
	size := 0
	for _, e := range all {
		size += len(e.packed) + 2*len(e.name) + largestHeads
	}
	out.Grow(size)
	for _, e := range all {
		e.header.Name = e.name
		file, err := w.CreateRaw(&e.header)
		if err != nil {
			return nil, err
		}
		if _, err := file.Write(e.packed); err != nil {
			return nil, err
		}
		e.packed = nil // it may be the half of the memory
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// largestHeads is what a zip file says of a file beside its name, twice, in bytes.
const largestHeads = 160

const containerXML = `<?xml version="1.0" encoding="UTF-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
<rootfiles><rootfile full-path="` + root + "/" + packageFile + `" media-type="application/oebps-package+xml"/></rootfiles>
</container>
`

// packageXML is what the e-book says of itself: metadata, every file, the order of
// reading.
func (b *Book) packageXML(documents, pictures []*entry) []byte {
	var out bytes.Buffer
	put := func(form string, texts ...any) {
		for n := range texts {
			texts[n] = escape(fmt.Sprint(texts[n]))
		}
		fmt.Fprintf(&out, form+"\n", texts...)
	}
	put(`<?xml version="1.0" encoding="UTF-8"?>`)
	put(`<package xmlns="http://www.idpf.org/2007/opf" version="3.0" unique-identifier="id" xml:lang="%s" prefix="schema: http://schema.org/">`, b.course.Language)
	b.putMetadata(put, documents)
	put(`<manifest>`)
	put(`<item id="style" href="%s" media-type="text/css"/>`, styleFile)
	for n, d := range documents {
		properties := ""
		if len(d.properties) > 0 {
			properties = ` properties="` + strings.Join(d.properties, " ") + `"`
		}
		put(`<item id="d%s" href="%s" media-type="application/xhtml+xml"`+properties+`/>`, n, d.name)
	}
	for n, p := range pictures {
		put(`<item id="p%s" href="%s" media-type="%s"/>`, n, p.name, pictureKinds[path.Ext(p.name)])
	}
	put(`</manifest>`)
	put(`<spine>`)
	for n := range documents {
		put(`<itemref idref="d%s"/>`, n)
	}
	put(`</spine>`)
	put(`</package>`)
	return out.Bytes()
}

// putMetadata puts what the e-book is, whose, and how it can be read. It claims no
// conformance: a person has to have judged that.
func (b *Book) putMetadata(put func(form string, texts ...any), documents []*entry) {
	c := b.course
	put(`<metadata xmlns:dc="http://purl.org/dc/elements/1.1/">`)
	put(`<dc:identifier id="id">urn:uuid:%s</dc:identifier>`, b.identifier())
	put(`<dc:title>%s</dc:title>`, c.Title)
	put(`<dc:language>%s</dc:language>`, c.Language)
	for _, m := range []struct{ term, text string }{{"creator", c.Studio.Name}, {"description", c.Description}, {"rights", c.Licence}, {"date", edition(c)}} {
		if m.text != "" {
			put(`<dc:`+m.term+`>%s</dc:`+m.term+`>`, m.text)
		}
	}
	day := edition(c)
	if day == "" {
		day = "1980-01-01"
	}
	put(`<meta property="dcterms:modified">%sT00:00:00Z</meta>`, day)
	features := []string{"tableOfContents", "readingOrder", "structuralNavigation", "alternativeText", "displayTransformability", "unlocked"}
	if slices.ContainsFunc(documents, func(e *entry) bool { return slices.Contains(e.properties, "mathml") }) {
		features = append(features, "MathML")
	}
	for _, m := range []struct {
		property string
		values   []string
	}{
		{"accessMode", []string{"textual", "visual"}},
		{"accessModeSufficient", []string{"textual"}},
		{"accessibilityFeature", features},
		{"accessibilityHazard", []string{"none"}},
		{"accessibilitySummary", []string{b.theme.Say("ebook-accessible")}},
	} {
		for _, value := range m.values {
			put(`<meta property="schema:`+m.property+`">%s</meta>`, value)
		}
	}
	put(`</metadata>`)
}

// identifier is the same for every edition of a course: a UUID of version 5, of where
// it is published, or else of its title.
func (b *Book) identifier() string {
	space := []byte{0x6b, 0xa7, 0xb8, 0x11, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8} // of addresses, RFC 9562
	name := b.course.PublishedAt
	if name == "" {
		name = "urn:slipbook:" + b.course.Language + ":" + b.course.Title
	}
	if b.teaching {
		name += "#teaching"
	}
	u := sha1.Sum(append(space, name...))
	u[6], u[8] = u[6]&0x0f|0x50, u[8]&0x3f|0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", u[:4], u[4:6], u[6:8], u[8:10], u[10:16])
}

// pictureKinds are the media types of pictures, by the endings of their names.
var pictureKinds = map[string]string{".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".png": "image/png", ".svg": "image/svg+xml", ".webp": "image/webp", ".gif": "image/gif"}

// escape makes text safe in XML, in attributes as well.
func escape(text string) string {
	var out strings.Builder
	_ = xml.EscapeText(&out, []byte(text)) // writing into memory does not fail
	return out.String()
}
