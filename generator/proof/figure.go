package proof

import (
	"crypto/sha256"
	"fmt"
	"maps"
	"math"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// figureKey tells apart the figures of a course: the words of a link, its
// request, and what the calculators know of the course.
type figureKey struct {
	to, words string
	settings  [sha256.Size]byte
}

// figureFault is what working out a figure found: where it leads, or what is
// wrong.
type figureFault struct {
	address string
	fault   *address.Fault
}

// figure works out a calculator for a link of a lesson, and wants every number
// in the words of the link to be one that was given or that the answer prints,
// and at least one of them printed, with as many digits or fewer: whoever presses
// the link finds no other number than the lesson's.
func (s *resolver) figure(ref *markup.Ref) (string, *address.Fault) {
	key := figureKey{ref.To, ref.Words, s.settings}
	made, ok := s.figures.Get(key)
	if !ok {
		made.address, made.fault = workOut(ref, s.Settings)
		s.figures.Put(key, made)
	}
	return made.address, made.fault
}

func workOut(ref *markup.Ref, settings form.Settings) (string, *address.Fault) {
	bad := func(do, text string, args ...any) (string, *address.Fault) {
		return "", &address.Fault{Rule: finding.SumDisagrees, Text: fmt.Sprintf(text, args...), Do: do}
	}
	calculator, request := ref.Figure()
	given, err := settingsOf(request)
	if err != nil {
		return bad("Write input=value, joined by &, with + for a space: volume=40+mL&from=25&to=10.", "%q is no request", request)
	}
	answer := catalog.Solve(calculator, given, settings)
	if len(answer.Errors) > 0 {
		e := answer.Errors[0]
		return bad("Change the request after “?”.", "%s refuses %s: %s", calculator, e.Input, e.Text)
	}
	answered, typed := numbersOf(answer)
	found, numbers := false, numbersIn(ref.Words)
	for _, n := range numbers {
		in := slices.ContainsFunc(answered, n.is)
		if found = found || in; !in && !slices.ContainsFunc(typed, n.is) {
			return bad("It gives: "+told(answer)+".", "%s does not give %s here", calculator, n.text)
		}
	}
	if len(numbers) > 0 && !found {
		return bad("It gives: "+told(answer)+".", "no number of these words is one that %s answers", calculator)
	}
	return address.Calculator(calculator) + "?" + form.Request(calculator, given) + "#" + address.CalculatorID(0), nil
}

// settingsOf reads what stands after "?" as inputs with their values.
func settingsOf(request string) ([]form.Setting, error) {
	values, err := url.ParseQuery(request)
	if err != nil || len(values) == 0 {
		return nil, fmt.Errorf("no inputs in %q: %w", request, err)
	}
	var given []form.Setting
	for _, name := range slices.Sorted(maps.Keys(values)) {
		for _, text := range values[name] {
			given = append(given, form.Setting{Name: name, Text: text})
		}
	}
	return given, nil
}

// figure is a number as written, with how far from it the true one may lie.
type figure struct {
	text          string
	value, within float64
}

// is reports whether a number, rounded to the digits of the figure, is the figure.
func (f figure) is(n float64) bool { return math.Abs(n-f.value) <= f.within }

// written finds a number with its grouping spaces and the unit behind it.
var written = regexp.MustCompile(`([0-9]+(?:[ \x{a0}\x{202f}][0-9]{3})*)(?:[.,]([0-9]+))?(?:[ \x{a0}]?(kg|L|cm)\b)?`)

// larger are the units in which lessons write what calculators answer in
// grams, millilitres and millimetres.
var larger = map[string]float64{"kg": 1000, "L": 1000, "cm": 10}

// numbersIn lists the numbers in some words, each in the calculators' own unit.
func numbersIn(words string) []figure {
	var all []figure
	for _, m := range written.FindAllStringSubmatch(words, -1) {
		whole := strings.Map(func(r rune) rune {
			if r < '0' || r > '9' {
				return -1
			}
			return r
		}, m[1])
		value, err := strconv.ParseFloat(whole+"."+m[2]+"0", 64)
		if err != nil {
			continue // not with these digits
		}
		scale := 1.0
		if s, ok := larger[m[3]]; ok {
			scale = s
		}
		step := math.Pow10(-len(m[2])) * scale
		all = append(all, figure{strings.TrimSpace(m[0]), value * scale, step * 0.5000001})
	}
	return all
}

// numbersOf lists every number of an answer without its sign: what was answered,
// in outputs and rows as they are printed, and what was typed.
func numbersOf(a *form.Answer) (answered, typed []float64) {
	printed := func(text string, isText bool) {
		for _, n := range numbersIn(text) {
			if !isText {
				answered = append(answered, n.value)
			}
		}
	}
	for _, o := range a.Outputs {
		printed(o.Text, o.IsText)
	}
	for _, row := range a.Rows {
		for _, cell := range row {
			printed(cell.Text, cell.IsText)
		}
	}
	for _, g := range a.Inputs {
		for _, v := range g.Values {
			typed = append(typed, math.Abs(v))
		}
	}
	return answered, typed
}

// told lists the outputs of an answer in words.
func told(a *form.Answer) string {
	var parts []string
	for _, o := range a.Outputs {
		parts = append(parts, o.Name+" "+o.Text)
	}
	return strings.Join(parts, ", ")
}
