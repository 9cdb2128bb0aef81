package proof

import (
	"fmt"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// TestFigures wants a link with a calculator's request to hold no number that the
// calculator does not give, and to lead to the calculator with its boxes filled
// in.
func TestFigures(t *testing.T) {
	c, _ := new(course.Reader).Load(coursetest.Small())
	for _, test := range []struct{ calculator, request, words, fault string }{
		{"wash-dilute", "volume=40+mL&from=25&to=10", "60 mL", ""},
		{"wash-dilute", "volume=40+mL&from=25&to=10", "60 mL for 40 mL", ""},
		{"wash-dilute", "volume=40+mL&from=25&to=10", "0.06 L", ""},
		{"wash-dilute", "volume=40+mL&from=25&to=10", "try it", ""},
		{"wash-dilute", "volume=40+mL&from=25&to=10", "40 mL", "no number of these words is one that wash-dilute answers"},
		{"wash-dilute", "volume=40+mL&from=25&to=10", "61 mL", "wash-dilute does not give 61 here"},
		{"wash-dilute", "volume=40+mL&from=25&to=30", "60 mL", "wash-dilute refuses to: "},
		{"slip-density", "mass=174.5&volume=100", "1.745", "slip-density does not give 1.745 here"},
		{"slip-density", "mass=174.5&volume=100", "1.75", ""},
		{"slip-density", "mass=174.5&volume=100", "1.73", "slip-density does not give 1.73 here"},
		{"slip-adjust", "volume=1+L&from=1.54&to=1.44", "230 mL", ""},
		{"slip-adjust", "volume=1+L&from=1.54&to=1.44", "227 mL", "slip-adjust does not give 227 here"},
		{"slip-adjust", "volume=1+L&from=1.54&to=1.44", "182 mL", "slip-adjust does not give 182 here"},
		{"slip-density", "", "1.74", `"" is no request`},
		{"slip-density", "%zz", "1.74", `"%zz" is no request`},
	} {
		t.Run(fmt.Sprint(test.calculator, test.words), func(t *testing.T) {
			ref := &markup.Ref{Kind: markup.FigureRef, To: test.calculator + "?" + test.request, Words: test.words}
			address, fault := workOut(ref, c.PageAnswers())
			if fault == nil {
				if test.fault != "" || !strings.HasPrefix(address, "calculators/"+test.calculator+".html?calculator="+test.calculator+"&") || !strings.HasSuffix(address, "#calculator.0") {
					t.Errorf("address %q, want the fault %q", address, test.fault)
				}
				return
			}
			if test.fault == "" || !strings.HasPrefix(fault.Text, test.fault) || fault.Do == "" || fault.Rule != finding.SumDisagrees || address != "" {
				t.Errorf("address %q, fault %+v, want %q", address, fault, test.fault)
			}
		})
	}
}

// TestFigureInALesson wants a figure that no calculator gives to be reported where
// the link stands, and one that holds to lead to its calculator.
func TestFigureInALesson(t *testing.T) {
	files := sound(t)
	const link = "[60 mL](calculator:wash-dilute?volume=40+mL&from=25&to=10)"
	change(t, files, "units/slip/measure.md", "1. Stir it.", "1. Stir "+link+" in.")
	r, findings := proofread(t, files)
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	if at := targetsOf(t, r, "units/slip/measure.md"); !strings.Contains(at, "calculators/wash-dilute.html?calculator=wash-dilute&from=25&to=10&volume=40+mL#calculator.0\n") {
		t.Errorf("the links lead to\n%s", at)
	}
	change(t, files, "units/slip/measure.md", "[60 mL]", "[61 mL]")
	r, findings = proofread(t, files)
	want := "wash-dilute does not give 61 here (sum-disagrees)"
	if len(findings) != 1 || !strings.HasPrefix(findings[0].String(), "units/slip/measure.md:38:9: error: ") || !strings.Contains(findings[0].String(), want) {
		t.Errorf("found %v, want %s", findings, want)
	}
	if at := targetsOf(t, r, "units/slip/measure.md"); strings.Contains(at, "wash-dilute") {
		t.Errorf("a figure that does not hold leads somewhere:\n%s", at)
	}
}

// targetsOf returns where the references of a page lead, a line for each.
func targetsOf(t *testing.T, r *Reading, file string) string {
	t.Helper()
	for _, p := range r.Pages {
		if p.File != file {
			continue
		}
		var all strings.Builder
		for _, to := range p.Targets {
			fmt.Fprintln(&all, to.Address)
		}
		return all.String()
	}
	t.Fatalf("no page %s", file)
	return ""
}
