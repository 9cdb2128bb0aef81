package desk

import (
	"slices"
	"strings"
	"testing"
)

// numberBox is a short box of a number, under a name.
func numberBox(name string) Box {
	return Box{Name: name, Label: "Weight", Help: "In all.", Values: []Value{{}}}
}

// pairedIn returns the names of the boxes that are paired.
func pairedIn(choices []Choice) []string {
	var names []string
	for _, c := range choices {
		for _, side := range c.Sides {
			for _, b := range side {
				if b.Paired {
					names = append(names, b.Name)
				}
			}
		}
	}
	return names
}

func TestPair(t *testing.T) {
	single := func(b Box) Choice { return Choice{[][]Box{{b}}} }
	a, b, c, d := numberBox("a"), numberBox("b"), numberBox("c"), numberBox("d")
	long := numberBox("long")
	long.Help = strings.Repeat("a", pairedHelp+1)
	titled := numberBox("titled")
	titled.Label = strings.Repeat("a", pairedLabel+1)
	strong := numberBox("strong")
	strong.Unit = "g/100 mL"
	words := numberBox("words")
	words.Words = true
	chosen := numberBox("chosen")
	chosen.Choices = []Option{{}}
	list := numberBox("list")
	list.List = true
	led := numberBox("led")
	led.Finds = "clay-water.html"
	for _, tt := range []struct {
		name    string
		choices []Choice
		want    []string
	}{
		{"two", []Choice{single(a), single(b)}, []string{"a", "b"}},
		{"an odd one keeps its row", []Choice{single(a), single(b), single(c)}, []string{"a", "b"}},
		{"four", []Choice{single(a), single(b), single(c), single(d)}, []string{"a", "b", "c", "d"}},
		{"a long one between", []Choice{single(a), single(long), single(b)}, nil},
		{"after a long one", []Choice{single(long), single(a), single(b)}, []string{"a", "b"}},
		{"a long name", []Choice{single(a), single(titled)}, nil},
		{"a long unit", []Choice{single(a), single(strong)}, nil},
		{"words", []Choice{single(a), single(words)}, nil},
		{"a choice", []Choice{single(a), single(chosen)}, nil},
		{"a list", []Choice{single(a), single(list)}, nil},
		{"one with a way to find it out", []Choice{single(a), single(led)}, nil},
		{"none across an or", []Choice{{[][]Box{{a}, {b}}}}, nil},
		{"a side of two", []Choice{{[][]Box{{a}, {b, c}}}}, []string{"b", "c"}},
		{"none into a group, none out of it", []Choice{single(a), {[][]Box{{b}, {c}}}, single(d)}, nil},
	} {
		if pair(tt.choices); !slices.Equal(pairedIn(tt.choices), tt.want) {
			t.Errorf("%s: paired are %q, want %q", tt.name, pairedIn(tt.choices), tt.want)
		}
	}
}
