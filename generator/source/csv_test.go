package source

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// said writes what was found in a text, a line each, without its path.
func said(t *Text) string {
	var lines []string
	for _, f := range t.Found {
		lines = append(lines, strings.TrimPrefix(strings.ReplaceAll(f.String(), "\n    ", " | "), t.Path+":"))
	}
	return strings.Join(lines, "\n")
}

// table reads a table of tiles, and writes its cells with | between them and a
// line a row.
func table(text string) (rows string, t *Text) {
	t = New("tiles.csv", []byte(text))
	for _, f := range t.CSV([]string{"id", "slip"}, "cone", "seen") {
		var cells []string
		for _, column := range []string{"id", "slip", "cone", "seen"} {
			cells = append(cells, f.Get(column).Text())
		}
		rows += strings.Join(cells, "|") + "\n"
	}
	return rows, t
}

func TestTables(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"plain", "id,slip\nt-1,white\nt-2,blue\n", "t-1|white||\nt-2|blue||\n"},
		{"other order, CRLF, no last line end", "cone,slip,id\r\n6,white,t-1\r\n04,blue,t-2", "t-1|white|6|\nt-2|blue|04|\n"},
		{"quotes", "id,slip,seen\nt-1,\"white, thin\",\"a \"\"good\"\" one\"\n", "t-1|white, thin||a \"good\" one\n"},
		{"line end in quotes", "id,slip\nt-1,\"white\nthin\"\nt-2,blue\n", "t-1|white thin||\nt-2|blue||\n"},
		{"empty cells and lines", "\nid,slip,cone\n\nt-1,white,\n\r\nt-2,\"\",6\n", "t-1|white||\nt-2||6|\n"},
		{"words that YAML would take for others", "id,slip\nnull,~\nyes,[a\n", "null|~||\nyes|[a||\n"},
		{"spaces", " id , slip\nt-1 , white  slip \n", "t-1|white slip||\n"},
		{"no rows", "id,slip\n", ""},
	} {
		got, text := table(c.text)
		if got != c.want || len(text.Found) > 0 {
			t.Errorf("%s: got\n%swant\n%s%s", c.name, got, c.want, said(text))
		}
	}
}

func TestWhatIsWrongWithTables(t *testing.T) {
	const tooMany = "Write a comma between the cells, also beside an empty one; put a cell that has a comma in it in double quotes."
	for _, c := range []struct{ name, text, rows, want string }{
		{"nothing", "", "", "1:1: error: the table is empty (table-form) | Write the names of its columns into the first row: id,slip."},
		{"semicolons", "id;slip\nt-1;white\n", "", "1:1: error: the cells of this table are not separated by commas (table-form) | Save it again as CSV with commas between the cells."},
		{"semicolons in a name", "id,slip;x\nt-1,white\n", "", "1:4: error: `slip;x` is not a column that is known here (unknown-key) | Did you mean `slip`? The columns are: id, slip, cone, seen."},
		{"unknown column", "id,slip,con\nt-1,white,6\n", "", "1:9: error: `con` is not a column that is known here (unknown-key) | Did you mean `cone`? The columns are: id, slip, cone, seen."},
		{"column twice", "id,slip,id\nt-1,white,t-1\n", "", "1:9: error: there is a second column `id` (repeated-key) | Keep one of the two."},
		{"column without a name", "id,,slip\n", "", "1:4: error: column 2 has no name (table-form) | Write one of: id, slip, cone, seen; or take the column out."},
		{"column missing", "id,cone\nt-1,6\n", "", "1:1: error: there is no column `slip` (missing-key) | Write its name into the first row, and a cell for it into the others."},
		{"cell too many", "id,slip\nt-1,white,thin\nt-2,blue\n", "t-2|blue||\n", "2:1: error: this row has 3 cells, the first has 2 (table-form) | " + tooMany},
		{"cell too few", "id,slip\né\nt-2,blue\n", "t-2|blue||\n", "2:1: error: this row has one cell, the first has 2 (table-form) | " + tooMany},
		{"quotation not closed", "id,slip\nt-1,white\né,\"blue\nt-3,red\n", "t-1|white||\n", "3:3: error: the quotation that opens here is not closed (table-form) | Close it with a double quotation mark; write one that belongs to the words twice."},
		{"quotation in a cell", "id,slip\nt-1,6\" bowl\n", "t-1|6\" bowl||\n", "2:6: error: there is a quotation mark in the middle of this cell (table-form) | Put the whole cell in double quotes, right behind the comma, and write each quotation mark inside it twice."},
		{"words after a quotation", "id,slip\nt-1,\"blue\" slip\nt-2,red\n", "t-1|blue||\nt-2|red||\n", "2:11: error: words follow the quotation of this cell (table-form) | Put the whole cell in double quotes, and write each quotation mark inside it twice."},
		{"words after the last quotation", "id,slip\nt-1,\"blue\" slip", "t-1|blue||\n", "2:11: error: words follow the quotation of this cell (table-form) | Put the whole cell in double quotes, and write each quotation mark inside it twice."},
		{"too many rows", "id,slip\n" + strings.Repeat("a,b\n", mostRows+1), strings.Repeat("a|b||\n", mostRows), "10002:1: error: the table has more than 10000 rows (table-form) | Divide it."},
	} {
		got, text := table(c.text)
		if words := said(text); words != c.want || got != c.rows {
			t.Errorf("%s: got\n%s\nwant\n%s\nrows %q", c.name, words, c.want, got)
		}
	}
}

