package proof

import (
	"fmt"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// future reports a leach test that is dated after the day.
func (g *gate) future(l *course.Leach) {
	if g.today != "" && l.Date > g.today {
		g.report(l.Spots.Of("date"), finding.LeachDate, fmt.Sprintf("report %s is dated %s, and today is %s", l.Number, l.Date, g.today), "Look at the report again, year first.")
	}
}

// leachTest checks that the report which a recipe names is there, and on this recipe;
// where the recipe is for food, also that it counts. It reports whether one is named:
// what is wrong with it is then said.
func (g *gate) leachTest(r *course.Recipe) bool {
	if r.LeachTest == "" {
		return false
	}
	at := r.Spots.Of("leach-test")
	l, there := g.course.FindLeach(r.LeachTest)
	switch {
	case !there:
		var numbers []string
		for _, l := range g.course.Leach {
			numbers = append(numbers, l.Number)
		}
		g.report(at, finding.LeachTest, fmt.Sprintf("there is no report `%s` in leach.csv", r.LeachTest), source.Meant(r.LeachTest, numbers)+"Write the number alone, such as `leach-test: 14`, and the report as a row of leach.csv.")
	case l.Recipe != r.ID:
		g.report(at, finding.LeachTest, fmt.Sprintf("report %s is of %s, and this is `%s`", l.Number, ofLeach(l), r.ID), "A report is for the identical combination alone. Name one that was made with this recipe.")
	case r.Food == "yes":
		var why []string
		for _, doubt := range g.course.Doubts(l, g.today) {
			why = append(why, g.doubt(doubt, l, r))
		}
		if len(why) > 0 {
			g.report(at, finding.LeachTest, fmt.Sprintf("report %s does not count: %s", l.Number, strings.Join(why, "; ")), "Name a report that counts, or write `food: no`.")
		}
	}
	return true
}

// ofLeach says what a report is of.
func ofLeach(l *course.Leach) string {
	switch {
	case l.Recipe != "":
		return "`" + l.Recipe + "`"
	case l.Colour != "":
		return "the ready-mixed colour `" + l.Colour + "`"
	}
	return "no colour"
}

// doubt words why a report does not count for its recipe.
func (g *gate) doubt(doubt course.Doubt, l *course.Leach, r *course.Recipe) string {
	clear, _ := g.course.FindMaterial(l.Clear)
	switch doubt {
	case course.DoubtInvented:
		return "it is invented, and answers nothing"
	case course.DoubtFailed:
		return "the laboratory failed it"
	case course.DoubtLimit:
		return "more lead or cadmium came out than the strictest limit read for such ware, or in a unit that no limit has"
	case course.DoubtFailedSince:
		return "a pot of the same failed since"
	case course.DoubtHeavy:
		return fmt.Sprintf("`%s` holds lead or cadmium", l.Clear)
	case course.DoubtExpired:
		return "it held until " + l.Until
	case course.DoubtFuture:
		return "it is dated " + l.Date + ", which is still to come"
	case course.DoubtVersion:
		return fmt.Sprintf("it is of version %d, and the newest is %d", l.Version, r.NewestNumber())
	case course.DoubtStrength:
		return fmt.Sprintf("it is of %g %% colour, and the recipe has %g %%", l.Percent, g.course.Strength(r))
	case course.DoubtClear:
		return fmt.Sprintf("it is under `%s`, and the recipe goes under `%s`", l.Clear, r.Clear)
	case course.DoubtCone:
		return fmt.Sprintf("it is of cone %s, and the recipe goes to cone %s", l.Cone, r.Cone)
	case course.DoubtBody:
		return fmt.Sprintf("its clay `%s` is not fired to cone %s here", l.Body, l.Cone)
	case course.DoubtBatch:
		return fmt.Sprintf("it is of batch %s, and batch %s is in use", l.Batch, r.Batch)
	case course.DoubtNoBatch:
		return "the recipe does not say under `batch` which batch is in use"
	case course.DoubtClearBatch:
		return fmt.Sprintf("it is of batch %s of %s, and batch %s is in use", l.ClearBatch, clear.Name, clear.Batch)
	case course.DoubtNoClearBatch:
		return fmt.Sprintf("materials/%s.yaml does not say under `batch` which batch is in use", l.Clear)
	}
	return string(doubt)
}
