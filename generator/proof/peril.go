package proof

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// peril is work that hurts people who are not warned of it: the words by which a
// step calls for it, and those of which one stands in a caution about it.
type peril struct {
	name     string
	verbs    []string // one of these begins what a step calls for
	things   []string // one of these comes behind it; nil where the verb says enough
	step     *regexp.Regexp
	caution  *regexp.Regexp
	harmless *regexp.Regexp // what in the same sentence shows that it is other work; may be nil
}

// newPeril makes a peril of its verbs and things, parted by bars, of what may stand
// between them, and of the expressions of the fields.
func newPeril(name, verbs, between, things, caution, harmless string) peril {
	p := peril{name: name, verbs: strings.Split(verbs, "|"), caution: regexp.MustCompile(caution)}
	step := `\b(` + verbs + `)` + between
	if things != "" {
		p.things = strings.Split(things, "|")
		step += `\b(` + things + `)\b`
	}
	p.step = regexp.MustCompile(step)
	if harmless != "" {
		p.harmless = regexp.MustCompile(harmless)
	}
	return p
}

// perils are known by their English words; in another language they are not looked
// for.
var perils = []peril{
	newPeril("dry powder", `weigh|scoop|tip|pour|shake|spoon|sieve|scatter|add|put`, `\b[^.,;:]{0,40}`, `powder|stain|frit|flint|feldspar|bentonite|soda ash|talc|whiting`, `\b(dust|powder)`, ""),
	newPeril("spraying", `spray|airbrush`, "", "", `\b(spray|mist|booth)`, `\b(damp|water|mist)\b`),
	newPeril("dry sweeping or sanding", `sweep up|sweep the|sweep your|sweep it|sweep off|sweep away|sand it|sand the|sand down|sand off|sand away|sand smooth|`+
		`grind it|grind the|grind down|grind off|grind away|grind smooth`, `\b`, "", `\b(dust|splinter|sliver)`, ""),
	newPeril("scraping clay", `scrape|fettle`, `\b`, "", `\b(dust|crumbs?|scrap|shavings?|dry)`, `\b(damp|wet|back into)\b`),
	newPeril("a kiln", `open|load|unload|pack|empty`, `\b[^.;]*`, `kiln`, `\b(kiln|hot|burn|fume)`, ""),
	newPeril("raw oxide", `brush|stir|mix|thin|wipe`, `\b[^.;]*`, `oxide`, `\b(oxide|metal|respirator)`, ""),
	newPeril("latex", `brush|paint|peel|stir|put`, `\b[^.;]*`, `latex`, `\b(latex|ammonia|rubber)\b`, ""),
}

// perilSet is some of the perils: the first is its lowest bit.
type perilSet uint32

// perilVerbs tells by the first three letters of a word which perils it may call for.
// Nearly all words call for none.
var perilVerbs = func() (table [1 << 15]perilSet) {
	for i, p := range perils {
		for _, verb := range p.verbs {
			table[threeOf(verb)] |= 1 << i
		}
	}
	return table
}()

// perilsOf returns the perils that the words of a sentence may call for.
func perilsOf(sentence string) (set perilSet) {
	for i := range len(sentence) - 2 {
		if i == 0 || signs[sentence[i-1]] != wordSign {
			set |= perilVerbs[threeOf(sentence[i:])]
		}
	}
	return set
}

// forbids stands before what a step tells not to do, or among its words.
var forbids = regexp.MustCompile(`\b(never|not|no|don’t|don't|without|instead of|nobody)\b`)

// calledFor reports whether a sentence, in small letters, calls for a peril.
func (p peril) calledFor(sentence string) bool {
	if p.things != nil && !slices.ContainsFunc(p.things, func(thing string) bool { return strings.Contains(sentence, thing) }) {
		return false // nearly all, and an expression would take long to see it
	}
	at := p.step.FindStringIndex(sentence)
	return at != nil && !forbids.MatchString(sentence[:at[1]]) && (p.harmless == nil || !p.harmless.MatchString(sentence))
}

// checkPerils warns of steps that call for dangerous work before any caution of the
// page has warned of it: of each kind of work the first.
func (r *rules) checkPerils(s *checking) {
	if !strings.HasPrefix(r.language, "en") {
		return
	}
	met := make([]bool, len(perils))
	for n, passage := range s.prose.Passages {
		if !passage.Step || passage.Kind != markup.RunningWords || passage.Teaching {
			continue
		}
		for sentence := range sentences(s.prose.Text[passage.Start:passage.End]) {
			start := passage.Start + sentence.start
			text := s.prose.Text[start : passage.Start+sentence.end]
			may := perilsOf(text)
			for i, p := range perils {
				if met[i] || may>>i&1 == 0 || !p.calledFor(strings.ToLower(text)) {
					continue
				}
				if met[i] = true; !p.guarded(s.prose, n) {
					s.find(s.prose.Offset(start), finding.StepCaution, fmt.Sprintf("this step is about %s, and no caution before it says what to take care of", p.name),
						"Put a caution block before the steps: what can happen here, and what to do.")
				}
			}
		}
	}
}

// guarded reports whether a caution about a peril stands before a passage.
func (p peril) guarded(prose *markup.Prose, n int) bool {
	for _, c := range prose.Cautions {
		if c.First > n {
			continue
		}
		words := c.Title
		for _, passage := range prose.Passages[c.First:c.Last] {
			words += " " + prose.Text[passage.Start:passage.End]
		}
		if p.caution.MatchString(strings.ToLower(words)) {
			return true
		}
	}
	return false
}
