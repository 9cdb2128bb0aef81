package press

import (
	"errors"
	"fmt"
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

// say gives the words of a key, with the values in their places. A key that
// words.yaml lacks, a place without a value and a value without a place are
// errors, so that no page is printed with a hole in it.
func (w words) say(key string, values ...any) (string, error) {
	text, ok := w[key]
	if !ok {
		return "", fmt.Errorf("words.yaml has no %q", key)
	}
	for n, value := range values {
		place := fmt.Sprintf("{%d}", n+1)
		if !strings.Contains(text, place) {
			return "", fmt.Errorf("words.yaml: %q has no place %s", key, place)
		}
		text = strings.ReplaceAll(text, place, fmt.Sprint(value))
	}
	if next := fmt.Sprintf("{%d}", len(values)+1); strings.Contains(w[key], next) {
		return "", fmt.Errorf("words.yaml: %q has a place %s, but nothing to stand there", key, next)
	}
	return text, nil
}

// sayAll gives the words of several keys that take no values.
func (w words) sayAll(keys ...string) ([]string, error) {
	said := make([]string, len(keys))
	var faults []error
	for n, key := range keys {
		text, err := w.say(key)
		said[n] = text
		faults = append(faults, err)
	}
	return said, errors.Join(faults...)
}
