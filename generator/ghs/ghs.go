// Package ghs knows the words and rules of the Globally Harmonized System of
// classification and labelling of chemicals (GHS): what a code on a supplier's
// sheet says, which pictograms and which signal word the codes of a material call
// for, and whether a CAS Registry Number can be right. It exists so that labels
// and registers print the words that the standard prescribes, and so that a
// register which contradicts itself is noticed.
//
// The words are those of the United Nations, spelt as the United States do
// (29 CFR 1910.1200 Appendix C). The forms with letters behind the number (H350i,
// H360FD) and the EUH statements are of Regulation (EC) 1272/2008, which calls
// itself CLP. Where the standard leaves a gap for the supplier, the words stay
// general: a route or an organ that is to be named "if known" is left out, so
// that the sentence warns of all of them; hands are what is washed; a list parted
// by slashes stays whole, because which of its items apply stands on the
// supplier's sheet; words in brackets that only ease a duty are left out, others
// are kept. The precautions of older revisions (P201, P310 to P315) are known
// beside those that newer ones put in their place (P203, P316 to P319): sheets of
// both kinds stand in the same folder.
package ghs

import "strings"

// kind is what a statement speaks of: by it one pictogram takes another's place,
// and by it a hazard is one of breathing.
type kind int

const (
	precaution  kind = iota // what to do: every P-code
	physical                // fire, pressure, metals
	eaten                   // poisonous by the mouth, or into the airways from there
	touched                 // poisonous through the skin
	breathed                // poisonous by breathing
	burning                 // burns skin and eyes, and as dust or mist what it reaches inside
	irritating              // skin and eyes
	skinAllergy             // allergy of the skin
	lungAllergy             // asthma and the like
	airways                 // irritates the airways, makes dizzy, gives off what does
	lasting                 // genes, cancer, children, organs: by any route that is not ruled out
	note                    // what else the law of Europe wants said
	nature                  // water and air outside
)

// statement is a line of the table: a code and all that the standard hangs on it.
type statement struct {
	code, signal, pictogram string
	kind                    kind
	words                   string
}

// find returns the line of one code without a plus in it.
func find(code string) (statement, bool) {
	table := hazards
	if strings.HasPrefix(code, "P") {
		table = precautions
	}
	for _, s := range table {
		if s.code == code {
			return s, true
		}
	}
	return statement{}, false
}

// parts returns the lines of a code and those joined to it by a plus, with or
// without spaces around. It is not ok if one of them is unknown.
func parts(code string) (found []statement, ok bool) {
	for one := range strings.SplitSeq(code, "+") {
		s, known := find(strings.TrimSpace(one))
		if !known || s.kind == precaution != (code[0] == 'P') {
			return nil, false
		}
		found = append(found, s)
	}
	return found, true
}

// Statement returns the words of a hazard or precautionary statement by its code,
// or by several that belong together: "H302", "H302+H332", "P305 + P351 + P338".
// Precautions end in a full stop, hazards do not, as in the standard. It is not
// ok for an unknown code, for hazards that the standard does not join, and for
// what is no sentence alone: P301 ("IF SWALLOWED:") needs what to do behind it.
// The case of letters counts: H360Fd is not H360FD.
func Statement(code string) (words string, ok bool) {
	code = strings.TrimSpace(code)
	found, ok := parts(code)
	switch {
	case !ok:
		return "", false
	case found[0].kind == precaution:
		return advice(found)
	case len(found) == 1:
		return found[0].words, true
	}
	return poisons(found)
}

// advice joins precautions: a condition and what to do then, or several things
// to do one after the other.
func advice(found []statement) (string, bool) {
	var words string
	for _, s := range found {
		after, goesOn := strings.CutPrefix(s.words, "And ")
		switch {
		case words == "":
			words = s.words
		case goesOn:
			words = strings.TrimSuffix(words, ".") + " and " + after
		default:
			words += " " + s.words
		}
	}
	return words, !strings.HasSuffix(words, ":") && !strings.HasPrefix(words, "And ")
}

// poisons joins hazards of acute toxicity of one degree, the only ones that the
// standard joins: "Harmful if swallowed, in contact with skin or if inhaled".
func poisons(found []statement) (string, bool) {
	degree, words := found[0].degree()
	ok := degree != ""
	for i, s := range found[1:] {
		same, way := s.degree()
		ok = ok && same == degree && s.kind > found[i].kind
		if i == len(found)-2 {
			words += " or " + way
		} else {
			words += ", " + way
		}
	}
	return degree + " " + words, ok
}

// degree parts "Harmful if swallowed" into how poisonous and on which way. It is
// empty for what is no acute toxicity.
func (s statement) degree() (degree, way string) {
	for _, word := range []string{" if ", " in contact"} {
		if at := strings.Index(s.words, word); at > 0 && s.kind.acute() {
			return s.words[:at], s.words[at+1:]
		}
	}
	return "", ""
}

// acute reports whether a statement is one of poison that works at once.
func (k kind) acute() bool { return k == eaten || k == touched || k == breathed }

// Respiratory reports whether what a hazard statement says may happen by
// breathing: whoever handles the material dry, or fires it, has to think of it.
//
// True are the statements on breathing itself (H330 to H336, H350i, EUH071);
// H314, since a dust or mist that burns the skin burns the lungs, for which the
// standard adds "do not breathe" to it; and every lasting harm (H340 to H373).
// The standard names a route there only if no other does harm, so that a sentence
// without one, and the code never tells, does not leave breathing out. H336 is
// of vapors, against which no dust mask helps; it is true all the same. False are
// H304, which is about what is swallowed or vomited, and H317, whose dust is to
// be avoided for the sake of the skin.
//
// Of codes joined by a plus one is enough. An unknown code is false.
func Respiratory(code string) bool {
	found, _ := parts(strings.TrimSpace(code))
	for _, s := range found {
		switch s.kind {
		case breathed, burning, lungAllergy, airways, lasting:
			return true
		}
	}
	return false
}

// Contact reports whether what a hazard statement says happens to skin or eyes that
// the material touches, so that it may happen with the wet mix as well. What is
// swallowed is not meant, nor what the standard says of the lungs or of no route.
// EUH208 is, since it does not tell which allergy. Of codes joined by a plus one is
// enough. An unknown code is false.
func Contact(code string) bool {
	found, _ := parts(strings.TrimSpace(code))
	for _, s := range found {
		switch s.kind {
		case touched, burning, irritating, skinAllergy:
			return true
		}
		if s.code == "EUH208" {
			return true
		}
	}
	return false
}
