package proof

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/ghs"
)

// material checks one entry of the studio's register.
func (g *gate) material(m *course.Material) {
	if g.sheet(m) {
		g.class(m)
	}
	g.numbers(m)
	g.dust(m)
	g.floor(m)
}

// sheet checks that the entry names a sheet that somebody read, and not too long
// ago. It reports whether there is one.
func (g *gate) sheet(m *course.Material) bool {
	s := m.Sheet
	if s.Spots == nil {
		g.report(m.Spots.Of("sheet"), finding.MaterialSheet, "no safety data sheet is named for "+m.Name,
			"Ask the supplier for it, read it, and write its supplier, its date, who read it, when, and by when it is read again under `sheet`.")
		return false
	}
	for _, part := range []struct{ key, value, example string }{
		{"supplier", s.Supplier, "supplier: Name of the supplier"},
		{"date", s.Date, "date: 2026-02-11"},
		{"read-by", s.ReadBy, "read-by: Name of the reader"},
		{"read", s.Read, "read: 2026-03-02"},
		{"review", s.Review, "review: 2028-03-01"},
	} {
		if _, written := s.Spots[part.key]; part.value == "" && !written {
			g.report(s.Spots.Of(""), finding.MaterialSheet, fmt.Sprintf("the sheet of %s has no `%s`", m.Name, part.key), "Write a line such as `"+part.example+"`.")
		}
	}
	if s.Review != "" && s.Review < g.today {
		g.report(s.Spots.Of("review"), finding.SheetReview, fmt.Sprintf("the sheet of %s was to be read again by %s", m.Name, s.Review),
			"Ask the supplier whether there is a newer one, read it, and write the new dates.")
	}
	if g.today != "" && max(s.Date, s.Read) > g.today {
		g.report(s.Spots.Of(""), finding.MaterialSheet, fmt.Sprintf("the sheet of %s is of %s and was read on %s, and today is %s", m.Name, s.Date, s.Read, g.today), "Look at the dates again, year first.")
	}
	if s.Review != "" && s.Read != "" && s.Review <= s.Read {
		g.report(s.Spots.Of("review"), finding.MaterialSheet, fmt.Sprintf("the sheet of %s was read on %s, and is to be read again by %s", m.Name, s.Read, s.Review), "Write a day that comes after it was read.")
	}
	if s.Date != "" && s.Read != "" && s.Read < s.Date {
		g.report(s.Spots.Of("read"), finding.MaterialSheet, fmt.Sprintf("the sheet of %s is of %s and was read before, on %s", m.Name, s.Date, s.Read), "Look at the dates again.")
	}
	return true
}

// dust checks that what harms in the lungs says what to do about its dust.
func (g *gate) dust(m *course.Material) {
	why := breathed(m)
	if why == "" || slices.ContainsFunc(m.Hazards, func(id string) bool { return slices.Contains(g.dustHazards(m), id) }) {
		return
	}
	g.report(m.Spots.Of("hazards"), finding.MaterialDust, fmt.Sprintf("%s %s, and no hazard says what to do about its dust", m.Name, why),
		"Write `hazards: [dry-powder]` for clay and what is weighed by the bucket, `[stain-powder]` for stain and flux, or `[raw-metal]`.")
}

// dustHazards lists the hazards of hazards.yaml of which one says what to do about
// a material's dust. What is wet only makes it once it has dried. In a course that
// has none of the program's, any hazard to health will do.
func (g *gate) dustHazards(m *course.Material) []string {
	ids := []string{"dry-powder", "stain-powder", "raw-metal"}
	if m.Form != "powder" {
		ids = append(ids, "dust")
	}
	var there, health []string
	for _, h := range g.course.Decoration.Hazards {
		if slices.Contains(ids, h.ID) {
			there = append(there, h.ID)
		}
		if h.Health {
			health = append(health, h.ID)
		}
	}
	if there == nil {
		return health
	}
	return there
}

// class checks that what the entry says of how the sheet classes agrees with
// itself. What the codes call for, the GHS says.
func (g *gate) class(m *course.Material) {
	c := m.Class
	codes := len(c.Statements) + len(c.Precautions) + len(c.Pictograms)
	switch {
	case c.Says == "":
		if _, written := m.Spots["classified"]; !written {
			g.report(m.Spots.Of("classified"), finding.MaterialSheet, fmt.Sprintf("nothing says how the sheet of %s classes it", m.Name),
				"Write `classified: yes` with its codes, `classified: no` where the sheet says so, or `classified: unclear` where you cannot tell.")
		}
		return
	case c.Says == course.Classed && len(c.Statements) == 0:
		g.report(m.Spots.Of("classified"), finding.MaterialSheet, m.Name+" is classified, and no hazard statement is written",
			"Copy the H-codes of section 2 of its sheet, such as `statements: [H319]`.")
	case c.Says == course.NotClassed && (codes > 0 || c.Signal != "" && c.Signal != "none"):
		g.report(m.Spots.Of("classified"), finding.MaterialClass, m.Name+" is not classified, and has codes of the GHS or a signal word", "Look at section 2 of its sheet, and take out what is not there.")
	}
	g.codes(m)
}

// codes checks each code, and what follows from them.
func (g *gate) codes(m *course.Material) {
	c, sound := m.Class, true
	for _, list := range []struct {
		key   string
		codes []string
	}{{"statements", c.Statements}, {"precautions", c.Precautions}} {
		for _, code := range list.codes {
			if _, known := ghs.Statement(code); !known {
				g.report(m.Spots.Of(list.key), finding.MaterialClass, fmt.Sprintf("`%s` is no code of the GHS that is known here", code), "Copy it from section 2 of the sheet, such as H319, H350i or P308+P313.")
				sound = false
			}
		}
	}
	if !sound || len(c.Statements) == 0 {
		return
	}
	for _, wrong := range ghs.Contradictions(c.Statements, c.Pictograms, strings.TrimPrefix(c.Signal, "none")) {
		key := "pictograms"
		if strings.Contains(wrong, "signal word") {
			key = "signal"
		}
		g.report(m.Spots.Of(key), finding.MaterialClass, "of "+m.Name+": "+wrong, fmt.Sprintf("Look at section 2 of its sheet again. The codes call for `signal: %s` and `pictograms: [%s]`.",
			or(ghs.Signal(c.Statements), "none"), strings.Join(ghs.Pictograms(c.Statements), ", ")))
	}
}

func or(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// numbers checks the CAS Registry Numbers.
func (g *gate) numbers(m *course.Material) {
	for _, number := range m.CAS {
		if err := ghs.CAS(number); err != nil {
			g.report(m.Spots.Of("cas"), finding.MaterialNumber, err.Error(), "Copy it from section 3 of the sheet.")
		}
	}
}

// breathed says why a material harms when it is breathed in; empty where nothing
// says that it does.
func breathed(m *course.Material) string {
	for _, code := range m.Class.Statements {
		if ghs.Respiratory(code) {
			return "bears " + code
		}
	}
	if m.Quartz != "" && m.Quartz != "none" && m.Form == "powder" {
		return "is a powder that may hold quartz"
	}
	return ""
}
