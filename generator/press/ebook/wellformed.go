package ebook

import (
	"bytes"
	"fmt"
)

// wellFormed looks whether each element of a finished document ends where XML wants it
// to: a reading system shows nothing of one in which a theme left a paragraph open.
// It takes quotes and tags to be sound, since html/template sees to those.
func wellFormed(data []byte) error {
	var open [][]byte
	for {
		at := bytes.IndexByte(data, '<')
		if at < 0 {
			break
		}
		data = data[at+1:]
		end := tagEnd(data)
		if end < 0 {
			return fmt.Errorf("a tag has no end: %.40q", data)
		}
		tag := data[:end]
		data = data[end+1:]
		switch {
		case tag[0] == '?' || tag[0] == '!' || tag[end-1] == '/':
		case tag[0] != '/':
			open = append(open, tagName(tag))
		case len(open) == 0 || !bytes.Equal(open[len(open)-1], tagName(tag[1:])):
			return unended(open, tag)
		default:
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		return unended(open, nil)
	}
	return nil
}

// tagEnd is where a tag ends whose begin was read; -1 where it does not.
func tagEnd(data []byte) int {
	quote := byte(0)
	for n, sign := range data {
		switch {
		case quote == 0 && sign == '>' && n > 0:
			return n
		case quote == 0 && (sign == '"' || sign == '\''):
			quote = sign
		case sign == quote:
			quote = 0
		}
	}
	return -1
}

func tagName(tag []byte) []byte {
	if at := bytes.IndexAny(tag, " \t\r\n"); at >= 0 {
		tag = tag[:at]
	}
	return tag
}

func unended(open [][]byte, tag []byte) error {
	if len(open) == 0 {
		return fmt.Errorf("<%s> ends what never began", tag)
	}
	if tag == nil {
		tag = []byte("/html")
	}
	return fmt.Errorf("<%s> is open where <%s> stands; the theme’s templates must end it", open[len(open)-1], tag)
}
