package theme

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"
)

// words are the theme's own words by key, from words.yaml: whatever a page
// prints or says to a screen reader that the course does not. A word may hold
// places for what changes, "{1}", "{2}".
type words map[string]string

// readWords reads words.yaml: one flat list of "key: words".
func readWords(data []byte) (words, error) {
	w := words{}
	if err := yaml.Load(data, &w); err != nil {
		return nil, fmt.Errorf("words.yaml: %w", err)
	}
	for key, text := range w {
		if strings.TrimSpace(text) == "" {
			return nil, fmt.Errorf("words.yaml: %q has no words", key)
		}
	}
	return w, nil
}

// say returns the words of a key, with the values in their places. A key that
// words.yaml lacks, a place without a value and a value without a place are
// errors, so that no page is printed with a hole in it.
func (w words) say(key string, values ...any) (string, error) {
	text, ok := w[key]
	if !ok {
		return "", fmt.Errorf("words.yaml has no %q", key)
	}
	for n, value := range values {
		place := placeOf(n + 1)
		if !strings.Contains(text, place) {
			return "", fmt.Errorf("words.yaml: %q has no place %s", key, place)
		}
		text = strings.ReplaceAll(text, place, fmt.Sprint(value))
	}
	if next := placeOf(len(values) + 1); strings.Contains(w[key], next) {
		return "", fmt.Errorf("words.yaml: %q has a place %s, but nothing to stand there", key, next)
	}
	return text, nil
}

// placeOf is how the n-th place is written, from 1.
func placeOf(n int) string { return "{" + strconv.Itoa(n) + "}" }

// Needed are the words that the press itself prints, with how many values each
// takes: a theme must have them.
var Needed = map[string]int{
	"answers": 0, "answers-description": 0, "book": 0, "book-contents": 0, "book-description": 0, "calculator-choose": 0,
	"calculators": 0, "calculators-description": 0, "card-description": 1, "card-title": 1, "cards": 0, "cards-description": 0,
	"ebook": 0, "ebook-accessible": 0, "ebook-answers": 0, "ebook-answers-of": 1, "ebook-beside": 0,
	"chart": 0, "chart-description": 0, "chart-media": 0, "contents": 0, "contents-description": 0, "extra": 0,
	"faults": 0, "faults-description": 0, "faults-bisque": 0, "answers-first": 0, "faults-glaze": 0, "faults-other": 0, "faults-wet": 0, "glossary": 0, "glossary-description": 0, "label-title": 1, "label-wet": 0, "label-wet-eyes": 0, "label-wet-gloves": 0, "label-wet-raw": 0, "labels": 0, "labels-description": 0, "materials": 0, "materials-description": 0,
	"paper": 0, "paper-description": 0, "poster-description": 0, "poster-firing": 0,
	"paper-a4": 0, "paper-us": 0, "recipe-by-water": 1, "recipe-of-dry": 0, "recipe-of-water": 0, "recipes": 0, "rinse-apart": 1, "recipes-description": 0, "wall": 0, "wall-description": 0,
	"wall-alt-after": 3, "wall-alt-before": 2, "wall-no-clear": 0, "wall-some-clear": 0,
	"hazards": 0, "hazards-description": 0, "classes": 0, "classes-description": 0, "session-description": 0, "session-litres": 1, "stock": 0, "stock-description": 0,
	"leach": 0, "leach-description": 0, "eat": 0, "eat-description": 0,
	"medium-description": 1, "note-back": 0, "note-back-name": 2, "note-back-place": 1, "notfound": 0, "notices": 0, "notices-description": 0, "tried": 0, "tried-description": 0, "notfound-description": 0, "phone": 0, "phone-description": 0,
	"find": 0, "find-description": 0, "find-passed-over": 0, "find-articles": 0, "find-endings": 0, "find-word": 0, "find-fault": 0, "find-state": 0, "find-medium": 0, "find-technique": 0, "find-question": 0, "find-lesson": 0, "find-reading": 0,
	"find-calculator": 0, "find-recipe": 0, "find-material": 0, "find-hazard": 0, "find-page": 0, "find-sheet": 0, "find-teaching": 0,
	"state-description": 1, "strip": 0, "teaching-page": 0, "today-except": 1, "today-part": 1, "teaching-description": 0, "tile-title": 2, "wall-good": 0, "wall-usable": 0, "wall-failed": 0, "wall-unfired": 0, "wall-unjudged": 0, "who-fit-tested": 0, "who-instructor": 0, "who-trained": 0, "who-with-instructor": 0,
}

// checkNeeded reports the first of those words, in the order of the alphabet,
// that cannot be said.
func (w words) checkNeeded() error {
	for _, key := range slices.Sorted(maps.Keys(Needed)) {
		if _, err := w.say(key, make([]any, Needed[key])...); err != nil {
			return err
		}
	}
	return nil
}
