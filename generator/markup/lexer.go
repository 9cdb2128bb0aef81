package markup

import (
	"github.com/alecthomas/chroma/v2"
)

// languages lists the languages that a code sample may name.
var languages = []string{"batch", "yaml", "markdown", "shell", "text"}

// lexers reads the languages that have something to colour. Each compiles its
// rules at its first use, and is then shared by all goroutines. Patterns are
// bound to one line and never nest a repeat within a repeat, so that reading
// stays in proportion to the length of the sample.
var lexers = map[string]chroma.Lexer{
	"batch":    lexer("batch", batchRules),
	"yaml":     lexer("yaml", yamlRules),
	"markdown": lexer("markdown", markdownRules),
	"shell":    lexer("shell", shellRules),
}

func lexer(name string, rules func() chroma.Rules) chroma.Lexer {
	return chroma.MustNewLexer(&chroma.Config{Name: name, EnsureNL: true}, rules)
}

// batchRules read a recipe listing: a line is a material and its amount; a +
// begins an addition over the hundred; a line that begins with "total" adds up;
// # begins a note.
//
//	# White slip, dry
//	Ball clay       50
//	China clay      50 %
//	Total          100
//	+ Cobalt stain   8
func batchRules() chroma.Rules {
	return chroma.Rules{
		"root": {
			{Pattern: `#[^\n]*`, Type: chroma.Comment},
			{Pattern: `^[ \t]*\+`, Type: chroma.Operator},
			{Pattern: `^[ \t]*(?i:totals?|sum)\b[^\d\n#]*`, Type: chroma.Keyword},
			{Pattern: `\d+(?:[.,]\d+)?(?=[ \t]*(?:%|kg|g|mL|L|parts?|oz|lb)?[ \t]*(?:#|\n))`, Type: chroma.Number, Mutator: chroma.Push("unit")},
			{Pattern: `[^\d\n#+]+`, Type: chroma.Name},
			{Pattern: `[\d+]`, Type: chroma.Name},
			{Pattern: `\n`, Type: chroma.Text},
		},
		"unit": {
			{Pattern: `[ \t]+`, Type: chroma.Text},
			{Pattern: `[^\n#]+`, Type: chroma.NameConstant, Mutator: chroma.Pop(1)},
			{Pattern: `(?=\n|#)`, Type: chroma.Text, Mutator: chroma.Pop(1)},
		},
	}
}

// yamlRules read the YAML that a course is written in.
func yamlRules() chroma.Rules {
	return chroma.Rules{
		"root": {
			{Pattern: `#[^\n]*`, Type: chroma.Comment},
			{Pattern: `^---[ \t]*$`, Type: chroma.Punctuation},
			{Pattern: `[A-Za-z_][\w-]*(?=[ \t]*:(?:[ \t]|\n))`, Type: chroma.NameTag},
			{Pattern: `"[^"\n]*"|'[^'\n]*'`, Type: chroma.String},
			{Pattern: `\b(?:true|false|null)(?=[ \t]*[,\]}\n#])`, Type: chroma.Keyword},
			{Pattern: `-?\d+(?:\.\d+)?(?=[ \t]*[,\]}\n#])`, Type: chroma.Number},
			{Pattern: `[:,\[\]{}|>-]`, Type: chroma.Punctuation},
			{Pattern: `\w+`, Type: chroma.Text},
			{Pattern: `[^\w\n]`, Type: chroma.Text},
			{Pattern: `\n`, Type: chroma.Text},
		},
	}
}

// markdownRules read the Markdown that lessons are written in.
func markdownRules() chroma.Rules {
	return chroma.Rules{
		"root": {
			{Pattern: `^#{1,6} [^\n]*`, Type: chroma.GenericHeading},
			{Pattern: "^[ \\t]*(?:`{3,}|~{3,})[^\\n]*", Type: chroma.Keyword},
			{Pattern: `^[ \t]*(?:[-*+]|\d+[.)])(?= )`, Type: chroma.Operator},
			{Pattern: `^[ \t]*>`, Type: chroma.Operator},
			{Pattern: "`[^`\\n]+`", Type: chroma.String},
			{Pattern: `!?\[[^\]\n]*\]\([^)\n]*\)`, Type: chroma.NameTag},
			{Pattern: `\*\*[^*\n]+\*\*|\*[^*\n]+\*`, Type: chroma.GenericStrong},
			{Pattern: `^[A-Za-z][\w-]*(?=:[ \t])`, Type: chroma.NameTag},
			{Pattern: `\w+`, Type: chroma.Text},
			{Pattern: `[^\w\n]`, Type: chroma.Text},
			{Pattern: `\n`, Type: chroma.Text},
		},
	}
}

// shellRules read the commands that DEVELOPERS and lessons tell people to type.
func shellRules() chroma.Rules {
	return chroma.Rules{
		"root": {
			{Pattern: `#[^\n]*`, Type: chroma.Comment},
			{Pattern: `"[^"\n]*"|'[^'\n]*'`, Type: chroma.String},
			{Pattern: `\$\w+|\$\{[^}\n]*\}`, Type: chroma.NameVariable},
			{Pattern: `(?<=\s)--?[A-Za-z][\w-]*`, Type: chroma.NameTag},
			{Pattern: `[|&;<>]+`, Type: chroma.Operator},
			{Pattern: `^[ \t]*[\w./-]+`, Type: chroma.Keyword},
			{Pattern: `[\w./-]+`, Type: chroma.Text},
			{Pattern: `[^\w\n./-]`, Type: chroma.Text},
			{Pattern: `\n`, Type: chroma.Text},
		},
	}
}
