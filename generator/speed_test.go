package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"

	"slipbook/generator/pool"
)

// manyLessons is about how many real lessons the large course has, with their
// links, cautions, drawings, calculators and questions: copies of the demo's.
const manyLessons = 2000

// floorKey makes the test binary convert a folder as the floor and end.
const floorKey = "SLIPBOOK_FLOOR"

// BenchmarkPublish publishes that course with the built program and, in the same
// run, converts the same files with plain goldmark. What counts are the ratios:
// of processor seconds, of two processors against one; memory and bytes are the
// program's own. Files stand in memory where there is a disk for that.
func BenchmarkPublish(b *testing.B) {
	dir := fastDir(b)
	content, program := filepath.Join(dir, "content"), filepath.Join(dir, "slipbook")
	multiply(b, content)
	timed(b, nil, "go", "build", "-o", program, ".")
	timed(b, nil, program, "publish", "--content", content, "--to", filepath.Join(dir, "first")) // the wasm is compiled and kept
	var one, two, floor cost
	rounds := 0
	for b.Loop() {
		rounds++
		for _, c := range []struct {
			of         *cost
			processors string
		}{{&one, "1"}, {&two, "2"}} {
			c.of.add(timed(b, []string{"GOMAXPROCS=" + c.processors}, program, "publish", "--content", content, "--to", fresh(b, dir)))
		}
		floor.add(timed(b, []string{"GOMAXPROCS=2", floorKey + "=" + content, "SLIPBOOK_FLOOR_TO=" + fresh(b, dir)}, os.Args[0], "-test.run=^TestFloor$"))
	}
	written, largest := sizes(b, filepath.Join(dir, "first"))
	b.ReportMetric(float64(two.cpu)/float64(floor.cpu), "cpu-x-floor")
	b.ReportMetric(two.cpu.Seconds()/float64(rounds), "cpu-s")
	b.ReportMetric(floor.cpu.Seconds()/float64(rounds), "floor-cpu-s")
	b.ReportMetric(float64(one.wall)/float64(two.wall), "x-faster-on-2")
	b.ReportMetric(one.wall.Seconds()/float64(rounds), "wall-s-on-1")
	b.ReportMetric(two.wall.Seconds()/float64(rounds), "wall-s-on-2")
	b.ReportMetric(float64(two.memory)/1024, "MB-peak")
	b.ReportMetric(float64(written)/1e6, "MB-written")
	b.ReportMetric(float64(largest)/1e6, "MB-largest-page")
	b.ReportMetric(0, "ns/op")
}

// BenchmarkSave changes one lesson of that course again and again, and of the
// demo, and makes the page that changed, as show does.
func BenchmarkSave(b *testing.B) {
	for _, size := range []struct {
		name string
		of   int
	}{{"demo", 1}, {"2000", copies(b)}} {
		b.Run(size.name, func(b *testing.B) {
			content := filepath.Join(fastDir(b), "content")
			multiplyBy(b, content, size.of)
			h, err := open(content, houseTheme)
			if err != nil {
				b.Fatal(err)
			}
			age(b, content)
			lesson := filepath.Join(content, "units", "mixing", "make-slip.md")
			page := func() {
				edition, findings, err := h.print(b.Context())
				if err != nil || edition == nil {
					b.Fatal(err, findings)
				}
				if _, _, err := edition.File("mixing/make-slip.html"); err != nil {
					b.Fatal(err)
				}
			}
			page()
			for b.Loop() {
				b.StopTimer()
				f, err := os.OpenFile(lesson, os.O_APPEND|os.O_WRONLY, 0)
				if err == nil {
					_, err = f.WriteString("\nStir it once more.\n")
					f.Close()
				}
				if err != nil {
					b.Fatal(err)
				}
				b.StartTimer()
				page()
			}
			b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N), "ms/save")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// age makes the files of a folder an hour old: what was written just now is read
// again at each save.
func age(b *testing.B, dir string) {
	b.Helper()
	then := time.Now().Add(-time.Hour)
	err := filepath.WalkDir(dir, func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		return os.Chtimes(name, then, then)
	})
	if err != nil {
		b.Fatal(err)
	}
}

// cost is what a program took.
type cost struct {
	cpu, wall time.Duration
	memory    int64 // the most, KB
}

func (c *cost) add(more cost) {
	c.cpu += more.cpu
	c.wall += more.wall
	c.memory = max(c.memory, more.memory)
}

// timed runs a program to its end.
func timed(b *testing.B, env []string, name string, args ...string) cost {
	b.Helper()
	cmd := exec.Command(name, args...)
	cmd.Env = append(os.Environ(), env...)
	begun := time.Now()
	if out, err := cmd.CombinedOutput(); err != nil {
		b.Fatalf("%s %q: %v\n%s", name, args, err, out)
	}
	c := cost{wall: time.Since(begun), cpu: cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()}
	if usage, ok := cmd.ProcessState.SysUsage().(*syscall.Rusage); ok {
		c.memory = usage.Maxrss
	}
	return c
}

// fastDir returns a folder for files, in memory where there is a disk for that.
func fastDir(b *testing.B) string {
	b.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "slipbook-")
	if err != nil {
		return b.TempDir()
	}
	b.Cleanup(func() { os.RemoveAll(dir) })
	return dir
}

