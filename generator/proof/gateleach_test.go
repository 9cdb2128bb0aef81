package proof

import (
	"strings"
	"testing"
	"testing/fstest"
)

const reportsFile = "leach.csv"

// reports are two real reports: one on the slip of the register, and one on its clear.
const reports = `report,laboratory,date,method,ware,recipe,version,percent,colour,batch,clear,clear-batch,body,cone,lead,cadmium,verdict,valid-until,ends,invented
14,Laboratory A,2026-05-04,ISO 6486-1,cup,blue-slip,2,8,,7,yard-clear,3,buff,6,<0.05 mg/L,<0.01 mg/L,passed,2026-12-31,a batch changes,no
15,Laboratory A,2026-05-04,ISO 6486-1,cup,,,,,,yard-clear,3,buff,6,<0.05 mg/L,<0.01 mg/L,passed,2026-12-31,a batch changes,no
16,Laboratory A,2026-05-04,ISO 6486-1,cup,,,,yard-blue,1,yard-clear,3,buff,6,<0.05 mg/L,<0.01 mg/L,passed,2026-12-31,a batch changes,no
`

// TestGateOfLeachTests changes one thing at a time of a slip that is for food, as
// report 14 lets it be.
func TestGateOfLeachTests(t *testing.T) {
	const at = "recipes/blue-slip.yaml:13:13: error: "
	for _, tt := range []struct{ name, file, old, new, want string }{
		{"sound", reportsFile, "", "", ""},
		{"a report that there is not", slipFile, "leach-test: 14", "leach-test: 13", at + "there is no report `13` in leach.csv (leach-test)"},
		{"words in the place of a number", slipFile, "leach-test: 14", "leach-test: Report 14", at + "there is no report `Report 14` in leach.csv (leach-test)"},
		{"a report on the clear alone", slipFile, "leach-test: 14", "leach-test: 15", at + "report 15 is of no colour, and this is `blue-slip` (leach-test)"},
		{"a report on a jar", slipFile, "leach-test: 14", "leach-test: 16", at + "report 16 is of the ready-mixed colour `yard-blue`, and this is `blue-slip` (leach-test)"},
		{"invented", reportsFile, "changes,no", "changes,yes", at + "report 14 does not count: it is invented, and answers nothing (leach-test)"},
		{"failed", reportsFile, "passed", "failed", at + "report 14 does not count: the laboratory failed it (leach-test)"},
		{"run out", reportsFile, "2026-12-31", "2026-06-30", at + "report 14 does not count: it held until 2026-06-30 (leach-test)"},
		{"on its last day", reportsFile, "2026-12-31", "2026-07-01", ""},
		{"dated tomorrow", reportsFile, "2026-05-04", "2026-07-02",
			"leach.csv:2:17: error: report 14 is dated 2026-07-02, and today is 2026-07-01 (leach-date)\n" + at + "report 14 does not count: it is dated 2026-07-02, which is still to come (leach-test)"},
		{"of an older version", reportsFile, "slip,2,8", "slip,1,8", at + "report 14 does not count: it is of version 1, and the newest is 2 (leach-test)"},
		{"of less colour", reportsFile, "slip,2,8", "slip,2,4", at + "report 14 does not count: it is of 4 % colour, and the recipe has 8 % (leach-test)"},
		{"bare", reportsFile, "yard-clear,3", "none,", at + "report 14 does not count: it is under `none`, and the recipe goes under `yard-clear` (leach-test)"},
		{"of another cone", slipFile, "cone: 6", "cone: 5", at + "report 14 does not count: it is of cone 6, and the recipe goes to cone 5 (leach-test)"},
		{"of a clay that is fired otherwise", reportsFile, "buff,6", "buff,5", at + "report 14 does not count: it is of cone 5, and the recipe goes to cone 6; its clay `buff` is not fired to cone 5 here (leach-test)"},
		{"of another batch", slipFile, "batch: 7", "batch: 8", "recipes/blue-slip.yaml:13:13: error: report 14 does not count: it is of batch 7, and batch 8 is in use (leach-test)"},
		{"of a batch that nobody knows", slipFile, "\nbatch: 7", "", at + "report 14 does not count: the recipe does not say under `batch` which batch is in use (leach-test)"},
		{"of another batch of the clear", clearTub, "batch: 3", "batch: 4", at + "report 14 does not count: it is of batch 3 of Yard clear, and batch 4 is in use (leach-test)"},
		{"of a batch of the clear that nobody knows", clearTub, "batch: 3\n", "", at + "report 14 does not count: materials/yard-clear.yaml does not say under `batch` which batch is in use (leach-test)"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			files := sound(t)
			for name, text := range forFood() {
				if name == tt.file && tt.old != "" {
					changed := strings.Replace(text, tt.old, tt.new, 1)
					if changed == text {
						t.Fatalf("%s does not hold %q", name, tt.old)
					}
					text = changed
				}
				files[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
			}
			if got := gateFindings(t, files); got != tt.want {
				t.Errorf("got\n%s\nwant\n%s", got, tt.want)
			}
		})
	}
}

// forFood is the register with its slip meant for food, as report 14 allows.
func forFood() map[string]string {
	files := map[string]string{reportsFile: reports}
	for name, text := range register {
		switch name {
		case slipFile:
			text = strings.Replace(text, "food: no", "food: yes\nleach-test: 14\nbatch: 7", 1) +
				"versions: [{version: 2, date: 2026-03-01, by: Nobody, change: Less blue.}, {version: 1, date: 2026-02-01, by: Nobody, change: First mix.}]\n"
		case clearTub:
			text += "batch: 3\n"
		}
		files[name] = text
	}
	return files
}

// TestGateOfWhatIsNotForFood lets a recipe name an invented report as long as nothing
// rests on it, and no report that is not there.
func TestGateOfWhatIsNotForFood(t *testing.T) {
	for number, want := range map[string]string{
		"14": "",
		"13": "recipes/blue-slip.yaml:13:13: error: there is no report `13` in leach.csv (leach-test)",
	} {
		files := sound(t)
		for name, text := range forFood() {
			text = strings.NewReplacer("food: yes\nleach-test: 14", "food: no\nleach-test: "+number, "changes,no", "changes,yes").Replace(text)
			files[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
		}
		if got := gateFindings(t, files); got != want {
			t.Errorf("%s: %s", number, got)
		}
	}
}
