package form

import (
	"strconv"

	"slipbook/calculators/letters"
	"slipbook/calculators/words"
)

// The bounds of a request: more than any form holds, little enough that
// nothing sent can cost time or memory worth speaking of.
const (
	mostBytes    = 16 << 10
	mostFields   = 300
	mostSettings = 512 << 10 // a large decoration table
)

// Respond answers an encoded request with an encoded answer: the reactor's
// work, and what the tests compare byte for byte. A request that cannot be
// read is answered with an error of the input "calculator".
func (l List) Respond(request []byte, s Settings) []byte {
	name, given, err := ReadRequest(string(request))
	if err != nil {
		s = s.inWords()
		answer := &Answer{Calculator: name, Language: s.Words.Language}
		answer.Refuse("calculator", s.said(err))
		return answer.encode()
	}
	return l.Solve(name, given, s).encode()
}

// Failed is the answer where nothing else can be said: an error that asks the
// reader to tell the instructor.
func (s Settings) Failed() []byte {
	answer := &Answer{}
	answer.Refuse("calculator", s.inWords().Words.Text("form.failed"))
	return answer.encode()
}

// Request encodes a calculator's name and its inputs as a request, which is
// also what stands after "?" in the address of a filled-in form.
func Request(calculator string, given []Setting) string {
	var b []byte
	b = field(b, "calculator", calculator)
	for _, g := range given {
		b = field(b, g.Name, g.Text)
	}
	return string(b)
}

// ReadRequest reads what Request wrote: the name of a calculator and the texts
// of its inputs. Its error says what is too large.
func ReadRequest(request string) (name string, given []Setting, err error) {
	fields, err := decode(request, mostBytes)
	if err != nil {
		return "", nil, err
	}
	for _, f := range fields {
		if f.Name == "calculator" && name == "" {
			name = f.Text
		} else {
			given = append(given, f)
		}
	}
	return name, given, nil
}

// encode writes an answer, its language first, then what may hurt before what is reckoned: error.INPUT,
// wrong.INPUT (which value of a list), read.INPUT, chosen.INPUT, caution, headline, judged, value.X, unit.X, text.X,
// row.N.COLUMN, mixed.N.of, mixed.N.says, mixed.N.name and mixed.N.page (of each recipe), note, next.N.words, next.N.request and drawing.
func (a *Answer) encode() []byte {
	var b []byte
	b = field(b, "calculator", a.Calculator)
	b = field(b, "language", a.Language)
	for _, e := range a.Errors {
		b = field(b, "error."+e.Input, e.Text)
	}
	for _, w := range a.Wrong {
		b = field(b, "wrong."+w.Input, strconv.Itoa(w.Value))
	}
	for _, r := range a.Read {
		b = field(b, "read."+r.Input, r.Text)
	}
	for _, c := range a.Chosen {
		b = field(b, "chosen."+c.Input, c.Text)
	}
	for _, c := range a.Cautions {
		b = field(b, "caution", c)
	}
	if a.Headline != "" {
		b = field(b, "headline", a.Headline)
	}
	for _, j := range a.Judged {
		b = field(b, "judged", j)
	}
	for _, r := range a.Outputs {
		if !r.IsText {
			b = field(b, "value."+r.Name, number(r.Value))
			b = field(b, "unit."+r.Name, r.Unit)
		}
		b = field(b, "text."+r.Name, r.Text)
	}
	for n, row := range a.Rows {
		for _, cell := range row {
			b = field(b, "row."+strconv.Itoa(n+1)+"."+cell.Column, cell.Text)
		}
	}
	b = a.encodeMixed(b)
	for _, n := range a.Notes {
		b = field(b, "note", n)
	}
	for n, next := range a.Next {
		key := "next." + strconv.Itoa(n+1)
		b = field(b, key+".words", next.Words)
		b = field(b, key+".request", next.Request)
	}
	if a.Drawing != "" {
		b = field(b, "drawing", a.Drawing)
	}
	return b
}

// encodeMixed appends what the studio mixes itself.
func (a *Answer) encodeMixed(b []byte) []byte {
	for n, m := range a.Mixed {
		key := "mixed." + strconv.Itoa(n+1)
		b = field(b, key+".of", m.Of)
		b = field(b, key+".says", m.Says)
		for _, r := range m.By {
			b = field(b, key+".name", r.Name)
			b = field(b, key+".page", r.Page)
			b = field(b, key+".proof", r.Proof)
			b = field(b, key+".tile", r.Tile)
		}
	}
	return b
}

// number writes a value, without an exponent, so that reading it back gives the
// same bits.
func number(value float64) string { return strconv.FormatFloat(value, 'f', -1, 64) }

// field appends one name=value pair by the WHATWG URL standard's
// application/x-www-form-urlencoded serializer.
func field(b []byte, name, value string) []byte {
	if len(b) > 0 {
		b = append(b, '&')
	}
	b = append(escape(b, name), '=')
	return escape(b, value)
}

func escape(b []byte, text string) []byte {
	const hex = "0123456789ABCDEF"
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == ' ':
			b = append(b, '+')
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', c == '*', c == '-', c == '.', c == '_':
			b = append(b, c)
		default:
			b = append(b, '%', hex[c>>4], hex[c&15])
		}
	}
	return b
}

// decode parses by the same standard's parser: a "%" that two hexadecimal
// digits do not follow stands for itself.
func decode(text string, most int) ([]Setting, error) {
	if len(text) > most {
		return nil, words.NewError("form.request-too-long")
	}
	var fields []Setting
	for _, pair := range letters.Split(text, "&") {
		if pair == "" {
			continue
		}
		if len(fields) == mostFields {
			return nil, words.NewError("form.too-many-inputs")
		}
		name, value, _ := letters.Cut(pair, "=")
		fields = append(fields, Setting{unescape(name), unescape(value)})
	}
	return fields, nil
}

// unescape undoes escape. Bytes that are no UTF-8 become the replacement
// character, so that no message can carry them on.
func unescape(text string) string {
	b := make([]byte, 0, len(text))
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == '+':
			b = append(b, ' ')
		case c == '%' && i+2 < len(text) && hexDigit(text[i+1]) >= 0 && hexDigit(text[i+2]) >= 0:
			b = append(b, byte(hexDigit(text[i+1])<<4|hexDigit(text[i+2])))
			i += 2
		default:
			b = append(b, c)
		}
	}
	return string([]rune(string(b)))
}

// hexDigit returns the value of a hexadecimal digit, or -1.
func hexDigit(c byte) int {
	switch {
	case c >= '0' && c <= '9':
		return int(c - '0')
	case c >= 'a' && c <= 'f':
		return int(c-'a') + 10
	case c >= 'A' && c <= 'F':
		return int(c-'A') + 10
	}
	return -1
}
