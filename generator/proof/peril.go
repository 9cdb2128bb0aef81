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
		regexp.MustCompile(`\b(dust|powder)`), regexp.MustCompile(`\b(water|wash|slip|wet|jar of)\b`)},
	{"spraying", regexp.MustCompile(`\b(spray|airbrush)`), regexp.MustCompile(`\b(spray|mist|booth)`), regexp.MustCompile(`\b(damp|water|mist)\b`)},
	{"dry sweeping or sanding", regexp.MustCompile(`\b(sweep (up|the|your|it|off|away)|(sand|grind) (it|the|down|off|away|smooth))\b`), regexp.MustCompile(`\b(dust|splinter|sliver)`), nil},
	{"scraping clay", regexp.MustCompile(`\b(scrape|fettle)\b`), regexp.MustCompile(`\b(dust|crumbs?|scrap|shavings?|dry)`), regexp.MustCompile(`\b(damp|wet|slip|back into|into a cup|into its own)\b`)},
	{"a kiln", regexp.MustCompile(`\b(open|load|unload|pack|empty)\b[^.;]*\bkiln\b`), regexp.MustCompile(`\b(kiln|hot|burn|fume)`), nil},
	{"raw oxide", regexp.MustCompile(`\b(brush|stir|mix|thin|wipe)\b[^.;]*\boxide\b`), regexp.MustCompile(`\b(oxide|metal|respirator)`), nil},
	{"latex", regexp.MustCompile(`\b(brush|paint|peel|stir|put)\b[^.;]*\blatex\b`), regexp.MustCompile(`\b(latex|ammonia|rubber)\b`), nil},
}

// forbids is before what a step tells not to do.
var forbids = regexp.MustCompile(`\b(never|not|no|don’t|don't|without|instead of|nobody|instructor|technician)\b`)

// checkPerils warns of steps that call for dangerous work before any caution of the
// page has warned of it.
func (r *rules) checkPerils(s *checking) {
	if !strings.HasPrefix(r.language, "en") {
		return
	}
	for _, p := range perils {
		if at, found := p.unguarded(s.prose); found {
			s.find(s.prose.Offset(at), finding.StepCaution, fmt.Sprintf("this step is about %s, and no caution before it says what to take care of", p.name),
				"Put a caution block before the steps: what can happen here, and what to do.")
		}
	}
}

// unguarded finds the first step that calls for a peril, where no caution stands
// before it. The offset is in the text of the prose.
func (p peril) unguarded(prose *markup.Prose) (at int, found bool) {
	for n, passage := range prose.Passages {
		if !passage.Step || passage.Kind != markup.RunningWords || passage.Teaching {
			continue
		}
		for sentence := range sentences(prose.Text[passage.Start:passage.End]) {
			start := passage.Start + sentence.start
			text := strings.ToLower(prose.Text[start : passage.Start+sentence.end])
			if p.step.MatchString(text) && !forbids.MatchString(text) && (p.harmless == nil || !p.harmless.MatchString(text)) {
				return start, !p.guarded(prose, n)
			}
		}
	}
	return 0, false
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
