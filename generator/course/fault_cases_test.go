package course_test

const (
	faults = "faults.yaml"

	wholeFaults = `faults:
  - id: crawling
    sees: It crawls
    when: glaze
    picture: pictures/jar.svg
    alt: Bare clay between islands of glaze.
    looks: Their rims are thick.
    else: [bare-spots]
  - {id: bare-spots, sees: Bare spots, when: wet, picture: pictures/jar.svg, alt: Round holes., looks: Thin rims.}
`
)

// inFaults is a course with two faults, after some more edits.
func inFaults(more ...edit) []edit { return append([]edit{{faults, "", wholeFaults}}, more...) }

// faultTests holds a case for each thing that can be wrong with the list of faults.
var faultTests = []findingCase{
	{"faults", inFaults(), ""},
	{"no faults in the file", inFaults(edit{faults, "", "# later\n"}),
		"faults.yaml:1:1: error: the file is empty (missing-key)\n" +
			"    Write its keys and values, first a line such as `faults:`.\n"},
	{"another key than faults", inFaults(edit{faults, "", "fault: []\n"}),
		"faults.yaml:1:1: error: `faults` is missing (missing-key)\n" +
			"    Write a line such as `faults:`.\n" +
			"faults.yaml:1:1: error: `fault` is not a key that is known here (unknown-key)\n" +
			"    Did you mean `faults`? The keys are: faults.\n"},
	{"a fault of nothing", inFaults(edit{faults, "", "faults:\n  - {}\n"}),
		"faults.yaml:2:5: error: `alt` is missing (missing-key)\n" +
			"    Write a line such as `alt: The glaze has drawn back into thick edges round bare clay.`.\n" +
			"faults.yaml:2:5: error: `id` is missing (missing-key)\n" +
			"    Write a line such as `id: crawling`.\n" +
			"faults.yaml:2:5: error: `looks` is missing (missing-key)\n" +
			"    Write a line such as `looks: The edges of the glaze are thick and round.`.\n" +
			"faults.yaml:2:5: error: `picture` is missing (missing-key)\n" +
			"    Write a line such as `picture: pictures/fault-crawling.svg`.\n" +
			"faults.yaml:2:5: error: `sees` is missing (missing-key)\n" +
			"    Write a line such as `sees: Bare round spots`.\n" +
			"faults.yaml:2:5: error: `when` is missing (missing-key)\n" +
			"    Write a line such as `when: glaze`.\n"},
	{"a key of a fault that nobody knows", inFaults(edit{faults, "    looks:", "    loks: Rims.\n    looks:"}),
		"faults.yaml:7:5: error: `loks` is not a key that is known here (unknown-key)\n" +
			"    Did you mean `looks`? The keys are: id, sees, when, picture, alt, looks, else.\n"},
	{"a time that is none", inFaults(edit{faults, "when: glaze", "when: glazed"}),
		"faults.yaml:4:11: error: `when` cannot be `glazed` (value-form)\n" +
			"    Did you mean `glaze`? Write one of: wet, bisque, glaze.\n"},
	{"a picture that is not there", inFaults(edit{faults, "pictures/jar.svg", "pictures/jr.svg"}),
		"faults.yaml:5:14: error: there is no picture pictures/jr.svg (picture-file)\n" +
			"    Did you mean `pictures/jar.svg`? Write the path of a file of the pictures folder, such as pictures/fault-crawling.svg.\n"},
	{"a picture of another folder", inFaults(edit{faults, "pictures/jar.svg", "home.md"}),
		"faults.yaml:5:14: error: there is no picture home.md (picture-file)\n" +
			"    Write the path of a file of the pictures folder, such as pictures/fault-crawling.svg.\n"},
	{"two faults of one id", inFaults(edit{faults, "    else: [bare-spots]\n", ""}, edit{faults, "id: bare-spots", "id: crawling"}),
		"faults.yaml:8:10: error: `crawling` is already in line 2 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"two faults of one name", inFaults(edit{faults, "sees: Bare spots", "sees: it crawls"}),
		"faults.yaml:9:28: error: `it crawls` is already in line 3 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a look-alike that is not there", inFaults(edit{faults, "else: [bare-spots]", "else: [bare-spot]"}),
		"faults.yaml:8:12: error: no fault has the id `bare-spot` (unknown-name)\n" +
			"    Did you mean `bare-spots`? Name the id of a fault in this file.\n"},
	{"its own look-alike", inFaults(edit{faults, "else: [bare-spots]", "else: [crawling]"}),
		"faults.yaml:8:12: error: `else` of `crawling` names itself (unknown-name)\n" +
			"    Name another fault, or take this out.\n"},
}
