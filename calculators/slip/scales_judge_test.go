//go:build judges

package slip

import (
	"fmt"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// TestScalesAgainstUnits asks GNU units for the gravity of degrees on its
// Baumé and Twaddell scales, and wants ours to lead back.
func TestScalesAgainstUnits(t *testing.T) {
	for _, scale := range []struct {
		name string
		ours func(float64) float64
	}{{"baume", Baume}, {"twaddell", Twaddell}} {
		for _, degrees := range []float64{0, 4.5, 10, 25, 33.25, 45, 60, 72.5} {
			ask := exec.Command("units", "--terse", "--output-format", "%.17g", fmt.Sprintf("%s(%v)", scale.name, degrees), "g/cc")
			out, err := ask.Output()
			if err != nil {
				t.Fatalf("GNU units has to be installed: %v", err)
			}
			gravity, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
			if err != nil {
				t.Fatal(err)
			}
			if got := scale.ours(gravity); math.Abs(got-degrees) > 1e-9 {
				t.Errorf("%s of %v: %v, GNU units %v", scale.name, gravity, got, degrees)
			}
		}
	}
}
