package course_test

// findingCase is one thing that can be wrong, with the whole text of what is
// said about it.
type findingCase struct {
	name  string
	edits []edit
	want  string
}

// findingTests holds a case for each thing that can be wrong with a content
// folder but for what joins the parts of the decoration table.
var findingTests = []findingCase{
	{"no home page", []edit{{"home.md", "", ""}},
		"home.md:1:1: error: there is no home.md (course-needs)\n" +
			"    Write it, with a title in its opening block: its words stand on the handbook's home page.\n"},
	{"no table and no hazards of its own", []edit{{table, "", ""}, {hazards, "", ""}},
		"hazards.yaml:1:1: warning: there is no hazards.yaml, so no lesson is named for these hazards: raw-metal, mist, solvent, on-glaze-metal, scrapings, dust, dry-powder, stain-powder, rinse-water, colour, wash-colour, latex, kiln-fume, hot-kiln, warm-pot, splinter, blade (hazard-lesson)\n" +
			"    Write for each an entry such as `{id: raw-metal, lesson: units/safety/dust.md}` under `hazards` in hazards.yaml.\n"},
	{"course.yaml is empty", []edit{{setting, "", "# nothing yet\n"}},
		"course.yaml:1:1: error: the file is empty (missing-key)\n" +
			"    Write its keys and values, first a line such as `title: Decorating with slip`.\n"},
	{"title missing", []edit{{setting, "title: Colour at the bench\n", ""}},
		"course.yaml:1:1: error: `title` is missing (missing-key)\n" +
			"    Write a line such as `title: Decorating with slip`.\n"},
	{"title empty", []edit{{setting, "title: Colour at the bench", "title:"}},
		"course.yaml:1:7: error: `title` is empty (missing-key)\n" +
			"    Write one line of text, or take the key out if it can be left out.\n"},
	{"title is blank", []edit{{setting, "title: Colour at the bench", "title: \"  \""}},
		"course.yaml:1:8: error: `title` is empty (missing-key)\n" +
			"    Write one line of text, or take the key out if it can be left out.\n"},
	{"title is a list", []edit{{setting, "title: Colour at the bench", "title: [Colour, bench]"}},
		"course.yaml:1:8: error: this is a list, but `title` wants one line of text (value-kind)\n" +
			"    Write the text right after the colon; in double quotes if it starts with a sign like [ or {.\n"},
	{"studio is text", []edit{{setting, "studio:\n  name: The Test Bench\n  note: Nobody works here.", "studio: The Test Bench"}},
		"course.yaml:7:9: error: this is one line of text, but `studio` wants a set of keys with values (value-kind)\n" +
			"    Write each key on a line of its own, as `key: value`.\n"},
	{"units is text", []edit{{setting, "units:\n  - slip\n  - wash", "units: slip"}},
		"course.yaml:16:8: error: this is one line of text, but `units` wants a list (value-kind)\n" +
			"    Write each item on a line of its own below the key, after a hyphen and a space.\n"},
	{"units is empty", []edit{{setting, "units:\n  - slip\n  - wash", "units: []"}, {slip, "", ""}, {mix, "", ""}, {"units/slip/measure.md", "", ""}, {"units/wash/unit.md", "", ""}, {"units/wash/thin.md", "", ""}, {"units/wash/wipe.md", "", ""}},
		"course.yaml:16:8: error: `units` is empty (missing-key)\n" +
			"    Name at least one, on a line of its own after a hyphen.\n"},
	{"unknown key with a near one", []edit{{setting, "licence:", "license:"}},
		"course.yaml:5:1: error: `license` is not a key that is known here (unknown-key)\n" +
			"    Did you mean `licence`? The keys are: title, description, language, law, measures, licence, published-at, studio, cones, sections, bodies, scales, working, asked-first, first-aid, book, units.\n"},
	{"unknown key with none near", []edit{{setting, "licence:", "colophon:"}},
		"course.yaml:5:1: error: `colophon` is not a key that is known here (unknown-key)\n" +
			"    The keys are: title, description, language, law, measures, licence, published-at, studio, cones, sections, bodies, scales, working, asked-first, first-aid, book, units.\n"},
	{"unknown key for where it is published", []edit{{setting, "published-at:", "site:"}},
		"course.yaml:6:1: error: `site` is not a key that is known here (unknown-key)\n" +
			"    The keys are: title, description, language, law, measures, licence, published-at, studio, cones, sections, bodies, scales, working, asked-first, first-aid, book, units.\n"},
	{"first aid on no page", []edit{{setting, "licence:", "first-aid: units/slip/mesure.md\nlicence:"}},
		"course.yaml:5:12: error: there is no page units/slip/mesure.md (unknown-name)\n" +
			"    Did you mean `units/slip/measure.md`? Write the path of a lesson as the content folder has it, such as `units/safety/dust.md`.\n"},
	{"a part that no book has, and one twice", []edit{{setting, "licence:", "book: [recipes, states, states]\nlicence:"}},
		"course.yaml:5:8: error: an item of `book` cannot be `recipes` (value-form)\n" +
			"    Write one of: states, media, calculators, lists.\n" +
			"course.yaml:5:25: error: `states` is already in line 5 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"unknown law", []edit{{setting, "licence:", "law: UK\nlicence:"}},
		"course.yaml:5:6: error: `law` cannot be `UK` (value-form)\n" +
			"    Write one of: US, EU, GB, AU.\n"},
	{"repeated key", []edit{{setting, "licence:", "title: Again\nlicence:"}},
		"course.yaml:5:1: error: `title` stands here a second time (repeated-key)\n" +
			"    Keep one of the two; the other has its value in line 1.\n"},
	{"second document", []edit{{setting, "units:\n", "---\nunits:\n"}},
		"course.yaml:16:1: error: a second document of YAML starts here (yaml-form)\n" +
			"    Write everything as one document: take out the line --- or ... before this.\n"},
	{"second document after an end", []edit{{words, "  - id: specific-gravity", "...\nterms:\n  - id: specific-gravity"}},
		"glossary.yaml:7:1: error: a second document of YAML starts here (yaml-form)\n" +
			"    Write everything as one document: take out the line --- or ... before this.\n"},
	{"key that is a list", []edit{{setting, "licence: CC BY-SA 4.0", "? [a, b]\n: c"}},
		"course.yaml:5:3: error: this stands where a key should (yaml-form)\n" +
			"    Write `key: value`, the key being one word.\n"},
	{"alias", []edit{{setting, "published-at: https://handbook.example/", "description: &d Words\npublished-at: *d"}, {setting, "description: A handbook made up for tests.\n", ""}},
		"course.yaml:5:14: error: `&d` gives this value a name, which the handbook does not use (yaml-form)\n" +
			"    Take `&d` out; if the ampersand is meant, put the value in double quotes.\n" +
			"course.yaml:6:15: error: `*d` stands for words written elsewhere (yaml-form)\n" +
			"    Write the words out here; if the asterisk is meant, put the value in double quotes.\n"},
	{"tag", []edit{{setting, "title: Colour", "title: !big Colour"}},
		"course.yaml:1:8: error: `!` gives this value a type, which the handbook does not use (yaml-form)\n" +
			"    Take it out; if the exclamation mark is meant, put the value in double quotes.\n"},
	{"merged keys", []edit{{setting, "  note: Nobody works here.", "  <<: {note: Nobody}"}},
		"course.yaml:9:3: error: `<<` is not a key that is known here (unknown-key)\n" +
			"    The keys are: name, note.\n"},
	{"language without words", []edit{{setting, "en-GB", "de"}},
		"course.yaml:3:11: warning: the calculators have no words in `de` (language-words)\n" +
			"    They answer in en-US. A file for it in calculators/words would give them others.\n"},
	{"language not well formed", []edit{{setting, "en-GB", "English (UK)"}},
		"course.yaml:3:11: error: `English (UK)` is not a language tag (value-form)\n" +
			"    Write one as BCP 47 has it, such as en-GB, de or pt-BR.\n"},
	{"measures of another kind", []edit{{setting, "metric", "Metric"}},
		"course.yaml:4:11: error: `measures` cannot be `Metric` (value-form)\n" +
			"    Did you mean `metric`? Write one of: metric, us, imperial.\n"},
	{"published-at without scheme", []edit{{setting, "https://handbook.example/", "handbook.example"}},
		"course.yaml:6:15: error: `handbook.example` is not the address of a handbook (value-form)\n" +
			"    Write the whole address of the handbook's home page, such as https://example.org/handbook/.\n"},
	{"published-at with another scheme", []edit{{setting, "https://handbook.example/", "ftp://handbook.example/"}},
		"course.yaml:6:15: error: `ftp://handbook.example/` is not the address of a handbook (value-form)\n" +
			"    Write the whole address of the handbook's home page, such as https://example.org/handbook/.\n"},
	{"cone that is none", []edit{{setting, "bisque: 06", "bisque: cone 06"}},
		"course.yaml:11:11: error: `cone 06` is not a cone (value-form)\n" +
			"    Write one of 022 to 01, or 1 to 14, without the word cone; the nought in front counts.\n"},
	{"cone out of range", []edit{{setting, "glaze: 6", "glaze: 15"}},
		"course.yaml:12:10: error: `15` is not a cone (value-form)\n" +
			"    Write one of 022 to 01, or 1 to 14, without the word cone; the nought in front counts.\n"},
	{"shrinkage not a number", []edit{{setting, "shrinkage: 14.5", "shrinkage: \"14,5\""}},
		"course.yaml:15:51: error: `14,5` is not a plain number, but `shrinkage` wants one (value-kind)\n" +
			"    Write the shrinkage in percent of the fresh length as a number alone, such as 12 or 11.5.\n"},
	{"shrinkage too large", []edit{{setting, "shrinkage: 12", "shrinkage: 125"}},
		"course.yaml:14:49: error: `shrinkage` is 125, outside 0 to 30 (value-form)\n" +
			"    Write the shrinkage in percent of the fresh length; check the decimal point.\n"},
	{"body without its parts", []edit{{setting, "{id: buff, name: Buff stoneware, shrinkage: 12, cone: 6}", "{id: buff}"}},
		"course.yaml:14:5: error: `cone` is missing (missing-key)\n" +
			"    Write a line such as `cone: 6`.\n" +
			"course.yaml:14:5: error: `name` is missing (missing-key)\n" +
			"    Write a line such as `name: White stoneware`.\n" +
			"course.yaml:14:5: error: `shrinkage` is missing (missing-key)\n" +
			"    Write a line such as `shrinkage: 12`.\n"},
	{"two bodies with one id", []edit{{setting, "id: white", "id: buff"}},
		"course.yaml:15:10: error: `buff` is already in line 14 (repeated-name)\n" +
			"    Give each its own.\n" +
			"decoration.yaml:93:11: error: `white` is not a clay body of course.yaml (unknown-name)\n" +
			"    Write the id of one of its `bodies`.\n"},
	{"id not kebab-case", []edit{{setting, "id: white", "id: White_1"}},
		"course.yaml:15:10: error: `White_1` cannot be an id (id-form)\n" +
			"    Write small letters a to z, digits, and single hyphens between them, such as `leather-hard`.\n" +
			"decoration.yaml:93:11: error: `white` is not a clay body of course.yaml (unknown-name)\n" +
			"    Write the id of one of its `bodies`.\n"},
	{"unit with a made page's name", []edit{{setting, "- wash", "- wash\n  - states"}, {"units/states/unit.md", "", "---\ntitle: x\n---\n"}},
		"course.yaml:19:5: error: a unit cannot be called `states`: the handbook publishes a folder of its own under that name (shared-address)\n" +
			"    Rename the unit's folder, and its name here.\n"},
	{"unit without folder", []edit{{setting, "- wash", "- wash\n  - wahs"}},
		"course.yaml:19:5: error: there is no folder units/wahs (missing-file)\n" +
			"    Did you mean `wash`? Make the folder with a unit.md in it, or take the name out.\n"},
	{"unit without its page", []edit{{slip, "", ""}},
		"course.yaml:17:5: error: there is no file units/slip/unit.md (missing-file)\n" +
			"    Write the unit's opening page, or take the name out.\n"},
	{"unit named twice", []edit{{setting, "- wash", "- wash\n  - slip"}},
		"course.yaml:19:5: error: `slip` is in this list a second time (repeated-name)\n" +
			"    Name it once.\n"},
	{"units that differ in capitals", []edit{{setting, "- wash", "- wash\n  - Wash"}, {"units/Wash/unit.md", "", "---\ntitle: Big wash\nlessons: [thin]\n---\n"}, {"units/Wash/thin.md", "", "---\ntitle: Thin\n---\n"}},
		"course.yaml:19:5: error: `Wash` cannot be an id (id-form)\n" +
			"    Write small letters a to z, digits, and single hyphens between them, such as `leather-hard`.\n" +
			"course.yaml:19:5: error: units/Wash/unit.md would be published at Wash/index.html, where units/wash/unit.md is already (shared-address)\n" +
			"    Rename the file, and its name here.\n"},
	{"unit that no list names", []edit{{"units/resist/unit.md", "", "---\ntitle: Resist\n---\n"}},
		"units/resist/unit.md:1:1: error: no list names this unit (unlisted-file)\n" +
			"    Add `- resist` to `units` in course.yaml, or move the folder away.\n"},
	{"unit folder without a page that no list names", []edit{{"units/resist/wax.md", "", "---\ntitle: Resist\n---\n"}},
		"units/resist:1:1: error: no list names this unit (unlisted-file)\n" +
			"    Add `- resist` to `units` in course.yaml, or move the folder away.\n"},
	{"lesson that no list names", []edit{{"units/slip/pour.md", "", "---\ntitle: Pour\n---\n"}},
		"units/slip/pour.md:1:1: error: no list names this lesson (unlisted-file)\n" +
			"    Add `- pour` to `lessons` in units/slip/unit.md, or move the file out of the folder.\n"},
	{"lesson without file", []edit{{slip, "- measure", "- mesure"}},
		"units/slip/measure.md:1:1: error: no list names this lesson (unlisted-file)\n" +
			"    Add `- measure` to `lessons` in units/slip/unit.md, or move the file out of the folder.\n" +
			"units/slip/mix.md:15:5: error: there is no page units/slip/measure.md (unknown-name)\n" +
			"    Write the path from this file to the page's .md file.\n" +
			"units/slip/unit.md:6:5: error: there is no file units/slip/mesure.md (missing-file)\n" +
			"    Did you mean `measure`? Write the lesson, or take its name out.\n"},
	{"lesson with its ending", []edit{{slip, "- measure", "- measure.md"}},
		"units/slip/unit.md:6:5: error: `measure.md` has the ending of its file (id-form)\n" +
			"    Write `measure` alone.\n"},
	{"lesson named twice", []edit{{slip, "- measure", "- measure\n  - mix"}},
		"units/slip/unit.md:7:5: error: `mix` is in this list a second time (repeated-name)\n" +
			"    Name it once.\n"},
	{"lesson that is the unit", []edit{{slip, "- measure", "- measure\n  - unit"}},
		"units/slip/unit.md:7:5: error: unit.md is the unit's own page, not a lesson (value-form)\n" +
			"    Take `unit` out of the list.\n"},
	{"lesson at the unit's address", []edit{{slip, "- measure", "- measure\n  - index"}, {"units/slip/index.md", "", "---\ntitle: Index\n---\n"}},
		"units/slip/unit.md:7:5: error: units/slip/index.md would be published at slip/index.html, where units/slip/unit.md is already (shared-address)\n" +
			"    Rename the file, and its name here.\n"},
	{"lessons that differ in capitals", []edit{{slip, "- measure", "- measure\n  - Mix"}, {"units/slip/Mix.md", "", "---\ntitle: Mix\n---\n"}},
		"units/slip/unit.md:7:5: error: `Mix` cannot be an id (id-form)\n" +
			"    Write small letters a to z, digits, and single hyphens between them, such as `leather-hard`.\n" +
			"units/slip/unit.md:7:5: error: units/slip/Mix.md would be published at slip/Mix.html, where units/slip/mix.md is already (shared-address)\n" +
			"    Rename the file, and its name here.\n"},
	{"lesson outside the folder", []edit{{slip, "- measure", "- measure\n  - ../wash/thin"}},
		"units/slip/unit.md:7:5: error: `../wash/thin` cannot be an id (id-form)\n" +
			"    Write small letters a to z, digits, and single hyphens between them, such as `leather-hard`.\n"},
	{"lessons missing", []edit{{slip, "lessons:\n  - mix\n  - measure\n", ""}},
		"units/slip/unit.md:2:1: error: `lessons` is missing (missing-key)\n" +
			"    Write a line such as `lessons: [mix-a-slip]`.\n"},
	{"stray files", []edit{{"notes.txt", "", "x"}, {"glosary.yaml", "", "x"}, {"units/readme.md", "", "x"}, {"units/slip/jar.png", "", "x"}, {".DS_Store", "", "x"}, {"units/slip/.mix.md.swp", "", "x"}},
		"glosary.yaml:1:1: warning: nothing in the handbook reads this (stray-file)\n" +
			"    Did you mean `glossary.yaml`? Rename it, or move it out of the content folder. Read are: course.yaml, home.md, style.md, hazards.yaml, decoration.yaml, glossary.yaml, faults.yaml, units, pictures, materials, recipes, tiles.csv, leach.csv, classes.yaml.\n" +
			"notes.txt:1:1: warning: nothing in the handbook reads this (stray-file)\n" +
			"    Rename it, or move it out of the content folder. Read are: course.yaml, home.md, style.md, hazards.yaml, decoration.yaml, glossary.yaml, faults.yaml, units, pictures, materials, recipes, tiles.csv, leach.csv, classes.yaml.\n" +
			"units/readme.md:1:1: warning: nothing in the handbook reads this (stray-file)\n" +
			"    Put it into a unit's folder, or move it out of units/.\n" +
			"units/slip/jar.png:1:1: warning: nothing in the handbook reads this (stray-file)\n" +
			"    Move it out of the folder; pictures belong in pictures/.\n"},
	{"opening block missing", []edit{{"home.md", "", "Welcome.\n"}},
		"home.md:1:1: error: the page does not start with its opening block (opening-block)\n" +
			"    Start the file with a line ---, then a line such as `title: Mix a slip`, then a line --- again.\n"},
	{"line before the opening block", []edit{{"home.md", "---", "\n---"}},
		"home.md:1:1: error: the page does not start with its opening block (opening-block)\n" +
			"    Start the file with a line ---, then a line such as `title: Mix a slip`, then a line --- again.\n"},
	{"opening block not closed", []edit{{"home.md", "", "---\ntitle: Home\n\nWelcome.\n"}},
		"home.md:1:1: error: the opening block that starts here is not closed (opening-block)\n" +
			"    Put a line of three hyphens, ---, between the last key and the text of the page.\n"},
	{"opening block empty", []edit{{"home.md", "", "---\n---\nWelcome.\n"}},
		"home.md:1:1: error: the opening block is empty (missing-key)\n" +
			"    Write at least a line such as `title: Mix a slip`.\n"},
	{"opening block that is a list", []edit{{"home.md", "", "---\n- title\n---\nWelcome.\n"}},
		"home.md:2:1: error: this is a list, but the opening block wants a set of keys with values (value-kind)\n" +
			"    Write each key on a line of its own, as `key: value`.\n"},
	{"page without title", []edit{{mix, "title: Mix a slip\n", ""}},
		"units/slip/mix.md:2:1: error: `title` is missing (missing-key)\n" +
			"    Write a line such as `title: Mix a slip`.\n"},
	{"page with an empty title", []edit{{mix, "title: Mix a slip", "title: \"\""}},
		"units/slip/mix.md:2:8: error: `title` is empty (missing-key)\n" +
			"    Write one line of text, or take the key out if it can be left out.\n"},
	{"lesson with lessons", []edit{{mix, "title: Mix a slip", "title: Mix a slip\nlessons: [a]"}},
		"units/slip/mix.md:3:1: error: `lessons` is not a key that is known here (unknown-key)\n" +
			"    The keys are: title, description, creator, date, teaches, timeRequired, learningResourceType, medium, technique, needs, before, after.\n"},
	{"unknown key in a page", []edit{{mix, "timeRequired", "timerequired"}},
		"units/slip/mix.md:8:1: error: `timerequired` is not a key that is known here (unknown-key)\n" +
			"    Did you mean `timeRequired`? The keys are: title, description, creator, date, teaches, timeRequired, learningResourceType, medium, technique, needs, before, after.\n"},
	{"date not ISO", []edit{{mix, "2026-09-01", "1.9.2026"}},
		"units/slip/mix.md:5:7: error: `1.9.2026` is not a date (value-form)\n" +
			"    Write year, month and day as numbers, such as 2026-09-01.\n"},
	{"date that does not exist", []edit{{mix, "2026-09-01", "2026-02-30"}},
		"units/slip/mix.md:5:7: error: `2026-02-30` is not a date (value-form)\n" +
			"    Write year, month and day as numbers, such as 2026-09-01.\n"},
	{"duration not ISO", []edit{{mix, "PT1H30M", "90 min"}},
		"units/slip/mix.md:8:15: error: `90 min` is not a time in hours and minutes (value-form)\n" +
			"    Write PT20M for twenty minutes, PT1H30M for an hour and a half.\n"},
	{"duration of nothing", []edit{{mix, "PT1H30M", "PT0M"}},
		"units/slip/mix.md:8:15: error: `PT0M` is not a time in hours and minutes (value-form)\n" +
			"    Write PT20M for twenty minutes, PT1H30M for an hour and a half.\n"},
	{"medium that the table lacks", []edit{{mix, "medium: coloured-slip", "medium: colored-slip"}},
		"units/slip/mix.md:9:9: error: `colored-slip` is not a medium of decoration.yaml (unknown-name)\n" +
			"    Did you mean `coloured-slip`? Write one of: coloured-slip, stain-wash.\n"},
	{"list written as text", []edit{{mix, "teaches:\n  - weigh the powder and the water", "teaches: weigh"}},
		"units/slip/mix.md:6:10: error: this is one line of text, but `teaches` wants a list (value-kind)\n" +
			"    Write each item on a line of its own below the key, after a hyphen and a space.\n"},
	{"list in a list", []edit{{mix, "  - a bucket", "  - [a, bucket]"}},
		"units/slip/mix.md:12:5: error: this is a list, but an item of `needs` wants one line of text (value-kind)\n" +
			"    Write the text right after the colon; in double quotes if it starts with a sign like [ or {.\n"},
	{"empty item", []edit{{mix, "  - a bucket", "  -"}},
		"units/slip/mix.md:12:4: error: an item of `needs` is empty (missing-key)\n" +
			"    Write one line of text, or take the key out if it can be left out.\n"},
	{"link to a missing page", []edit{{mix, "- measure.md", "- mesure.md\n  - ../../../outside.md"}},
		"units/slip/mix.md:15:5: error: there is no page units/slip/mesure.md (unknown-name)\n" +
			"    Did you mean `measure.md`? Write the path from this file to the page's .md file.\n" +
			"units/slip/mix.md:16:5: error: there is no page ../outside.md (unknown-name)\n" +
			"    Write the path from this file to the page's .md file.\n"},
	{"link without ending", []edit{{mix, "- measure.md", "- measure"}},
		"units/slip/mix.md:15:5: error: `measure` does not lead to a page (unknown-name)\n" +
			"    Write the path from this file to the page's .md file, such as `measure.md` or `../wash/unit.md`.\n"},
	{"byte-order mark", []edit{{mix, "---\ntitle", "\ufeff---\ntitle"}},
		"units/slip/mix.md:1:1: error: the file starts with a byte-order mark (unreadable-file)\n" +
			"    Save it again as “UTF-8 without BOM”.\n"},
	{"NUL", []edit{{mix, "## Weigh", "## We\x00igh"}},
		"units/slip/mix.md:18:6: error: this is a NUL byte, which no text has (unreadable-file)\n" +
			"    Save the file again as plain text in UTF-8.\n"},
	{"control character", []edit{{mix, "## Weigh", "## Größe\x1b"}},
		"units/slip/mix.md:18:9: error: this character, U+001B, cannot be seen or printed (unreadable-file)\n" +
			"    Take it out; it may have come along with copied text.\n"},
	{"carriage returns alone", []edit{{"home.md", "", "---\rtitle: Home\r---\r"}},
		"home.md:1:4: error: a line ends with a carriage return alone (unreadable-file)\n" +
			"    Save the file again with the line ends LF or CRLF.\n"},
	{"verdict missing", []edit{{table, "wet: {verdict: yes, reason: It holds here.}", "wet: {reason: It holds here.}"}},
		"decoration.yaml:37:12: error: `verdict` is missing (table-pair)\n" +
			"    Write a line such as `verdict: yes`.\n"},
	{"verdict unknown", []edit{{table, "wet: {verdict: yes", "wet: {verdict: no"}},
		"decoration.yaml:37:22: error: `verdict` cannot be `no` (value-form)\n" +
			"    Write one of: yes, label, risky, never.\n"},
	{"reason missing", []edit{{table, "wet: {verdict: yes, reason: It holds here.}", "wet: {verdict: yes}"}},
		"decoration.yaml:37:12: error: `reason` is missing (table-pair)\n" +
			"    Write a line such as `reason: Slip and clay shrink together.`.\n"},
	{"risky without fault and remedy", []edit{{table, "{verdict: risky, reason: It may not hold here., fault: It flakes off., remedy: Try another medium.}", "{verdict: risky, reason: It may not hold here.}"}},
		"decoration.yaml:53:21: error: `fault` is missing (table-pair)\n" +
			"    Write a line such as `fault: It flakes off.`.\n" +
			"decoration.yaml:53:21: error: `remedy` is missing (table-pair)\n" +
			"    Write a line such as `remedy: Use underglaze instead.`.\n"},
	{"never without rule", []edit{{table, "verdict: never, rule: house, ", "verdict: never, "}},
		"decoration.yaml:39:17: error: a `never` does not say what it rests on (table-pair)\n" +
			"    Add `rule: physics` if nothing gets round it, `rule: trade` if potters do not and the reason names the exception, or `rule: house` if an instructor may allow it.\n"},
	{"never with an unknown rule", []edit{{table, "rule: house", "rule: mine"}},
		"decoration.yaml:39:40: error: `rule` cannot be `mine` (value-form)\n" +
			"    Write one of: physics, trade, house.\n"},
	{"rule on another verdict", []edit{{table, "wet: {verdict: yes,", "wet: {verdict: yes, rule: house,"}},
		"decoration.yaml:37:33: error: `rule` belongs to `never` alone, and this is `yes` (table-pair)\n" +
			"    Take `rule` out, or change the verdict.\n"},
	{"pair missing", []edit{{table, "      wet: {verdict: yes, reason: It holds here.}\n", ""}},
		"decoration.yaml:37:7: error: Coloured slip says nothing about the state `wet` (table-pair)\n" +
			"    Add a line such as `wet: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n"},
	{"unknown state in a medium", []edit{{table, "      wet: {verdict: yes, reason: It holds here.}\n", "      wett: {verdict: yes, reason: It holds here.}\n"}},
		"decoration.yaml:37:7: error: Coloured slip says nothing about the state `wet` (table-pair)\n" +
			"    Add a line such as `wet: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n" +
			"decoration.yaml:37:7: error: `wett` is not a key that is known here (unknown-key)\n" +
			"    Did you mean `wet`? The keys are: all, wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n"},
	{"pair that is text", []edit{{table, "wet: {verdict: yes, reason: It holds here.}", "wet: yes"}},
		"decoration.yaml:37:12: error: this is one line of text, but `wet` wants a set of keys with values (value-kind)\n" +
			"    Write each key on a line of its own, as `key: value`.\n"},
	{"best unknown", []edit{{table, "best: leather-hard", "best: leatherhard"}},
		"decoration.yaml:31:11: error: `best` cannot be `leatherhard` (value-form)\n" +
			"    Did you mean `leather-hard`? Write one of: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n"},
	{"best is never", []edit{{table, "best: leather-hard", "best: bisque"}},
		"decoration.yaml:31:11: error: `best` names `bisque`, where the verdict is `never` (table-pair)\n" +
			"    Name a state where it may go on, or change the verdict.\n"},
	{"two media with one id", []edit{{table, "id: stain-wash", "id: coloured-slip"}, {"units/wash/thin.md", "medium: stain-wash\n", ""}, {"units/wash/wipe.md", "medium: stain-wash\n", ""}},
		"decoration.yaml:43:9: error: `coloured-slip` is already in line 28 (repeated-name)\n" +
			"    Give each its own.\n" +
			"decoration.yaml:63:12: error: no medium has the id `stain-wash` (unknown-name)\n" +
			"    Write one of: coloured-slip.\n" +
			"decoration.yaml:73:51: error: no medium has the id `stain-wash` (unknown-name)\n" +
			"    Write one of: coloured-slip.\n" +
			"decoration.yaml:74:13: error: no medium has the id `stain-wash` (unknown-name)\n" +
			"    Write one of: coloured-slip.\n" +
			"decoration.yaml:75:13: error: no medium has the id `stain-wash` (unknown-name)\n" +
			"    Write one of: coloured-slip.\n" +
			"decoration.yaml:75:32: error: no medium has the id `stain-wash` (unknown-name)\n" +
			"    Write one of: coloured-slip.\n"},
	{"states is text", []edit{{table, "", "states: wet\nmedia: []\nbase: no\n"}, {mix, "medium: coloured-slip\n", ""}},
		"decoration.yaml:1:1: error: `transitions` is missing (table-move)\n" +
			"    Write a list of the ways from one state to the next, at least one with each `move`: dry (the drying of clay), bisque (the first firing), harden (bisque heat again, to fix colour), strip (the washing off of unfired glaze), fire (the glaze firing, a second one, or the last firing of a bare pot).\n" +
			"decoration.yaml:1:9: error: this is one line of text, but `states` wants a list (value-kind)\n" +
			"    Write each item on a line of its own below the key, after a hyphen and a space.\n"},
	{"pairs are a list", []edit{{table, "    states:\n      wet: {verdict: yes, reason: It holds here.}\n      leather-hard: {verdict: yes, reason: It holds here.}\n", "    states: [wet]\n    x:\n"}},
		"decoration.yaml:36:13: error: this is a list, but `states` wants a set of keys with values (value-kind)\n" +
			"    Write each key on a line of its own, as `key: value`.\n" +
			"decoration.yaml:37:5: error: `x` is not a key that is known here (unknown-key)\n" +
			"    The keys are: id, name, about, words, kind, look, heat, food, hides, fixed, best, hazards, who, states.\n"},
	{"medium without its parts", []edit{{table, "    name: Stain wash\n    about: Stain, flux and water.\n    best: bisque\n", ""}},
		"decoration.yaml:43:5: error: `about` is missing (missing-key)\n" +
			"    Write a line such as `about: White clay coloured with stain, thin enough to paint.`.\n" +
			"decoration.yaml:43:5: error: `best` is missing (missing-key)\n" +
			"    Write a line such as `best: leather-hard`.\n" +
			"decoration.yaml:43:5: error: `name` is missing (missing-key)\n" +
			"    Write a line such as `name: Coloured slip`.\n"},
	{"unknown state", []edit{{table, "- id: wet\n", "- id: damp\n"}},
		"decoration.yaml:2:3: error: the state `wet` is missing (missing-key)\n" +
			"    Add it; the states are: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n" +
			"decoration.yaml:2:9: error: `id` cannot be `damp` (value-form)\n" +
			"    Write one of: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n"},
	{"state missing", []edit{{table, "  - id: wet\n    name: Wet\n    short: shines, takes a fingerprint\n    tell: It shines and sags when lifted.\n    between: Wait for the shine to go.\n", ""}},
		"decoration.yaml:2:3: error: the state `wet` is missing (missing-key)\n" +
			"    Add it; the states are: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n"},
	{"states out of order", []edit{{table, "- id: wet\n", "- id: leather-hard\n"}, {table, "- id: leather-hard\n    name: Leather-hard", "- id: wet\n    name: Leather-hard"}},
		"decoration.yaml:7:9: error: `wet` stands after `leather-hard`, but a pot passes through it before (value-form)\n" +
			"    Order them: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n"},
	{"short too long", []edit{{table, "short: cool, dark, firm", "short: it is cool and dark and firm"}},
		"decoration.yaml:9:12: error: `short` has 7 words; under the drawing is room for 6 (value-form)\n" +
			"    Say it shorter; the rest belongs in `tell`.\n"},
	{"state without words", []edit{{table, "    short: cool, dark, firm\n    tell: It lifts without bending.\n", ""}},
		"decoration.yaml:7:5: error: `short` is missing (missing-key)\n" +
			"    Write a line such as `short: cool, dark, firm`.\n" +
			"decoration.yaml:7:5: error: `tell` is missing (missing-key)\n" +
			"    Write a line such as `tell: It lifts without bending.`.\n"},
	{"term that see does not find", []edit{{words, "see: [bisque]", "see: [bisqe]"}},
		"glossary.yaml:9:11: error: no term has the id `bisqe` (unknown-name)\n" +
			"    Did you mean `bisque`? Name the id of a term in this file.\n"},
	{"term that sees itself", []edit{{words, "see: [bisque]", "see: [specific-gravity]"}},
		"glossary.yaml:9:11: error: `see` of `specific-gravity` names itself (unknown-name)\n" +
			"    Name another term, or take this out.\n"},
	{"two terms with one word", []edit{{words, "word: specific gravity", "word: Bisque"}},
		"glossary.yaml:7:11: error: `bisque` is already in line 3 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"also is another term's word", []edit{{words, "also: [biscuit]", "also: [Specific gravity]"}},
		"glossary.yaml:7:11: error: `specific gravity` is already in line 4 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"two terms with one id", []edit{{words, "id: specific-gravity", "id: bisque"}, {words, "    see: [bisque]\n", ""}},
		"glossary.yaml:6:9: error: `bisque` is already in line 2 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"terms missing", []edit{{words, "", "# none\n{}\n"}},
		"glossary.yaml:2:1: error: `terms` is missing (missing-key)\n" +
			"    Write a line such as `terms:`.\n"},
	{"glossary empty", []edit{{words, "", "# none\n"}},
		"glossary.yaml:1:1: error: the file is empty (missing-key)\n" +
			"    Write its keys and values, first a line such as `terms:`.\n"},
	{"page that is not text still takes links", []edit{{mix, "Weigh first", "W\xffigh"}},
		"units/slip/mix.md:18:5: error: this is not UTF-8 text (unreadable-file)\n" +
			"    Save the file again with the encoding UTF-8.\n"},
	{"page that is a folder", []edit{{"home.md", "", ""}, {"home.md/x", "", "x"}},
		"home.md:1:1: error: this is not a file (unreadable-file)\n" +
			"    Put a plain file here, or rename what stands here.\n"},
	{"unit page that is not text", []edit{{slip, "", "\xff"}},
		"units/slip/unit.md:1:1: error: this is not UTF-8 text (unreadable-file)\n" +
			"    Save the file again with the encoding UTF-8.\n"},
	{"picture of unknown kind", []edit{{"pictures/a.tiff", "", "x"}},
		"pictures/a.tiff:1:1: error: the handbook cannot show a picture with the ending `.tiff` (picture-kind)\n" +
			"    Save a photo as JPEG, a screen or a scan as PNG, and draw a drawing as SVG.\n"},
	{"picture that is damaged", []edit{{"pictures/a.png", "", "x"}},
		"pictures/a.png:1:1: error: the picture is damaged, or not of the kind its name says (picture-kind)\n" +
			"    Copy it anew from the phone or the camera. Save a photo as JPEG, a screen or a scan as PNG, and draw a drawing as SVG.\n"},
	{"picture with a bad name", []edit{{"pictures/my jar.svg", "", "x"}},
		"pictures/my jar.svg:1:1: error: a picture cannot have this name (id-form)\n" +
			"    Name it with letters a to z, digits and single hyphens, such as jar-and-scale.jpg.\n"},
	{"CRLF keeps positions", []edit{{"home.md", "", "---\r\ntitle: Größe\r\ncolour: [é, blau]\r\n---\r\nWelcome.\r\n"}},
		"home.md:3:1: error: `colour` is not a key that is known here (unknown-key)\n" +
			"    The keys are: title, description, creator, date, teaches, timeRequired, learningResourceType, medium, technique, needs, before, after.\n"},
	{"columns count characters", []edit{{"home.md", "", "---\n{title: \"Größe ü\", x: 1}\n---\n"}},
		"home.md:2:20: error: `x` is not a key that is known here (unknown-key)\n" +
			"    The keys are: title, description, creator, date, teaches, timeRequired, learningResourceType, medium, technique, needs, before, after.\n"},
	{"YAML line ends of another kind", []edit{{"home.md", "", "---\ntitle: a\u2028colour: b\n---\n"}},
		"home.md:2:9: error: this character, U+2028, ends a line for some programs and not for others (hidden-character)\n" +
			"    Write an ordinary line end, or a space.\n" +
			"home.md:2:10: error: `colour` is not a key that is known here (unknown-key)\n" +
			"    The keys are: title, description, creator, date, teaches, timeRequired, learningResourceType, medium, technique, needs, before, after.\n"},
	{"all at once", []edit{{setting, "en-GB", "x"}, {setting, "metric", "miles"}, {mix, "2026-09-01", "soon"}, {words, "see: [bisque]", "see: [x]"}},
		"course.yaml:3:11: error: `x` is not a language tag (value-form)\n" +
			"    Write one as BCP 47 has it, such as en-GB, de or pt-BR.\n" +
			"course.yaml:4:11: error: `measures` cannot be `miles` (value-form)\n" +
			"    Write one of: metric, us, imperial.\n" +
			"glossary.yaml:9:11: error: no term has the id `x` (unknown-name)\n" +
			"    Name the id of a term in this file.\n" +
			"units/slip/mix.md:5:7: error: `soon` is not a date (value-form)\n" +
			"    Write year, month and day as numbers, such as 2026-09-01.\n"},
}
