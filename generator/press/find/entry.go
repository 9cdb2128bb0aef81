package find

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/press/theme"
)

// Entry is a line of the index of the whole book.
type Entry struct {
	Name    string
	See     string // what it is called there; empty where Name is its own name
	Kind    string // in a word
	Number  string // of the lesson; may be empty
	Address string // from the handbook's root
	key     string
}

// Entries lists all names of places but those of parts of a page, sorted by the
// alphabet, accents and capitals aside. What something is called besides leads to the
// same place, unless an entry of its own has that name.
func Entries(t *theme.Theme, places []Place) []Entry {
	kindNames, rules, articles := kindWords(t), NewRules(t), strings.Fields(t.Say("find-articles"))
	own := map[string]bool{}
	var all []Entry
	add := func(p Place, name, see string) {
		all = append(all, Entry{name, see, kindNames[p.Kind], p.Number, p.Address, sortKey(name, articles)})
	}
	for _, p := range places {
		if p.Part == "" {
			add(p, p.Name, "")
			own[strings.Join(rules.Words(p.Name), " ")] = true
		}
	}
	for _, p := range places {
		if p.Part != "" {
			continue
		}
		for _, name := range p.Also {
			if stems := strings.Join(rules.Words(name), " "); stems != "" && !own[stems] {
				own[stems] = true
				add(p, name, p.Name)
			}
		}
	}
	slices.SortFunc(all, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(a.key, b.key), cmp.Compare(a.Name, b.Name), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Address, b.Address), cmp.Compare(a.See, b.See))
	})
	return all
}

// sortKey is a name as it is sorted: its words, folded, without an article before others.
func sortKey(name string, articles []string) string {
	words := slices.Collect(apart(Fold(name)))
	if len(words) > 1 && slices.Contains(articles, words[0]) {
		words = words[1:]
	}
	return strings.Join(words, " ")
}

// Letter is the letter under which the entry stands; "0" for what begins with none.
func (e Entry) Letter() string {
	first, _ := utf8.DecodeRuneInString(e.key)
	if !unicode.IsLetter(first) {
		return "0"
	}
	return string(unicode.ToUpper(first))
}
