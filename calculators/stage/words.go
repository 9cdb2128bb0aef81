package stage

// longest finds the longest phrase of n things that stands in the words, and
// returns the thing and the words without the phrase; -1 when there is none. Of
// phrases of one length the first thing's counts.
func longest(words []string, n int, phrases func(int) []string) (found int, rest []string) {
	found, at, length := find(words, n, phrases)
	rest = append(rest, words[:at]...)
	return found, append(rest, words[at+length:]...)
}

// find is longest with the place of the phrase and how many words it takes.
func find(words []string, n int, phrases func(int) []string) (found, at, length int) {
	found = -1
	for i := range n {
		for _, phrase := range phrases(i) {
			if start, many := stands(words, phrase); many > length {
				found, length, at = i, many, start
			}
		}
	}
	return found, at, length
}

// stands returns where a phrase begins in plain words and how many it takes; 0
// when it does not stand there.
func stands(words []string, phrase string) (start, many int) {
	for start = range words {
		if many = begins(words[start:], phrase); many > 0 {
			return start, many
		}
	}
	return 0, 0
}

// begins compares a phrase with the first of some plain words, letter by
// letter, as plain would write it; it makes nothing, because every phrase of
// the table is tried on every wish.
func begins(words []string, phrase string) (many int) {
	word, at := "", 0
	for i := 0; i <= len(phrase); i++ {
		c := byte(' ')
		if i < len(phrase) {
			c = fold(phrase[i])
		}
		switch {
		case c == ' ' && at == len(word):
			word, at = "", 0 // between words, or at the end of one that is the same
		case c == ' ':
			return 0
		case at == 0 && many == len(words):
			return 0
		default:
			if at == 0 {
				word = words[many]
				many++
			}
			if at == len(word) || word[at] != c {
				return 0
			}
			at++
		}
	}
	return many
}

// fold makes a letter small and everything that parts words a space.
func fold(c byte) byte {
	switch {
	case c >= 'A' && c <= 'Z':
		return c | 0x20
	case c >= 'a' && c <= 'z', c >= '0' && c <= '9', c >= 0x80:
		return c
	}
	return ' '
}

// plain parts a text into words in lower case; what is neither a letter nor a
// digit parts them. Letters outside ASCII stay as they are.
func plain(text string) []string {
	var words []string
	word := []byte{}
	for i := 0; i <= len(text); i++ {
		c := byte(' ')
		if i < len(text) {
			c = fold(text[i])
		}
		switch {
		case c != ' ':
			word = append(word, c)
		case len(word) > 0:
			words = append(words, string(word))
			word = word[:0]
		}
	}
	return words
}

// without leaves out the words of two lists.
func without(words, leave, more []string) []string {
	var rest []string
	for _, w := range words {
		if !has(leave, w) && !has(more, w) {
			rest = append(rest, w)
		}
	}
	return rest
}

// blanked returns words with some of them blank, so that the others keep their
// places.
func blanked(words []string, at, many int) []string {
	left := append([]string(nil), words...)
	for i := at; i < at+many; i++ {
		left[i] = ""
	}
	return left
}

func (t *Table) findMedium(words []string) (found, at, many int) {
	return find(words, len(t.Media), func(i int) []string { return t.Media[i].phrases() })
}

func (t *Table) findTechnique(words []string) (found, at, many int) {
	return find(words, len(t.Techniques), func(i int) []string { return t.Techniques[i].phrases() })
}

// masked returns words with those blank that stand in the longer name of a way of
// working, where a medium is named: "slip wiped off relief".
func (t *Table) masked(words []string) []string {
	for i := range t.Techniques {
		for _, phrase := range t.Techniques[i].phrases() {
			at, many := stands(words, phrase)
			if many < 2 {
				continue
			}
			if medium, _, of := t.findMedium(words[at : at+many]); medium >= 0 && of < many {
				words = blanked(words, at, many)
			}
		}
	}
	return words
}

// within marks the words of names that are longer than one: a small word there
// parts no layers, as in "dots and lines".
func (t *Table) within(words []string) []bool {
	marked := make([]bool, len(words))
	mark := func(phrases []string) {
		for _, phrase := range phrases {
			if at, many := stands(words, phrase); many > 1 {
				for i := at; i < at+many; i++ {
					marked[i] = true
				}
			}
		}
	}
	for i := range t.Media {
		mark(t.Media[i].phrases())
	}
	for i := range t.Techniques {
		mark(t.Techniques[i].phrases())
	}
	return marked
}
