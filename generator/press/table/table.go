// Package table makes what pages show of the decoration table: its own pages (the
// chart, the states, the media, the hazards), the strip of states over other pages,
// and the part of it that a lesson shows. It exists so that verdict, reason, hazards
// and who may are put together in one place, whatever page says them.
package table

import (
	"fmt"

	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// Table is the decoration table as pages show it.
type Table struct {
	*care.Rules
	*theme.Theme
	frame       *imprint.Frame
	calculators *desk.Calculators
	reading     *proof.Reading
}

// New makes it. A drawing of a state that the theme lacks is an error.
func New(t *theme.Theme, rules *care.Rules, frame *imprint.Frame, calculators *desk.Calculators, reading *proof.Reading) (*Table, error) {
	for _, s := range rules.Decoration.States {
		if _, ok := t.Icons["state-"+s.ID]; !ok {
			return nil, fmt.Errorf("theme: no drawing icons/state-%s.svg for the state %q", s.ID, s.ID)
		}
	}
	return &Table{rules, t, frame, calculators, reading}, nil
}

// lessonsWhere lists the lessons that a question answers yes to, in reading
// order, for a place.
func (r *Table) lessonsWhere(at imprint.Place, yes func(*proof.Page) bool) []imprint.Link {
	var links []imprint.Link
	for _, page := range r.reading.Pages {
		if page.Kind == course.LessonPage && yes(page) {
			links = append(links, imprint.LinkTo(at, page.Page))
		}
	}
	return links
}
