package proof

import (
	"fmt"
	"regexp"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// peril is work that hurts people who are not warned of it: the words by which a
// step calls for it, and those of which one stands in a caution about it.
type peril struct {
	name     string
	step     *regexp.Regexp
	caution  *regexp.Regexp
	harmless *regexp.Regexp // what in the same sentence shows that it is other work; may be nil
}

// perils are known by their English words; in another language they are not looked
// for.
var perils = []peril{
	{"dry powder", regexp.MustCompile(`\b(weigh|scoop|tip|pour|shake|spoon|sieve|scatter|add|put)\b[^.,;:]{0,40}\b(powder|stain|frit|flint|feldspar|bentonite|soda ash|talc|whiting)\b`),
		regexp.MustCompile(`\b(dust|powder)`), nil},
	{"spraying", regexp.MustCompile(`\b(spray|airbrush)`), regexp.MustCompile(`\b(spray|mist|booth)`), regexp.MustCompile(`\b(damp|water|mist)\b`)},
	{"dry sweeping or sanding", regexp.MustCompile(`\b(sweep (up|the|your|it|off|away)|(sand|grind) (it|the|down|off|away|smooth))\b`), regexp.MustCompile(`\b(dust|splinter|sliver)`), nil},
	{"scraping clay", regexp.MustCompile(`\b(scrape|fettle)\b`), regexp.MustCompile(`\b(dust|crumbs?|scrap|shavings?|dry)`), regexp.MustCompile(`\b(damp|wet|back into)\b`)},
	{"a kiln", regexp.MustCompile(`\b(open|load|unload|pack|empty)\b[^.;]*\bkiln\b`), regexp.MustCompile(`\b(kiln|hot|burn|fume)`), nil},
	{"raw oxide", regexp.MustCompile(`\b(brush|stir|mix|thin|wipe)\b[^.;]*\boxide\b`), regexp.MustCompile(`\b(oxide|metal|respirator)`), nil},
	{"latex", regexp.MustCompile(`\b(brush|paint|peel|stir|put)\b[^.;]*\blatex\b`), regexp.MustCompile(`\b(latex|ammonia|rubber)\b`), nil},
}

// forbids stands before what a step tells not to do, or among its words.
var forbids = regexp.MustCompile(`\b(never|not|no|don’t|don't|without|instead of|nobody)\b`)

// calledFor reports whether a sentence, in small letters, calls for a peril.
func (p peril) calledFor(sentence string) bool {
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
			text := strings.ToLower(s.prose.Text[start : passage.Start+sentence.end])
			for i, p := range perils {
				if met[i] || !p.calledFor(text) {
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
