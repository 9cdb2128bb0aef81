package catalog

import (
	"net/url"
	"strconv"
)

// number writes a value so that reading it back gives the same bits.
func number(value float64) string { return strconv.FormatFloat(value, 'f', -1, 64) }

// unescape is an encoded answer as people read it.
func unescape(encoded string) string {
	text, err := url.QueryUnescape(encoded)
	if err != nil {
		panic(err) // an answer is encoded by the standard
	}
	return text
}

// british are the settings of a command line in British English.
func british() Settings {
	s := Plain()
	s.Words = WordsIn("en-GB")
	return s
}
