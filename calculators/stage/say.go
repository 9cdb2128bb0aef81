package stage

import "slipbook/calculators/letters"

// Say words a wish whole: the pot, the layers, and what else was said of it.
func (t *Table) Say(w Wish) string {
	state := &t.States[w.State]
	text := state.Name
	if w.Part > 0 {
		text = upper(state.Parts[w.Part-1].Name)
	}
	text += ": " + t.say(w) + "."
	var coats []string
	for _, c := range w.Already {
		how := "fixed"
		if c.Loose {
			how = "loose"
		}
		coats = append(coats, t.named(Layer{Medium: c.Medium, Metal: c.Metal})+" ("+how+")")
	}
	if len(coats) > 0 {
		text += " On it already: " + listed(coats, ", ") + "."
	}
	if w.Apart {
		text += " Each on a place of its own."
	}
	if w.Bare {
		text += " It ends bare."
	}
	if !w.Food {
		text += " Not for food or drink."
	}
	if w.Body >= 0 {
		text += " Of " + t.Bodies[w.Body].Name + "."
	}
	return text
}

// say words the layers of a wish.
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
			text += t.named(layer) + " (" + listed(ways, ", ") + ")"
		default:
			text += t.named(layer)
		}
	}
	return text
}

// named is the medium of a layer with the metal that was named of it: "oxide
// wash with cobalt".
func (t *Table) named(layer Layer) string {
	text := lower(t.Media[layer.Medium].Name)
	if layer.Metal != "" {
		text += " with " + layer.Metal
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

// upper makes a text fit the beginning of a sentence.
func upper(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]&^0x20) + text[1:]
}
