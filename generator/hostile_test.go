package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"slipbook/generator/course/coursetest"
)

var atFullSize = flag.Bool("full-size", false, "try hostile content at a size that once took gigabytes and minutes, in a process of its own that is measured")

// What no content may take, refused or accepted.
const (
	mostSeconds = 10
	mostMemory  = 1 << 30
)

// attack is a content folder that somebody might hand in: what it changes in the
// small course, and the rule by which it is refused; empty where it is accepted.
type attack struct {
	name  string
	files map[string]string
	rule  string
}

const lessonHead = "---\ntitle: Mix a slip\n---\n\n"

// page is an attack by the words of a lesson.
func page(name, words, rule string) attack {
	return attack{name, map[string]string{"units/slip/measure.md": lessonHead + words}, rule}
}

// picture is an attack by a picture that a lesson shows.
func picture(name, file, data, rule string) attack {
	return attack{name, map[string]string{"pictures/" + file: data, "units/slip/measure.md": lessonHead + "![a](../../pictures/" + file + ")\n"}, rule}
}

// hostilePages are attacks by the words of a lesson. Their size is n times the small
// one.
func hostilePages(n int) []attack {
	row := strings.Repeat("|a", 40) + "|\n" + strings.Repeat("|-", 40) + "|\n"
	full := "| a | b |\n|---|---|\n" + strings.Repeat("| c | d |\n", 1500) + "\n"
	return []attack{
		page("rows of a bar", strings.Repeat(row+strings.Repeat("|\n", 7000)+"\n", n), "table-row"),
		page("full tables", strings.Repeat(full, min(n, 100)), ""),
		page("wide table", strings.Repeat("|a", 5000*n), "too-long"),
		page("a drawing a hundred times", strings.Repeat("![a](../../pictures/jar.svg)\n\n", 100), ""),
		page("a drawing too often", strings.Repeat("![a](../../pictures/jar.svg)\n\n", 100+20*n), "too-long"),
		page("footnotes", notes(400), ""),
		page("too many footnotes", notes(600*n), "too-long"),
		page("double brackets", strings.Repeat(strings.Repeat("[[a]]", 3000)+"\n\n", n), "too-long"),
		page("brackets that are not closed", strings.Repeat(strings.Repeat("[a](", 4000)+"\n\n", n), "too-long"),
		page("emphasis", strings.Repeat(strings.Repeat("*a_", 5000)+"\n\n", n), "too-long"),
		page("quotes", strings.Repeat("> ", 100*n)+"a", "too-deep"),
		page("headings", strings.Repeat("## a\n\n", 2000*n), ""),
		page("blocks of nested YAML", strings.Repeat("```question\n"+strings.Repeat("[", 3000)+"\n```\n\n", n), "yaml-form"),
		page("aliases", "```question\nask: &a [x, x]\nanswers: [*a, *a]\n```\n", "yaml-form"),
		page("a word that turns round", "Take 12\u202e34 g.\n", "hidden-character"),
		page("the same as a reference", "Take 12&#x202E;34 g.\n", "hidden-character"),
		page("an address with what nobody sees", "<https://example.org/a\u200bb>\n", "hidden-character"),
		page("HTML", "<script>alert(1)</script>\n", "raw-html"),
		page("a script as an address", "[a](javascript:alert(1)) <vbscript:a>\n", "link-target"),
		page("a page as an address", "[a](data:text/html,<b>)\n", "link-target"),
		page("control characters", "a\x1b[31mb\n", "unreadable-file"),
		page("bytes that are no text", "a\xff\xfeb\n", "unreadable-file"),
		page("too large", strings.Repeat("a\n\n", 1<<20), "unreadable-file"),
	}
}

func notes(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "a[^%d]\n\n[^%d]: b\n\n", i, i)
	}
	return b.String()
}

