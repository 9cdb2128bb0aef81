package markup

import (
	"fmt"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
)

// hostile are pages that would cost far more than their size to read. What
// costs the square of its length, or makes much of little, is bounded.
var hostile = map[string]string{
	"tables of forty columns with empty rows": strings.Repeat(strings.Repeat("|a", 40)+"|\n"+strings.Repeat("|-", 40)+"|\n"+strings.Repeat("|\n", 7900)+"\n", 115),
	"footnotes":                        notes(20_000),
	"double brackets":                  strings.Repeat(strings.Repeat("[[a]]", 3200)+"\n\n", 115),
	"links that are not closed":        strings.Repeat(strings.Repeat("[a](", 4000)+"\n\n", 115),
	"brackets that are not closed":     strings.Repeat(strings.Repeat("[", 16_000)+"\n\n", 115),
	"emphasis":                         strings.Repeat(strings.Repeat("*a_", 5000)+"\n\n", 115),
	"pictures that are not closed":     strings.Repeat(strings.Repeat("![", 8000)+"\n\n", 115),
	"references":                       strings.Repeat(strings.Repeat("&#x202E;", 2000)+"\n\n", 115),
	"definitions":                      strings.Repeat("[a]: b\n\n", 200_000),
	"code marks of every length":       ticks(),
	"inline code that is not closed":   strings.Repeat(strings.Repeat("`a``", 4000)+"\n\n", 115),
	"angle brackets":                   strings.Repeat(strings.Repeat("<a ", 5000)+"\n\n", 115),
	"a bracket and much behind it":     strings.Repeat(strings.Repeat("["+strings.Repeat("a", 30), 500)+"\n\n", 115),
	"quotes within quotes":             strings.Repeat(strings.Repeat("> ", 49)+"a\n", 15_000),
	"blocks of YAML":                   strings.Repeat("```question\n- [[[[[\n```\n\n", 60_000),
	"as many brackets as allowed":      strings.Repeat(strings.Repeat("\\[[a](b"+strings.Repeat("a", 20), 250)+"\n\n", 200),
	"as much emphasis as allowed":      strings.Repeat(strings.Repeat("*"+strings.Repeat("a", 12)+"_", 500)+"\n\n", 140),
	"as many footnotes as allowed":     notes(500),
	"headings":                         strings.Repeat("## a\n\n", 300_000),
	"words of a glossary in one table": strings.Repeat("| a | b |\n|---|---|\n"+strings.Repeat("| x | y |\n", 1500)+"\n", 100),
}

func notes(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "a[^%d]\n\n[^%d]: b\n\n", i, i)
	}
	return b.String()
}

func ticks() string {
	var b strings.Builder
	for i := range 170 {
		b.WriteString(strings.Repeat("`", i) + "a")
	}
	return strings.Repeat(b.String()+"\n\n", 115)
}

// processor returns what this process has taken of processors so far, which
// does not depend on what else a machine is doing.
func processor(t *testing.T) time.Duration {
	t.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		t.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// TestHostilePages reads each in bounded time and memory, and makes no more of
// it than a small multiple of what is written. The bounds are far above what is
// needed, and far below what it took; that on time only tells a page that never
// ends from a busy machine.
func TestHostilePages(t *testing.T) {
	for name, text := range hostile {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		begun := processor(t)
		d, found := whole(text)
		took := processor(t) - begun
		runtime.ReadMemStats(&after)
		made := (after.TotalAlloc - before.TotalAlloc) >> 20
		if took > 5*time.Minute || made > 1200 || len(d.HTML) > 15*len(text) {
			t.Errorf("%s: took %v, made %d MB, HTML of %d KB out of %d KB", name, took, made, len(d.HTML)>>10, len(text)>>10)
		}
		t.Logf("%-45s %7d KB %6d ms %5d MB made, HTML %6d KB, %d findings", name, len(text)>>10, took.Milliseconds(), made, len(d.HTML)>>10, len(found))
	}
}
