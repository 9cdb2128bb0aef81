package theme

import (
	"fmt"
	"html/template"
	"regexp"
	"strings"
	"text/template/parse"
)

// A theme writes each piece once, for pages. For the book its templates are
// changed before they are used: what they mark with data-screen, which only a
// screen can show, is left out; headings stand a level lower; and behind the words
// of a link stands the number of the chapter that it leads to. Nothing that was
// printed is read again for it.

// NumberSign parts the address of another chapter from its number, in views of
// the book alone: its templates part the two.
const NumberSign = "\t"

// The functions that the book's templates call beside those that a theme writes.
const (
	targetIn  = "target"  // of an address of a view: where it leads
	chapterIn = "chapter" // of the same: the number of the chapter there, as HTML
)

// Target returns the address without the number of its chapter.
func Target(to string) string {
	to, _, _ = strings.Cut(to, NumberSign)
	return to
}

func chapter(to string) template.HTML {
	_, number, _ := strings.Cut(to, NumberSign)
	return ChapterTo(number)
}

// ChapterTo is the number behind a link to another chapter, since paper cannot be
// pressed.
func ChapterTo(number string) template.HTML {
	if number == "" {
		return ""
	}
	return template.HTML(`<span class="chapter-to">&#160;(` + number + `)</span>`)
}

var (
	screenMark  = regexp.MustCompile(` data-screen([ >])`)
	markLeft    = regexp.MustCompile(`\bdata-screen\b`)
	screenBegin = regexp.MustCompile(`<([a-z][a-z0-9-]*) data-screen[ >]`)
	headingTag  = regexp.MustCompile(`(</?h)([1-5])\b`)
	linkBegin   = regexp.MustCompile(`\shref="$`)
)

// onlyOnScreen reports whether a drawing is marked as one that only a screen
// shows.
func onlyOnScreen(drawing string) bool { return screenMark.MatchString(drawing) }

// prepare makes a template one of a use.
func prepare(tree *parse.Tree, of use) error {
	if of == onPages {
		for _, l := range lists(tree.Root) {
			eachText(l, func(text string) string { return screenMark.ReplaceAllString(text, "$1") })
		}
		return marksLeft(tree)
	}
	// What is left out goes with all the lists within it: outer lists come first.
	err := leaveOut(tree.Root)
	visit(tree.Root, func(n parse.Node) {
		if l, ok := n.(*parse.ListNode); ok && err == nil {
			err = leaveOut(l)
		}
	})
	if err != nil {
		return fmt.Errorf("template %q: %w", tree.Name, err)
	}
	if err := marksLeft(tree); err != nil {
		return err
	}
	if of == inEbook {
		return asXHTML(tree)
	}
	for _, l := range lists(tree.Root) {
		eachText(l, lower)
		if err := numberLinks(tree, l); err != nil {
			return fmt.Errorf("template %q: %w", tree.Name, err)
		}
	}
	return nil
}

// marksLeft reports a mark that stands where none is looked for: it would stay on
// the pages, and its element in the book.
func marksLeft(tree *parse.Tree) error {
	for _, l := range lists(tree.Root) {
		for _, n := range l.Nodes {
			if text, ok := n.(*parse.TextNode); ok && markLeft.Match(text.Text) {
				return fmt.Errorf("template %q: write data-screen as the first attribute of its element, with a space or > behind it", tree.Name)
			}
		}
	}
	return nil
}

// lower puts headings a level lower.
func lower(text string) string {
	return headingTag.ReplaceAllStringFunc(text, func(tag string) string {
		return tag[:len(tag)-1] + string(tag[len(tag)-1]+1)
	})
}

// leaveOut takes the elements out of a list that are marked for screens. One that
// ends elsewhere than in the list in which it begins cannot be left out.
func leaveOut(l *parse.ListNode) error {
	var kept []parse.Node
	var open screenElement
	for _, n := range l.Nodes {
		text, ok := n.(*parse.TextNode)
		switch {
		case ok:
			text.Text = []byte(open.keep(string(text.Text)))
			kept = append(kept, text)
		case open.name == "":
			kept = append(kept, n)
		}
	}
	l.Nodes = kept
	if open.name != "" {
		return fmt.Errorf("<%s data-screen> does not end in the branch in which it begins, so the book cannot leave it out", open.name)
	}
	return nil
}