// hostileFolders are attacks by the other files of a course.
func hostileFolders(n int) []attack {
	small := coursetest.Small()
	table := strings.TrimSuffix(string(small["decoration.yaml"].Data), "base: no\n")
	var products strings.Builder
	for i := range 1000 * min(n, 3) {
		fmt.Fprintf(&products, "  - {id: slip-%d, kind: product, name: Slip %d of a house that nobody knows, medium: coloured-slip, words: [the slip of house number %d], states: {bone-dry: {verdict: yes, reason: It is made for bone-dry clay and says so on the label of its bucket., short: Its label says so.}}}\n", i, i, i)
	}
	settings := string(small["course.yaml"].Data)
	return []attack{
		{"a table that the planner cannot take", map[string]string{"decoration.yaml": table + products.String() + "base: no\n"}, "table-size"},
		{"escapes in a title", map[string]string{"home.md": "---\ntitle: \"Mix \\u202ea \\0\\a\\e[31m\"\n---\n"}, "hidden-character"},
		{"keys without end", map[string]string{"glossary.yaml": "terms: []\n" + keys(5000*min(n, 20))}, "unknown-key"},
		{"a ladder of aliases", map[string]string{"glossary.yaml": "a: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\nterms: []\n"}, "yaml-form"},
		{"deep lists", map[string]string{"glossary.yaml": "terms: " + strings.Repeat("[", 20_000*n)}, "yaml-form"},
		{"a lesson that Windows cannot hold", map[string]string{"units/slip/unit.md": "---\ntitle: Slip\nlessons: [mix, measure, con]\n---\n", "units/slip/con.md": lessonHead}, "id-form"},
		{"a unit that Windows cannot hold", map[string]string{"course.yaml": settings + "  - aux\n", "units/aux/unit.md": "---\ntitle: A\nlessons: [a]\n---\n", "units/aux/a.md": lessonHead}, "id-form"},
		{"names that differ in capital letters", map[string]string{"pictures/A.gif": gifOf(1, 1), "pictures/a.gif": gifOf(2, 2)}, "shared-address"},
		{"a name for a terminal", map[string]string{"pictures/\x1b[31m.png": pngOf()}, "id-form"},
	}
}

func keys(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "key%d: x\n", i)
	}
	return b.String()
}

// hostilePictures are attacks by pictures.
func hostilePictures() []attack {
	const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 80 100" fill="none" stroke="currentColor" stroke-width="2.5" stroke-linecap="round" stroke-linejoin="round"`
	return []attack{
		picture("a PNG of nothing but its head", "a.png", pngOf()[:33], "picture-kind"),
		picture("a PNG that breaks off", "a.png", pngOf()[:len(pngOf())-16], "picture-kind"),
		picture("more points than a phone can hold", "a.gif", sizedGIF(65535, 65535), "picture-size"),
		picture("a JPEG of nothing but its head", "a.jpg", jpegOf()[:30], "picture-kind"),
		picture("a page behind a picture", "a.png", pngOf()+"<script>alert(1)</script>", ""),
		picture("one kind under the name of another", "a.png", jpegOf(), "picture-kind"),
		picture("a picture that Windows cannot hold", "nul.png", pngOf(), "id-form"),
		picture("a script in a drawing", "a.svg", svg+`><script>alert(1)</script></svg>`, "drawing-form"),
		picture("a handler in a drawing", "a.svg", svg+` onload="alert(1)"/>`, "drawing-form"),
		picture("a page in a drawing", "a.svg", svg+`><foreignObject/></svg>`, "drawing-form"),
		picture("an address in a drawing", "a.svg", svg+`><a href="javascript:alert(1)"/></svg>`, "drawing-form"),
		picture("entities in a drawing", "a.svg", `<!DOCTYPE a [<!ENTITY b "cc"><!ENTITY d "&b;&b;">]>`+svg+`><text x="1">&d;</text></svg>`, "drawing-form"),
		picture("what nobody sees in a drawing", "a.svg", svg+`><text x="1">1&#x202E;2</text></svg>`, "hidden-character"),
		picture("a drawing that is too large", "a.svg", svg+`>`+strings.Repeat(`<path d="M0 0"/>`, 20_000)+`</svg>`, "unreadable-file"),
	}
}

func pngOf() string {
	var b bytes.Buffer
	_ = png.Encode(&b, image.NewGray(image.Rect(0, 0, 30, 20))) // writing into memory
	return b.String()
}

func jpegOf() string {
	var b bytes.Buffer
	_ = jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, 30, 20)), nil) // likewise
	return b.String()
}

func gifOf(width, height int) string {
	var b bytes.Buffer
	_ = gif.Encode(&b, image.NewGray(image.Rect(0, 0, width, height)), nil) // likewise
	return b.String()
}

func sizedGIF(width, height int) string {
	data := []byte(gifOf(1, 1))
	data[6], data[7], data[8], data[9] = byte(width), byte(width>>8), byte(height), byte(height>>8)
	return string(data)
}

