package finding

// Severity says whether a finding stops the work.
type Severity int

const (
	// Warning lets publish go on.
	Warning Severity = iota
	// Error stops publish.
	Error
)

// String returns "warning" or "error".
func (s Severity) String() string {
	if s == Error {
		return "error"
	}
	return "warning"
}

// Rule is one thing the handbook's files must obey. Each is declared once, in
// the list below; reports, their rule tables, the help text and the tests are
// made from it.
type Rule struct {
	ID       string   // stable, kebab-case
	Severity Severity // Error or Warning
	Means    string   // the rule itself, one sentence
	Source   string   // what it rests on, where that is outside of the program; may be empty
}

// The rules, in the order of the stages that check them. A stage adds its own
// here; Rules lists them for reports.
var (
	Unreadable      = rule("unreadable-file", Error, "Every file that the course names can be read and is UTF-8 text of a reasonable size.")
	HiddenCharacter = rule("hidden-character", Error, "No text holds a character that cannot be seen, but those that its language needs.")
	TooMany         = rule("too-many", Warning, "Of one file no more is shown at once than can be read; the rest shows when that is mended.")
)

// The rules of the content folder: its files, its YAML, its tables, its
// drawings.
var (
	CourseNeeds   = rule("course-needs", Error, "A course has a course.yaml, a home.md and at least one unit.")
	MissingFile   = rule("missing-file", Error, "Every unit and lesson that a list names has its file.")
	UnlistedFile  = rule("unlisted-file", Error, "Every unit and lesson file is named by the list that puts it in order.")
	StrayFile     = rule("stray-file", Warning, "Every file of the content folder is one that the handbook reads.")
	SharedAddress = rule("shared-address", Error, "No two pages are published at one address, capital letters set aside.")
	OpeningBlock  = rule("opening-block", Error, "Every page starts with a block of YAML between two lines of three hyphens.")
	YAMLForm      = rule("yaml-form", Error, "YAML is well formed, is one document, and uses no anchors, aliases or tags.")
	TableForm     = rule("table-form", Error, "A table of comma-separated values names its columns in the first row, and every row has a cell for each.")
	UnknownKey    = rule("unknown-key", Error, "Every key is one that its place knows.")
	LanguageWords = rule("language-words", Warning, "The calculators have words in the course's language.")
	RepeatedKey   = rule("repeated-key", Error, "A key stands once in its place.")
	MissingKey    = rule("missing-key", Error, "Every key that its place needs is there, and is not empty.")
	ValueKind     = rule("value-kind", Error, "Every key has the kind of value it wants: text, a number, a list, or keys of its own.")
	ValueForm     = rule("value-form", Error, "Dates, times, cones, addresses and the like are written in their own form.")
	IDForm        = rule("id-form", Error, "Ids and file names are made of small letters a to z, digits, and single hyphens between them.")
	RepeatedName  = rule("repeated-name", Error, "An id or a word of the glossary is given to one thing only.")
	UnknownName   = rule("unknown-name", Error, "Every id and every page that a key names exists.")
	TablePair     = rule("table-pair", Error, "Every medium and technique says for every state whether it may be done, why, in short and in full, and, unless yes, the usual fault and what then.")
	TableOver     = rule("table-over", Error, "Every medium that is put on before the glaze says once what may lie on it while it is not yet fired.")
	TableMove     = rule("table-move", Error, "Every state is reached from the first, by moves that clay can make, and every kind of move is described.")
	TablePhysics  = rule("table-physics", Error, "No exception allows what the table calls never by physics.")
	TableSize     = rule("table-size", Error, "The decoration table is one that the calculators can load.")
	HazardLesson  = rule("hazard-lesson", Warning, "Every hazard names the lesson that teaches what to do about it.")
	DrawingForm   = rule("drawing-form", Error, "A drawing that stands in its page holds only plain shapes and words in the handbook's own line and colours; one of a drawing program neither runs nor fetches anything.")
	PictureSize   = rule("picture-size", Error, "No picture has more points than a phone's camera makes, and all together no more than a page can load.")
	PictureKind   = rule("picture-kind", Error, "Every picture is SVG, PNG, JPEG, WebP or GIF, as its name says.")
)

