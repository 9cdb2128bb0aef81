package source

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// fault is what makes a file no text.
type fault struct {
	offset   int
	text, do string
}

// findFault finds the first byte that is not plain UTF-8 text: a byte-order
// mark, broken UTF-8, a control character other than tab and line ends.
func findFault(text []byte) *fault {
	for at := 0; at < len(text); {
		if c := text[at]; c >= ' ' && c < 0x7f || c == '\n' || c == '\t' {
			at++
			continue
		}
		r, size := utf8.DecodeRune(text[at:])
		switch {
		case r == utf8.RuneError && size == 1:
			return &fault{at, "this is not UTF-8 text", "Save the file again with the encoding UTF-8."}
		case r == 0:
			return &fault{at, "this is a NUL byte, which no text has", "Save the file again as plain text in UTF-8."}
		case r == '\ufeff' && at == 0:
			return &fault{at, "the file starts with a byte-order mark", "Save it again as “UTF-8 without BOM”."}
		case r == '\r' && (at+1 == len(text) || text[at+1] != '\n'):
			return &fault{at, "a line ends with a carriage return alone", "Save the file again with the line ends LF or CRLF."}
		case r < ' ' && r != '\r', r >= 0x7f && r < 0xa0, r == '\ufffe', r == '\uffff':
			return &fault{at, fmt.Sprintf("this character, %U, cannot be seen or printed", r), "Take it out; it may have come along with copied text."}
		}
		at += size
	}
	return nil
}

// oneLine returns a text whose line ends and runs of spaces are one space each. Most
// texts are so already.
func oneLine(text string) string {
	behind := ' '
	for _, c := range text {
		if unicode.IsSpace(c) && (c != ' ' || behind == ' ') {
			behind = ' '
			break
		}
		behind = c
	}
	if behind == ' ' {
		return strings.Join(strings.Fields(text), " ")
	}
	return text
}
