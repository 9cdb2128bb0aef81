package markup

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Wait is a time that a step names.
type Wait struct {
	Seconds int // from 30 to 4 hours; of a range its lesser end
	Most    int // of a range the greater end, in seconds; 0 = there is none
}

// The rule by which a timer is made from the words of a step, in English: a number in
// digits or in words, or two with "to" or "or" between them, and behind it minutes
// or hours, up to four hours. What names a limit, a rate, something past or how long
// work takes makes none: see beforeWait and afterWait.
const (
	longestWait = 4 * 60 * 60 // seconds
	mostWaits   = 3           // of one step
)

// numberWords are the numbers that are understood in words. "an" is one: "an hour".
var numberWords = map[string]float64{
	"a": 1, "an": 1, "half a": .5, "half an": .5, "quarter of an": .25, "a quarter of an": .25, "three quarters of an": .75, "three-quarters of an": .75,
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
	"fifteen": 15, "twenty": 20, "twenty-five": 25, "thirty": 30, "forty": 40, "forty-five": 45, "fifty": 50, "sixty": 60, "ninety": 90,
}

// anyNumber is the expression of a number.
var anyNumber = func() string {
	words := []string{`\d+(?:[.,]\d+)?½?`, `½`}
	for word := range numberWords {
		words = append(words, word)
	}
	slices.SortFunc(words, func(a, b string) int { // the longest first: "half an" before "half a"
		if len(a) != len(b) {
			return len(b) - len(a)
		}
		return strings.Compare(a, b)
	})
	return "(" + strings.Join(words, "|") + ")"
}()

// waitWords finds a time: a number, perhaps "and a half", perhaps a second number, the
// unit, and what may be added to it.
var waitWords = regexp.MustCompile(`(?i)` + anyNumber + `( and a half)?(?:(?:\s+(?:to|or)\s+|\s?[–-]\s?)` + anyNumber + `)?(?:\s+(?:more|full|whole|good))?[\s\x{a0}]+(minutes?|min|hours?|h)\b` +
	`(?: and (?:(a half)|(a quarter)|` + anyNumber + ` (?:minutes?|min)\b))?(?: or ` + anyNumber + `\b)?`)

// What stands right before a time that is none to wait: a limit, a part of something
// longer, how long work takes or may take. Words in fillers may stand between.
var (
	beforeWait = []string{"within", "every", "each", "under", "than", "per", "first", "last", "takes", "take", "took", "have", "has", "only", "once", "twice", "feet", "at"}
	fillers    = []string{"about", "nearly", "almost", "roughly", "another", "around", "the"}
	afterWait  = regexp.MustCompile(`(?i)^(?:['’]s\b|-|\s+(?:ago|old|apart|early|earlier|late|before|has|have|is|are|had)\b)`)
)

// waits returns the times that a step's words name, each once.
func waits(words string) []Wait {
	if !namesUnit(words) {
		return nil // nearly all, and the expression takes long to see it
	}
	var all []Wait
	for _, m := range waitWords.FindAllStringSubmatchIndex(words, -1) {
		part := func(n int) string {
			if m[2*n] < 0 {
				return ""
			}
			return words[m[2*n]:m[2*n+1]]
		}
		if m[0] > 0 && !strings.ContainsRune(" \u00a0\n(", rune(lastByte(words[:m[0]]))) || afterWait.MatchString(words[m[1]:]) || !leadsToWait(words[:m[0]], part(1)) {
			continue
		}
		if wait := waitOf(part); wait.Seconds >= 30 && wait.Seconds <= longestWait && !slices.Contains(all, wait) && len(all) < mostWaits {
			all = append(all, wait)
		}
	}
	return all
}

// namesUnit reports whether a word begins as the units of waitWords do.
func namesUnit(words string) bool {
	for i := 1; i < len(words); i++ {
		if c := words[i] | 0x20; c != 'm' && c != 'h' || signOrLetter(words[i-1]) {
			continue
		}
		begins := func(unit string) bool {
			return len(words)-i >= len(unit) && strings.EqualFold(words[i:i+len(unit)], unit)
		}
		if begins("min") || begins("hour") || begins("h") && (i+1 == len(words) || words[i+1] >= 0x80 || !letter(words[i+1])) {
			return true
		}
	}
	return false
}

