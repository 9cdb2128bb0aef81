package care

import (
	"bytes"
	"fmt"
	"html"
	"slices"
	"strings"

	"slipbook/generator/press/theme"
)

// Owed is the safety of something that a page names, in the form in which the
// page must hold it.
type Owed struct {
	Name string // "Oxide wash, Bisque"
	Form string // one of the theme's pieces
	Care Care
}

// Owe is a care that a page owes to what it names, in a form.
func Owe(name, form string, c Care) Owed { return Owed{name, form, c} }

// Settle makes sure that a finished page holds what it owes: each piece as often
// as it is owed. The first that it lacks is an error. kind is the name of the page's
// template.
func Settle(t *theme.Theme, kind string, owes []Owed, page []byte) error {
	owed, held := map[string]int{}, map[string]int{}
	for _, o := range owes {
		if !o.Care.Any() && len(o.Care.Wear) == 0 {
			continue
		}
		piece, err := written(t, o.Form, o.Care)
		if err == nil {
			err = whole(t, o, piece)
		}
		if err != nil {
			return err
		}
		if len(piece) == 0 {
			continue
		}
		if owed[string(piece)]++; owed[string(piece)] == 1 {
			held[string(piece)] = count(page, piece)
		}
		if held[string(piece)] < owed[string(piece)] {
			return fmt.Errorf("it names %q without its hazards: %s. The theme’s page %q must hold the piece %q wherever it names one",
				o.Name, strings.Join(said(t, o.Care), ", "), kind, o.Form)
		}
	}
	return nil
}

// probeLength is the length up to which bytes.Index looks at many places at once; for
// longer texts it takes ten times as long.
const probeLength = 63

// count counts how often a piece stands on a page, as bytes.Count does.
func count(page, piece []byte) int {
	probe, n := piece[:min(len(piece), probeLength)], 0
	for at := bytes.Index(page, probe); at >= 0; at = bytes.Index(page, probe) {
		step := 1
		if page = page[at:]; bytes.HasPrefix(page, piece) {
			n++
			step = len(piece)
		}
		page = page[step:]
	}
	return n
}

// written prints a care in a form, as the theme's pieces do it on a page.
func written(t *theme.Theme, form string, c Care) ([]byte, error) {
	var out bytes.Buffer
	err := t.Pages.ExecuteTemplate(&out, form, c)
	return bytes.TrimSpace(out.Bytes()), err
}

// said is what a care says in words: the hazards by name, and who may; of one without
// either what to wear.
func said(t *theme.Theme, c Care) []string {
	var all []string
	for _, h := range c.Hazards {
		all = append(all, h.Title)
	}
	if c.Says != "" {
		all = append(all, strings.TrimSuffix(c.Says, "."))
	}
	if c.Who != "" {
		all = append(all, t.Word(c.Who))
	}
	if len(all) == 0 {
		return c.Wear
	}
	return all
}

// whole makes sure that a piece of the theme says what it is for: an empty one
// would be found on every page.
func whole(t *theme.Theme, o Owed, piece []byte) error {
	var wanted []string
	for _, h := range o.Care.Hazards {
		switch o.Form {
		case Whole, Short:
			wanted = append(wanted, h.Title, h.Short)
		case Line:
			wanted = append(wanted, h.Title)
		case Mark:
			wanted = append(wanted, h.Marks...)
		case Key:
			wanted = append(append(wanted, h.Title, h.Short), h.Marks...)
		}
	}
	if o.Form == Whole || o.Form == Line {
		wanted = slices.Concat(wanted, o.Care.Wear, o.Care.Places)
	}
	if o.Care.Who != "" && (o.Form == Whole || o.Form == Who || o.Form == Mark) {
		wanted = append(wanted, t.Word(o.Care.Who))
	}
	if o.Form == Mixing {
		wanted = append(wanted, o.Care.Says)
	}
	text := html.UnescapeString(string(piece))
	for _, words := range wanted {
		if !strings.Contains(text, words) {
			return fmt.Errorf("the theme’s piece %q does not say %q of %q", o.Form, words, o.Name)
		}
	}
	return nil
}
