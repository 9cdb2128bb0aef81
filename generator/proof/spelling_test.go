package proof

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// respelt lists what a spelling finds in a sentence: "color>colour".
func respelt(s *spelling, sentence string) string {
	var found []string
	s.check(sentence, func(at int, text, do string) {
		word := strings.TrimPrefix(text, "“")
		word, _, _ = strings.Cut(word, "”")
		if !strings.HasPrefix(sentence[at:], word) {
			found = append(found, "misplaced")
		}
		found = append(found, word+">"+strings.TrimSuffix(strings.TrimPrefix(do, "Write “"), "”."))
	})
	return strings.Join(found, " ")
}

func TestSpelling(t *testing.T) {
	tests := []struct{ name, tag, sentence, want string }{
		{"British", "en-GB", "A gray, colored center of molded fiber, traveling in 2 liters", "gray>grey colored>coloured center>centre molded>moulded fiber>fibre traveling>travelling liters>litres"},
		{"American", "en-US", "A grey, coloured centre of moulded fibre, travelling in 2 litres", "grey>gray coloured>colored centre>center moulded>molded fibre>fiber travelling>traveling litres>liters"},
		{"itself, British", "en-GB", "A grey, coloured centre of moulded fibre, travelling in 2 litres", ""},
		{"itself, American", "en-US", "A gray, colored center of molded fiber, traveling in 2 liters", ""},
		{"other British", "en-AU", "aluminum", "aluminum>aluminium"},
		{"more British", "en-NZ en-IE en-ZA", "labeled", "labeled>labelled"},
		{"tag in other letters", "EN-gb-oxendict", "Favorite", "Favorite>Favourite"},
		{"English of nowhere", "en", "color colour", ""},
		{"Canadian", "en-CA", "color colour", ""},
		{"another language", "de", "color colour", ""},
		{"capitals", "en-GB", "Color COLOR", "Color>Colour"},
		{"all capitals first", "en-GB", "COLOR it", "COLOR>COLOUR"},
		{"names", "en-GB", "Ask Gray at the Center", ""},
		{"after a quote", "en-GB", "“Gray” it is", "Gray>Grey"},
		{"joined words", "en-GB", "off-gray, gray's, gray/white (gray)", "gray>grey gray>grey gray>grey gray>grey"},
		{"addresses and names of things", "en-GB", "x.color.css my_color color2 color@x.org http://color", ""},
		{"end of a sentence", "en-GB", "It is gray.", "gray>grey"},
		{"part of a word", "en-GB", "decolorants molds colorant grayling literature fibermäßig ögray", "molds>moulds"},
		{"meters", "en-GB", "A meter of 2 meters, 3-meter hose, 5\u00a0meter, 2 metres", "meters>metres meter>metre meter>metre"},
		{"metres", "en-US", "A metre of 2 meters", "metre>meter"},
		{"one way only", "en-GB", "He analyzes. License the artifact, esthetic", "analyzes>analyses esthetic>aesthetic"},
		{"the other way only", "en-US", "analyses artefact licence aesthetic", "artefact>artifact licence>license"},
		{"words of both", "en-GB", "practice practise program sulfur plow draft", ""},
	}
	for _, test := range tests {
		for _, tag := range strings.Fields(test.tag) {
			t.Run(test.name+" "+tag, func(t *testing.T) {
				if got := respelt(spellingOf(tag), test.sentence); got != test.want {
					t.Errorf("got  %s\nwant %s", got, test.want)
				}
			})
		}
	}
}

// TestSpellingsDiffer holds the table of pairs against itself: a word that is
// right on a side is never foreign there.
func TestSpellingsDiffer(t *testing.T) {
	for _, s := range []*spelling{british(), american()} {
		for foreign, own := range s.words {
			if _, wrong := s.words[own.word]; wrong || foreign == own.word {
				t.Errorf("%s: %s stands for %s, which is foreign itself", s.own, own.word, foreign)
			}
		}
	}
}

