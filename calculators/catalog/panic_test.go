package catalog

import (
	"fmt"
	"os"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"slipbook/calculators/form"
)

// panics are what calculations panicked with, each once. Some tests take a
// refusal for an answer; none of them may take a panic for one.
var panics struct {
	sync.Mutex
	said []string
}

func TestMain(m *testing.M) {
	form.Panicked = func(calculator string, why any) string {
		said := fmt.Sprintf("%s panics with %q at %s", calculator, fmt.Sprint(why), strings.Join(places(), ", called at "))
		panics.Lock()
		defer panics.Unlock()
		if !slices.Contains(panics.said, said) {
			panics.said = append(panics.said, said)
		}
		return said
	}
	status := m.Run()
	for _, said := range panics.said {
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
