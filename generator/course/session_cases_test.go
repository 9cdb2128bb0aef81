package course_test

const (
	classes = "classes.yaml"

	wholeClasses = `classes:
  - id: first-slips
    title: First slips
    people: 16
    when: 2027-02-03
    with: instructor
    lesson: units/slip/mix.md
    mix:
      - {recipe: white-slip, each: 60 mL}
    tubs: [yard-clay]
    put-out: [16 bowls]
    firing: One shelf.
`
)

// inClass is a course with a clay, a slip and a class, after some more edits.
func inClass(more ...edit) []edit {
	return append([]edit{{clay, "", wholeClay}, {white, "", wholeSlip}, {classes, "", wholeClasses}}, more...)
}

// sessionTests holds a case for each thing that can be wrong with the classes.
var sessionTests = []findingCase{
	{"classes", inClass(), ""},
	{"a class on a day in words", inClass(edit{classes, "2027-02-03", "Week 3, Thursday evening"}), ""},
	{"no classes in the file", inClass(edit{classes, "", "# later\n"}),
		"classes.yaml:1:1: error: the file is empty (missing-key)\n" +
			"    Write its keys and values, first a line such as `classes:`.\n"},
	{"a class of nothing", inClass(edit{classes, "", "classes:\n  - {}\n"}),
		"classes.yaml:2:5: error: `id` is missing (missing-key)\n" +
			"    Write a line such as `id: first-slips`.\n" +
			"classes.yaml:2:5: error: `lesson` is missing (missing-key)\n" +
			"    Write a line such as `lesson: units/slip/make-slip.md`.\n" +
			"classes.yaml:2:5: error: `people` is missing (missing-key)\n" +
			"    Write a line such as `people: 16`.\n" +
			"classes.yaml:2:5: error: `title` is missing (missing-key)\n" +
			"    Write a line such as `title: First slips`.\n" +
			"classes.yaml:2:5: error: `when` is missing (missing-key)\n" +
			"    Write a line such as `when: 2027-02-03`.\n"},
	{"a class called index", inClass(edit{classes, "id: first-slips", "id: index"}),
		"classes.yaml:2:9: error: `index` is the address of the list of them all (shared-address)\n" +
			"    Name it after what is done in it.\n"},
	{"two classes of one id", inClass(edit{classes, "    firing: One shelf.\n", "  - {id: first-slips, title: Again, people: 1, when: later, lesson: units/slip/mix.md}\n"}),
		"classes.yaml:12:10: error: `first-slips` is already in line 2 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a class that nobody has room for", inClass(edit{classes, "people: 16", "people: 160"}),
		"classes.yaml:4:13: error: `people` is 160, outside 1 to 60 (value-form)\n" +
			"    Write how many come; check the decimal point.\n"},
	{"half a person", inClass(edit{classes, "people: 16", "people: 16.5"}),
		"classes.yaml:4:13: error: `people` is 16.5, which is not a whole number (value-form)\n" +
			"    Write how many come without a point.\n"},
	{"a day that no month has", inClass(edit{classes, "2027-02-03", "2027-02-30"}),
		"classes.yaml:5:11: error: `2027-02-30` is not a date (value-form)\n" +
			"    Write year, month and day as numbers, such as 2026-09-01.\n"},
	{"somebody else in the room", inClass(edit{classes, "with: instructor", "with: teacher"}),
		"classes.yaml:6:11: error: `with` cannot be `teacher` (value-form)\n" +
			"    Write one of: instructor.\n"},
	{"a class of an unknown lesson", inClass(edit{classes, "slip/mix.md", "slip/mx.md"}),
		"classes.yaml:7:13: error: there is no page units/slip/mx.md (unknown-name)\n" +
			"    Did you mean `units/slip/mix.md`? Write the path of a lesson as the content folder has it, such as `units/slip/make-slip.md`.\n"},
	{"a class that mixes an unknown recipe", inClass(edit{classes, "recipe: white-slip", "recipe: whit-slip"}),
		"classes.yaml:9:18: error: no recipe has the id `whit-slip` (unknown-name)\n" +
			"    Did you mean `white-slip`? Write one of: white-slip.\n"},
	{"a class without recipes in the studio", []edit{{clay, "", wholeClay}, {classes, "", wholeClasses}},
		"classes.yaml:9:18: error: there are no recipes (unknown-name)\n" +
			"    Write the recipe in the folder recipes first.\n"},
	{"a class without materials in the studio", []edit{{classes, "", wholeClasses}, {classes, "    mix:\n      - {recipe: white-slip, each: 60 mL}\n", ""}},
		"classes.yaml:8:12: error: there are no materials (unknown-name)\n" +
			"    Write the tub's entry in the folder materials first.\n"},
	{"a class with an unknown tub", inClass(edit{classes, "[yard-clay]", "[yard-cly]"}),
		"classes.yaml:10:12: error: no material has the id `yard-cly` (unknown-name)\n" +
			"    Did you mean `yard-clay`? Write one of: yard-clay.\n"},
	{"a tub twice", inClass(edit{classes, "[yard-clay]", "[yard-clay, yard-clay]"}),
		"classes.yaml:10:23: error: `yard-clay` is already in line 10 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a recipe twice", inClass(edit{classes, "60 mL}", "60 mL}\n      - {recipe: white-slip, litres: 1}"}),
		"classes.yaml:10:18: error: `white-slip` is already in line 9 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a mix of no amount", inClass(edit{classes, ", each: 60 mL", ""}),
		"classes.yaml:9:9: error: a class says how much of a recipe it takes, once (missing-key)\n" +
			"    Write either `each: 60 mL`, for every one of them, or `litres: 2`, in all.\n"},
	{"a mix of two amounts", inClass(edit{classes, "each: 60 mL", "each: 60 mL, litres: 2"}),
		"classes.yaml:9:9: error: a class says how much of a recipe it takes, once (missing-key)\n" +
			"    Write either `each: 60 mL`, for every one of them, or `litres: 2`, in all.\n"},
	{"a lake of slip", inClass(edit{classes, "each: 60 mL", "litres: 2000"}),
		"classes.yaml:9:38: error: `litres` is 2000, outside 0.05 to 200 (value-form)\n" +
			"    Write how many litres are mixed in all; check the decimal point.\n"},
	{"a key that classes lack", inClass(edit{classes, "    firing:", "    kiln:"}),
		"classes.yaml:12:5: error: `kiln` is not a key that is known here (unknown-key)\n" +
			"    The keys are: id, title, people, when, with, lesson, mix, tubs, put-out, firing.\n"},
	{"more mixes than a sheet has room for", append(inClass(
		edit{"recipes/a.yaml", "", wholeSlip}, edit{"recipes/b.yaml", "", wholeSlip}, edit{"recipes/c.yaml", "", wholeSlip}, edit{"recipes/d.yaml", "", wholeSlip}),
		edit{classes, "60 mL}\n", "60 mL}\n      - {recipe: a, litres: 1}\n      - {recipe: b, litres: 1}\n      - {recipe: c, litres: 1}\n      - {recipe: d, litres: 1}\n"}),
		"classes.yaml:9:7: error: `mix` has 5 recipes; the sheet of a class has room for 4 (value-form)\n" +
			"    Make two classes of it, each with its own sheet.\n"},
}
