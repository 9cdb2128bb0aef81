package finding

// Rule is one thing the handbook's files must obey. Each is declared once, in
// the list below; reports, their rule tables, the help text and the tests are
// made from it.
type Rule struct {
	ID       string   // stable, kebab-case
	Severity Severity // Error or Warning
	Means    string   // the rule itself, one sentence
}

// The rules, in the order of the stages that check them. A stage adds its own
// here; Rules lists them for reports.
var (
	Unreadable = rule("unreadable-file", Error, "Every file that the course names can be read and is UTF-8 text of a reasonable size.")
)

var all []*Rule

func rule(id string, s Severity, means string) *Rule {
	r := &Rule{ID: id, Severity: s, Means: means}
	all = append(all, r)
	return r
}

// Rules lists every rule in the order of declaration.
func Rules() []*Rule { return all }
