package main

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
	"slipbook/generator/shelf"
	"slipbook/themes"
)

// large makes a handbook of lessons (about 11.5 KB each) in units of 50, with
// what lessons have: steps, cautions, tables, calculators, questions, links.
func large(lessons int) fstest.MapFS {
	files := coursetest.Small()
	for name := range files {
		if strings.HasPrefix(name, "units/") {
			delete(files, name)
		}
	}
	files["home.md"] = &fstest.MapFile{Data: []byte("---\ntitle: Home\n---\n\nWelcome.\n")}
	var units []string
	for n := range lessons {
		unit := fmt.Sprintf("unit-%c%c", 'a'+n/50/26, 'a'+n/50%26)
		if n%50 == 0 {
			units = append(units, unit)
			files["units/"+unit+"/unit.md"] = &fstest.MapFile{Data: []byte("---\ntitle: Unit " + unit + "\nlessons: [" + names(n, min(n+50, lessons)) + "]\n---\n\nWords.\n")}
		}
		files[fmt.Sprintf("units/%s/lesson-%s.md", unit, letters(n))] = &fstest.MapFile{Data: lesson(n)}
	}
	settings := string(files["course.yaml"].Data)
	at := strings.Index(settings, "units:")
	files["course.yaml"] = &fstest.MapFile{Data: []byte(settings[:at] + "units: [" + strings.Join(units, ", ") + "]\n")}
	return files
}

func letters(n int) string {
	return string([]byte{byte('a' + n/676), byte('a' + n/26%26), byte('a' + n%26)})
}

func names(from, to int) string {
	var list []string
	for n := from; n < to; n++ {
		list = append(list, "lesson-"+letters(n))
	}
	return strings.Join(list, ", ")
}

func lesson(n int) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "---\ntitle: Lesson %d\nteaches: [know lesson %d]\ntimeRequired: PT20M\n---\n\nWhy this matters.\n", n, n)
	for part := range 14 {
		fmt.Fprintf(&b, "\n## Part %d of the work\n\nA slip that is *too thick* drags, and one that is **too thin** runs. Weigh it, and write %d g on the bucket.\n\n", part, 100+part)
		for step := range 4 {
			fmt.Fprintf(&b, "%d. Take the brush, load it well, and draw the line once without going back over it.\n", step+1)
		}
		b.WriteString("\n| specific gravity | dry powder |\n|---|---:|\n| 1.40 | 650 g |\n| 1.50 | 812 g |\n\nSee [the first part](#part-0-of-the-work), and wait until the shine has gone.\n")
	}
	b.WriteString("\n```caution Dust\nWipe it up *wet*.\n```\n\n```calculator slip-adjust\nto: 1.45\n```\n")
	for range 3 {
		b.WriteString("\n```question\nask: Why is the jar weighed empty?\nanswers:\n  - text: To take its weight away\n    right: true\n    because: The scale shows both.\n  - text: To clean it\n    because: Water does that.\n```\n")
	}
	return b.Bytes()
}

// BenchmarkPublish publishes 2,000 lessons into a folder and, in the same run,
// lets plain goldmark convert the same files and write them, on as many
// processors. What counts is the ratio; peak memory is the program's own.
func BenchmarkPublish(b *testing.B) {
	files := large(2000)
	theme, err := themes.Open(houseTheme)
	if err != nil {
		b.Fatal(err)
	}
	h := &handbook{lessons: func() (*course.Course, finding.List) { return course.Load(files) }, theme: theme}
	if _, err := h.bundle(); err != nil { // the wasm is ready
		b.Fatal(err)
	}
	var ours, plain time.Duration
	size := 0
	for _, f := range files {
		size += len(f.Data)
	}
	for b.Loop() {
		dir := b.TempDir()
		start := time.Now()
		edition, findings, err := h.print(context.Background())
		if err != nil || findings.Stop() {
			b.Fatal(err, findings[:min(3, len(findings))])
		}
		if _, err := shelf.Replace(b.Context(), filepath.Join(dir, "ours"), shelf.Edition{Files: edition, Copy: shelf.Students}); err != nil {
			b.Fatal(err)
		}
		ours += time.Since(start)
		edition = nil
		start = time.Now()
		convert(b, files, filepath.Join(dir, "plain"))
		plain += time.Since(start)
	}
	b.ReportMetric(float64(ours)/float64(plain), "x-goldmark")
	b.ReportMetric(float64(size)/1e6, "MB-markdown")
	b.ReportMetric(0, "ns/op")
}

// convert lets goldmark convert every Markdown file with tables, footnotes,
// definition lists and typographic quotes, and writes the results.
func convert(b *testing.B, files fs.FS, dir string) {
	md := goldmark.New(goldmark.WithExtensions(extension.Table, extension.Footnote, extension.DefinitionList, extension.Typographer))
	work := make(chan string)
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for name := range work {
				src, err := fs.ReadFile(files, name)
				var out bytes.Buffer
				if err == nil {
					err = md.Convert(src, &out)
				}
				to := filepath.Join(dir, strings.TrimSuffix(name, ".md")+".html")
				if err == nil {
					err = os.MkdirAll(filepath.Dir(to), 0o755)
				}
				if err == nil {
					err = os.WriteFile(to, out.Bytes(), 0o644)
				}
				if err != nil {
					b.Error(err)
				}
			}
		})
	}
	err := fs.WalkDir(files, ".", func(name string, _ fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(name, ".md") {
			work <- name
		}
		return err
	})
	close(work)
	workers.Wait()
	if err != nil {
		b.Fatal(err)
	}
}
