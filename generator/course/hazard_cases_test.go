package course_test

import (
	"fmt"
	"strings"
)

// hazardTests holds a case for each thing that can be wrong with hazards.yaml
// and with what the table says of hazards, people, parts, and words with more
// than one meaning.
var hazardTests = []findingCase{
	{"less than the program says", []edit{{hazards, "", "hazards:\n  - {id: raw-metal, wear: []}\n  - {id: mist, health: no}\n"}, {table, "", "media:\n  - {id: oxide-wash, who: student, hazards: []}\n"}},
		"decoration.yaml:2:27: error: `who: student` is laxer than the program's own table, which says with-instructor (care-less)\n" +
			"    Take `who` away, or give what is harmless here an id of its own.\n" +
			"    Source of the rule: our own rule: who knows better writes a row with an id of its own.\n" +
			"decoration.yaml:2:45: error: `hazards` leaves out what the program's own table has here: raw-metal, colour (care-less)\n" +
			"    Add it, or take `hazards` away; what is harmless here gets an id of its own.\n" +
			"    Source of the rule: our own rule: who knows better writes a row with an id of its own.\n" +
			"hazards.yaml:1:1: warning: no lesson is named for these hazards: raw-metal, mist, solvent, on-glaze-metal, scrapings, dust, dry-powder, stain-powder, rinse-water, colour, wash-colour, latex, kiln-fume, hot-kiln, warm-pot, splinter, blade (hazard-lesson)\n" +
			"    Write for each an entry such as `{id: raw-metal, lesson: units/safety/dust.md}` under `hazards` in hazards.yaml.\n" +
			"hazards.yaml:2:27: error: `wear` leaves out what the program's own table has here: nitrile gloves, a fitted respirator (care-less)\n" +
			"    Add it, or take `wear` away; what is harmless here gets an id of its own.\n" +
			"    Source of the rule: our own rule: who knows better writes a row with an id of its own.\n" +
			"hazards.yaml:3:24: error: `health: no` takes away that this harms (care-less)\n" +
			"    Take `health` away, or give what is harmless here an id of its own.\n" +
			"    Source of the rule: our own rule: who knows better writes a row with an id of its own.\n"},
	{"hazards.yaml is broken", []edit{{hazards, "", "hazards: [\n"}},
		"hazards.yaml:2:1: error: this is not well-formed YAML: did not find expected node content (yaml-form)\n" +
			"    Compare it with the lines around it; a value with unusual signs goes in double quotes.\n"},
	{"hazard without its parts", []edit{{hazards, "title: Dust, harm: It harms the lungs., do: Keep it wet. Wipe it up., short: Keep it wet., ", ""}},
		"hazards.yaml:5:5: error: `do` is missing (missing-key)\n" +
			"    Write a line such as `do: Spray in the booth alone, with its fan on.`.\n" +
			"hazards.yaml:5:5: error: `harm` is missing (missing-key)\n" +
			"    Write a line such as `harm: It carries fine dust deep into the lungs.`.\n" +
			"hazards.yaml:5:5: error: `short` is missing (missing-key)\n" +
			"    Write a line such as `short: Booth, fan on, fitted respirator.`.\n" +
			"hazards.yaml:5:5: error: `title` is missing (missing-key)\n" +
			"    Write a line such as `title: Spray mist`.\n"},
	{"hazard with a long short", []edit{{hazards, "short: Keep it wet.", "short: Keep it wet and wipe it up and look and wait and wipe again."}},
		"hazards.yaml:5:93: error: `short` has 14 words; a card or a plan has room for 12 (value-form)\n" +
			"    Say it shorter; the rest belongs in `do`.\n"},
	{"hazard with twelve words", []edit{{hazards, "short: Keep it wet.", "short: Keep it wet and wipe it up and look and wait again."}}, ""},
	{"hazard with too many marks", []edit{{hazards, "place: table,", "mark: [mask, gloves, apron], place: table,"}},
		"hazards.yaml:5:142: error: `mark` has 3 words; beside a verdict there is room for 2 (value-form)\n" +
			"    Keep those that say what to do, such as `mark: [mask, gloves]`.\n"},
	{"hazard with a long mark", []edit{{hazards, "place: table,", "mark: [wet table, wipe it wet], place: table,"}},
		"hazards.yaml:5:142: error: `wipe it wet` is too long for a mark on the chart (value-form)\n" +
			"    Say it in 2 words at most; the rest belongs in `short`.\n"},
	{"as many hazards as can be told apart", []edit{{hazards, "hazards:\n", "hazards:\n" + moreHazards(62)}}, ""},
	{"one hazard more", []edit{{hazards, "hazards:\n", "hazards:\n" + moreHazards(63)}},
		"hazards.yaml:5:3: error: there are 65 hazards; the planner counts to 64 (value-form)\n" +
			"    Put those together that call for the same.\n"},
	{"hazard of which something comes off that nobody wears", []edit{{hazards, "place: table,", "until-wet: [a mask], place: table,"}},
		"hazards.yaml:5:147: error: `until-wet` names \"a mask\", which is not among `wear` (value-form)\n" +
			"    Write there what of `wear` comes off again once all of it is wet, word for word.\n"},
	{"hazard of an unknown place", []edit{{hazards, "place: table,", "place: tabel,"}},
		"hazards.yaml:5:143: error: no place has the id `tabel` (unknown-name)\n" +
			"    Did you mean `table`? Write one of: table.\n"},
	{"hazard with an unknown lesson", []edit{{hazards, "lesson: units/wash/wipe.md", "lesson: units/wash/wiping.md"}},
		"hazards.yaml:5:158: error: there is no page units/wash/wiping.md (unknown-name)\n" +
			"    Write the path of a lesson as the content folder has it, such as `units/safety/dust.md`.\n"},
	{"hazard with a lesson that is no page", []edit{{hazards, "lesson: units/wash/wipe.md", "lesson: pictures/jar.svg"}},
		"hazards.yaml:5:158: error: there is no page pictures/jar.svg (unknown-name)\n" +
			"    Write the path of a lesson as the content folder has it, such as `units/safety/dust.md`.\n"},
	{"hazard without a lesson", []edit{{hazards, "lesson: units/wash/wipe.md, ", ""}},
		"hazards.yaml:1:1: warning: no lesson is named for these hazards: dust (hazard-lesson)\n" +
			"    Write for each an entry such as `{id: dust, lesson: units/safety/dust.md}` under `hazards` in hazards.yaml.\n"},
	{"hazard neither to health nor not", []edit{{hazards, "health: no", "health: maybe"}},
		"hazards.yaml:6:148: error: `health` cannot be `maybe` (value-form)\n" +
			"    Write one of: yes, no.\n"},
	{"two hazards with one id", []edit{{hazards, "id: blade", "id: dust"}},
		"hazards.yaml:6:10: error: `dust` is already in line 5 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"two places with one id", []edit{{hazards, "hazards:\n", "  - {id: table, name: at the table}\nhazards:\n"}},
		"hazards.yaml:4:10: error: `table` is already in line 3 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"medium with an unknown hazard", []edit{{table, "    kind: clay\n", "    kind: clay\n    hazards: [dus]\n"}},
		"decoration.yaml:34:15: error: no hazard has the id `dus` (unknown-name)\n" +
			"    Did you mean `dust`? Write one of: blade, dust.\n"},
	{"medium for nobody", []edit{{table, "    kind: clay\n", "    kind: clay\n    who: nobody\n"}},
		"decoration.yaml:34:10: error: `who` cannot be `nobody` (value-form)\n" +
			"    Write one of: student, with-instructor, instructor.\n"},
	{"pair with an unknown hazard", []edit{{table, "wet: {verdict: yes, reason: It holds here.}", "wet: {verdict: yes, reason: It holds here., hazards: [splinter]}"}},
		"decoration.yaml:37:61: error: no hazard has the id `splinter` (unknown-name)\n" +
			"    Write one of: blade, dust.\n"},
	{"layers for nobody", []edit{{table, "unless: [wiping-back], reason", "unless: [wiping-back], who: master, reason"}},
		"decoration.yaml:75:86: error: `who` cannot be `master` (value-form)\n" +
			"    Write one of: student, with-instructor, instructor.\n"},
	{"transition with an unknown hazard", []edit{{table, "remedy: Wait longer.}", "remedy: Wait longer., hazards: [fire]}"}},
		"decoration.yaml:79:167: error: no hazard has the id `fire` (unknown-name)\n" +
			"    Write one of: blade, dust.\n"},
	{"medium that does not say whether it is fixed", []edit{{table, "    fixed: yes\n", ""}},
		"decoration.yaml:28:5: error: `fixed` is missing, which a medium of the kind `clay` needs (missing-key)\n" +
			"    Write a line such as `fixed: yes`: whether bisque heat fixes it. `rub` if that depends on its flux and a rub must tell.\n"},
	{"fixed where it means nothing", []edit{{table, "techniques:\n", smallGlaze + "    fixed: yes\ntechniques:\n"}, {table, "over:\n", "over:\n  - {under: [coloured-slip, stain-wash], above: glaze, verdict: yes, reason: It covers.}\n"}},
		"decoration.yaml:72:12: error: `fixed` belongs to what a firing must fix, and this is `glaze` (value-form)\n" +
			"    Take `fixed` out, or change `kind`.\n"},
	{"fixed perhaps", []edit{{table, "fixed: rub", "fixed: perhaps"}},
		"decoration.yaml:50:12: error: `fixed` cannot be `perhaps` (value-form)\n" +
			"    Write one of: yes, no, rub.\n"},
	{"part of a state without parts", []edit{{table, "wet: {verdict: yes, reason: It holds here.}", "wet: {verdict: yes, reason: It holds here., part: soft}"}},
		"decoration.yaml:37:57: error: the state `wet` has no parts (unknown-name)\n" +
			"    Take `part` out.\n"},
	{"part that is not there", []edit{{table, "    tell: It lifts without bending.\n", "    tell: It lifts without bending.\n" + smallParts}, {table, "leather-hard: {verdict: yes, reason: It holds here.}", "leather-hard: {verdict: yes, reason: It holds here., part: hard}"}},
		"decoration.yaml:39:66: error: `part` cannot be `hard` (value-form)\n" +
			"    Write one of: soft, firm, stiff.\n"},
	{"part of one layer on another", []edit{{table, "unless: [wiping-back], reason", "unless: [wiping-back], part: soft, reason"}},
		"decoration.yaml:75:81: error: `part` is not a key that is known here (unknown-key)\n" +
			"    The keys are: under, above, unless, fired, verdict, rule, short, reason, fault, remedy, ask, hazards, who.\n"},
	{"parts of another state", []edit{{table, "    tell: It is pale all over.\n", "    tell: It is pale all over.\n" + smallParts}},
		"decoration.yaml:15:12: error: the state `bone-dry` has no parts (unknown-key)\n" +
			"    Take `parts` out; only `leather-hard` has them.\n"},
	{"parts out of order", []edit{{table, "    tell: It lifts without bending.\n", "    tell: It lifts without bending.\n    parts: [{id: firm, name: Firm, tell: It is firm.}, {id: soft, name: Soft, tell: It is soft.}]\n"}},
		"decoration.yaml:11:12: error: the parts are not soft, firm and stiff, in this order (value-form)\n" +
			"    Write the three of them: soft, firm, stiff.\n"},
	{"states share a word", []edit{{table, "    name: Bisque\n", "    name: Bisque\n    words: [biscuit, wet]\n"}},
		"decoration.yaml:17:22: error: `wet` is already in line 3 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"technique that waits for nothing", []edit{{table, "    best: bisque\n    states:\n      wet: {verdict: never, rule: physics, reason: It cannot be done", "    best: bisque\n    wait: Wait until it is stiff.\n    states:\n      wet: {verdict: never, rule: physics, reason: It cannot be done"}},
		"decoration.yaml:65:11: error: `wait` belongs to techniques that take away (value-form)\n" +
			"    Add `works: takes`, or take `wait` out.\n"},
	{"technique that neither lays nor takes", []edit{{table, "    with: [stain-wash]\n", "    with: [stain-wash]\n    works: gives\n"}},
		"decoration.yaml:64:12: error: `works` cannot be `gives` (value-form)\n" +
			"    Write one of: lays, coats, takes.\n"},
	{"cell for some media alone", []edit{{table, "bisque: {verdict: yes, reason: It wipes clean.}", "bisque: {only: [stain-wash], verdict: yes, reason: It wipes clean.}"}},
		"decoration.yaml:69:15: error: `only` says nothing of the other media (table-pair)\n" +
			"    Add `others: {verdict: never, rule: …, reason: …, fault: …, remedy: …}`.\n"},
	{"cell for others alone", []edit{{table, "bisque: {verdict: yes, reason: It wipes clean.}", "bisque: {verdict: yes, reason: It wipes clean., others: {verdict: yes, reason: It wipes clean.}}"}},
		"decoration.yaml:69:63: error: `others` stands without `only` (table-pair)\n" +
			"    Write `only` with the media that the words before are about, or take `others` out.\n"},
	{"cell for a medium that the technique is not for", []edit{{table, "bisque: {verdict: yes, reason: It wipes clean.}", "bisque: {only: [coloured-slip, stain-wash], verdict: yes, reason: It wipes clean., others: {verdict: yes, reason: It wipes clean.}}"}},
		"decoration.yaml:69:23: error: `only` names `coloured-slip`, and `with` does not (table-pair)\n" +
			"    Add it to `with`, or take it out here.\n"},
	{"cell for a medium twice", []edit{{table, "bisque: {verdict: yes, reason: It wipes clean.}", "bisque: {only: [stain-wash], verdict: yes, reason: It wipes clean., others: {only: [stain-wash], verdict: yes, reason: It wipes clean., others: {verdict: yes, reason: No.}}}"}},
		"decoration.yaml:69:91: error: `stain-wash` is already spoken of in this state (table-pair)\n" +
			"    Keep it in one of the two.\n"},
	{"cell whose others say nothing", []edit{{table, "bisque: {verdict: yes, reason: It wipes clean.}", "bisque: {only: [stain-wash], verdict: yes, reason: It wipes clean., others: {}}"}},
		"decoration.yaml:69:83: error: `reason` is missing (table-pair)\n" +
			"    Write a line such as `reason: Slip and clay shrink together.`.\n" +
			"decoration.yaml:69:83: error: `verdict` is missing (table-pair)\n" +
			"    Write a line such as `verdict: yes`.\n"},
	{"firing in the old form", []edit{{table, "over:\n", "firing: Fire it to the cone on its label.\nover:\n"}},
		"decoration.yaml:72:9: error: this is one line of text, but `firing` wants a set of keys with values (value-kind)\n" +
			"    Write each key on a line of its own, as `key: value`.\n"},
	{"metals without words", []edit{{table, "over:\n", "metals: {who: with-instructor, hazards: [dust]}\nover:\n"}},
		"decoration.yaml:72:9: error: `words` is missing (missing-key)\n" +
			"    Write a line such as `words: [cobalt, copper]`.\n"},
	{"metal with a capital letter", []edit{{table, "over:\n", "metals: {words: [Cobalt, slip]}\nover:\n"}},
		"decoration.yaml:72:18: error: `Cobalt` has a capital letter (value-form)\n" +
			"    Write `cobalt`; capital letters do not count when a student types.\n"},
	{"phrase that says nothing", []edit{{table, "over:\n", "phrases: [{words: [majolica]}]\nover:\n"}},
		"decoration.yaml:72:11: error: a phrase says what it stands for, or asks (value-form)\n" +
			"    Write either `layers: \"glaze, stain wash\"` or `ask: Which of the two do you mean?`.\n"},
	{"phrase that says and asks", []edit{{table, "over:\n", "phrases: [{words: [majolica], layers: \"slip, wash\", ask: Which?}]\nover:\n"}},
		"decoration.yaml:72:11: error: a phrase says what it stands for, or asks (value-form)\n" +
			"    Write either `layers: \"glaze, stain wash\"` or `ask: Which of the two do you mean?`.\n"},
	{"phrase that nobody understands", []edit{{table, "over:\n", "phrases: [{words: [majolica], layers: \"slip, washh\"}]\nover:\n"}},
		"decoration.yaml:72:39: error: in `layers` these words are not those of the table: “washh” is read as wash (value-form)\n" +
			"    Write media and ways of working by their names or words.\n"},
	{"phrase with words to spare", []edit{{table, "over:\n", "phrases: [{words: [majolica], layers: \"white slip, wash\"}]\nover:\n"}},
		"decoration.yaml:72:39: error: in `layers` these words are not those of the table: white (value-form)\n" +
			"    Write media and ways of working by their names or words.\n"},
	{"phrase with the word of a medium", []edit{{table, "over:\n", "phrases: [{words: [majolica, slip], layers: \"slip, wash\"}]\nover:\n"}},
		"decoration.yaml:72:30: error: `slip` is already in line 32 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"exception of a body with hazards", []edit{{table, "    body: white\n", "    body: white\n    hazards: [dust]\n    fixed: no\n    who: instructor\n"}},
		"decoration.yaml:94:14: error: an exception of the kind `body` has no `hazards` (unknown-key)\n" +
			"    Take the key out, or change `kind`.\n" +
			"decoration.yaml:95:12: error: an exception of the kind `body` has no `fixed` (unknown-key)\n" +
			"    Take the key out, or change `kind`.\n" +
			"decoration.yaml:96:10: error: an exception of the kind `body` has no `who` (unknown-key)\n" +
			"    Take the key out, or change `kind`.\n"},
}

// moreHazards writes so many hazards more.
func moreHazards(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "  - {id: more-%d, title: More, harm: It harms., do: Mind it., short: Mind it., lesson: units/wash/wipe.md, health: no}\n", i)
	}
	return b.String()
}

const smallParts = "    parts: [{id: soft, name: Soft, tell: A thumb leaves a dent.}, {id: firm, name: Firm, tell: It keeps its shape.}, {id: stiff, name: Stiff, tell: A nail hardly marks it.}]\n"
