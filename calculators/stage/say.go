package stage

import (
	"errors"

	"slipbook/calculators/letters"
)

// Say words a wish whole: the pot, the layers, and what else was said of it.
func (t *Table) Say(w Wish) string {
	state := &t.States[w.State]
	text := state.Name
	if w.Part > 0 {
		text = upper(state.Parts[w.Part-1].Name)
	}
	text = t.fill("wish", "state", text, "layers", t.say(w))
	var coats []string
	for _, c := range w.Already {
		key := "coat-fixed"
		if c.Loose {
			key = "coat-loose"
		}
		coats = append(coats, t.fill(key, "coat", t.named(Layer{Medium: c.Medium, Metal: c.Metal})))
	}
	if len(coats) > 0 {
		text = join(text, t.fill("already", "coats", t.listed(coats)))
	}
	if w.Apart {
		text = join(text, t.fill("apart"))
	}
	if w.Bare {
		text = join(text, t.fill("bare"))
	}
	if !w.Food {
		text = join(text, t.fill("not-food"))
	}
	if w.Body >= 0 {
		text = join(text, t.fill("of-clay", "clay", t.Bodies[w.Body].Name))
	}
	return text
}

// say words the layers of a wish.
func (t *Table) say(w Wish) string {
	text := ""
	for i, layer := range w.Layers {
		if i > 0 {
			text += t.Words.Text("language.list.between")
		}
		var ways []string
		for _, q := range layer.Ways {
			ways = append(ways, t.lower(t.Techniques[q].Name))
		}
		switch {
		case layer.Medium < 0:
			text += t.listed(ways)
		case len(ways) > 0:
			text += t.fill("layer", "medium", t.named(layer), "ways", t.listed(ways))
		default:
			text += t.named(layer)
		}
	}
	return text
}

// named is the medium of a layer with the metal that was named of it: "oxide
// wash with cobalt".
func (t *Table) named(layer Layer) string {
	text := t.lower(t.Media[layer.Medium].Name)
	if layer.Metal != "" {
		return t.fill("with-metal", "medium", text, "metal", layer.Metal)
	}
	return text
}

// fill is a sentence of the table's words, by what follows "plan." in its id.
func (t *Table) fill(key string, fills ...string) string {
	return t.Words.Fill("plan."+key, fills...)
}

// refuse is an error in the table's words.
func (t *Table) refuse(key string, fills ...string) error { return errors.New(t.fill(key, fills...)) }

// count words a number of things.
func (t *Table) count(key string, n int) string { return t.Words.Count("plan."+key, n) }

// lower makes a name fit into a sentence, as the language does.
func (t *Table) lower(name string) string {
	if t.Words.Text("language.labels") == "small" {
		return lower(name)
	}
	return name
}

// join puts two sentences one after the other, where there are two.
func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}

// either lists names: "dipping, pouring or spraying".
func (t *Table) either(names []string) string {
	text := ""
	for i, name := range names {
		switch {
		case i == 0:
		case i == len(names)-1:
			text += t.fill("or")
		default:
			text += t.Words.Text("language.list.between")
		}
		text += name
	}
	return text
}

// listed joins texts: "brushing, wiping".
func (t *Table) listed(texts []string) string {
	return letters.Join(texts, t.Words.Text("language.list.between"))
}

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
