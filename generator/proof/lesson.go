package proof

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// checkHead warns of a lesson whose opening block does not say what it is
// for, how long it takes and what it needs. What is only read needs nothing on the
// bench, and a sheet to print says what it is by its title.
func checkHead(s *checking) {
	head := s.page.Head
	if head.Type == course.ForPaper {
		return
	}
	if len(head.Teaches) == 0 {
		s.find(-1, finding.LessonAim, "this lesson does not say what it teaches",
			"Add “teaches:” to its opening block, with a list of what the student will be able to do.")
	}
	if head.TimeRequired == 0 {
		s.find(-1, finding.LessonTime, "this lesson does not say how long it takes",
			"Add “timeRequired:” to its opening block, such as PT30M for half an hour.")
	}
	if len(head.Needs) == 0 && head.Type == course.ForBench {
		s.find(-1, finding.LessonNeeds, "this lesson does not say what to have on the bench",
			"Add “needs:” to its opening block, with a list of it.")
	}
}

// enoughQuestions is how many questions a lesson has at least.
const enoughQuestions = 3

// checkParts warns of a lesson without the parts that a student at the bench
// looks for.
func (r *rules) checkParts(s *checking) {
	if !s.prose.Steps {
		s.find(-1, finding.LessonSteps, "this lesson has no steps", "Write what to do as a numbered list, one action a step: 1. Stir the jar.")
	}
	if look := r.sections.Look; len(looks(s.doc, r.sections)) == 0 {
		s.lacks(look, finding.LessonLooks, "this lesson does not list what one sees when it is right",
			"there is no list in this part", "with a list in it, each item on a line of its own after a hyphen and a space.")
	}
	if wrong := r.sections.Wrong; len(faults(s.doc, r.sections)) == 0 {
		s.lacks(wrong, finding.LessonFaults, "this lesson does not say what goes wrong",
			"nothing in this part has the form of a fault", "in which what is seen stands on a line of its own, and on the line under it “: ” with why and what then.")
	}
	if medium := s.page.Head.Medium; medium != "" && !namesState(s.doc) {
		s.find(-1, finding.LessonState, fmt.Sprintf("this lesson is about `%s`, and names no state of the clay", medium),
			"Link the state that the pot must be in, such as [leather-hard](state:leather-hard), or name it in a stages block.")
	}
	if n := len(s.doc.Named(markup.QuestionBlock)); n < enoughQuestions {
		s.find(-1, finding.FewQuestions, "this lesson has "+count(n, "question")+"; three or more let one check oneself",
			"Add blocks ```question with the answers that are often given.")
	}
}

// lacks reports a part of a lesson that is not there, or whose words stand there in
// another form.
func (c *checking) lacks(heading string, rule *finding.Rule, absent, formless, form string) {
	at := headingAt(c.doc, heading)
	if at < 0 {
		c.find(at, rule, absent, fmt.Sprintf("Write a part “## %s” %s", heading, form))
		return
	}
	c.find(at, rule, formless, fmt.Sprintf("Write “## %s” as a part %s", heading, form))
}

// headingAt returns the offset of the first heading with some words, below zero
// where the page has none.
func headingAt(d *markup.Document, words string) int {
	for _, h := range d.Headings {
		if strings.EqualFold(h.Text, words) {
			return h.Offset
		}
	}
	return -1
}

// looks returns what a page says to look for: the items of the lists under the
// course's heading for that.
func looks(d *markup.Document, named course.Sections) []*markup.Span {
	var all []*markup.Span
	for _, h := range d.Headings {
		if strings.EqualFold(h.Text, named.Look) {
			all = append(all, h.Items...)
		}
	}
	return all
}

// faults returns what a page says goes wrong: the pairs of the definition lists
// under the course's heading for that.
func faults(d *markup.Document, named course.Sections) []markup.Pair {
	var all []markup.Pair
	for _, h := range d.Headings {
		if strings.EqualFold(h.Text, named.Wrong) {
			all = append(all, h.Pairs...)
		}
	}
	return all
}