// TestHostileContent wants each attack to be refused by its rule or accepted,
// without a panic and without a sign that a terminal would obey. With -full-size the
// same is tried at full size, and measured.
func TestHostileContent(t *testing.T) {
	size := 1
	if *atFullSize {
		size = 100
	}
	program := ""
	if *atFullSize {
		program = filepath.Join(t.TempDir(), "slipbook")
		if said, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, said)
		}
	}
	refused := 0
	attacks := slices.Concat(hostilePages(size), hostileFolders(size), hostilePictures())
	for _, a := range attacks {
		dir := a.folder(t)
		rules, text := proofed(t, program, a.name, dir)
		switch {
		case a.rule != "" && !slices.Contains(rules, a.rule):
			t.Errorf("%s: not refused by %s, but by %v", a.name, a.rule, rules)
		case a.rule == "" && len(rules) > 0:
			t.Errorf("%s: refused by %v", a.name, rules)
		case a.rule != "":
			refused++
		}
		if strings.ContainsAny(text, "\x00\x1b\x07\u202e\u200b") {
			t.Errorf("%s: the terminal is told %q", a.name, text)
		}
	}
	t.Logf("%d attacks, %d refused, %d accepted", len(attacks), refused, len(attacks)-refused)
}

// folder writes the small course with what the attack changes.
func (a attack) folder(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "content")
	if err := os.CopyFS(dir, coursetest.Small()); err != nil {
		t.Fatal(err)
	}
	for name, text := range a.files {
		file := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// proofed lists the rules of the errors in a content folder, with the findings
// as a terminal shows them.
func proofed(t *testing.T, program, name, dir string) (rules []string, text string) {
	t.Helper()
	said := func(format string) string {
		args := []string{"proof", "--content", dir, "--format", format}
		if program != "" {
			return measured(t, name, exec.Command(program, args...))
		}
		var out, say bytes.Buffer
		if status := run(args, &out, &say); status == refused {
			t.Errorf("%s: %s", name, say.String())
		}
		return out.String()
	}
	var report struct {
		Findings []struct{ Severity, Rule string }
	}
	if err := json.Unmarshal([]byte(said("json")), &report); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	for _, f := range report.Findings {
		if f.Severity == "error" && !slices.Contains(rules, f.Rule) {
			rules = append(rules, f.Rule)
		}
	}
	return rules, said("text")
}

// measured runs a command, says what it took and wants it within its bounds.
func measured(t *testing.T, name string, command *exec.Cmd) string {
	t.Helper()
	var out bytes.Buffer
	command.Stdout = &out
	_ = command.Run() // its status says that there are findings
	used, ok := command.ProcessState.SysUsage().(*syscall.Rusage)
	if !ok {
		t.Fatal("this system does not say what a process takes")
	}
	took := command.ProcessState.UserTime() + command.ProcessState.SystemTime()
	memory := used.Maxrss << 10
	t.Logf("%-40s %6.2f s %5d MB", name, took.Seconds(), memory>>20)
	if took > mostSeconds*time.Second || memory > mostMemory {
		t.Errorf("%s: %v and %d MB", name, took, memory>>20)
	}
	return out.String()
}

// TestLargestCourse publishes a course of the largest size that is accepted, in
// pages and in pictures, and measures it.
func TestLargestCourse(t *testing.T) {
	lessons, words, photos := 20, 20_000, 2
	if *atFullSize {
		lessons, words, photos = 16, 1_900_000, 30
	}
	files := map[string]string{}
	list := ""
	for i := range lessons {
		name := fmt.Sprintf("more-%d", i)
		files["units/slip/"+name+".md"] = lessonHead + strings.Repeat("Stir the slip before each use.\n\n", words/32) + fmt.Sprintf("![a](../../pictures/a-%d.png)\n", i%photos)
		list += ", " + name
	}
	files["units/slip/unit.md"] = "---\ntitle: Slip\nlessons: [mix, measure" + list + "]\n---\n"
	for i := range photos {
		files[fmt.Sprintf("pictures/a-%d.png", i)] = noise(i)
	}
	dir := attack{"", files, ""}.folder(t)
	to := filepath.Join(filepath.Dir(dir), "public")
	if !*atFullSize {
		var out, say bytes.Buffer
		if status := run([]string{"publish", "--content", dir, "--to", to}, &out, &say); status != done {
			t.Errorf("ended with %d: %s", status, say.String())
		}
		return
	}
	program := filepath.Join(t.TempDir(), "slipbook")
	if said, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	if said := measured(t, "the largest course", exec.Command(program, "publish", "--content", dir, "--to", to)); !strings.Contains(said, "pages") {
		t.Errorf("not published: %s", said)
	}
}

// noise is a photo that no compression makes smaller.
func noise(seed int) string {
	m := image.NewGray(image.Rect(0, 0, 2000, 2000))
	random := rand.NewChaCha8([32]byte{byte(seed)})
	_, _ = random.Read(m.Pix) // it always fills
	var b bytes.Buffer
	_ = png.Encode(&b, m) // writing into memory
	return b.String()
}
