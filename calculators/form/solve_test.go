package form

import (
	"fmt"
	"testing"
)

// TestPanicked wants a calculation that panics to tell people that it is a
// mistake of the handbook and no more, and a test what it was.
func TestPanicked(t *testing.T) {
	broken := &Calculator{Name: "broken", Work: func(e *Evaluation) { e.Set("thicknes", 1) }}
	const told = "This calculation failed, and that is a mistake of the handbook, not yours. Please tell your instructor what you typed."
	if a := broken.Solve(nil, Plain()); len(a.Errors) != 1 || a.Errors[0].Text != told {
		t.Errorf("people are told %q", a.Errors)
	}
	Panicked = func(calculator string, why any) string { return fmt.Sprintf("%s: %v", calculator, why) }
	defer func() { Panicked = nil }()
	const want = told + " broken: runtime error: invalid memory address or nil pointer dereference"
	if a := broken.Solve(nil, Plain()); len(a.Errors) != 1 || a.Errors[0].Text != want {
		t.Errorf("a test is told %q", a.Errors)
	}
}
