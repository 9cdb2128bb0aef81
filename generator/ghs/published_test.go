package ghs

import (
	"encoding/csv"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// rows reads a table of testdata/published, each row by the names of its columns.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	all, err := csv.NewReader(file).ReadAll()
	if err != nil || len(all) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(all), err)
	}
	var read []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, column := range all[0] {
			row[column] = cells[i]
		}
		read = append(read, row)
	}
	return read
}

// spelling makes texts of both sides of the ocean alike, and of both styles of
// stops.
var spelling = strings.NewReplacer("vapour", "vapor", "oxidiser", "oxidizer", "pressurised", "pressurized",
	"sensitising", "sensitizing", "…", "...", ";", ".", " - ", ". ", ",", "", "/ ", "/", " °", "°")

// plain is a text without what spelling and stops differ in.
func plain(text string) string {
	text = strings.Join(strings.Fields(spelling.Replace(strings.ToLower(text))), " ")
	if strings.HasSuffix(text, "...") {
		return text
	}
	return strings.TrimSuffix(text, ".")
}

// gaps are what the standard leaves to the supplier, as texts print it, and what
// may stand there.
var gaps = []struct{ gap, may string }{
	{`/\.\.\./`, `(/.+)?`}, {`/\.\.\.`, `(/.+)?`}, {` ?\.\.\.`, ` .+`},
	{`<[^>]*>`, `.*`}, {`\[and .+?\]`, `(and .+)?`}, {`\[([^]]*)\]`, `($1)?`},
}

// form is the form that a printed text allows.
func form(text string) *regexp.Regexp {
	text = regexp.MustCompile(`[().+?|*]`).ReplaceAllStringFunc(plain(text), func(c string) string {
		if c == "." {
			return c
		}
		return `\` + c
	})
	for _, g := range gaps {
		text = regexp.MustCompile(g.gap).ReplaceAllString(text, g.may)
	}
	return regexp.MustCompile(`^` + strings.ReplaceAll(text, " ", " *") + `$`)
}

// words returns the words of a code, of what is no sentence alone as well.
func words(t *testing.T, code string) string {
	t.Helper()
	text, ok := Statement(code)
	if s, known := find(code); known {
		return s.words
	}
	if !ok {
		t.Errorf("%s is not known", code)
	}
	return text
}

func TestPublishedWords(t *testing.T) {
	decided := map[string]bool{}
	for _, row := range rows(t, "ghs.csv") {
		code, got := row["code"], words(t, row["code"])
		switch row["status"] {
		case "seen":
			decided[code] = true
			if !form(row["text"]).MatchString(plain(got)) {
				t.Errorf("%s: %q; %s: %q", code, got, row["source"], row["text"])
			}
		case "edition", "misprint":
			if form(row["text"]).MatchString(plain(got)) {
				t.Errorf("%s is as in %s: its row may decide", code, row["source"])
			}
		default:
			t.Errorf("%s: status %q", code, row["status"])
		}
	}
	for _, s := range slices.Concat(hazards, precautions) {
		if !decided[s.code] {
			t.Errorf("%s stands in no text but ours", s.code)
		}
	}
}

// TestPublishedFormsAreStrict makes sure that the comparison above can fail.
func TestPublishedFormsAreStrict(t *testing.T) {
	for _, c := range [][2]string{
		{"Wash hands [and ...] thoroughly after handling.", "Wash thoroughly after handling."},
		{"Rinse skin with water [or shower].", "Rinse skin with water or soap."},
		{"Wash with plenty of water/...", "Wash with plenty of oil."},
		{"Store in accordance with ...", "Store in accordance with."},
		{"Causes damage to organs <organs>", "May cause damage to organs"},
		{"May cause cancer", "May cause cancer by inhalation"},
		{"Call a POISON CENTER/doctor/...", "Immediately call a POISON CENTER/doctor."},
	} {
		if form(c[0]).MatchString(plain(c[1])) {
			t.Errorf("%q passes for %q", c[1], c[0])
		}
	}
}

func TestPublishedPictogramsAndSignalWords(t *testing.T) {
	compared := map[string]bool{}
	for _, row := range rows(t, "ghs.csv") {
		code := []string{row["code"]}
		if want := row["pictogram"]; want != "" {
			compared[row["code"]] = true
			if got := strings.Join(Pictograms(code), " "); got != want && !(got == "" && want == "none") {
				t.Errorf("%s: pictogram %q; %s: %s", row["code"], got, row["source"], want)
			}
		}
		if want := row["signal"]; want != "" {
			if got := Signal(code); got != want && !(got == "" && want == "none") {
				t.Errorf("%s: signal word %q; %s: %q", row["code"], got, row["source"], want)
			}
		}
	}
	for _, s := range hazards {
		if s.kind != note && !strings.HasPrefix(s.code, "EUH") && !compared[s.code] && s.code != "H229" {
			t.Errorf("%s: no text says which pictogram it calls for", s.code)
		}
	}
}

func TestPublishedNumbersFit(t *testing.T) {
	numbers := rows(t, "cas.csv")
	if len(numbers) < 50 {
		t.Fatalf("only %d numbers", len(numbers))
	}
	for _, row := range numbers {
		if err := CAS(row["number"]); err != nil {
			t.Errorf("%s: %v", row["name"], err)
		}
		if row["status"] != "seen" && row["status"] != "memory" {
			t.Errorf("%s: status %q", row["name"], row["status"])
		}
	}
}