// signOrLetter reports whether a byte is a sign or a letter of ASCII: no blank, and no
// part of one that is not broken.
func signOrLetter(c byte) bool { return c > ' ' && c < 0x7F }

// lastByte returns the last byte of a text that is not empty.
func lastByte(text string) byte { return text[len(text)-1] }

// waitOf works a time out from the parts that waitWords found.
func waitOf(part func(int) string) Wait {
	unit := 60.0
	if strings.HasPrefix(strings.ToLower(part(4)), "h") {
		unit = 3600
	}
	first := number(part(1))
	if part(2) != "" {
		first += .5
	}
	seconds := first * unit
	switch {
	case part(5) != "":
		seconds += unit / 2
	case part(6) != "":
		seconds += unit / 4
	case part(7) != "":
		seconds += number(part(7)) * 60
	}
	most := number(part(3)) * unit
	if most == 0 {
		most = number(part(8)) * unit // "a minute or two"
	}
	if most <= seconds {
		most = 0
	}
	return Wait{Seconds: int(seconds), Most: int(most)}
}

// number returns the number that digits or a word mean; 0 for an empty text.
func number(text string) float64 {
	if n, ok := numberWords[strings.ToLower(text)]; ok {
		return n
	}
	digits, half := strings.CutSuffix(text, "½")
	n, _ := strconv.ParseFloat(strings.ReplaceAll(digits, ",", "."), 64) // what waitWords found is a number, or nothing
	if half {
		n += .5
	}
	return n
}

// leadsToWait reports whether a time may follow these words. "An hour" behind a number
// or a plural is a rate: 60 °C an hour, four litres a minute.
func leadsToWait(before, first string) bool {
	sentence := before[strings.LastIndexAny(before, ".!?:;")+1:]
	fields := strings.Fields(strings.ToLower(sentence))
	for len(fields) > 0 && slices.Contains(fillers, fields[len(fields)-1]) {
		fields = fields[:len(fields)-1]
	}
	if len(fields) == 0 {
		return true
	}
	last := fields[len(fields)-1]
	if last == "least" { // "for at least twenty minutes"
		return true
	}
	if slices.Contains(beforeWait, last) {
		return false
	}
	rate := strings.EqualFold(first, "a") || strings.EqualFold(first, "an")
	return !rate || !strings.HasSuffix(last, "s") && !strings.HasSuffix(last, "°c") && strings.Trim(last, "0123456789.") != ""
}

// The rule by which a step asks whether it may go on: a sentence that tells of the
// shine as gone or going, not one that forbids something; or one in which until, when
// or once stands before a link to a state of the clay.
var (
	sentenceEnd = regexp.MustCompile(`[.!?;]\s+`)
	shineGoes   = regexp.MustCompile(`(?i)\b(?:the|its|their|that|this|wet)\s+(?:shine|sheen)\b.*\b(?:gone|go|goes|going|off)\b|\b(?:gone|go|lost|loses?|losing|past|no)\b.*\b(?:shine|sheen)\b`)
	forbidding  = regexp.MustCompile(`(?i)\b(?:do not|don['’]t|never)\b.*\b(?:shine|sheen)\b`)
	awaited     = regexp.MustCompile(`(?i)\b(?:until|when|once)\b`)
)

// waitsFor returns what a step waits for, as Step.Until holds it. state is the words
// of its link to a state.
func waitsFor(words, state string) string {
	for _, sentence := range sentenceEnd.Split(words, -1) {
		if shineGoes.MatchString(sentence) && !forbidding.MatchString(sentence) {
			return Shine
		}
		if at := strings.Index(sentence, state); state != "" && at >= 0 && awaited.MatchString(sentence[:at]) {
			return state
		}
	}
	return ""
}
