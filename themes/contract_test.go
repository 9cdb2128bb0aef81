package themes

import (
	"io/fs"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"
)

// found is a set of names, each with the files it was found in.
type found map[string][]string

func (f found) add(name, file string) {
	if !slices.Contains(f[name], file) {
		f[name] = append(f[name], file)
	}
}

// texts reads the files of a theme whose names match a pattern, by name.
func texts(t *testing.T, theme fs.FS, patterns ...string) map[string]string {
	t.Helper()
	all := map[string]string{}
	for _, pattern := range patterns {
		names, err := fs.Glob(theme, pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: %d files, %v", pattern, len(names), err)
		}
		for _, name := range names {
			data, err := fs.ReadFile(theme, name)
			if err != nil {
				t.Fatal(err)
			}
			all[name] = string(data)
		}
	}
	return all
}

var (
	comment   = regexp.MustCompile(`(?m)(^|\s)//.*$|/\*[\s\S]*?\*/`)
	attribute = regexp.MustCompile(`data-[a-z]+(?:-[a-z]+)*-?`)
	indexed   = regexp.MustCompile(`\.dataset\['([a-zA-Z]+)'\]`)
	within    = regexp.MustCompile(`'([a-zA-Z]+)' in (?:\([^)]*\.dataset|[^\s(]*\.dataset)`)
	taken     = regexp.MustCompile(`const \{([^}]*)\} = [\w.]+\.dataset`)
	set       = regexp.MustCompile(`\.dataset\['([a-zA-Z]+)'\] = `)
	capital   = regexp.MustCompile(`[A-Z]`)
)

// dashed is the attribute that a script calls tableCarried: data-table-carried.
func dashed(name string) string {
	return "data-" + capital.ReplaceAllStringFunc(name, func(s string) string { return "-" + strings.ToLower(s) })
}

// lookedFor finds the data- attributes that scripts name, in selectors and by
// dataset, and those that they set themselves.
func lookedFor(t *testing.T, scripts map[string]string) (names, made found) {
	t.Helper()
	names, made = found{}, found{}
	for _, file := range slices.Sorted(maps.Keys(scripts)) {
		text := comment.ReplaceAllString(scripts[file], "")
		for _, name := range attribute.FindAllString(text, -1) {
			names.add(name, file)
		}
		understood := 0
		for _, pattern := range []*regexp.Regexp{indexed, within} {
			for _, m := range pattern.FindAllStringSubmatch(text, -1) {
				names.add(dashed(m[1]), file)
				understood++
			}
		}
		for _, m := range taken.FindAllStringSubmatch(text, -1) {
			for part := range strings.SplitSeq(m[1], ",") {
				name, _, _ := strings.Cut(strings.TrimSpace(part), " ")
				names.add(dashed(strings.TrimSuffix(name, ":")), file)
			}
			understood++
		}
		if all := strings.Count(text, ".dataset"); all != understood {
			t.Errorf("%s: this test understands %d of %d uses of dataset; write them as others do", file, understood, all)
		}
		for _, m := range set.FindAllStringSubmatch(text, -1) {
			made.add(dashed(m[1]), file)
		}
	}
	return names, made
}

// agreed reads the contract of a theme.
func agreed(t *testing.T, theme fs.FS) (page, made map[string]string) {
	t.Helper()
	var contract struct{ Page, Made map[string]string }
	data, err := fs.ReadFile(theme, "scripts/contract.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if err := yaml.Load(data, &contract); err != nil {
		t.Fatal(err)
	}
	return contract.Page, contract.Made
}

// notForScripts reports whether an attribute of a template is for the style
// sheets, or for the press: a script need not look for it.
func notForScripts(name string, styles map[string]string) bool {
	if name == "data-screen" { // what only a screen can use; the press leaves it out on paper
		return true
	}
	for _, text := range styles {
		if slices.Contains(attribute.FindAllString(text, -1), name) {
			return true
		}
	}
	return false
}

// TestScriptsAndTemplatesAgree compares scripts, templates and the list of what
// they agree on, each with the others.
func TestScriptsAndTemplatesAgree(t *testing.T) {
	theme, err := Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	page, made := agreed(t, theme)
	names, setByScripts := lookedFor(t, texts(t, theme, "scripts/*.ts"))
	inTemplates := found{}
	for file, text := range texts(t, theme, "pages/*.html", "pieces/*.html") {
		for _, name := range attribute.FindAllString(text, -1) {
			inTemplates.add(name, file)
		}
	}
	styles := texts(t, theme, "styles/*.css")
	known := func(name string) bool {
		if stem, open := strings.CutSuffix(name, "-"); open { // `[data-always-${kind}]`
			return slices.ContainsFunc(slices.Collect(maps.Keys(page)), func(n string) bool { return strings.HasPrefix(n, stem+"-") })
		}
		return page[name] != "" || made[name] != ""
	}
	for _, name := range slices.Sorted(maps.Keys(names)) {
		if !known(name) && setByScripts[name] == nil {
			t.Errorf("%v look for %s, which the contract does not name", names[name], name)
		}
	}
	asked := func(name string) bool {
		return names[name] != nil || slices.ContainsFunc(slices.Collect(maps.Keys(names)), func(n string) bool { return strings.HasSuffix(n, "-") && strings.HasPrefix(name, n) })
	}
	for _, list := range []map[string]string{page, made} {
		for _, name := range slices.Sorted(maps.Keys(list)) {
			if !asked(name) {
				t.Errorf("the contract names %s, which no script looks for", name)
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(page)) {
		if inTemplates[name] == nil {
			t.Errorf("the contract has %s in the page, and no template bears it", name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(made)) {
		if setByScripts[name] == nil {
			t.Errorf("the contract says that scripts make %s, and none does", name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(inTemplates)) {
		if page[name] == "" && !notForScripts(name, styles) {
			t.Errorf("%v bear %s, which neither the contract nor a style sheet names", inTemplates[name], name)
		}
	}
}

var (
	looking   = regexp.MustCompile("(?:querySelector(?:All)?|closest|matches|part)(?:<[^>]*>)?\\([^'`\"()]*(['`\"])(.*?)(['`\"])[),]")
	selectors = regexp.MustCompile("(?:parts|controls|fields) = (['`])(.*)(['`])")
	bracketed = regexp.MustCompile(`\[[^\]]*\]|\$\{[^}]*\}`)
	classed   = regexp.MustCompile(`\.[a-z]`)
)

// TestScriptsFindNothingByItsClass keeps looks free to change.
func TestScriptsFindNothingByItsClass(t *testing.T) {
	theme, err := Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for file, text := range texts(t, theme, "scripts/*.ts") {
		text = comment.ReplaceAllString(text, "")
		for _, m := range append(looking.FindAllStringSubmatch(text, -1), selectors.FindAllStringSubmatch(text, -1)...) {
			seen++
			if classed.MatchString(bracketed.ReplaceAllString(m[2], "")) {
				t.Errorf("%s looks for %q: give it a data- attribute, and name that in scripts/contract.yaml", path.Base(file), m[2])
			}
		}
		if at := regexp.MustCompile(`getElementsByClassName|classList\.contains|\.className ===`).FindString(text); at != "" {
			t.Errorf("%s looks at a class: %s", path.Base(file), at)
		}
	}
	if seen < 60 {
		t.Errorf("only %d selectors were found", seen)
	}
}
