package course_test

import "strings"

// smallEnamel and smallGlaze are media to add to the small course. The glaze is
// one that goes on in no state but bisque and those after it.
const (
	smallEnamel = `  - id: enamel
    name: Enamel
    about: Colour on the glaze.
    kind: on-glaze
    heat: 1
    food: no
    best: glaze-fired
    states:
      wet: {verdict: never, rule: physics, reason: It burns away., fault: It is gone., remedy: Wait.}
      leather-hard: {verdict: never, rule: physics, reason: It burns away., fault: It is gone., remedy: Wait.}
      bone-dry: {verdict: never, rule: physics, reason: It burns away., fault: It is gone., remedy: Wait.}
      bisque: {verdict: never, rule: physics, reason: It burns away., fault: It is gone., remedy: Wait.}
      unfired-glaze: {verdict: never, rule: physics, reason: It burns away., fault: It is gone., remedy: Wait.}
      glaze-fired: {verdict: yes, reason: It melts on.}
`
	smallGlaze = `  - id: glaze
    name: Glaze
    about: The coat itself.
    kind: glaze
    food: yes
    hides: yes
    best: unfired-glaze
    states:
      wet: {verdict: never, rule: physics, reason: It slumps., fault: It falls., remedy: Wait.}
      leather-hard: {verdict: never, rule: physics, reason: It slumps., fault: It falls., remedy: Wait.}
      bone-dry: {verdict: never, rule: physics, reason: It slumps., fault: It falls., remedy: Wait.}
      bisque: {verdict: yes, reason: It drinks.}
      unfired-glaze: {verdict: risky, reason: It runs., fault: It sticks., remedy: Wait.}
      glaze-fired: {verdict: never, rule: physics, reason: It runs., fault: It sticks., remedy: Wait.}
`
)

