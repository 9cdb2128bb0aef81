package catalog

import "slipbook/calculators/form"

// The engine's words, as these tests call them.
type (
	// Answer is form.Answer.
	Answer = form.Answer
	// Body is form.Body.
	Body = form.Body
	// Calculator is form.Calculator.
	Calculator = form.Calculator
	// Cell is form.Cell.
	Cell = form.Cell
	// Given is form.Given.
	Given = form.Given
	// Hazard is form.Hazard.
	Hazard = form.Hazard
	// Input is form.Input.
	Input = form.Input
	// Onward is form.Onward.
	Onward = form.Onward
	// Output is form.Output.
	Output = form.Output
	// Phrase is form.Phrase.
	Phrase = form.Phrase
	// Printed is form.Printed.
	Printed = form.Printed
	// Result is form.Result.
	Result = form.Result
	// Scale is form.Scale.
	Scale = form.Scale
	// Setting is form.Setting.
	Setting = form.Setting
	// Settings is form.Settings.
	Settings = form.Settings
	// Subject is form.Subject.
	Subject = form.Subject
	// Table is form.Table.
	Table = form.Table
	// Working is form.Working.
	Working = form.Working
)

// The ways in which figures of buckets are rounded.
const (
	Bucket = form.Bucket
	Poured = form.Poured
)

// Plain returns the settings of a command line without a course.
func Plain() Settings { return form.Plain() }

// Configure reads encoded settings.
func Configure(encoded []byte) (Settings, error) { return form.Configure(encoded) }

// Request encodes a calculator's name and its inputs.
func Request(calculator string, given []Setting) string { return form.Request(calculator, given) }