// The rules of Markdown.
var (
	LinkTarget   = rule("link-target", Error, "Every link leads to a page, a heading or a place of this handbook, or to an outside http, https or mailto address.")
	LinkWords    = rule("link-words", Error, "Every link has words to press, and holds no other link.")
	LooseBracket = rule("loose-bracket", Error, "Every square bracket is part of a link, a picture or a footnote; one meant as itself is written \\[.")
	Definitions  = rule("definition", Error, "Every footnote and every link definition is written once and used.")
	RawHTML      = rule("raw-html", Error, "Pages are written in Markdown alone, without HTML.")
	SumDisagrees = rule("sum-disagrees", Error, "Every number that a lesson takes from a calculator is the one that the calculator gives.")
	PictureFile  = rule("picture-file", Error, "Every picture shown is a file of the pictures folder.")
	PictureWords = rule("picture-words", Error, "Every picture has words that say what it shows, for whoever cannot see it.")
	HeadingWords = rule("heading-words", Error, "Every heading has words.")
	HeadingLevel = rule("heading-level", Error, "Headings start at ## and go down one level at a time; the title stands in the opening block.")
	HeadingID    = rule("heading-id", Error, "A heading's own id is made of letters, digits and hyphens, and is used once on its page.")
	FenceKind    = rule("fence-kind", Error, "The word after an opening fence is one of the handbook's blocks or a known language.")
	FenceEnd     = rule("fence-end", Error, "Every fence is closed.")
	BlockPlace   = rule("block-place", Error, "A caution, what students ask and a note for teaching hold words, lists, pictures and samples, but no other block of the handbook; a note for teaching has no footnotes.")
	BlockWords   = rule("block-words", Error, "A block's opening line says what its kind needs, and nothing else.")
	BlockBody    = rule("block-body", Error, "A block's body is written the way its kind asks.")
	PlainWords   = rule("plain-words", Error, "The texts in a block of YAML are plain words, without marks of Markdown.")
	TooDeep      = rule("too-deep", Error, "Quotes and lists are nested at most 50 deep.")
	TableRow     = rule("table-row", Error, "Every row of a table has a cell for each of its columns.")
	TooLong      = rule("too-long", Error, "A paragraph, table or heading is short enough to read.")
)

// The rules of a course: what a lesson has, and how it is worded.
var (
	LessonAim      = rule("lesson-aim", Warning, "Every lesson says in its opening block what it teaches.")
	LessonTime     = rule("lesson-time", Warning, "Every lesson says in its opening block how long it takes.")
	LessonNeeds    = rule("lesson-needs", Warning, "Every lesson says in its opening block what to have on the bench.")
	LessonSteps    = rule("lesson-steps", Warning, "Every lesson has its steps as a numbered list.")
	LessonLooks    = rule("lesson-looks", Warning, "Every lesson lists what one sees when it is right.")
	LessonFaults   = rule("lesson-faults", Warning, "Every lesson says what goes wrong, why, and what then, as pairs of a definition list.")
	LessonState    = rule("lesson-state", Warning, "Every lesson about a medium names the state of the clay that it is for.")
	FewQuestions   = rule("few-questions", Warning, "Every lesson has three questions or more to check oneself with.")
	CautionForm    = rule("caution-form", Warning, "Every caution of a lesson names its hazard, has two to six sentences, and stands right before what it guards.")
	PictureTeaches = rule("picture-teaches", Warning, "The words in the place of a lesson's picture, five or more, say what it teaches.")
	LongSentence   = rule("long-sentence", Warning, "Of a page's sentences one in ten at most has more than 25 words, and none more than 40; footnotes may.")
	LessonLength   = rule("lesson-length", Warning, "No lesson has more than 900 words beside its tables, cautions and questions.")
	HardToRead     = rule("hard-to-read", Warning, "A lesson in English reads like year 6 of school or easier, by the formula of Flesch and Kincaid.")
	StepCaution    = rule("step-caution", Warning, "A step with dry powder, spraying, sweeping, scraping, a kiln, raw oxide or latex has a caution about it before it.")
	StepNumber     = rule("step-number", Warning, "A lesson names a step by its number only in a link to it, since numbers change when a step is added.")
	TradeWord      = rule("trade-word", Warning, "Every word of the trade that a lesson uses is in the glossary.")
	TwoSpellings   = rule("two-spellings", Warning, "A handbook in en-GB, en-AU, en-NZ, en-IE or en-ZA has no American spelling, and one in en-US no British.")
	TermLink       = rule("term-link", Warning, "A word of the glossary is linked to it, or to the state that it names, in the first lesson that uses it.")
	AskedFirst     = rule("asked-first", Warning, "Every question that course.yaml puts first among the quick answers is asked in a lesson.")
	FaultUnused    = rule("fault-unused", Warning, "Every fault of faults.yaml is named by what goes wrong in some lesson.")
	TermUnused     = rule("term-unused", Warning, "Every term of the glossary is linked from a page or named by another term.")
	UnshownPicture = rule("unshown-picture", Warning, "Every file of the pictures folder is shown on some page.")
)