// tableTests holds a case for each thing that can be wrong with the parts of the
// decoration table and with what joins them.
var tableTests = []findingCase{
	{"reason too long for the chart", []edit{{table, "wet: {verdict: yes, reason: It holds here.}", "wet: {verdict: yes, reason: It holds here as long as it is thin.}"}},
		"decoration.yaml:37:12: error: `reason` has 9 words, and there is no `short` for the chart (table-pair)\n" +
			"    Add `short` with the reason in at most 6 words.\n"},
	{"short of a pair too long", []edit{{table, "wet: {verdict: yes, reason: It holds here.}", "wet: {verdict: yes, short: It holds as long as it stays thin, reason: It holds here.}"}},
		"decoration.yaml:37:34: error: `short` has 8 words; the chart has room for 6 (value-form)\n" +
			"    Say it shorter; the rest belongs in `reason`.\n"},
	{"medium of an unknown kind", []edit{{table, "kind: clay", "kind: mud"}},
		"decoration.yaml:33:11: error: `kind` cannot be `mud` (value-form)\n" +
			"    Write one of: clay, colour, powder, glaze, on-glaze, resist.\n"},
	{"medium without kind and food", []edit{{table, "    kind: clay\n    food: yes\n", ""}},
		"decoration.yaml:28:5: error: `food` is missing (missing-key)\n" +
			"    Write a line such as `food: yes`.\n" +
			"decoration.yaml:28:5: error: `kind` is missing (missing-key)\n" +
			"    Write a line such as `kind: clay`.\n"},
	{"food neither yes nor no", []edit{{table, "    kind: clay\n    food: yes\n", "    kind: clay\n    food: true\n"}},
		"decoration.yaml:34:11: error: `food` cannot be `true` (value-form)\n" +
			"    Write one of: yes, no.\n"},
	{"on-glaze medium without heat, course without its firing", []edit{{table, "techniques:\n", strings.Replace(smallEnamel, "    heat: 1\n", "", 1) + "techniques:\n"}},
		"decoration.yaml:1:1: error: `firing` is missing, and there are on-glaze media (missing-key)\n" +
			"    Write a line such as `firing: {name: Fire it to the cone on its label., who: instructor}`.\n" +
			"decoration.yaml:58:5: error: `heat` is missing, which an on-glaze medium needs (missing-key)\n" +
			"    Write a line such as `heat: 2`: of two on-glaze media the one with the larger number is fired first, hotter.\n"},
	{"heat that is no whole number", []edit{{table, "techniques:\n", strings.Replace(smallEnamel, "heat: 1", "heat: 2.5", 1) + "techniques:\n"}, {table, "over:\n", "firing: {name: Fire it.}\nover:\n"}},
		"decoration.yaml:62:11: error: `heat` is not a whole number (value-form)\n" +
			"    Write 1 for what is fired last and coolest, and a larger number for what comes before.\n"},
	{"heat and hides where they mean nothing", []edit{{table, "kind: clay", "kind: clay\n    heat: 3\n    hides: yes"}},
		"decoration.yaml:34:11: error: `heat` belongs to on-glaze media alone, and this is `clay` (value-form)\n" +
			"    Take `heat` out, or change `kind`.\n" +
			"decoration.yaml:35:12: error: `hides` belongs to glazes alone, and this is `clay` (value-form)\n" +
			"    Take `hides` out, or change `kind`.\n"},
	{"word with a capital letter", []edit{{table, "words: [slip]", "words: [Slip]"}},
		"decoration.yaml:32:13: error: `Slip` has a capital letter (value-form)\n" +
			"    Write `slip`; capital letters do not count when a student types.\n"},
	{"word that cannot be typed", []edit{{table, "words: [slip]", "words: [\"slip, thick\"]"}},
		"decoration.yaml:32:13: error: `slip, thick` cannot be a word that a student types (value-form)\n" +
			"    Use letters, digits, and single spaces, hyphens or apostrophes between them; give each way of saying it an item of its own.\n"},
	{"name that cannot be typed", []edit{{table, "    name: Wiping back", "    name: Wiping, or sponging"}},
		"decoration.yaml:60:11: error: `Wiping, or sponging` holds a sign that parts layers where a student types it (value-form)\n" +
			"    Leave out commas, semicolons and the signs + / and &.\n"},
	{"technique that names a medium", []edit{{table, "    name: Wiping back", "    name: Wash wiped back"}},
		"decoration.yaml:60:11: error: the name of this technique holds `wash`, which names a medium (value-form)\n" +
			"    Leave the medium out of the name; among `words` it may stand.\n"},
	{"two media share a word", []edit{{table, "words: [wash]", "words: [slip]"}},
		"decoration.yaml:47:13: error: `slip` is already in line 32 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a technique has the name of a medium", []edit{{table, "words: [wiped, wiped back]", "words: [stain wash]"}},
		"decoration.yaml:62:13: error: `stain wash` is already in line 44 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"technique for an unknown medium", []edit{{table, "with: [stain-wash]", "with: [stainwash]"}},
		"decoration.yaml:63:12: error: no medium has the id `stainwash` (unknown-name)\n" +
			"    Did you mean `stain-wash`? Write one of: coloured-slip, stain-wash.\n"},
	{"technique without a state", []edit{{table, "      bisque: {verdict: yes, reason: It wipes clean.}\n", ""}},
		"decoration.yaml:66:7: error: Wiping back says nothing about the state `bisque` (table-pair)\n" +
			"    Add a line such as `bisque: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n"},
	{"technique best where it is never", []edit{{table, "    with: [stain-wash]\n    best: bisque", "    with: [stain-wash]\n    best: wet"}},
		"decoration.yaml:64:11: error: `best` names `wet`, where the verdict is `never` (table-pair)\n" +
			"    Name a state where it may go on, or change the verdict.\n"},
	{"two techniques with one id", []edit{{table, "over:\n", "  - {id: wiping-back, name: Wiping, about: Again., states: {}}\nover:\n"}},
		"decoration.yaml:72:10: error: `wiping-back` is already in line 59 (repeated-name)\n" +
			"    Give each its own.\n" +
			"decoration.yaml:72:60: error: Wiping says nothing about the state `bisque` (table-pair)\n" +
			"    Add a line such as `bisque: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n" +
			"decoration.yaml:72:60: error: Wiping says nothing about the state `bone-dry` (table-pair)\n" +
			"    Add a line such as `bone-dry: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n" +
			"decoration.yaml:72:60: error: Wiping says nothing about the state `glaze-fired` (table-pair)\n" +
			"    Add a line such as `glaze-fired: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n" +
			"decoration.yaml:72:60: error: Wiping says nothing about the state `leather-hard` (table-pair)\n" +
			"    Add a line such as `leather-hard: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n" +
			"decoration.yaml:72:60: error: Wiping says nothing about the state `unfired-glaze` (table-pair)\n" +
			"    Add a line such as `unfired-glaze: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n" +
			"decoration.yaml:72:60: error: Wiping says nothing about the state `wet` (table-pair)\n" +
			"    Add a line such as `wet: {verdict: never, rule: physics, reason: …, fault: …, remedy: …}`.\n"},
	{"over missing", []edit{{table, "over:\n  - {under: coloured-slip, above: [coloured-slip, stain-wash], verdict: yes, reason: One holds on the other.}\n  - {under: stain-wash, above: coloured-slip, verdict: never, rule: physics, reason: Slip cannot grip powder., fault: It curls., remedy: Turn the order round.}\n  - {under: stain-wash, above: stain-wash, verdict: yes, unless: [wiping-back], reason: One holds on the other.}\n", ""}},
		"decoration.yaml:1:1: error: `over` is missing (table-over)\n" +
			"    Write a list that says which medium may lie on which while that one is not yet fired, with entries such as `{under: coloured-slip, above: [underglaze, glaze], verdict: yes, reason: …}`.\n"},
	{"a pair of layers missing", []edit{{table, "above: [coloured-slip, stain-wash]", "above: coloured-slip"}},
		"decoration.yaml:73:3: error: nothing says whether these may lie on unfired `coloured-slip`: stain-wash (table-over)\n" +
			"    Add `{under: coloured-slip, above: [stain-wash], verdict: …, reason: …}`, or name them in an entry that fits.\n"},
	{"a pair of layers twice", []edit{{table, "{under: stain-wash, above: stain-wash,", "{under: stain-wash, above: [stain-wash, coloured-slip],"}},
		"decoration.yaml:75:45: error: `coloured-slip` on `stain-wash` is already in the entry of line 74 (table-over)\n" +
			"    Keep it in one of the two.\n"},
	{"layers without reason, rule or remedy", []edit{{table, "verdict: never, rule: physics, reason: Slip cannot grip powder., fault: It curls., remedy: Turn the order round.", "verdict: never, fault: It curls."}},
		"decoration.yaml:74:5: error: `reason` is missing (table-pair)\n" +
			"    Write a line such as `reason: Slip and clay shrink together.`.\n" +
			"decoration.yaml:74:5: error: `remedy` is missing (table-pair)\n" +
			"    Write a line such as `remedy: Use underglaze instead.`.\n" +
			"decoration.yaml:74:5: error: a `never` does not say what it rests on (table-pair)\n" +
			"    Add `rule: physics` if nothing gets round it, `rule: trade` if potters do not and the reason names the exception, or `rule: house` if an instructor may allow it.\n"},
	{"layers that nobody knows", []edit{{table, "unless: [wiping-back]", "unless: [wiping]"}, {table, "above: [coloured-slip, stain-wash]", "above: [coloured-slip, stain-wash, slop]"}},
		"decoration.yaml:73:63: error: no medium has the id `slop` (unknown-name)\n" +
			"    Write one of: coloured-slip, stain-wash.\n" +
			"decoration.yaml:75:67: error: no technique has the id `wiping` (unknown-name)\n" +
			"    Write one of: wiping-back.\n"},
	{"layers that the states speak of", []edit{{table, "techniques:\n", smallGlaze + smallEnamel + "techniques:\n"}, {table, "over:\n", "firing: {name: Fire it.}\nover:\n  - {under: [coloured-slip, stain-wash], above: glaze, verdict: yes, reason: It covers.}\n  - {under: glaze, above: [coloured-slip, enamel], verdict: yes, reason: It holds.}\n"}},
		"decoration.yaml:103:13: error: `glaze` as the lower one is the state unfired-glaze (table-over)\n" +
			"    Take it out: what may go on it, each medium says under `states`.\n" +
			"decoration.yaml:103:43: error: `enamel` goes on the fired glaze, where nothing unfired lies beneath it (table-over)\n" +
			"    Take it out: its states and `heat` say all there is to say.\n"},
	{"no transitions", []edit{{table, "transitions:\n", "x-ray:\n"}},
		"decoration.yaml:1:1: error: `transitions` is missing (table-move)\n" +
			"    Write a list of the ways from one state to the next, at least one with each `move`: dry (the drying of clay), bisque (the first firing), harden (bisque heat again, to fix colour), strip (the washing off of unfired glaze), fire (the glaze firing, a second one, or the last firing of a bare pot).\n" +
			"decoration.yaml:76:1: error: `x-ray` is not a key that is known here (unknown-key)\n" +
			"    The keys are: base, leave-out, states, media, techniques, over, transitions, exceptions, firing, metals, phrases.\n"},
	{"transitions empty", []edit{{table, "transitions:\n", "transitions: []\nx-ray:\n"}},
		"decoration.yaml:76:14: error: no transition has the move `bisque` (table-move)\n" +
			"    Add one: it means the first firing, and leads from bone-dry to bisque.\n" +
			"decoration.yaml:76:14: error: no transition has the move `dry` (table-move)\n" +
			"    Add one: it means the drying of clay, and leads from wet or leather-hard to leather-hard or bone-dry.\n" +
			"decoration.yaml:76:14: error: no transition has the move `fire` (table-move)\n" +
			"    Add one: it means the glaze firing, a second one, or the last firing of a bare pot, and leads from bone-dry or bisque or unfired-glaze or glaze-fired to glaze-fired.\n" +
			"decoration.yaml:76:14: error: no transition has the move `harden` (table-move)\n" +
			"    Add one: it means bisque heat again, to fix colour, and leads from bisque to bisque.\n" +
			"decoration.yaml:76:14: error: no transition has the move `strip` (table-move)\n" +
			"    Add one: it means the washing off of unfired glaze, and leads from unfired-glaze to bisque.\n" +
			"decoration.yaml:77:1: error: `x-ray` is not a key that is known here (unknown-key)\n" +
			"    The keys are: base, leave-out, states, media, techniques, over, transitions, exceptions, firing, metals, phrases.\n"},
	{"transition of an unknown move", []edit{{table, "move: harden", "move: hardening"}},
		"decoration.yaml:80:27: error: `move` cannot be `hardening` (value-form)\n" +
			"    Write one of: dry, bisque, harden, strip, fire.\n"},
	{"no move of one kind", []edit{{table, "  - {id: harden-on, move: harden, from: bisque, to: bisque, name: Fire it again., reason: Loose colour smudges., fault: Too hot closes the clay., remedy: Fire to the bisque cone.}\n", ""}},
		"decoration.yaml:77:3: error: no transition has the move `harden` (table-move)\n" +
			"    Add one: it means bisque heat again, to fix colour, and leads from bisque to bisque.\n"},
	{"clay that gets wet again", []edit{{table, "move: dry, from: leather-hard, to: bone-dry", "move: dry, from: bone-dry, to: leather-hard"}},
		"decoration.yaml:78:50: error: `dry` cannot lead from `bone-dry` to `leather-hard` (table-move)\n" +
			"    It means the drying of clay, and leads from wet or leather-hard to leather-hard or bone-dry. Clay only dries.\n"},
	{"a kiln for damp pots", []edit{{table, "move: bisque, from: bone-dry", "move: bisque, from: leather-hard"}},
		"decoration.yaml:79:61: error: `bisque` cannot lead from `leather-hard` to `bisque` (table-move)\n" +
			"    It means the first firing, and leads from bone-dry to bisque. Clay only dries.\n"},
	{"a state that is never reached", []edit{{table, "id: stiffen, move: dry, from: wet, to: leather-hard", "id: stiffen, move: dry, from: wet, to: bone-dry"}},
		"decoration.yaml:77:3: error: no pot ever gets to the state `leather-hard` (table-move)\n" +
			"    Add a transition with `to: leather-hard` from a state that is reached.\n"},
	{"transition without reason, fault and remedy", []edit{{table, "name: Let it dry., reason: Damp pots burst., fault: The rim cracks., remedy: Cover it.", "name: Let it dry."}},
		"decoration.yaml:78:5: error: `fault` is missing (missing-key)\n" +
			"    Write a line such as `fault: The rim dries first and cracks.`.\n" +
			"decoration.yaml:78:5: error: `reason` is missing (missing-key)\n" +
			"    Write a line such as `reason: Wet clay sags under a brush.`.\n" +
			"decoration.yaml:78:5: error: `remedy` is missing (missing-key)\n" +
			"    Write a line such as `remedy: Cover the rim with plastic.`.\n"},
	{"transition to an unknown state", []edit{{table, "from: wet, to: leather-hard", "from: wet, to: leather"}},
		"decoration.yaml:77:45: error: `to` cannot be `leather` (value-form)\n" +
			"    Write one of: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n"},
	{"two transitions with one id", []edit{{table, "id: dry-out", "id: stiffen"}},
		"decoration.yaml:78:10: error: `stiffen` is already in line 77 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"a glaze that is never fired", []edit{{table, "techniques:\n", smallGlaze + "techniques:\n"}, {table, "over:\n", "over:\n  - {under: [coloured-slip, stain-wash], above: glaze, verdict: yes, reason: It covers.}\n"}, {table, "  - {id: glaze-fire, move: fire, from: unfired-glaze, to: glaze-fired, name: Fire the glaze., reason: Heat melts the glaze., fault: It sticks to the shelf., remedy: Wipe the foot.}\n", ""}},
		"decoration.yaml:92:3: error: no transition fires the unfired glaze (table-move)\n" +
			"    Add one with `move: fire`, `from: unfired-glaze` and `to: glaze-fired`.\n"},
	{"a glaze that goes on nowhere", []edit{{table, "techniques:\n", strings.Replace(smallGlaze, "bisque: {verdict: yes", "bisque: {verdict: never, rule: house, fault: It runs., remedy: Wait.", 1) + "techniques:\n"}, {table, "over:\n", "over:\n  - {under: [coloured-slip, stain-wash], above: glaze, verdict: yes, reason: It covers.}\n"}},
		"decoration.yaml:92:3: error: no pot ever gets to the state `unfired-glaze` (table-move)\n" +
			"    Allow a glaze in a state that comes before it.\n"},
	{"exception of an unknown kind", []edit{{table, "kind: recipe", "kind: recipes"}},
		"decoration.yaml:86:11: error: `kind` cannot be `recipes` (value-form)\n" +
			"    Did you mean `recipe`? Write one of: product, recipe, body, house.\n"},
	{"exception about an unknown medium", []edit{{table, "medium: coloured-slip\n    states:\n      bone-dry", "medium: slip\n    states:\n      bone-dry"}},
		"decoration.yaml:88:13: error: no medium has the id `slip` (unknown-name)\n" +
			"    Write one of: coloured-slip, stain-wash.\n"},
	{"exception about an unknown body", []edit{{table, "body: white", "body: whit"}},
		"decoration.yaml:93:11: error: `whit` is not a clay body of course.yaml (unknown-name)\n" +
			"    Did you mean `white`? Write the id of one of its `bodies`.\n"},
	{"exception about an unknown state", []edit{{table, "      bone-dry: {verdict: risky", "      bonedry: {verdict: risky"}},
		"decoration.yaml:90:7: error: `bonedry` is not a key that is known here (unknown-key)\n" +
			"    Did you mean `bone-dry`? The keys are: wet, leather-hard, bone-dry, bisque, unfired-glaze, glaze-fired.\n"},
	{"exception that says nothing", []edit{{table, "    medium: coloured-slip\n    states:\n      bone-dry: {verdict: risky, reason: It has little clay., fault: It may flake., remedy: Try a tile.}\n", "    medium: coloured-slip\n"}},
		"decoration.yaml:85:5: error: `states` is missing (missing-key)\n" +
			"    Write a line such as `states: {bisque: {verdict: yes, reason: …}}`.\n"},
	{"exception against physics", []edit{{table, "      bone-dry: {verdict: risky", "      bisque: {verdict: risky"}},
		"decoration.yaml:90:15: error: `mill-slip` allows what is never by physics (table-physics)\n" +
			"    Take the state `bisque` out. The table's reason is: It cannot hold here.\n"},
	{"exception without remedy", []edit{{table, "reason: It has little clay., fault: It may flake., remedy: Try a tile.", "reason: It has little clay., fault: It may flake."}},
		"decoration.yaml:90:17: error: `remedy` is missing (table-pair)\n" +
			"    Write a line such as `remedy: Use underglaze instead.`.\n"},
	{"exception with keys of another kind", []edit{{table, "    kind: recipe\n", "    kind: recipe\n    body: white\n    technique: wiping-back\n    hides: yes\n"}},
		"decoration.yaml:87:11: error: an exception of the kind `recipe` has no `body` (unknown-key)\n" +
			"    Take the key out, or change `kind`.\n" +
			"decoration.yaml:88:16: error: an exception of the kind `recipe` has no `technique` (unknown-key)\n" +
			"    Take the key out, or change `kind`.\n" +
			"decoration.yaml:89:12: error: `hides` belongs to glazes alone, and this is `clay` (value-form)\n" +
			"    Take `hides` out, or change `kind`.\n"},
	{"exception with the id of a medium", []edit{{table, "id: mill-slip", "id: stain-wash"}},
		"decoration.yaml:85:9: error: `stain-wash` is the id of a medium (repeated-name)\n" +
			"    Give the recipe an id of its own.\n"},
	{"exception with the words of a medium", []edit{{table, "    name: Mill slip\n", "    name: Mill slip\n    words: [wash]\n"}},
		"decoration.yaml:88:13: error: `wash` is already in line 47 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"two exceptions with one id", []edit{{table, "id: slip-on-white", "id: mill-slip"}},
		"decoration.yaml:91:9: error: `mill-slip` is already in line 85 (repeated-name)\n" +
			"    Give each its own.\n"},
	{"exception that forbids what its medium likes best", []edit{{table, "      bone-dry: {verdict: risky, reason: It has little clay.", "      leather-hard: {verdict: never, rule: house, reason: It has little clay."}},
		"decoration.yaml:85:5: error: `mill-slip` forbids `leather-hard`, which its medium likes best (table-pair)\n" +
			"    Write `best` with the state that this one likes best.\n"},
	{"one body changed twice", []edit{{table, "  - id: slip-on-white\n", "  - id: again\n    kind: body\n    body: white\n    medium: coloured-slip\n    states:\n      leather-hard: {verdict: yes, reason: It holds.}\n  - id: slip-on-white\n"}},
		"decoration.yaml:102:21: error: line 96 already says what holds for `leather-hard` here (repeated-name)\n" +
			"    Keep one of the two.\n"},
	{"house rule against what is best", []edit{{table, "    kind: recipe\n    name: Mill slip\n", "    kind: house\n    name: No slip\n"}, {table, "      bone-dry: {verdict: risky", "      leather-hard: {verdict: never, rule: house"}},
		"decoration.yaml:90:21: error: `mill-slip` forbids `leather-hard`, which `best` names (table-pair)\n" +
			"    Name another state as `best` above, or allow this one.\n"},
	{"house rule about two things", []edit{{table, "    kind: recipe\n", "    kind: house\n    technique: wiping-back\n"}},
		"decoration.yaml:89:13: error: a rule of the house is about a medium or about a technique, not both (value-form)\n" +
			"    Make two rules of it.\n"},
	{"house rule about an unknown technique", []edit{{table, "    kind: recipe\n    name: Mill slip\n    medium: coloured-slip", "    kind: house\n    name: Mill rule\n    technique: wiping"}},
		"decoration.yaml:88:16: error: no technique has the id `wiping` (unknown-name)\n" +
			"    Write one of: wiping-back.\n"},
}
