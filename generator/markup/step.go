package markup

import (
	"hash/fnv"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
)

// StepList is an ordered list that stands by itself on its page and not in a list, a
// quotation, a footnote or one of the handbook's own blocks: steps.
type StepList struct {
	First int // the number of its first step, through the whole page
	Start int // the number that it begins with as it is written
}

// Step is an item of such a list.
type Step struct {
	Number int    // through the whole page, from 1
	Key    string // made of its words, another for each step of the page: it stays while they do
	Waits  []Wait // how long it says to wait or to go on, in order
	Until  string // what it waits for: the words of a link to a state of the clay, or Shine; empty = nothing
}

// Shine stands in Step.Until for a wet shine that goes as a coat dries.
const Shine = "shine"

// stepID is the id of a step. A heading's id is never one.
const stepID = "step-"

// StepID returns the id of the step with a number on its page.
func StepID(number int) string { return stepID + strconv.Itoa(number) }

// StepNumber returns the number of the step that an id names; not ok for the id of
// anything else.
func StepNumber(id string) (number int, ok bool) {
	digits, ok := strings.CutPrefix(id, stepID)
	if !ok || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	number, err := strconv.Atoi(digits)
	return number, err == nil
}

// isStepID reports whether an id is that of a step.
func isStepID(id string) bool {
	_, is := StepNumber(id)
	return is
}

// noteSteps numbers the steps through the page. It runs while the tree still holds
// all words.
func (p *page) noteSteps(tree ast.Node) {
	seen := map[string]int{}
	for n := tree.FirstChild(); n != nil; n = n.NextSibling() {
		list, ok := n.(*ast.List)
		if !ok || !list.IsOrdered() {
			continue
		}
		p.lists[list] = &StepList{First: len(p.doc.Steps) + 1, Start: list.Start}
		for item := list.FirstChild(); item != nil; item = item.NextSibling() {
			words, state := p.stepWords(item)
			step := &Step{Number: len(p.doc.Steps) + 1, Key: keyOf(words), Waits: waits(words), Until: waitsFor(words, state)}
			if seen[step.Key]++; seen[step.Key] > 1 {
				step.Key += "." + strconv.Itoa(seen[step.Key])
			}
			p.doc.Steps, p.steps[item] = append(p.doc.Steps, step), step
		}
	}
}

// stepWords returns a step's own words, without the lists and blocks that it may
// hold, and those of its first link to a state of the clay.
func (p *page) stepWords(item ast.Node) (words, state string) {
	var b strings.Builder
	for c := item.FirstChild(); c != nil; c = c.NextSibling() {
		if c.Kind() != ast.KindTextBlock && c.Kind() != ast.KindParagraph {
			continue
		}
		write(&b, c, p.Source)
		b.WriteByte(' ')
		for in := c.FirstChild(); in != nil; in = in.NextSibling() {
			if link, ok := in.(*ast.Link); ok && state == "" && strings.HasPrefix(string(link.Destination), "state:") {
				state = plain(link, p.Source)
			}
		}
	}
	return strings.TrimSpace(b.String()), state
}

// keyOf makes a short key of words: the same as long as they are.
func keyOf(words string) string {
	sum := fnv.New32a()
	_, _ = sum.Write([]byte(words)) // a hash takes everything
	return strconv.FormatUint(uint64(sum.Sum32()), 36)
}

// renderList sets lists of steps as pieces, and prints others as goldmark does.
func renderList(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n, s := node.(*ast.List), w.(*setter)
	if list := s.page.lists[n]; list != nil {
		s.set(Piece{StepList: list, End: !entering})
		return ast.WalkContinue, nil
	}
	s.printed = append(s.printed, listTag(n.IsOrdered(), n.Start, !entering)...)
	return ast.WalkContinue, nil
}

// listTag is where a list begins or ends.
func listTag(ordered bool, start int, end bool) string {
	switch {
	case !ordered && end:
		return "</ul>\n"
	case !ordered:
		return "<ul>\n"
	case end:
		return "</ol>\n"
	case start == 1:
		return "<ol>\n"
	}
	return `<ol start="` + strconv.Itoa(start) + "\">\n"
}

// itemBegins sets where an item of a list begins.
func (s *setter) itemBegins(n ast.Node) {
	if step := s.page.steps[n]; step != nil {
		s.set(Piece{Step: step})
	} else {
		s.printed = append(s.printed, "<li>"...)
	}
	if first := n.FirstChild(); first != nil && first.Kind() != ast.KindTextBlock {
		s.printed = append(s.printed, '\n')
	}
	s.runFrom(n)
}

// Parts returns the headings of the second level outside the handbook's own blocks:
// where the parts of the page begin.
func (d *Document) Parts() []*Heading {
	var parts []*Heading
	for _, h := range d.Headings {
		if h.Level == 2 && !h.Inner {
			parts = append(parts, h)
		}
	}
	return parts
}

// inner reports whether a heading stands inside something else on its page.
func inner(h *ast.Heading) bool {
	return within(h) != nil || inside(h, ast.KindBlockquote) || inside(h, ast.KindListItem) || inside(h, xast.KindDefinitionDescription)
}