// fresh returns the name of a folder that is not there.
func fresh(b *testing.B, dir string) string {
	b.Helper()
	to := filepath.Join(dir, "to")
	if err := os.RemoveAll(to); err != nil {
		b.Fatal(err)
	}
	return to
}

// sizes returns how many bytes a folder holds, and its largest page.
func sizes(b *testing.B, dir string) (all, largest int64) {
	b.Helper()
	err := filepath.WalkDir(dir, func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		info, err := e.Info()
		if err == nil {
			all += info.Size()
			if strings.HasSuffix(name, ".html") {
				largest = max(largest, info.Size())
			}
		}
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	return all, largest
}

func multiply(b *testing.B, to string) { multiplyBy(b, to, copies(b)) }

// copies returns how often the demo's units stand in the large course.
func copies(b *testing.B) int {
	b.Helper()
	pages, err := filepath.Glob("../content/units/*/*.md")
	units, unitsErr := filepath.Glob("../content/units/*/unit.md")
	lessons := len(pages) - len(units)
	if err != nil || unitsErr != nil || lessons <= 0 {
		b.Fatal(err, unitsErr, lessons)
	}
	return (manyLessons + lessons/2) / lessons
}

// multiplyBy writes a course whose units are copies of the demo's. Links to other
// units stay in the copy, and titles bear its letters.
func multiplyBy(b *testing.B, to string, times int) {
	b.Helper()
	const from = "../content"
	if err := os.CopyFS(to, os.DirFS(from)); err != nil {
		b.Fatal(err)
	}
	settings, err := os.ReadFile(filepath.Join(from, "course.yaml"))
	if err != nil {
		b.Fatal(err)
	}
	head, list, _ := strings.Cut(string(settings), "\nunits:\n")
	var units []string
	for _, m := range regexp.MustCompile(`(?m)^  - (\S+)$`).FindAllStringSubmatch(list, -1) {
		units = append(units, m[1])
	}
	all := append([]string(nil), units...)
	for n := 1; n < times; n++ {
		letters := string([]byte{'a' + byte(n/26), 'a' + byte(n%26)})
		for _, unit := range units {
			all = append(all, unit+"-"+letters)
			copyUnit(b, filepath.Join(from, "units", unit), filepath.Join(to, "units", unit+"-"+letters), units, letters)
		}
	}
	settings = []byte(head + "\nunits:\n  - " + strings.Join(all, "\n  - ") + "\n")
	if err := os.WriteFile(filepath.Join(to, "course.yaml"), settings, 0o644); err != nil {
		b.Fatal(err)
	}
}

var titleLine = regexp.MustCompile(`(?m)^title: ("?)(.*?)("?)$`)

// copyUnit copies a unit's pages.
func copyUnit(b *testing.B, from, to string, units []string, letters string) {
	b.Helper()
	if err := os.MkdirAll(to, 0o755); err != nil {
		b.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(from, "*.md"))
	if err != nil || len(files) == 0 {
		b.Fatal(err, files)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		text := string(data)
		for _, unit := range units {
			text = strings.ReplaceAll(text, "](../"+unit+"/", "](../"+unit+"-"+letters+"/")
		}
		if at := titleLine.FindStringIndex(text); at != nil {
			text = text[:at[0]] + titleLine.ReplaceAllString(text[at[0]:at[1]], "title: $1$2 "+letters+"$3") + text[at[1]:]
		}
		if err == nil {
			err = os.WriteFile(filepath.Join(to, filepath.Base(file)), []byte(text), 0o644)
		}
		if err != nil {
			b.Fatal(err)
		}
	}
}

// TestFloor converts a folder of Markdown with plain goldmark, with tables,
// footnotes, definition lists and typographic quotes, as many files at once as
// there are processors, when the benchmark asks for it.
func TestFloor(t *testing.T) {
	from, to := os.Getenv(floorKey), os.Getenv("SLIPBOOK_FLOOR_TO")
	if from == "" {
		return
	}
	md := goldmark.New(goldmark.WithExtensions(extension.Table, extension.Footnote, extension.DefinitionList, extension.Typographer),
		goldmark.WithParserOptions(parser.WithAutoHeadingID()))
	var files []string
	err := filepath.WalkDir(from, func(name string, _ fs.DirEntry, err error) error {
		if strings.HasSuffix(name, ".md") {
			files = append(files, name)
		}
		return err
	})
	if err == nil {
		err = pool.Try(len(files), 1, func(i int) error { return convert(md, from, files[i], to) })
	}
	if err != nil {
		t.Fatal(err)
	}
}

// convert converts one file.
func convert(md goldmark.Markdown, from, file, to string) error {
	data, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	out.WriteString("<!doctype html><html lang=en><title>x</title>")
	if err := md.Convert(data, &out); err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	name, err := filepath.Rel(from, strings.TrimSuffix(file, ".md")+".html")
	if err != nil {
		return err
	}
	name = filepath.Join(to, name)
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		return err
	}
	return os.WriteFile(name, out.Bytes(), 0o644)
}
