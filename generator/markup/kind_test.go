package markup

import (
	"slices"
	"strings"
	"testing"
)

// withThings adds a block that no handbook has, with words and keys of its own,
// for one test.
func withThings(t *testing.T) {
	t.Helper()
	before := blockKinds
	t.Cleanup(func() { blockKinds = before })
	blockKinds = append(slices.Clone(before), blockKind{
		name: "of-no-kind", named: "a list of things", guarded: true,
		read:  func(_ *page, _ *Block, in *body) bool { return in.read("the list of things") && in.sound() },
		prose: []string{"for", "thing", "also"}, other: []string{"things", "amount"}, alone: []string{"for"},
	})
}

// TestABlockIsItsEntry wants all that holds of the words of a block to follow from
// its entry in the table.
func TestABlockIsItsEntry(t *testing.T) {
	withThings(t)
	body := "for: a tub, for: one\nthings:\n  - {thing: Clay, amount: 5 g}\n  - thing: A tub\n"
	if got, want := told("```of-no-kind\n"+body+"```\n"), "body 2:6 a tub, for: one\nbody 4:13 Clay\nbody 5:12 A tub\n"; strings.ReplaceAll(got, "question", "body") != want {
		t.Errorf("its words are\n%swant\n%s", got, want)
	}
	if d, _ := whole("```caution A\nb. c.\n```\n\n```of-no-kind\n" + body + "```\n"); !d.Prose.Cautions[0].Guards {
		t.Error("no caution guards it")
	}
	_, found := whole("```of-no-kind\nthing: \"[a](glossary:nonsense)\"\namount: \"**5**\"\nalso: [b, \"`c`\"]\n```\n")
	if got := said(found); strings.Count(got, "plain-words") != 2 || !strings.Contains(got, "2:9 plain-words: `thing`") || !strings.Contains(got, "4:12 plain-words: an item of `also`") {
		t.Errorf("of marks of Markdown it says\n%s", got)
	}
	if _, found = whole("```of-no-knid\n```\n"); !strings.Contains(said(found), "Did you mean `of-no-kind`?") {
		t.Errorf("its name is not known: %s", said(found))
	}
}

// TestKeysOfBlocks wants keys only of blocks of YAML, and none of them twice.
func TestKeysOfBlocks(t *testing.T) {
	for _, k := range blockKinds {
		keys := slices.Sorted(slices.Values(slices.Concat(k.prose, k.other)))
		if n := len(keys); n > 0 && k.read == nil || len(slices.Compact(keys)) != n {
			t.Errorf("%s has the keys %q", k.name, keys)
		}
		for _, key := range k.alone {
			if !slices.Contains(keys, key) {
				t.Errorf("%s: %q stands alone, and is none of its keys", k.name, key)
			}
		}
	}
}
