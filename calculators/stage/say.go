package stage

import "slipbook/calculators/letters"

// say words a wish.
func (t *Table) say(w Wish) string {
	text := ""
	for i, layer := range w.Layers {
		if i > 0 {
			text += ", "
		}
		var ways []string
		for _, q := range layer.Ways {
			ways = append(ways, lower(t.Techniques[q].Name))
		}
		switch {
		case layer.Medium < 0:
			text += listed(ways, ", ")
		case len(ways) > 0:
			text += lower(t.Media[layer.Medium].Name) + " (" + listed(ways, ", ") + ")"
		default:
			text += lower(t.Media[layer.Medium].Name)
		}
	}
	return text
}

// count words a number of things.
func count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return digit(n) + " " + word + "s"
}

// join puts two sentences one after the other, where there are two.
func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}

// either lists names: "dipping, pouring or spraying".
func either(names []string) string {
	text := ""
	for i, name := range names {
		switch {
		case i == 0:
		case i == len(names)-1:
			text += " or "
		default:
			text += ", "
		}
		text += name
	}
	return text
}

// listed joins texts.
func listed(texts []string, by string) string { return letters.Join(texts, by) }

// union adds the texts that are not yet in a list.
func union(list []string, texts ...string) []string {
	for _, text := range texts {
		if !has(list, text) {
			list = append(list, text)
		}
	}
	return list
}

// holds reports whether a text says some words already.
func holds(text, words string) bool { return letters.Contains(text, words) }

// has reports whether a list holds a word.
func has(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

// lower makes a name fit into a sentence.
func lower(name string) string {
	if name == "" || name[0] < 'A' || name[0] > 'Z' {
		return name
	}
	return string(name[0]|0x20) + name[1:]
}