// screenElement is an element being left out.
type screenElement struct {
	name  string // empty while none is
	depth int    // of elements of its name
}

// keep returns what a text holds outside such elements.
func (e *screenElement) keep(text string) string {
	var kept strings.Builder
	for text != "" {
		if e.name == "" {
			m := screenBegin.FindStringSubmatchIndex(text)
			if m == nil {
				kept.WriteString(text)
				break
			}
			kept.WriteString(text[:m[0]])
			e.name, e.depth = text[m[2]:m[3]], 1
			text = text[m[3]:]
			continue
		}
		// A tag's name may end a text: what follows is for the template to say.
		tag := regexp.MustCompile(`</?` + e.name + `(?:[\s>]|$)`).FindStringIndex(text)
		if tag == nil {
			break
		}
		if text[tag[0]+1] == '/' {
			e.depth--
		} else {
			e.depth++
		}
		if text = text[tag[1]:]; e.depth == 0 {
			e.name = ""
		}
	}
	return kept.String()
}

// numberLinks puts the chapter's number behind the words of each link of a list.
func numberLinks(tree *parse.Tree, l *parse.ListNode) error {
	for i := 0; i+1 < len(l.Nodes); i++ {
		text, isText := l.Nodes[i].(*parse.TextNode)
		if !isText || !linkBegin.Match(text.Text) || !inLink(l.Nodes[:i+1]) {
			continue
		}
		to, isAction := l.Nodes[i+1].(*parse.ActionNode)
		if !isAction {
			return fmt.Errorf("a link begins with %s where an address must stand, so the book cannot number it", l.Nodes[i+1])
		}
		number := to.Copy().(*parse.ActionNode)
		to.Pipe.Cmds = append(to.Pipe.Cmds, call(tree, targetIn))
		number.Pipe.Cmds = append(number.Pipe.Cmds, call(tree, chapterIn))
		if !putBefore(l, i+2, "</a>", number) {
			return fmt.Errorf("the link to %s does not end in the branch in which it begins, so the book cannot number it", number)
		}
	}
	return nil
}

// inLink reports whether the last tag that nodes begin is that of a link.
func inLink(nodes []parse.Node) bool {
	for i := len(nodes) - 1; i >= 0; i-- {
		if text, ok := nodes[i].(*parse.TextNode); ok {
			if at := strings.LastIndexByte(string(text.Text), '<'); at >= 0 {
				return strings.HasPrefix(string(text.Text[at:]), "<a")
			}
		}
	}
	return false
}

// call makes the call of a function without arguments of its own.
func call(tree *parse.Tree, name string) *parse.CommandNode {
	id := parse.NewIdentifier(name).SetTree(tree)
	return &parse.CommandNode{NodeType: parse.NodeCommand, Args: []parse.Node{id}}
}

// putBefore puts a node before the first place behind a number of nodes where a
// text stands.
func putBefore(l *parse.ListNode, after int, mark string, node parse.Node) bool {
	for i := after; i < len(l.Nodes); i++ {
		text, ok := l.Nodes[i].(*parse.TextNode)
		if !ok {
			continue
		}
		at := strings.Index(string(text.Text), mark)
		if at < 0 {
			continue
		}
		behind := &parse.TextNode{NodeType: parse.NodeText, Pos: text.Pos, Text: text.Text[at:]}
		nodes := append([]parse.Node{}, l.Nodes[:i]...)
		nodes = append(nodes, &parse.TextNode{NodeType: parse.NodeText, Pos: text.Pos, Text: text.Text[:at:at]}, node, behind)
		l.Nodes = append(nodes, l.Nodes[i+1:]...)
		return true
	}
	return false
}
