package proof

import (
	"fmt"
	"strings"
	"sync"
	"unicode"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// pairs are words as American and British writers spell them, with the endings
// that both take. A word that stands in both (practice, meter for what one
// reads, sulfur, program, plow) is left out. < and > mark a pair of which only
// the first, or only the second, word is foreign on the other side; # one of
// which the first is so only behind a number.
const pairs = `
aluminum aluminium
armor armour s ed
behavior behaviour s al
caliber calibre s
catalog catalogue s
center centre s
centerline centreline s
centerpiece centrepiece s
centimeter centimetre s
color colour s ed ing ful fully ings less ist ists fast
colorway colourway s
cozy cosy
defense defence s less
discolor discolour s ed ing
endeavor endeavour s ed ing
enroll enrol s
favor favour s ed ing able ably
favorite favourite s
fiber fibre s
fiberboard fibreboard s
fiberglass fibreglass
flavor flavour s ed ing ings less
fulfill fulfil s
gray grey s ed er est ing ish ness
grayscale greyscale
harbor harbour s ed ing
honor honour s ed ing able
humor humour s ed
jeweler jeweller s
jewelry jewellery
kilometer kilometre s
labor labour s ed ing er ers
liter litre s
luster lustre s
lusterware lustreware
maneuver manoeuvre s
marvelous marvellous ly
meager meagre ly
milliliter millilitre s
millimeter millimetre s
mold mould s ed ing ings y er ers
multicolored multicoloured
neighbor neighbour s ing ly hood hoods
ocher ochre s
odor odour s less
offense offence s
pretense pretence s
rumor rumour s ed
savor savour s ed ing y
skeptic sceptic s al ism
skillful skilful ly
smolder smoulder s ed ing
somber sombre ly
theater theatre s
tumor tumour s
uncolored uncoloured
unlabeled unlabelled
vapor vapour s
watercolor watercolour s ist ists
woolen woollen s

centered centred
centering centring
labeled labelled
maneuvered manoeuvred
maneuvering manoeuvring
analyze analyse d r rs
analyzing analysing
<analyzes analyses
<esthetic aesthetic s ally
>license licence s
>artifact artefact s
>meter metre s
#meter metre s

beveled bevelled
beveling bevelling
canceled cancelled
canceling cancelling
channeled channelled
channeling channelling
chiseled chiselled
chiseling chiselling
enameled enamelled
enameling enamelling
enameler enameller s
fueled fuelled
fueling fuelling
funneled funnelled
funneling funnelling
labeling labelling
leveled levelled
leveling levelling
modeled modelled
modeling modelling
modeler modeller s
paneled panelled
paneling panelling
penciled pencilled
penciling pencilling
shoveled shovelled
shoveling shovelling
shriveled shrivelled
shriveling shrivelling
signaled signalled
signaling signalling
stenciled stencilled
stenciling stencilling
swiveled swivelled
swiveling swivelling
totaled totalled
totaling totalling
traveled travelled
traveling travelling
traveler traveller s
troweled trowelled
troweling trowelling
unraveled unravelled
`

// spelling knows the words that are spelt otherwise on the other side. A nil one
// finds nothing.
type spelling struct {
	foreign, own string // "American", "British"
	words        map[string]counterpart
	begins       [1 << 15]bool // by the first three letters of a word; most words end here
}

// counterpart is how a foreign word is spelt here.
type counterpart struct {
	word   string
	number bool // it is foreign only behind a number
}

var (
	british  = sync.OnceValue(func() *spelling { return newSpelling("American", "British") })
	american = sync.OnceValue(func() *spelling { return newSpelling("British", "American") })
)

// spellingOf returns the spelling of a language tag; nil where nothing is to be
// checked, as in languages that mix the two or are not English.
func spellingOf(tag string) *spelling {
	parts := strings.Split(strings.ToLower(tag), "-")
	if parts[0] != "en" {
		return nil
	}
	for _, region := range parts[1:] {
		switch region {
		case "gb", "au", "nz", "ie", "za":
			return british()
		case "us":
			return american()
		}
	}
	return nil
}

func newSpelling(foreign, own string) *spelling {
	s := &spelling{foreign: foreign, own: own, words: make(map[string]counterpart)}
	for line := range strings.Lines(pairs) {
		fields := strings.Fields(line)
		if len(fields) == 0 {
			continue
		}
		us, mark := strings.TrimLeft(fields[0], "<>#"), fields[0][0]
		from, to := us, fields[1]
		if own == "American" {
			from, to = to, from
		}
		if own == "American" && (mark == '<' || mark == '#') || own == "British" && mark == '>' {
			continue
		}
		for _, ending := range append(fields[2:], "") {
			s.add(from+ending, counterpart{strings.TrimLeft(to, "<>#") + ending, mark == '#'})
		}
	}
	return s
}

func (s *spelling) add(word string, own counterpart) {
	s.words[word] = own
	s.begins[threeOf(word)] = true
}

// threeOf returns the place of a word's first three letters, whatever their
// capitals. Other signs share the places of letters.
func threeOf(word string) int { return int(word[0]&31)<<10 | int(word[1]&31)<<5 | int(word[2]&31) }

// check finds foreign words in a sentence. A word with a capital is a name
// unless it begins the sentence; what is joined to digits or signs of an
// address is none.
func (s *spelling) check(sentence string, find func(at int, text, do string)) {
	if s == nil {
		return
	}
	first := true
	for i := 0; i < len(sentence); {
		end := wordEnd(sentence, i)
		if end == i {
			i++ // the bytes of a longer sign begin no word either
			continue
		}
		word := sentence[i:end]
		named := !first && word[0] < 'a'
		first = false
		if own, ok := s.foreignWord(word); ok && !named && standsAlone(sentence, i, end) && (!own.number || behindNumber(sentence[:i])) {
			find(i, fmt.Sprintf("“%s” is the %s spelling, and this handbook is in %s English", word, s.foreign, s.own), "Write “"+likeCase(word, own.word)+"”.")
		}
		i = end
	}
}

// foreignWord looks a word up, whatever its capitals.
func (s *spelling) foreignWord(word string) (counterpart, bool) {
	if len(word) < 4 || !s.begins[threeOf(word)] {
		return counterpart{}, false
	}
	own, ok := s.words[strings.ToLower(word)]
	return own, ok
}

// standsAlone reports whether what is next to a word leaves it a word: not in
// "color.css", "my_color" or "https://color".
func standsAlone(text string, start, end int) bool {
	joined := func(at, further int) bool {
		if at < 0 || further < 0 || at >= len(text) || further >= len(text) {
			return false
		}
		switch text[at] {
		case '_', '@', '\\':
			return true
		case '/':
			return text[further] == '/'
		case '.', ':':
			return text[further] == '/' || signs[text[further]] == wordSign
		}
		return false
	}
	return !joined(start-1, start-2) && !joined(end, end+1)
}

// behindNumber reports whether a text ends with a number and a blank.
func behindNumber(text string) bool {
	rest := strings.TrimRightFunc(text, func(c rune) bool { return unicode.IsSpace(c) || c == '-' })
	return len(rest) < len(text) && rest != "" && rest[len(rest)-1] >= '0' && rest[len(rest)-1] <= '9'
}

// likeCase returns a word the capitals of another.
func likeCase(like, word string) string {
	switch {
	case like == strings.ToUpper(like):
		return strings.ToUpper(word)
	case like[0] < 'a':
		return strings.ToUpper(word[:1]) + word[1:]
	}
	return word
}

// checkHead looks through the texts of a page's opening block. Their places
// are not known.
func (s *spelling) checkHead(on *checking) {
	head := on.page.Head
	for _, texts := range [][]string{{head.Title, head.Description}, head.Teaches, head.Needs} {
		for _, text := range texts {
			s.checkText(text, func(fault, do string) {
				on.find(-1, finding.TwoSpellings, "in the opening block: "+fault, do)
			})
		}
	}
}

// checkText looks through a text of several sentences.
func (s *spelling) checkText(text string, find func(fault, do string)) {
	if s == nil {
		return
	}
	for sentence := range sentences(text) {
		s.check(text[sentence.start:sentence.end], func(_ int, fault, do string) { find(fault, do) })
	}
}

// The files whose texts are checked without their places.
const (
	glossaryFile   = "glossary.yaml"
	faultsFile     = "faults.yaml"
	hazardsFile    = "hazards.yaml"
	decorationFile = "decoration.yaml"
)

// checkTables looks through the glossary and the decoration table. What a
// student may type (other words for a term, words for a medium) is left out: it
// may be in either spelling. A finding names the entry, since its line is not
// known.
func (s *spelling) checkTables(c *course.Course) finding.List {
	if s == nil {
		return nil
	}
	var all finding.List
	check := func(file, entry string, texts ...string) {
		for _, text := range texts {
			if c.Decoration.FromProgram(text) {
				continue // nobody can mend it in this course
			}
			s.checkText(text, func(fault, do string) {
				all = append(all, finding.Finding{File: file, Line: 1, Column: 1, Rule: finding.TwoSpellings,
					Text: fmt.Sprintf("in `%s`: %s", entry, fault), Do: do})
			})
		}
	}
	for _, t := range c.Glossary {
		check(glossaryFile, t.ID, t.Word, t.Means)
	}
	for _, f := range c.Faults {
		check(faultsFile, f.ID, f.Sees, f.Alt, f.Looks)
	}
	if d := c.Decoration; d != nil {
		checkHazards(d, func(entry string, texts ...string) { check(hazardsFile, entry, texts...) })
		checkDecoration(d, func(entry string, texts ...string) { check(decorationFile, entry, texts...) })
	}
	return all
}

// checkHazards hands out the texts of the hazards and places.
func checkHazards(d *course.Decoration, check func(entry string, texts ...string)) {
	for _, h := range d.Hazards {
		check(h.ID, h.Title, h.Harm, h.Do, h.Short)
		check(h.ID, h.Wear...)
	}
	for _, p := range d.Places {
		check(p.ID, p.Name)
	}
}

// checkDecoration hands out the texts of the decoration table.
func checkDecoration(d *course.Decoration, check func(entry string, texts ...string)) {
	pair := func(entry string, p course.Pair) { check(entry, p.Short, p.Reason, p.Fault, p.Remedy, p.Ask) }
	pairs := func(entry string, on map[string]course.Pair) {
		for _, state := range d.States {
			pair(entry, on[state.ID])
		}
	}
	for _, s := range d.States {
		check(s.ID, s.Name, s.Short, s.Tell, s.Between)
		for _, part := range s.Parts {
			check(s.ID, part.Name, part.Tell)
		}
	}
	for _, m := range d.Media {
		check(m.ID, m.Name, m.About)
		pairs(m.ID, m.On)
	}
	for _, t := range d.Techniques {
		check(t.ID, t.Name, t.About, t.Wait)
		for _, state := range d.States {
			for _, c := range t.On[state.ID] {
				pair(t.ID, c.Pair)
				check(t.ID, c.Wait)
			}
		}
	}
	for _, o := range d.Overs {
		pair(o.Above+" over "+o.Under, o.Pair)
	}
	for _, t := range d.Transitions {
		check(t.ID, t.Name, t.Reason, t.Fault, t.Remedy, t.Ask)
	}
	for _, e := range d.Exceptions {
		pairs(e.ID, e.On)
	}
	check("firing", d.Firing.Name, d.Firing.Drying, d.Firing.Because)
	check("metals", d.Metals.Ask, d.Metals.Reason)
	for _, p := range d.Phrases {
		check("phrases", p.Ask)
	}
}
