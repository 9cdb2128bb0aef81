package course_test

import (
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// The files of the register, each whole by itself.
const (
	clay  = "materials/yard-clay.yaml"
	white = "recipes/white-slip.yaml"
	wall  = "tiles.csv"
	leach = "leach.csv"
	blue  = "materials/yard-blue.yaml"
	clear = "materials/yard-clear.yaml"

	wholeClay = `name: Yard clay
is: ball-clay
hazards: [dust]
`
	wholeSlip = `title: White slip
about: A slip to start from.
medium: coloured-slip
states: [wet, leather-hard]
cone: 6
base:
  - {material: yard-clay, parts: 100}
water: 75
clear: none
food: no
`
	wholeWall = `code,recipe,medium,body,coats,cone,clear,made,verdict
R1,white-slip,,buff,2,6,none,2026-03-01,good
`
)

// The files behind a report of a leach test.
const (
	wholeBlue  = "name: Yard blue\nwhat: A blue stain.\nrole: colour\nform: powder\nmetals: [cobalt]\n"
	wholeClear = "name: Yard clear\nwhat: A clear glaze.\nrole: clear\nform: liquid\n"
	blueSlip   = wholeSlip + `additions: [{material: yard-blue, percent: 8, of: base}]
versions: [{version: 2, date: 2026-02-01, by: Nobody, change: Less blue.}, {version: 1, date: 2026-01-01, by: Nobody, change: First mix.}]
`
	leachHead  = "report,laboratory,date,method,ware,recipe,version,percent,colour,batch,clear,clear-batch,body,cone,lead,cadmium,others,verdict,valid-until,ends\n"
	wholeLeach = "14,Laboratory A,2026-05-04,ISO 6486-1:2019,cup,white-slip,2,8,,7,yard-clear,3,buff,6,<0.05 mg/L,0.002 mg/L,cobalt 0.1 mg/L,passed,2027-05-04,a batch changes\n"
)

// leachTests holds a case for each thing that can be wrong with a report by itself.
var leachTests = []findingCase{
	leachCase("a report", "", "", ""),
	leachCase("a report of the clear alone", "white-slip,2,8,,7,", ",,,,,", ""),
	leachCase("a report of a ready-mixed colour", "white-slip,2,8,,7,", ",,,yard-blue,7,", ""),
	leachCase("a report without its laboratory", "Laboratory A", "",
		"leach.csv:2:1: error: this row has nothing in the column `laboratory` (missing-key)\n"+
			"    Write it there, such as `Name of the laboratory`.\n"),
	leachCase("a test at home", "ISO 6486-1:2019", "a slice of lemon",
		"leach.csv:2:28: error: `a slice of lemon` is not a published leach test (value-form)\n"+
			"    Write ISO 6486-1, EN 1388-1, ASTM C738 or 84/500/EEC, with its year if the report names one. No test at home stands in for it.\n"),
	leachCase("another ware", "cup", "vase",
		"leach.csv:2:44: error: `ware` cannot be `vase` (value-form)\n"+
			"    Write one of: flatware, cup, small-hollowware, large-hollowware, jug, cooking-ware, storage.\n"),
	leachCase("a report on an unknown recipe", "white-slip", "whit-slip",
		"leach.csv:2:48: error: no recipe has the id `whit-slip` (unknown-name)\n"+
			"    Did you mean `white-slip`? Write one of: white-slip.\n"),
	leachCase("a report on a version that there is not", "white-slip,2", "white-slip,3",
		"leach.csv:2:59: error: `white-slip` has no version 3 (unknown-name)\n"+
			"    Its versions are: 2, 1.\n"),
	leachCase("a report without the version", "white-slip,2", "white-slip,",
		"leach.csv:2:1: error: this row has nothing in the column `version` (missing-key)\n"+
			"    Write it there, such as `2`.\n"),
	leachCase("a report without the strength of its colour", ",8,", ",,",
		"leach.csv:2:1: error: this row has nothing in the column `percent` (missing-key)\n"+
			"    Write it there, such as `8`.\n"),
	leachCase("a version of no recipe", "white-slip,2,8,,7,", ",2,,,,",
		"leach.csv:2:49: error: `version` is of a recipe, and this report names none (value-form)\n"+
			"    Name the recipe, or empty this cell.\n"),
	leachCase("a recipe and a jar", "8,,7", "8,yard-blue,7",
		"leach.csv:2:63: error: a report is of a recipe or of a ready-mixed colour, and this names both (value-form)\n"+
			"    Empty one of the two cells.\n"),
	leachCase("a report on an unknown jar", "white-slip,2,8,,7,", ",,,yard-blu,7,",
		"leach.csv:2:51: error: no material has the id `yard-blu` (unknown-name)\n"+
			"    Did you mean `yard-blue`? Write one of: yard-blue, yard-clay, yard-clear.\n"),
	leachCase("a report without the batch", ",7,", ",,",
		"leach.csv:2:1: error: this row has nothing in the column `batch` (missing-key)\n"+
			"    Write it there, such as `2026-09`.\n"),
	leachCase("a report under an unknown clear", "yard-clear", "yard-cler",
		"leach.csv:2:66: error: no material has the id `yard-cler` (unknown-name)\n"+
			"    Did you mean `yard-clear`? Write one of: yard-blue, yard-clay, yard-clear.\n"),
	leachCase("a report without the batch of its clear", "yard-clear,3", "yard-clear,",
		"leach.csv:2:1: error: this row has nothing in the column `clear-batch` (missing-key)\n"+
			"    Write it there, such as `2026-08`.\n"),
	leachCase("a report on an unknown clay", "buff", "bluff",
		"leach.csv:2:79: error: no clay body has the id `bluff` (unknown-name)\n"+
			"    Did you mean `buff`? Write one of: buff, white.\n"),
	leachCase("a report of no cone", "buff,6", "buff,hot",
		"leach.csv:2:84: error: `hot` is not a cone (value-form)\n"+
			"    Write one of 022 to 01, or 1 to 14, without the word cone; the nought in front counts.\n"),
	leachCase("a figure without a unit", "<0.05 mg/L", "<0.05",
		"leach.csv:2:86: error: the figure of lead, `<0.05`, has no unit (value-form)\n"+
			"    Write the report's own unit behind it: mg/L is by volume, mg/dm² by surface, and the two cannot be compared.\n"),
	leachCase("a figure in another unit", "0.002 mg/L", "0.002 ppm",
		"leach.csv:2:97: error: `ppm` is no unit of what leaches out (value-form)\n"+
			"    Write one of: mg/L, µg/L, µg/mL, mg/dm², µg/dm².\n"),
	leachCase("a figure by surface of a cup", "0.002 mg/L", "0.002 mg/dm2",
		"leach.csv:2:97: error: the figure of cadmium is by surface, and this ware is filled (value-form)\n"+
			"    Figures of what is filled are by volume, in mg/L. Look at the report again, or at the ware.\n"),
	leachCase("a figure that is a word", "<0.05 mg/L", "none",
		"leach.csv:2:86: error: `none` is not a figure of lead (value-form)\n"+
			"    Write it as the report does, with its unit, such as 0.12 mg/L; below what the laboratory finds, <0.05 mg/L.\n"),
	leachCase("a figure of nothing", "cobalt 0.1 mg/L", "0.1 mg/L",
		"leach.csv:2:108: error: `0.1 mg/L` is not a metal with its figure (value-form)\n"+
			"    Write the metal, its figure and its unit, and semicolons between them, such as: cobalt 0.12 mg/L; barium <0.01 mg/L.\n"),
	leachCase("no figure of lead", "<0.05 mg/L", "",
		"leach.csv:2:1: error: this row has nothing in the column `lead` (missing-key)\n"+
			"    Write it there, such as `<0.05 mg/L`.\n"),
	leachCase("a verdict that is none", "passed", "fine",
		"leach.csv:2:124: error: `verdict` cannot be `fine` (value-form)\n"+
			"    Write one of: passed, failed.\n"),
	leachCase("an end before its date", "2027-05-04", "2026-05-03",
		"leach.csv:2:131: error: report 14 ends on 2026-05-03, before its own date, 2026-05-04 (value-form)\n"+
			"    Look at the two dates again.\n"),
	leachCase("no end", "2027-05-04", "",
		"leach.csv:2:1: error: this row has nothing in the column `valid-until` (missing-key)\n"+
			"    Write it there, such as `2027-10-12`.\n"),
	leachCase("two reports with one number", "a batch changes\n", "a batch changes\n"+wholeLeach,
		"leach.csv:3:1: error: `14` is already in line 2 (repeated-name)\n"+
			"    Give each its own.\n"),
}

// leachCase is a sound report with one thing changed.
func leachCase(name, old, changed, want string) findingCase {
	edits := []edit{{clay, "", wholeClay}, {blue, "", wholeBlue}, {clear, "", wholeClear}, {white, "", blueSlip}, {leach, "", leachHead + wholeLeach}}
	if old != "" {
		edits = append(edits, edit{leach, old, changed})
	}
	return findingCase{name, edits, want}
}

// registerTests holds a case for each thing that can be wrong with the files of
// what a studio keeps.
var registerTests = []findingCase{
	{"a register", []edit{{clay, "", wholeClay}, {white, "", wholeSlip}, {wall, "", wholeWall}}, ""},
	{"a material that is no YAML", []edit{{"materials/notes.txt", "", "x"}},
		"materials/notes.txt:1:1: warning: nothing in the handbook reads this (stray-file)\n" +
			"    Rename it so that it ends in .yaml, or move it out of the content folder.\n"},
	{"a material whose name is no id", []edit{{"materials/Yard Clay.yaml", "", wholeClay}},
		"materials/Yard Clay.yaml:1:1: error: `Yard Clay` cannot be an id (id-form)\n" +
			"    Rename the file: small letters a to z, digits, and single hyphens between them, such as `river-ball-clay.yaml`.\n"},
	{"a material called index", []edit{{"materials/index.yaml", "", wholeClay}},
		"materials/index.yaml:1:1: error: `index` is the address of the list of them all (shared-address)\n" +
			"    Rename the file after what it is of.\n"},
	{"an empty material", []edit{{clay, "", "\n"}},
		"materials/yard-clay.yaml:1:1: error: the file is empty (missing-key)\n" +
			"    Write its keys and values, first a line such as `name: River ball clay`.\n"},
	{"a material without its parts", []edit{{clay, "", "name: Yard clay\n"}},
		"materials/yard-clay.yaml:1:1: error: `form` is missing (missing-key)\n" +
			"    Write a line such as `form: powder`.\n" +
			"materials/yard-clay.yaml:1:1: error: `role` is missing (missing-key)\n" +
			"    Write a line such as `role: plastic clay`.\n" +
			"materials/yard-clay.yaml:1:1: error: `what` is missing (missing-key)\n" +
			"    Write a line such as `what: A plastic clay that keeps a slip from settling.`.\n"},
	{"a material of an unknown kind", []edit{{clay, "", "name: Yard clay\nis: ball-cly\nwhat: A clay.\nrole: clay\nform: powder\n"}},
		"materials/yard-clay.yaml:2:5: error: no entry of the program’s materials has the id `ball-cly` (unknown-name)\n" +
			"    Did you mean `ball-clay`? Write one of: " + genericIDs() + ".\n"},
	{"a material of another form", []edit{{clay, "", wholeClay + "form: dust\n"}},
		"materials/yard-clay.yaml:4:7: error: `form` cannot be `dust` (value-form)\n" +
			"    Write one of: powder, liquid, paste, solid.\n"},
	{"a material with an unknown hazard", []edit{{clay, "", "name: Yard clay\nis: ball-clay\nhazards: [dus]\n"}},
		"materials/yard-clay.yaml:3:11: error: no hazard has the id `dus` (unknown-name)\n" +
			"    Did you mean `dust`? Write one of: blade, dust.\n"},
	{"a material of impossible quartz", []edit{{clay, "", wholeClay + "quartz: much\n"}},
		"materials/yard-clay.yaml:4:9: error: `much` is not a plain number, but `quartz` wants one (value-kind)\n" +
			"    Write how many percent of quartz the sheet names, or none, or unknown, as a number alone, such as 12 or 11.5.\n"},
	{"a sheet with a wrong date", []edit{{clay, "", wholeClay + "sheet: {supplier: S, date: last May}\n"}},
		"materials/yard-clay.yaml:4:28: error: `last May` is not a date (value-form)\n" +
			"    Write year, month and day as numbers, such as 2026-09-01.\n"},
	{"a recipe without its parts", []edit{{white, "", "title: White slip\n"}},
		"recipes/white-slip.yaml:1:1: error: `about` is missing (missing-key)\n" +
			"    Write a line such as `about: A white slip for the studio’s stoneware, to start from.`.\n" +
			"recipes/white-slip.yaml:1:1: error: `base` is missing (missing-key)\n" +
			"    Write a line such as `base: [{material: river-ball-clay, parts: 100}]`.\n" +
			"recipes/white-slip.yaml:1:1: error: `clear` is missing (missing-key)\n" +
			"    Write a line such as `clear: none`.\n" +
			"recipes/white-slip.yaml:1:1: error: `cone` is missing (missing-key)\n" +
			"    Write a line such as `cone: 6`.\n" +
			"recipes/white-slip.yaml:1:1: error: `food` is missing (missing-key)\n" +
			"    Write a line such as `food: no`.\n" +
			"recipes/white-slip.yaml:1:1: error: `medium` is missing (missing-key)\n" +
			"    Write a line such as `medium: coloured-slip`.\n" +
			"recipes/white-slip.yaml:1:1: error: `states` is missing (missing-key)\n" +
			"    Write a line such as `states: [wet, leather-hard]`.\n" +
			"recipes/white-slip.yaml:1:1: error: a recipe says how much water it takes, once (missing-key)\n" +
			"    Write either `water: 75`, parts on 100 of the dry base, or `gravity: 1.50`.\n"},
	{"a recipe with both kinds of water", []edit{{white, "", wholeSlip + "gravity: 1.5\n"}},
		"recipes/white-slip.yaml:1:1: error: a recipe says how much water it takes, once (missing-key)\n" +
			"    Write either `water: 75`, parts on 100 of the dry base, or `gravity: 1.50`.\n"},
	{"a recipe for an unknown state", []edit{{white, "", wholeSlip}, {white, "leather-hard]", "lether-hard]"}},
		"recipes/white-slip.yaml:4:15: error: no state has the id `lether-hard` (unknown-name)\n" +
			"    Did you mean `leather-hard`? Write one of: bisque, bone-dry, glaze-fired, leather-hard, unfired-glaze, wet.\n"},
	{"a recipe that names a material twice", []edit{{white, "", wholeSlip}, {white, "parts: 100}\n", "parts: 100}\n  - {material: yard-clay, parts: 1}\n"}},
		"recipes/white-slip.yaml:8:16: error: `yard-clay` is already in line 7 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"half a mesh", []edit{{white, "", wholeSlip + "mesh: 80.5\n"}},
		"recipes/white-slip.yaml:11:7: error: `mesh` is 80.5, which is not a whole number (value-form)\n" +
			"    Write the mesh of the sieve without a point.\n"},
	{"two tiles with one code", []edit{{white, "", wholeSlip}, {wall, "", wholeWall + "r1,white-slip,,buff,2,6,none,,\n"}},
		"tiles.csv:3:1: error: `r1` is already in line 2 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a tile of an unknown recipe", []edit{{white, "", wholeSlip}, {wall, "", wholeWall + "R2,whit-slip,,buff,2,6,none,,\n"}},
		"tiles.csv:3:4: error: no recipe has the id `whit-slip` (unknown-name)\n" +
			"    Did you mean `white-slip`? Write one of: white-slip.\n"},
	{"a tile of an unknown body", []edit{{white, "", wholeSlip}, {wall, "", wholeWall + "R2,white-slip,,bluff,2,6,none,,\n"}},
		"tiles.csv:3:16: error: no clay body has the id `bluff` (unknown-name)\n" +
			"    Did you mean `buff`? Write one of: buff, white.\n"},
	{"a tile of nothing", []edit{{wall, "", "code,body,cone,clear\nR2,buff,6,none\n"}},
		"tiles.csv:2:1: error: this row has nothing in the column `medium` (missing-key)\n" +
			"    Write it there, such as `underglaze`.\n"},
	{"a tile under an unknown clear", []edit{{white, "", wholeSlip}, {wall, "", wholeWall + "R2,white-slip,,buff,2,6,shiny,,\n"}},
		"tiles.csv:3:25: error: there are no materials (unknown-name)\n" +
			"    Write `none` for a bare tile, or the clear's entry in the folder materials.\n"},
	{"a strength with its sign", []edit{{white, "", wholeSlip}, {wall, "", "code,recipe,percent,body,cone,clear\nR2,white-slip,8 %,buff,6,none\n"}},
		"tiles.csv:2:15: error: `8 %` is not a strength in percent (value-form)\n" +
			"    Write one number with a point, such as 8 or 2.5, and no sign behind it.\n"},
	{"a photo that is none", []edit{{white, "", wholeSlip}, {wall, "", "code,recipe,body,cone,clear,before,after\nR2,white-slip,buff,6,none,course.yaml,pictures/r2.jpg\n"}},
		"tiles.csv:2:27: error: there is no picture course.yaml (picture-file)\n" +
			"    Write the path of a file of the pictures folder, such as pictures/r4-after.jpg.\n" +
			"tiles.csv:2:39: error: there is no picture pictures/r2.jpg (picture-file)\n" +
			"    Write the path of a file of the pictures folder, such as pictures/r4-after.jpg.\n"},
	{"a code too long for a tile", []edit{{white, "", wholeSlip}, {wall, "", wholeWall + "the second of the white ones,white-slip,,buff,2,6,none,,\n"}},
		"tiles.csv:3:1: error: `the second of the white ones` is not a code (value-form)\n" +
			"    Write at most twelve letters, digits, stops and hyphens, such as R4.\n"},
}

// genericIDs lists the program's own materials.
func genericIDs() string {
	c, _ := new(course.Reader).Load(coursetest.Small())
	var ids []string
	for _, m := range c.GenericMaterials {
		ids = append(ids, m.ID)
	}
	return strings.Join(ids, ", ")
}
