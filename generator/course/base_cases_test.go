package course_test

// ours begins a course's table that lies over the program's own.
const ours = "exceptions: []\n"

// baseTests holds cases of a course's file over the program's own table: each
// finding is placed in the course's file.
var baseTests = []findingCase{
	{"nothing different", []edit{{table, "", ours}, {hazards, "", taught}}, ""},
	{"a row of its own", []edit{{table, "", ours + "media:\n  - id: engobe\n    states:\n      bisque: {verdict: yes, reason: Ours is fluxed for it.}\n"}, {hazards, "", taught}}, ""},
	{"a row that is not whole", []edit{{table, "", ours + "media:\n  - id: engobe\n    states:\n      bisque: {verdict: risky}\n"}, {hazards, "", taught}},
		"decoration.yaml:5:15: error: `fault` is missing (table-pair)\n" +
			"    Write a line such as `fault: It flakes off.`.\n" +
			"decoration.yaml:5:15: error: `reason` is missing (table-pair)\n" +
			"    Write a line such as `reason: Slip and clay shrink together.`.\n" +
			"decoration.yaml:5:15: error: `remedy` is missing (table-pair)\n" +
			"    Write a line such as `remedy: Use underglaze instead.`.\n"},
	{"best is never", []edit{{table, "", ours + "media:\n  - id: engobe\n    states:\n      leather-hard: {verdict: never, rule: house, reason: We have none., fault: None., remedy: Use slip.}\n"}, {hazards, "", taught}},
		"decoration.yaml:3:5: error: `best` names `leather-hard`, where the verdict is `never` (table-pair)\n" +
			"    Name a state where it may go on, or change the verdict.\n"},
	{"a word that the program has", []edit{{table, "", ours + "media:\n  - id: coloured-slip\n    words: [luster]\n"}, {hazards, "", taught}},
		"decoration.yaml:4:13: error: `luster` is already in the program's own table (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a word that the program has, of what comes later", []edit{{table, "", ours + "techniques:\n  - id: dots\n    name: Dots\n    about: Dots of colour.\n    words: [dipped]\n    states: {all: {verdict: yes, reason: It holds.}}\n"}, {hazards, "", taught}},
		"decoration.yaml:6:13: error: `dipped` is already in the program's own table (repeated-name)\n" +
			"    Give each its own.\n"},
	{"an own medium without its layers", []edit{{table, "", ours + "media:\n  - id: casein\n    name: Casein\n    about: Paint of milk.\n    kind: on-glaze\n    heat: 1\n    food: no\n    best: glaze-fired\n    states:\n      all: {verdict: never, rule: physics, reason: It burns away., fault: It is gone., remedy: Wait.}\n      glaze-fired: {verdict: risky, reason: It rubs off., fault: It is gone., remedy: Fire nothing.}\n  - id: oil\n    name: Oil\n    about: Oil and colour.\n    kind: colour\n    fixed: no\n    food: no\n    best: wet\n    states: {all: {verdict: risky, reason: It smokes., fault: It is gone., remedy: Wait.}}\n"}, {hazards, "", taught}},
		"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `coloured-slip`: oil (table-over)\n" +
			"    Add `{under: coloured-slip, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `engobe`: oil (table-over)\n" +
			"    Add `{under: engobe, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `latex`: oil (table-over)\n" +
			"    Add `{under: latex, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `oil`: coloured-slip, engobe, underglaze, underglaze-pencil, underglaze-transfer, stain-wash, oxide-wash, glaze, terra-sigillata, wax, latex, oil (table-over)\n" +
			"    Add `{under: oil, above: [coloured-slip, engobe, underglaze, underglaze-pencil, underglaze-transfer, stain-wash, oxide-wash, glaze, terra-sigillata, wax, latex, oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `oxide-wash`: oil (table-over)\n" +
			"    Add `{under: oxide-wash, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `stain-wash`: oil (table-over)\n" +
			"    Add `{under: stain-wash, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `terra-sigillata`: oil (table-over)\n" +
			"    Add `{under: terra-sigillata, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `underglaze-pencil`: oil (table-over)\n" +
			"    Add `{under: underglaze-pencil, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `underglaze-transfer`: oil (table-over)\n" +
			"    Add `{under: underglaze-transfer, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `underglaze`: oil (table-over)\n" +
			"    Add `{under: underglaze, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n" +
			"decoration.yaml:1:1: error: nothing says whether these may lie on unfired `wax`: oil (table-over)\n" +
			"    Add `{under: wax, above: [oil], verdict: …, reason: …}`, or name them in an entry that fits.\n"},
	{"an own medium with all its layers", []edit{{table, "", ours + "media:\n  - {id: oil, name: Oil, about: Oil and colour., kind: colour, fixed: no, food: no, best: wet, states: {all: {verdict: risky, reason: It smokes., fault: It is gone., remedy: Wait.}}}\nover:\n" +
		"  - {under: oil, above: all, verdict: never, rule: house, reason: Nothing holds on oil., fault: It peels., remedy: Wait.}\n  - {under: all, above: oil, verdict: risky, reason: It smokes., fault: It is gone., remedy: Wait.}\n"}, {hazards, "", taught}}, ""},
	{"left out", []edit{{table, "", ours + "leave-out: [lustre, decal, enamel, oxide-wash, feathering, wax, latex]\n"}, {hazards, "", taught}}, ""},
	{"left out and unknown", []edit{{table, "", ours + "leave-out: [lustr]\n"}, {hazards, "", taught}},
		"decoration.yaml:2:13: error: the program's own table has no medium or technique `lustr` (unknown-name)\n" +
			"    Did you mean `lustre`? Name one that it has, or take this out.\n"},
	{"left out and spoken of", []edit{{table, "", "leave-out: [engobe]\nexceptions:\n  - {id: ours, kind: recipe, name: Ours, medium: engobe, states: {wet: {verdict: yes, reason: It holds.}}}\n"}, {hazards, "", taught}},
		"decoration.yaml:3:50: error: no medium has the id `engobe` (unknown-name)\n" +
			"    Write one of: coloured-slip, decal, enamel, glaze, latex, lustre, oxide-wash, stain-wash, terra-sigillata, underglaze, underglaze-pencil, underglaze-transfer, wax.\n"},
	{"a state told otherwise", []edit{{table, "", ours + "states:\n  - {id: wet, short: It shines and it sags and it takes a print}\n"}, {hazards, "", taught}},
		"decoration.yaml:3:22: error: `short` has 10 words; under the drawing is room for 6 (value-form)\n" +
			"    Say it shorter; the rest belongs in `tell`.\n"},
	{"a list where there is none", []edit{{table, "", ours + "media: engobe\n"}, {hazards, "", taught}},
		"decoration.yaml:2:8: error: this is one line of text, but `media` wants a list (value-kind)\n" +
			"    Write each item on a line of its own below the key, after a hyphen and a space.\n"},
	{"allowed against physics", []edit{{table, "", "exceptions:\n  - {id: gold, kind: product, name: Gold for bisque, medium: lustre, states: {wet: {verdict: yes, reason: It holds.}}}\n"}, {hazards, "", taught}},
		"decoration.yaml:2:84: error: `gold` allows what is never by physics (table-physics)\n" +
			"    Take the state `wet` out. The table's reason is: The film is thinner than paint and cannot live through the firings to come.\n"},
	{"a hazard told otherwise", []edit{{table, "", ours}, {hazards, "", taught + "  - {id: blade, lesson: units/wash/wipe.md, short: Cut away from your fingers and lay the pot upon the table and look twice.}\n"}},
		"hazards.yaml:19:5: error: `do` is missing (missing-key)\n" +
			"    Write a line such as `do: Spray in the booth alone, with its fan on.`.\n" +
			"hazards.yaml:19:5: error: `harm` is missing (missing-key)\n" +
			"    Write a line such as `harm: It carries fine dust deep into the lungs.`.\n" +
			"hazards.yaml:19:5: error: `health` is missing (missing-key)\n" +
			"    Write a line such as `health: yes`.\n" +
			"hazards.yaml:19:5: error: `title` is missing (missing-key)\n" +
			"    Write a line such as `title: Spray mist`.\n" +
			"hazards.yaml:19:10: error: `blade` is already in line 18 (repeated-name)\n" +
			"    Give each its own.\n" +
			"hazards.yaml:19:52: error: `short` has 15 words; a card or a plan has room for 12 (value-form)\n" +
			"    Say it shorter; the rest belongs in `do`.\n"},
	{"the program's hazards left out", []edit{{table, "", ours}},
		"decoration.yaml:1:1: error: no hazard has the id `colour` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `hot-kiln` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `kiln-fume` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `latex` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `mist` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `on-glaze-metal` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `raw-metal` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `scrapings` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `solvent` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `splinter` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `warm-pot` (unknown-name)\n" +
			"    Write one of: blade, dust.\n" +
			"decoration.yaml:1:1: error: no hazard has the id `wash-colour` (unknown-name)\n" +
			"    Write one of: blade, dust.\n"},
}

// taught names lessons of the small course for all hazards of the program.
const taught = `hazards:
  - {id: raw-metal, lesson: units/wash/wipe.md}
  - {id: mist, lesson: units/wash/wipe.md}
  - {id: solvent, lesson: units/wash/wipe.md}
  - {id: on-glaze-metal, lesson: units/wash/wipe.md}
  - {id: scrapings, lesson: units/wash/wipe.md}
  - {id: dust, lesson: units/wash/wipe.md}
  - {id: dry-powder, lesson: units/wash/wipe.md}
  - {id: stain-powder, lesson: units/wash/wipe.md}
  - {id: rinse-water, lesson: units/wash/wipe.md}
  - {id: colour, lesson: units/wash/wipe.md}
  - {id: latex, lesson: units/wash/wipe.md}
  - {id: wash-colour, lesson: units/wash/wipe.md}
  - {id: warm-pot, lesson: units/wash/wipe.md}
  - {id: kiln-fume, lesson: units/wash/wipe.md}
  - {id: hot-kiln, lesson: units/wash/wipe.md}
  - {id: splinter, lesson: units/wash/wipe.md}
  - {id: blade, lesson: units/wash/wipe.md}
`
