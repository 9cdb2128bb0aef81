package course_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
)

// edit changes one file of the small course. With old empty the file becomes
// new; with both empty it is taken away.
type edit struct{ file, old, new string }

func (e edit) apply(t *testing.T, files fstest.MapFS) {
	t.Helper()
	switch {
	case e.old == "" && e.new == "":
		delete(files, e.file)
	case e.old == "":
		files[e.file] = &fstest.MapFile{Data: []byte(e.new), Mode: 0o644}
	default:
		text := string(files[e.file].Data)
		if !strings.Contains(text, e.old) {
			t.Fatalf("%s does not contain %q", e.file, e.old)
		}
		files[e.file] = &fstest.MapFile{Data: []byte(strings.Replace(text, e.old, e.new, 1)), Mode: 0o644}
	}
}

// findings prints a list as people read it, without the closing sum.
func findings(list finding.List) string {
	var b strings.Builder
	for _, f := range list {
		b.WriteString(f.String() + "\n")
	}
	return b.String()
}

const (
	mix     = "units/slip/mix.md"
	slip    = "units/slip/unit.md"
	table   = "decoration.yaml"
	hazards = "hazards.yaml"
	words   = "glossary.yaml"
	setting = "course.yaml"
	jar     = "pictures/jar.svg"
)

func TestFindings(t *testing.T) {
	for _, tt := range slices.Concat(findingTests, tableTests, hazardTests, baseTests, registerTests, sessionTests, leachTests, faultTests) {
		t.Run(tt.name, func(t *testing.T) {
			files := coursetest.Small()
			for _, e := range tt.edits {
				e.apply(t, files)
			}
			c, found := new(course.Reader).Load(files)
			if d := cmp.Diff(tt.want, findings(found)); d != "" {
				t.Error(d)
			}
			useAll(c)
		})
	}
}

// useAll goes through a course as later stages do, so that one with findings
// shows whether it can be used.
func useAll(c *course.Course) {
	for _, p := range c.Pages() {
		_ = p.Head.Title + string(p.Source)
		if p.Unit != nil {
			_ = p.Unit.Page.Address
		}
		c.FindPage(p.File)
	}
	for _, m := range c.Decoration.Media {
		_ = m.On["wet"].Verdict
	}
	c.Decoration.FindState("wet")
	c.Decoration.FindMedium("coloured-slip")
	c.Decoration.FindTechnique("wiping-back")
	_ = c.Decoration.Table().Encode()
	_ = c.Pictures[jar]
}
