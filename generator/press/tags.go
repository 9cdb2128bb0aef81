package press

import "bytes"

// The press reads finished pages again where it gathers pieces of them: its own
// pages, megabytes of them in a large handbook. So it looks at tags alone and
// copies the rest. It may: every ">" and quote within a value is escaped there.

// tags goes through a piece of finished HTML and hands each tag, from "<" to
// ">", and each text between two tags to one of two functions.
func tags(piece []byte, tag, text func(part []byte)) {
	for len(piece) > 0 {
		at := bytes.IndexByte(piece, '<')
		if at < 0 {
			text(piece)
			return
		}
		if at > 0 {
			text(piece[:at])
			piece = piece[at:]
		}
		end := bytes.IndexByte(piece, '>')
		if end < 0 {
			text(piece)
			return
		}
		tag(piece[:end+1])
		piece = piece[end+1:]
	}
}

// tagName gives the name of a tag, and whether it opens an element.
func tagName(tag []byte) (name []byte, opens bool) {
	name = tag[1:]
	opens = len(name) > 0 && name[0] != '/' && name[0] != '!'
	if len(name) > 0 && name[0] == '/' {
		name = name[1:]
	}
	for n, c := range name {
		if c == ' ' || c == '>' || c == '/' || c == '\n' {
			return name[:n], opens
		}
	}
	return name, opens
}

// values goes through the attributes of a tag that have a value in quotes and
// gives for each its name, and where in the tag the whole attribute, with the
// space before it, and its value stand.
func values(tag []byte, each func(name []byte, from, value, to int)) {
	for at := 0; ; {
		n := bytes.Index(tag[at:], []byte(`="`))
		if n < 0 {
			return
		}
		equals := at + n
		from := bytes.LastIndexAny(tag[:equals], " \n\t")
		end := bytes.IndexByte(tag[equals+2:], '"')
		if from < 0 || end < 0 {
			return
		}
		to := equals + 2 + end
		each(tag[from+1:equals], from, equals+2, to)
		at = to + 1
	}
}
