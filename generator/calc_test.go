package main

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/course"
	"slipbook/generator/proof"
)

// example returns the worked example of a calculator as arguments of calc.
func example(c *form.Calculator) []string {
	args := []string{"calc", c.Name}
	for _, g := range c.Example.Given {
		args = append(args, g.Name+"="+g.Text)
	}
	if c.NeedsTable {
		args = append(args, "--content", "../content")
	}
	return args
}

// ofCourse is the settings that such an example is answered in.
func ofCourse(t *testing.T, c *form.Calculator) form.Settings {
	t.Helper()
	s := form.Plain()
	if c.NeedsTable {
		lessons, findings := new(course.Reader).Load(os.DirFS("../content"))
		if findings.Stop() {
			t.Fatal(findings)
		}
		s.Table = proof.Table(lessons, "en-US", today())
	}
	return s
}

// Whatever calculator is added, its worked example is answered here in words
// and in JSON, the two agree with the catalog, and its inputs are described.
func TestEveryCalculator(t *testing.T) {
	for _, c := range catalog.All() {
		t.Run(c.Name, func(t *testing.T) {
			want := catalog.Solve(c.Name, c.Example.Given, ofCourse(t, c))
			var out, say bytes.Buffer
			if status := run(example(c), &out, &say); status != done {
				t.Fatalf("ended with %d: %s", status, say.String())
			}
			said := strings.Join(strings.Fields(out.String()), " ") // however the lines are broken
			for _, o := range want.Outputs {
				if !strings.Contains(said, c.Output(o.Name).Label) || !strings.Contains(said, strings.ReplaceAll(o.Text, "\u00a0", " ")) {
					t.Errorf("%s is not in the answer:\n%s", o.Name, out.String())
				}
			}
			checkJSON(t, c, want)
			out.Reset()
			if status := run([]string{"calc", c.Name}, &out, &say); status != done {
				t.Fatalf("described, it ends with %d: %s", status, say.String())
			}
			for _, in := range c.Inputs {
				if !strings.Contains(out.String(), "\n  "+in.Name+"\n") {
					t.Errorf("input %s is not described:\n%s", in.Name, out.String())
				}
			}
		})
	}
}

// checkJSON compares the answer in JSON with the catalog's, to the last bit.
func checkJSON(t *testing.T, c *form.Calculator, want *form.Answer) {
	t.Helper()
	var out, say bytes.Buffer
	if status := run(append(example(c), "--json"), &out, &say); status != done {
		t.Fatalf("in JSON it ends with %d: %s", status, say.String())
	}
	var got struct {
		Calculator string
		Outputs    []struct {
			Name  string
			Value any
		}
		Rows []map[string]any
	}
	if err := json.Unmarshal(out.Bytes(), &got); err != nil {
		t.Fatalf("%v:\n%s", err, out.String())
	}
	if got.Calculator != c.Name || len(got.Outputs) != len(want.Outputs) || len(got.Rows) != len(want.Rows) {
		t.Fatalf("%d outputs and %d rows:\n%s", len(got.Outputs), len(got.Rows), out.String())
	}
	for i, o := range want.Outputs {
		value := any(o.Value)
		if o.IsText {
			value = o.Text
		}
		if got.Outputs[i].Name != o.Name || got.Outputs[i].Value != value {
			t.Errorf("%s is %v, want %v", got.Outputs[i].Name, got.Outputs[i].Value, value)
		}
	}
	for i, row := range want.Rows {
		for _, cell := range row {
			value := any(cell.Value)
			if cell.IsText {
				value = cell.Text
			}
			if got.Rows[i][cell.Column] != value {
				t.Errorf("row %d, %s is %v, want %v", i+1, cell.Column, got.Rows[i][cell.Column], value)
			}
		}
	}
}

// Every input of every calculator is refused by its name when it is no number
// and none of its choices. Words may be anything.
func TestEveryInputIsRefusedByName(t *testing.T) {
	for _, c := range catalog.All() {
		for _, in := range c.Inputs {
			if in.Words {
				continue
			}
			var out, say bytes.Buffer
			args := []string{"calc", c.Name, "--json", in.Name + "=mud"}
			if c.NeedsTable || in.Bodies {
				args = append(args, "--content", "../content")
			}
			status := run(args, &out, &say)
			if status != refused || !strings.Contains(out.String(), `{"input":"`+in.Name+`",`) {
				t.Errorf("%s %s=mud ends with %d: %s%s", c.Name, in.Name, status, out.String(), say.String())
			}
		}
	}
}