func TestSpellingFindings(t *testing.T) {
	const says = " warning: %s“%s” is the American spelling, and this handbook is in British English (two-spellings)\n    Write “%s”."
	tests := []struct{ name, source, want string }{
		{"paragraph", "Pour. A *gray*\npot", "1:10: gray grey"},
		{"heading", "## Gray pots", "1:4: Gray Grey"},
		{"link's words", "A [gray](units/slip/unit.md) pot", "1:4: gray grey"},
		{"footnote", "A pot[^a]\n\n[^a]: It is gray", "3:13: gray grey"},
		{"words for a picture", "![A gray pot](pictures/jar.svg)", "1:5: gray grey"},
		{"after an entity", "&amp; &times; gray", "1:15: gray grey"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			place, words, _ := strings.Cut(test.want, ": ")
			word, own, _ := strings.Cut(words, " ")
			want := "home.md:" + place + ":" + fmt.Sprintf(says, "", word, own)
			if findings := wording(t, "en-GB", test.source); len(findings) != 1 || findings[0].String() != want {
				t.Errorf("got:\n%v\nwant:\n%s", findings, want)
			}
		})
	}
	for _, source := range []string{"`gray`", "```text\ngray\n```", "[pot](https://gray.example/gray)", "<https://gray.example/gray>"} {
		if findings := wording(t, "en-GB", source); len(findings) > 0 {
			t.Errorf("%q: %v", source, findings)
		}
	}
}

func TestSpellingOfTables(t *testing.T) {
	files := sound(t)
	change(t, files, "glossary.yaml", "means: Clay", "means: It is gray. Clay")
	change(t, files, "decoration.yaml", "tell: It is pale all over.", "tell: It is gray all over.")
	change(t, files, "units/wash/thin.md", "Cups of equal steps.", "Cups of gray.")
	_, findings := proofread(t, files)
	const says = "“gray” is the American spelling, and this handbook is in British English (two-spellings)\n    Write “grey”."
	want := []string{
		"decoration.yaml:1:1: warning: in `bone-dry`: " + says,
		"glossary.yaml:1:1: warning: in `bisque`: " + says,
		"units/wash/thin.md:1:1: warning: in the opening block: " + says,
	}
	if got := texts(findings); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// texts returns findings as they are printed.
func texts(list finding.List) []string {
	var all []string
	for _, f := range list {
		all = append(all, f.String())
	}
	return all
}

// TestTextsOfTheTable shows that every text of the decoration table is looked
// at, whatever part of it it stands in.
func TestTextsOfTheTable(t *testing.T) {
	on := map[string]course.Pair{"wet": {Reason: "Gray one."}}
	c := &course.Course{Language: "en-GB", Decoration: &course.Decoration{
		States:      []course.State{{ID: "wet", Between: "Gray."}},
		Media:       []course.Medium{{ID: "slip", About: "Gray.", On: on}},
		Techniques:  []course.Technique{{ID: "dots", About: "Gray.", Wait: "Gray.", On: map[string]course.Cell{"wet": {{Pair: on["wet"]}}}}},
		Overs:       []course.Over{{Under: "slip", Above: "wash", Pair: course.Pair{Remedy: "Gray."}}},
		Transitions: []course.Transition{{ID: "dry", Fault: "Gray."}},
		Exceptions:  []course.Exception{{ID: "ours", On: on}},
		Firing:      course.Firing{Name: "Gray."},
		Hazards:     []course.Hazard{{ID: "dust", Title: "Gray", Harm: "Gray.", Do: "Gray.", Short: "Gray.", Wear: []string{"gray gloves"}}},
		Places:      []course.Place{{ID: "booth", Name: "in the gray booth"}},
	}}
	if got := british().checkTables(c); len(got) != 16 {
		t.Errorf("%d findings, want 16:\n%s", len(got), strings.Join(texts(got), "\n"))
	}
}

// TestProgramsOwnTableIsBritish looks at the words of the program's own table,
// which are British, as a course in that spelling would, and makes sure that a
// course in the other is not asked to mend them.
func TestProgramsOwnTableIsBritish(t *testing.T) {
	files := sound(t)
	for _, name := range []string{"decoration.yaml", "hazards.yaml"} {
		text, err := os.ReadFile("../course/base/" + name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: append([]byte("base: no\n"), text...)}
	}
	c, _ := new(course.Reader).Load(files)
	if found := british().checkTables(c); len(found) > 0 {
		t.Error(strings.Join(texts(found), "\n"))
	}
	files["decoration.yaml"].Data, files["hazards.yaml"].Data = []byte("exceptions: []\n"), []byte("hazards: []\n")
	change(t, files, "course.yaml", "language: en-GB", "language: en-US")
	c, _ = new(course.Reader).Load(files)
	for _, f := range american().checkTables(c) {
		if f.File != "glossary.yaml" {
			t.Error(f.String())
		}
	}
}