// TestCellsAreValues shows that a cell is read, and its faults placed, as a
// value of YAML is.
func TestCellsAreValues(t *testing.T) {
	text := New("tiles.csv", []byte("id,slip,cone\nT 1,,\"ü, 15\"\n"))
	row := text.CSV([]string{"id", "slip"}, "cone")[0]
	row.Need("id", "id: t-14").ID()
	row.Need("slip", "slip: white").Text()
	row.Get("cone").Number(1, 14, "the cone")
	want := "2:1: error: `T 1` cannot be an id (id-form) | " + idHelp + "\n" +
		"2:1: error: this row has nothing in the column `slip` (missing-key) | Write it there, such as `white`.\n" +
		"2:6: error: `ü, 15` is not a plain number, but `cone` wants one (value-kind) | Write the cone as a number alone, such as 12 or 11.5."
	if got := said(text); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// FuzzCSV reads any text as a table: findings point into the file, and what is
// not found wrong comes out as it was written.
func FuzzCSV(f *testing.F) {
	for _, text := range []string{"id,slip\na,b\n", "id,slip\r\n\"a\"\"b\",\"c\nd\"\n", "id,slip\n\"", "id;slip\n", "\n\n,\n", "id,slip\na,\"b\"c,d\n\"e\",f", "id,slip,cone,seen\n,,,\n\"\",\"\",,\n"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if findFault([]byte(text)) != nil {
			return
		}
		file := New("x.csv", []byte(text))
		rows := file.CSV([]string{"id", "slip"}, "cone", "seen")
		for _, found := range file.Found {
			lines := strings.Split(text, "\n")
			if found.Line < 1 || found.Line > len(lines) || found.Column > utf8.RuneCountInString(lines[found.Line-1])+1 {
				t.Errorf("%q: outside of the text: %s", text, found)
			}
		}
		if len(file.Found) > 0 {
			return
		}
		written := "id,slip,cone,seen\n"
		for _, r := range rows {
			var cells []string
			for _, column := range []string{"id", "slip", "cone", "seen"} {
				cell := ""
				if v := r.Get(column); !v.Absent() {
					cell = v.Text()
				}
				cells = append(cells, `"`+strings.ReplaceAll(cell, `"`, `""`)+`"`)
			}
			written += strings.Join(cells, ",") + "\n"
		}
		again := New("x.csv", []byte(written))
		if n := len(again.CSV([]string{"id", "slip"}, "cone", "seen")); n != len(rows) || len(again.Found) > 0 {
			t.Errorf("%q: %d rows, written anew %d: %v", text, len(rows), n, again.Found)
		}
	})
}
