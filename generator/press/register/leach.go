package register

import (
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// leachView is all reports of leach tests, the newest first.
type leachView struct {
	imprint.Framed
	Reports []reportView
	Eat     string
}

// reportView is a report, and whether it answers.
type reportView struct {
	ID string // on the page of reports; on another page the way there
	course.Leach
	Doubts   []course.Doubt // empty: it answers
	Of       imprint.Link   // its recipe or its ready-mixed colour; empty under a clear alone
	Strength string         // of its colour; empty where it has none
	ClearTub *imprint.Link  // nil where it is bare
	BodyName string
	Figures  []figureView
}

// figureView is how much of a metal came out.
type figureView struct {
	Metal, Amount string // "lead", "0.05 mg/L"
	Below         bool
}

// eatView is the seven questions before somebody eats from a pot, and the reports
// that answer.
type eatView struct {
	imprint.Framed
	Answering []reportView
	Invented  []reportView
	Reports   string
}

// LeachReports is the page of all reports. It is there without any, to say so.
func (r *Register) LeachReports() []imprint.Sheet {
	return r.leachSheet(address.Leach, imprint.About{Kind: "leach", Title: r.Say("leach"), Description: r.Say("leach-description"), Gathered: true}, func(f imprint.Framed, at imprint.Place) imprint.PageView {
		all := r.reportsWhere(at, func(*course.Leach) bool { return true })
		for i := range all {
			all[i].ID = at.ID(address.LeachID(all[i].Number))
		}
		return leachView{f, all, at.To(address.Eat)}
	})
}

// Eat is the page of the question whether somebody may eat from a pot. What is
// invented never answers it.
func (r *Register) Eat() []imprint.Sheet {
	return r.leachSheet(address.Eat, imprint.About{Kind: "eat", Title: r.Say("eat"), Description: r.Say("eat-description"), Gathered: true}, func(f imprint.Framed, at imprint.Place) imprint.PageView {
		c := r.reading.Course
		answers := func(l *course.Leach) bool { return len(c.Doubts(l, r.reading.Today)) == 0 }
		return eatView{f, r.reportsWhere(at, answers), r.reportsWhere(at, func(l *course.Leach) bool { return l.Invented }), at.To(address.Leach)}
	})
}

// leachSheet is a page that says something of itself, of some view.
func (r *Register) leachSheet(where string, about imprint.About, view func(imprint.Framed, imprint.Place) imprint.PageView) []imprint.Sheet {
	return []imprint.Sheet{{Address: where, Title: about.Title, Description: about.Description, View: func(at imprint.Place) (imprint.PageView, error) {
		return view(imprint.Framed{Shell: r.frame.Shell(at, about)}, at), nil
	}}}
}

// report is a report as another page names it.
func (r *Register) report(l *course.Leach, at imprint.Place) reportView {
	c := r.reading.Course
	v := reportView{ID: at.To(address.LeachReport(l.Number)), Leach: *l, Doubts: c.Doubts(l, r.reading.Today), BodyName: r.bodyName(l.Body)}
	if recipe, there := c.FindRecipe(l.Recipe); there {
		v.Of = recipeLink(at, recipe)
	} else if m, there := c.FindMaterial(l.Colour); there {
		v.Of = materialLink(at, m)
	}
	if l.Percent > 0 {
		v.Strength = r.figure(l.Percent)
	}
	if clear, there := c.FindMaterial(l.Clear); there {
		link := materialLink(at, clear)
		v.ClearTub = &link
	}
	for _, found := range l.Found {
		v.Figures = append(v.Figures, figureView{found.Metal, r.figure(found.Amount) + " " + found.Unit, found.Below})
	}
	return v
}

// reportsOf are the reports on a recipe, the newest first.
func (r *Register) reportsOf(recipe *course.Recipe, at imprint.Place) []reportView {
	return r.reportsWhere(at, func(l *course.Leach) bool { return l.Recipe == recipe.ID })
}

// reportsOn are the reports on the combination that a tile is of.
func (r *Register) reportsOn(t *course.Tile, at imprint.Place) []reportView {
	return r.reportsWhere(at, func(l *course.Leach) bool { return r.reading.Course.IsOf(l, t) })
}

func (r *Register) reportsWhere(at imprint.Place, wanted func(*course.Leach) bool) []reportView {
	var all []reportView
	for _, l := range r.reading.Course.NewestLeach() {
		if wanted(l) {
			all = append(all, r.report(l, at))
		}
	}
	return all
}

// tested is the report that lets a recipe go where food does, or nil.
func (r *Register) tested(recipe *course.Recipe, at imprint.Place) *reportView {
	l := r.reading.Course.Tested(recipe, r.reading.Today)
	if l == nil {
		return nil
	}
	v := r.report(l, at)
	return &v
}

// UpTo is what ends a report, as it goes on after "until".
func (v reportView) UpTo() string { return strings.TrimPrefix(v.Ends, "until ") }
