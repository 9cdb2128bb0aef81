package proof

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/pool"
	"slipbook/generator/source"
)

// resolve finds what every reference leads to, works out every figure, and holds
// every block to the course's tables and the calculators.
func (r *Reader) resolve(reading *Reading) finding.List {
	s := &resolver{Reading: reading, figures: &r.figures, refused: &r.refused, settings: sha256.Sum256([]byte(reading.Settings.Encode()))}
	findings := pool.Map(len(reading.Pages), func(i int) finding.List {
		page := reading.Pages[i]
		text := source.New(page.File, page.Source)
		page.Targets = s.references(page, text)
		page.faults = faultsOf(page, s.Course.Sections)
		for _, b := range page.Document.Blocks {
			s.block(b, text)
		}
		return text.Found
	})
	return slices.Concat(findings...)
}

// resolver is a reading whose references are being resolved. Goroutines share
// it.
type resolver struct {
	*Reading
	figures  *pool.Kept[figureKey, figureFault]
	refused  *pool.Kept[figureKey, []form.Phrase]
	settings [sha256.Size]byte // digest of what figures depend on beside their request
}

// references returns what the references of a page lead to, and reports those
// with which something is wrong.
func (s *resolver) references(page *Page, text *source.Text) []address.Target {
	targets := make([]address.Target, len(page.Document.Refs))
	for i, ref := range page.Document.Refs {
		target, fault := s.Addresses.Find(page.Page, ref)
		if fault == nil && ref.Kind == markup.FigureRef {
			target.Address, fault = s.figure(ref)
		}
		if fault != nil {
			text.Report(ref.Offset, fault.Rule, fault.Text, fault.Do)
			continue
		}
		targets[i] = target
	}
	return targets
}

// block reports what is wrong with one of the handbook's own blocks beside the
// course's tables and the calculators.
func (s *resolver) block(b *markup.Block, text *source.Text) {
	switch b.Kind {
	case markup.CalculatorBlock:
		s.calculator(b, text)
	case markup.RecipeBlock:
		s.recipe(b, text)
	case markup.LimitsBlock:
		unknownTopic(*b.Limits, text)
	case markup.StagesBlock:
		missingNames(s.Course.Decoration, *b.Part, text)
	}
}

// calculator asks the calculator itself about what a lesson filled in. Boxes
// that the lesson leaves to the student are no fault.
func (s *resolver) calculator(b *markup.Block, text *source.Text) {
	c := catalog.Find(b.Words)
	if c == nil {
		names := idsOf(catalog.All(), func(c *form.Calculator) string { return c.Name })
		text.Report(b.Offset, finding.CalculatorName, "no calculator is named \""+b.Words+"\"",
			source.Meant(b.Words, names)+"Write one of these after the word calculator: "+strings.Join(names, ", ")+".")
		return
	}
	s.filled(c, b, nil, text)
}

// filled asks a calculator about what a block fills in, beside what it is given
// already.
func (s *resolver) filled(c *form.Calculator, b *markup.Block, given []form.Setting, text *source.Text) {
	for _, f := range b.Fill {
		if c.Input(f.Name) == nil {
			inputs := idsOf(c.Inputs, func(in form.Input) string { return in.Name })
			text.Report(f.NameOffset, finding.CalculatorInput, fmt.Sprintf("the calculator %s has no input %q", c.Name, f.Name),
				source.Meant(f.Name, inputs)+"Write one of its inputs: "+strings.Join(inputs, ", ")+".")
			continue
		}
		given = append(given, form.Setting{Name: f.Name, Text: f.Value})
	}
	if len(b.Fill) == 0 {
		return
	}
	refused := s.refusals(c.Name, given)
	for _, f := range b.Fill {
		for _, e := range refused {
			if e.Input == f.Name && strings.TrimSpace(f.Value) != "" && c.Input(f.Name) != nil {
				text.Report(f.ValueOffset, finding.CalculatorInput, fmt.Sprintf("the calculator %s refuses %q for %s", c.Name, f.Value, f.Name), e.Text)
			}
		}
	}
}

// refusals is what a calculator refuses of what a lesson filled in, asked once while
// neither changes.
func (s *resolver) refusals(calculator string, given []form.Setting) []form.Phrase {
	key := figureKey{form.Request(calculator, given), "", s.settings}
	refused, ok := s.refused.Get(key)
	if !ok {
		refused = catalog.Solve(calculator, given, s.Settings).Errors
		s.refused.Put(key, refused)
	}
	return refused
}

// unknownTopic reports a limits block about what has none.
func unknownTopic(asked markup.Limits, text *source.Text) {
	if about := asked.About; about.ID != "" && !slices.Contains(course.Topics, about.ID) {
		text.Report(about.Offset, finding.UnknownName, fmt.Sprintf("there are no limits about %q", about.ID),
			source.Meant(about.ID, course.Topics)+"Write one of: "+strings.Join(course.Topics, ", ")+".")
	}
}

// missingNames reports what a stages block names and the decoration table lacks.
func missingNames(d *course.Decoration, part markup.Part, text *source.Text) {
	if d == nil {
		d = &course.Decoration{}
	}
	look := func(kind string, n markup.Name, known []string) {
		if n.ID == "" || slices.Contains(known, n.ID) {
			return
		}
		do := "There is none yet; add it to decoration.yaml."
		if len(known) > 0 {
			do = source.Meant(n.ID, known) + "Write one of: " + strings.Join(known, ", ") + "."
		}
		text.Report(n.Offset, finding.UnknownName, fmt.Sprintf("the decoration table has no %s %q", kind, n.ID), do)
	}
	look("medium", part.Medium, idsOf(d.Media, func(m course.Medium) string { return m.ID }))
	look("technique", part.Technique, idsOf(d.Techniques, func(t course.Technique) string { return t.ID }))
	look("state", part.State, idsOf(d.States, func(s course.State) string { return s.ID }))
}

// idsOf lists the ids of things.
func idsOf[T any](all []T, id func(T) string) []string {
	ids := make([]string, len(all))
	for n, one := range all {
		ids[n] = id(one)
	}
	return ids
}
