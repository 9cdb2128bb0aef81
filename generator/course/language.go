package course

import (
	"regexp"
	"strings"
)

// languageTag is the form of BCP 47 that handbooks need: language, script,
// region, variants. It looks at the form alone, not at what is registered.
var languageTag = regexp.MustCompile(`^[A-Za-z]{2,3}(-[A-Za-z]{4})?(-([A-Za-z]{2}|[0-9]{3}))?(-([A-Za-z0-9]{5,8}|[0-9][A-Za-z0-9]{3}))*$`)

// languageLine is how course.yaml says its language, found before the file is
// read: some characters are needed in some languages alone.
var languageLine = regexp.MustCompile(`(?m)^language:[ \t]*["']?([A-Za-z0-9-]+)`)

// languageOf returns the language that course.yaml names; empty where it names
// none.
func languageOf(settings []byte) string {
	if m := languageLine.FindSubmatch(settings); m != nil {
		return string(m[1])
	}
	return ""
}

// pointed holds the languages that write 1.5, and the regions that do although
// their language does not, or do not although it does. Common practice, no
// standard; every other language writes 1,5.
var (
	pointed = words("en zh ja ko th hi bn ta te mr gu kn ml pa ur ne si my km he ms sw fil tl ga cy gd mt zu yo ig ha am so mn")
	regions = map[string]byte{
		"de-ch": '.', "de-li": '.', "it-ch": '.',
		"es-mx": '.', "es-us": '.', "es-pr": '.', "es-gt": '.', "es-hn": '.', "es-ni": '.', "es-pa": '.', "es-do": '.', "es-sv": '.', "es-pe": '.',
		"en-za": ',',
	}
)

func words(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(list) {
		set[w] = true
	}
	return set
}

// decimalMark returns the mark that people who read this language write between
// units and tenths.
func decimalMark(tag string) byte {
	parts := strings.Split(strings.ToLower(tag), "-")
	for _, region := range parts[1:] {
		if mark, ok := regions[parts[0]+"-"+region]; ok {
			return mark
		}
	}
	if pointed[parts[0]] {
		return '.'
	}
	return ','
}