// namesState reports whether a page links to a state or shows one.
func namesState(d *markup.Document) bool {
	for _, made := range d.Made() {
		if strings.HasPrefix(made, stateScheme) {
			return true
		}
	}
	for _, b := range d.Named(markup.StagesBlock) {
		if b.Part.State.ID != "" {
			return true
		}
	}
	return false
}

// How many sentences a caution has: the hazard and what to do, and no more than
// is read at the bench.
const (
	fewestSentences = 2
	mostSentences   = 6
)

// checkCautions warns of cautions that are not in their form.
func checkCautions(s *checking) {
	for _, c := range s.prose.Cautions {
		if c.Title == "" {
			s.find(c.Offset, finding.CautionForm, "a caution that does not name its hazard", "Write it on the opening line: caution Dust.")
		}
		n := 0
		for _, p := range s.prose.Passages[c.First:c.Last] {
			if p.Kind != markup.RunningWords {
				continue
			}
			for range sentences(s.prose.Text[p.Start:p.End]) {
				n++
			}
		}
		if n > 0 && n < fewestSentences || n > mostSentences { // one without words is an error already
			s.find(c.Offset, finding.CautionForm, "this caution has "+count(n, "sentence")+"; "+fmt.Sprintf("it wants %d to %d", fewestSentences, mostSentences),
				"Say what the hazard is, what happens, and what to do; the rest belongs in the text.")
		}
		if !c.Guards {
			s.find(c.Offset, finding.CautionForm, "nothing follows this caution in its part of the page", "Put it right before the step that it guards, under the same heading.")
		}
	}
}

// stepNumber finds a step that is named by its number, but for its first letter: with a
// fixed beginning it is looked for ten times faster.
var stepNumber = regexp.MustCompile(`teps?[ \x{a0}](\d+)`)

// namedSteps returns where steps are named by their numbers, and where the numbers stand.
func namedSteps(text string) [][]int {
	var all [][]int
	for _, m := range stepNumber.FindAllStringSubmatchIndex(text, -1) {
		if m[0]--; m[0] < 0 || text[m[0]] != 's' && text[m[0]] != 'S' {
			continue
		}
		if before, _ := utf8.DecodeLastRuneInString(text[:m[0]]); !unicode.IsLetter(before) {
			all = append(all, m)
		}
	}
	return all
}

// checkStepNumbers warns of numbers of steps that no link leads to: nobody would see
// that they are wrong once a step is added.
func checkStepNumbers(s *checking) {
	for _, m := range namedSteps(s.prose.Text) {
		linked := slices.ContainsFunc(s.prose.Links, func(l markup.Linked) bool { return l.Start <= m[0] && m[1] <= l.End })
		at, _ := slices.BinarySearchFunc(s.prose.Passages, m[0], func(p markup.Passage, at int) int { return cmp.Compare(p.End, at+1) })
		if linked || at == len(s.prose.Passages) || s.prose.Passages[at].Kind == markup.HeadingLine {
			continue
		}
		words, number := s.prose.Text[m[0]:m[1]], s.prose.Text[m[2]:m[3]]
		s.find(s.prose.Offset(m[0]), finding.StepNumber, fmt.Sprintf("“%s” is no link, so nobody sees when it is another step", words),
			fmt.Sprintf("Link it: [%s](#step-%s), or with the path of the lesson that has the step before the #.", words, number))
	}
}

// fewestPictureWords is how many words can say what a picture teaches.
const fewestPictureWords = 5

// checkPictureWords warns of pictures whose words only name what is seen.
func checkPictureWords(s *checking) {
	for _, p := range s.prose.Passages {
		if p.Kind != markup.PictureWords {
			continue
		}
		n := 0
		for sentence := range sentences(s.prose.Text[p.Start:p.End]) {
			n += sentence.words
		}
		if n < fewestPictureWords {
			s.find(p.Offset, finding.PictureTeaches, fmt.Sprintf("the words in the place of this picture are %d, too few to say what it teaches", n),
				"Write in the square brackets what is seen and what it teaches, for whoever cannot see it.")
		}
	}
}

// count returns a number with its noun.
func count(n int, noun string) string {
	switch n {
	case 0:
		return "no " + noun
	case 1:
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