// The rules of calculators in lessons.
var (
	CalculatorName  = rule("calculator-name", Error, "A calculator block names one of the handbook's calculators.")
	CalculatorInput = rule("calculator-input", Error, "A calculator block fills in inputs that its calculator has, with values that it accepts.")
)

// The rules of what a studio keeps: nothing is published that works with a material
// whose hazards nobody wrote down.
var (
	MaterialSheet  = rule("material-sheet", Error, "Every material of the studio names its supplier's safety data sheet, who read it and when, and how it classes.").from("29 CFR 1910.1200(g)(8): the sheets of all hazardous materials are at hand where people work")
	SheetReview    = rule("sheet-review", Error, "Every safety data sheet is read again by its review date.").from("our own rule: suppliers change what they sell, and their sheets")
	MaterialClass  = rule("material-class", Error, "The codes, pictograms and signal word of a material agree with each other.").from("the label elements of the GHS, as in 29 CFR 1910.1200, Appendix C")
	MaterialNumber = rule("material-number", Error, "Every CAS Registry Number of a material has its check digit right.").from("the check digit of CAS Registry Numbers")
	MaterialDust   = rule("material-dust", Error, "A material that harms when it is breathed in names the hazard that says what to do about its dust.").from("our own rule: a warning without what to do helps nobody")
	RecipeMaterial = rule("recipe-material", Error, "Every material of a recipe has an entry of the studio's own.").from("29 CFR 1910.1200(g)(8): the sheets of all hazardous materials are at hand where people work")
	RecipeBase     = rule("recipe-base", Error, "The base of a recipe comes to 100 parts.").from("common practice")
	RecipeAddition = rule("recipe-addition", Error, "Every addition to a recipe says of what it is a percentage.").from("common practice")
	RecipeCone     = rule("recipe-cone", Error, "No recipe is fired above the cone that one of its colours stands.").from("the supplier's own limit")
	RecipeClear    = rule("recipe-clear", Error, "No clear holds what spoils the colour under it.").from("the supplier's own advice")
	RecipeProof    = rule("recipe-proof", Warning, "The tile that a version of a recipe names as its proof is of that version, and fired since; that of the newest did not fail.").from("common practice")
	TileRetest     = rule("tile-retest", Warning, "Every test tile is tried again by the day that it names.").from("our own rule: clays and clears change, and so does what is bought under one name")
	ClassPerson    = rule("class-person", Error, "A class that works with what students do not handle alone says that the instructor is there.").from("who may, as decoration.yaml and the tubs' own entries say it")
	ClassAmount    = rule("class-amount", Error, "What is mixed for a class can be weighed, and is no more than a class uses.").from("our own rule: a slip in the unit is likelier than a batch of that size")
	CareLess       = rule("care-less", Error, "No medium, way of working or hazard of a course says less of what can hurt, what to wear and who may than the program’s own table, over which it lies.").from("our own rule: who knows better writes a row with an id of its own")
	MaterialFloor  = rule("material-floor", Error, "No entry says less of what can hurt than the program knows of its kind; raw metal, and what never goes where food does, is not for students alone.").from("our own rule, as the decoration table has it for oxide washes")
	RecipeFood     = rule("recipe-food", Error, "What is for food or drink names the test of what leaches out of it.").from("our own rule; Directive 84/500/EEC and the FDA's guides limit lead and cadmium alone")
	LeachTest      = rule("leach-test", Error, "The leach test that a recipe rests on is a report of leach.csv, real, passed and not run out, on the identical combination.").from("our own rule: a report is for the ware as it was made and fired, not for a recipe")
	LeachDate      = rule("leach-date", Error, "No report of a leach test is dated after today.").from("our own rule: a slip of the pen in a date keeps an old report alive")
)

var all []*Rule

func rule(id string, s Severity, means string) *Rule {
	r := &Rule{ID: id, Severity: s, Means: means}
	all = append(all, r)
	return r
}

// from says what a rule rests on.
func (r *Rule) from(source string) *Rule {
	r.Source = source
	return r
}

// Rules lists every rule in the order of declaration.
func Rules() []*Rule { return all }
