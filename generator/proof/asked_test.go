package proof

import (
	"slices"
	"strings"
	"testing"
)

// TestAskedFirst wants what the course puts first in its order, the rest as it is read,
// and a question that no lesson asks to be found.
func TestAskedFirst(t *testing.T) {
	files := sound(t)
	edit := func(name, old, new string) {
		file := *files[name]
		file.Data = []byte(strings.Replace(string(file.Data), old, new, 1))
		files[name] = &file
	}
	edit("course.yaml", "units:", "asked-first: [Is it wet?, Is it dri?, How thick?]\nunits:")
	edit("units/slip/mix.md", "## What goes wrong", "```asked How thick?\nAs a nail.\n```\n\n```asked Is it dry?\nNo.\n```\n\n## What goes wrong")
	edit("units/wash/thin.md", "## What goes wrong", "```asked Is it wet?\nYes.\n```\n\n```asked How thick?\nThin.\n```\n\n## What goes wrong")
	reading, findings := proofread(t, files)
	want := []string{"course.yaml:16:27: warning: no lesson asks “Is it dri?” (asked-first)\n" +
		"    Did you mean `Is it dry?`? Write the question as the opening line of an asked block has it, behind the word “asked”."}
	if got := texts(findings); !slices.Equal(got, want) {
		t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	var said []string
	first, rest := reading.Asked()
	for _, a := range slices.Concat(first, rest) {
		if a.Block == nil {
			said = append(said, "none")
			continue
		}
		said = append(said, a.Page.File+" "+a.Block.Words)
	}
	if want := []string{"units/wash/thin.md Is it wet?", "none", "units/slip/mix.md How thick?", "units/slip/mix.md Is it dry?", "units/wash/thin.md How thick?"}; !slices.Equal(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
}
