package theme

import (
	"fmt"
	"strings"
	"text/template/parse"
)

// An e-book is XHTML. A theme writes its templates once, as HTML; for the e-book
// they are changed before they are used: an element that has no content is closed,
// an attribute without a value gets an empty one. What pieces, drawings and formulas
// print is well formed already. What opens stands open. So nothing that was printed is read again.

// forEbook is what the name of a template begins with that an e-book has in the place
// of the one whose name follows.
const forEbook = "ebook:"

// ebookOnly reports whether a template is for e-books alone.
func ebookOnly(name string) bool { return strings.HasPrefix(name, "ebook") }

// empties are the elements of HTML that hold nothing and have no end.
var empties = map[string]bool{"area": true, "base": true, "br": true, "col": true, "embed": true, "hr": true, "img": true, "input": true,
	"link": true, "meta": true, "source": true, "track": true, "wbr": true}

// unfold makes what opens on a page stand open: few reading systems open anything, and
// none does on paper.
var unfold = strings.NewReplacer("<details", "<div", "</details>", "</div>", "<summary>", `<div class="fold">`, "</summary>", "</div>")

// closer is where in the markup a template is. Branches begin where the list stands in
// which they are, and html/template wants them to end alike.
type closer struct {
	part  part
	name  string // of the tag
	quote byte   // of the value
	slash bool   // the last sign of the tag was one
}

type part int

const (
	inText part = iota
	inSign      // <!doctype html>
	inName
	inTag
	inAttribute
	beforeValue
	inValue
)

// asXHTML makes a template one of XHTML.
func asXHTML(tree *parse.Tree) error {
	for _, l := range lists(tree.Root) {
		eachText(l, unfold.Replace)
	}
	var c closer
	if err := c.list(tree.Root); err != nil {
		return fmt.Errorf("template %q: %w", tree.Name, err)
	}
	return nil
}

func (c *closer) list(l *parse.ListNode) error {
	if l == nil {
		return nil
	}
	for _, n := range l.Nodes {
		var b *parse.BranchNode
		switch n := n.(type) {
		case *parse.TextNode:
			n.Text = c.text(n.Text)
		case *parse.IfNode:
			b = &n.BranchNode
		case *parse.RangeNode:
			b = &n.BranchNode
		case *parse.WithNode:
			b = &n.BranchNode
		}
		if c.part == beforeValue {
			return fmt.Errorf("the value of an attribute of <%s> stands without quotes, so an e-book cannot have it", c.name)
		}
		if b == nil {
			continue
		}
		other := *c
		if err := c.list(b.List); err != nil {
			return err
		}
		if err := other.list(b.ElseList); err != nil {
			return err
		}
	}
	return nil
}

// text returns a text as XHTML has it.
func (c *closer) text(text []byte) []byte {
	out := make([]byte, 0, len(text)+8)
	for _, sign := range text {
		out = append(c.before(out, sign), sign)
		c.read(sign)
	}
	return c.before(out, 0)
}

// before adds what is missing before the next sign of a text; 0 is its end.
func (c *closer) before(out []byte, next byte) []byte {
	if c.part == inAttribute && (next == 0 || next == '>' || next == '/' || space(next)) {
		c.part = inTag
		out = append(out, `=""`...)
	}
	if (c.part == inTag || c.part == inName) && next == '>' && empties[c.name] && !c.slash {
		out = append(out, '/')
	}
	return out
}

// read goes on by a sign.
func (c *closer) read(sign byte) {
	switch c.part {
	case inText:
		if sign == '<' {
			*c = closer{part: inName}
		}
	case inSign:
		c.endAt(sign)
	case inName:
		switch {
		case sign == '!' && c.name == "":
			c.part = inSign
		case space(sign) || sign == '/' && c.name != "":
			c.part, c.slash = inTag, sign == '/'
		case !c.endAt(sign):
			c.name += string(sign)
		}
	case inTag:
		if !space(sign) && sign != '/' && !c.endAt(sign) {
			c.part = inAttribute
		}
		c.slash = sign == '/'
	case inAttribute:
		if sign == '=' {
			c.part = beforeValue
		}
	case beforeValue:
		if sign == '"' || sign == '\'' {
			c.part, c.quote = inValue, sign
		}
	case inValue:
		if sign == c.quote {
			c.part = inTag
		}
	}
}

// endAt ends the tag if the sign does.
func (c *closer) endAt(sign byte) bool {
	if sign == '>' {
		c.part = inText
	}
	return sign == '>'
}

func space(sign byte) bool { return sign == ' ' || sign == '\n' || sign == '\t' || sign == '\r' }
