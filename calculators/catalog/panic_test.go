package catalog

import (
	"fmt"
	"os"
	"path"
	"runtime"
	"strings"
	"sync"
	"testing"

	"slipbook/calculators/form"
)

// panics are what calculations panicked with, by the place, the first of each.
// Some tests take a refusal for an answer; none of them may take a panic for one.
var panics sync.Map

func TestMain(m *testing.M) {
	form.Panicked = func(calculator string, why any) string {
		place := strings.Join(places(), ", called at ")
		said := fmt.Sprintf("%s panics with %q at %s", calculator, fmt.Sprint(why), place)
		panics.LoadOrStore(calculator+place, said)
		return said
	}
	status := m.Run()
	for _, said := range panics.Range {
		fmt.Println(said)
		status = max(status, 1)
	}
	os.Exit(status)
}

// places are the lines of the calculators' code that led to the panic that is
// being recovered, the innermost first.
func places() []string {
	pcs := make([]uintptr, 50)
	frames := runtime.CallersFrames(pcs[:runtime.Callers(2, pcs)])
	var at []string
	for panicked, more := false, true; more; {
		var f runtime.Frame
		f, more = frames.Next()
		panicked = panicked || f.Function == "runtime.gopanic"
		engine := strings.HasSuffix(f.Function, "form.(*Calculator).Solve")
		if panicked && strings.HasPrefix(f.Function, "slipbook/") && (!engine || len(at) == 0) {
			at = append(at, fmt.Sprintf("%s:%d", path.Base(f.File), f.Line))
		}
		if panicked && engine {
			break
		}
	}
	return at
}
