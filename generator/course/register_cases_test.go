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
