package stage

// Plan is the answer to a wish: the steps to a finished pot, or the first
// conflict and the nearest wish that works.
type Plan struct {
	Steps     []Step
	Undone    int // coats taken off again
	Risky     int // steps that may go wrong
	Questions int // to the label, the recipe card or the student, those of risky steps too
	Firings   int
	Away      int      // how many states the layers are away from the best ones, together
	NotFood   string   // that the pot is not for food, though it was asked for; may be empty
	Ends      []string // how it ends and what is special, sentences for the headline
	Notes     []string
	Today     string    // what works on the pot as it is, where the wish has to wait; may be empty
	Fewer     string    // the way with a firing fewer; may be empty
	Shorter   string    // a way with fewer actions and more risk, named as such; may be empty
	Conflict  *Conflict // nil when there is a plan; then Steps are those of the nearest wish
	TooMany   bool      // the layers can be laid in more ways than may be tried; nothing else is said
}

// Step is one action at the bench.
type Step struct {
	State   int     // of the pot when the step begins
	Part    int     // of a state with parts: which, from 1; 0 = the state has none
	Action  string  // what kind of step, in one or two words
	Title   string  // what is done, as short as can be: "Put on stain wash: brushing"
	Verdict Verdict // the worst of the rules that it rests on
	Hazards Hazards // all of them
	What    string  // what to do
	Why     string
	Who     Who
	Wear    string // what to put on; may be empty, as the texts below
	Place   string // where to work
	Caution string // how not to come to harm, in short
	Lesson  string // address of the page that teaches the first of the hazards
	Ask     string // what to ask before it is done
	Wait    string // until when to wait
	Trouble string // what goes wrong, and what then
	Medium  int    // what is laid on or worked; -1 = none
}

// Conflict says why a wish cannot be had, and what can.
type Conflict struct {
	Layer   int    // the first layer that finds no place, from 0
	What    string // which layer, on a pot in which state
	Rule    string // the rule of the table
	Basis   Basis  // what that rule rests on
	Nearest string // the nearest wish that works, in words; empty when there is none
	Changed string // what was changed for it
}

// Plan finds the best plan for a wish: nothing undone, then fewest risky steps,
// then fewest questions, then fewest firings, then nearest to each layer's best
// state, then fewest actions; of equals the first in the table's order. What it
// names beside the plan is never worse for health. The work of finding it is
// bounded: of a wish that takes more, it only says so.
func (t *Table) Plan(w Wish) Plan { return t.newSearch(w, safest).plan() }

func (s *search) plan() Plan {
	at := s.run()
	if at < 0 && !s.spent() {
		if p := s.around(); !s.spent() {
			return p
		}
	}
	if at < 0 {
		return Plan{TooMany: true}
	}
	steps := s.path(at)
	p := s.tell(steps)
	p.Shorter = s.shorter(steps)
	p.Fewer = s.fewer(steps)
	p.Today = s.today(steps)
	return p
}

// tell words the way to a finished pot.
func (s *search) tell(steps []step) Plan {
	c := sum(steps)
	p := Plan{Undone: c.undone(), Risky: c.risky(), Questions: c.questions(), Firings: c.firings(), Away: c.away()}
	now := s.start()
	for i := range steps {
		p.Steps = append(p.Steps, s.word(&now, &steps[i]))
		now = steps[i].to
	}
	if s.w.Food && s.w.Bare {
		p.NotFood = s.t.fill("bare-not-food")
	}
	p.Ends = s.ends(steps)
	p.Notes = s.notes(steps, p)
	return p
}

// ends says in whole sentences how a plan ends and what is special about it.
func (s *search) ends(steps []step) []string {
	var ends []string
	if first := s.first(steps); first != "" {
		ends = append(ends, s.t.fill("first", "moves", first))
	}
	if hidden := s.hidden(); hidden != "" {
		ends = append(ends, hidden)
	}
	ends = append(ends, s.glazing(steps)...)
	if s.w.Food && s.onGlaze != 0 {
		ends = append(ends, s.t.fill("on-glaze-food"))
	}
	switch s.pathPeril(steps, false).who {
	case Instructor:
		ends = append(ends, s.t.fill("instructor-part"))
	case WithInstructor:
		ends = append(ends, s.t.fill("instructor-beside"))
	}
	return ends
}

// first lists what a pot goes through before the first layer that decorates can
// go on: "dry, then bisque fire"; empty where it goes on now.
func (s *search) first(steps []step) string {
	i := s.firstDecor()
	if i < 0 || s.begunNow(steps, i) {
		return ""
	}
	text := ""
	for n := range steps {
		if act := steps[n].act; act >= 0 && s.acts[act].layer == i {
			break
		}
		if move := steps[n].move; move >= 0 {
			next := s.t.fill(actions[s.t.Transitions[move].Move])
			if text != "" {
				next = s.t.fill("then", "first", text, "next", next)
			}
			text = next
		}
	}
	return text
}

// hidden warns of an opaque glaze over colour.
func (s *search) hidden() string {
	colour := false
	if !s.w.Apart {
		for _, medium := range s.layers {
			if medium < 0 {
				continue
			}
			m := &s.t.Media[medium]
			if m.Kind == Glaze && m.Hides && colour {
				return s.t.fill("hidden", "glaze", s.t.lower(m.Name))
			}
			colour = colour || m.Kind != Glaze && m.Kind != OnGlaze && m.Kind != Resist
		}
	}
	return ""
}

// glazing says that a glaze was added, and how a glaze must not go on over
// what lies loose below it.
func (s *search) glazing(steps []step) (said []string) {
	now := s.start()
	for i := range steps {
		if m, ways := s.laid(&steps[i]); m != nil && m.Kind == Glaze {
			if steps[i].extra == addGlaze {
				said = append(said, s.t.fill("glaze-added", "glaze", m.Name))
			}
			switch by, not := s.howOver(&now, m, ways, &steps[i]); {
			case not == "":
			case by == "":
				said = append(said, s.t.fill("glaze-not-by", "glaze", s.t.lower(m.Name), "not", not))
			default:
				said = append(said, s.t.fill("glaze-by", "glaze", s.t.lower(m.Name), "ways", by, "not", not))
			}
		}
		now = steps[i].to
	}
	return said
}

// laid is the medium that a step lays on, with its ways; nil for any other
// step.
func (s *search) laid(next *step) (*Medium, []int) {
	switch {
	case next.extra == addGlaze:
		return &s.t.Media[s.glaze], nil
	case next.act >= 0 && !s.acts[next.act].takes && !s.acts[next.act].bare:
		return s.medium(s.acts[next.act]), s.acts[next.act].ways
	}
	return nil, nil
}

// howOver names the ways by which a medium goes over what lies loose below it,
// "dipping or pouring", and those by which it does not. It names none where the
// way is chosen or any will do.
func (s *search) howOver(now *pot, m *Medium, ways []int, next *step) (by, notBy string) {
	var not []string
	for _, r := range next.rules {
		if r.of != ofUnder || len(ways) > 0 {
			continue
		}
		for _, id := range s.looseUnless(now, r.which, m) {
			if !has(not, id) {
				not = append(not, id)
			}
		}
	}
	if len(not) == 0 {
		return "", ""
	}
	return s.t.waysFor(m, int(now.state), not), s.t.namesOf(not)
}

// looseUnless are the ways by which a medium does not go over another that lies
// loose on a pot.
func (s *search) looseUnless(now *pot, under int, m *Medium) []string {
	for i, medium := range s.layers {
		if medium >= 0 && s.t.Media[medium].Base == s.t.Media[under].Base && (now.open & now.loose).has(i) {
			unless := s.t.over(s.t.Media[under].Base, m.Base).Unless
			if s.cares[i].who > Student {
				unless = union(append([]string(nil), unless...), s.t.Metals.NotOver...)
			}
			return unless
		}
	}
	return nil
}

// waysFor names the ways of laying a medium on in a state that are allowed, not
// among some, and without a hazard to health of their own.
func (t *Table) waysFor(m *Medium, state int, not []string) string {
	var ids []string
	for i := range t.Techniques {
		q := &t.Techniques[i]
		rule := q.On[state].For(m.Base)
		if q.Coats && q.serves(m.Base) && rule.Verdict == Yes && !has(not, q.ID) && !t.worse(peril{q.Hazards | rule.Hazards, max(q.Who, rule.Who)}, peril{}) {
			ids = append(ids, q.ID)
		}
	}
	return t.namesOf(ids)
}

// namesOf lists techniques by their names: "dipping or pouring".
func (t *Table) namesOf(ids []string) string {
	var names []string
	for _, id := range ids {
		for i := range t.Techniques {
			if t.Techniques[i].ID == id {
				names = append(names, t.lower(t.Techniques[i].Name))
			}
		}
	}
	return t.either(names)
}

// notes says what is true of a plan as a whole.
func (s *search) notes(steps []step, p Plan) []string {
	var notes []string
	if s.w.Food && !s.w.Bare {
		notes = append(notes, s.t.fill("food-colour"))
		if s.t.Reports != "" {
			notes = append(notes, s.t.Reports)
		}
	}
	if rub := s.rub(steps); rub != "" {
		notes = append(notes, rub)
	}
	if p.Questions > 0 {
		notes = append(notes, s.t.fill("ask-label"))
	}
	return notes
}

// wasLaid reports whether a layer is on the pot: it was there already, or its
// laying on is done.
func (s *search) wasLaid(p *pot, layer int) bool {
	for i, a := range s.acts {
		if a.layer+s.before == layer {
			return p.done.has(i)
		}
	}
	return true
}

// rub says, where a firing at bisque heat may or may not have fixed a layer,
// how that is found out.
func (s *search) rub(steps []step) string {
	now := s.start()
	var names []string
	for i := range steps {
		if move := steps[i].move; move >= 0 && (s.t.Transitions[move].Move == Bisque || s.t.Transitions[move].Move == Harden) {
			for j, medium := range s.layers {
				if medium >= 0 && now.loose&s.alike[j] != 0 && s.wasLaid(&now, j) && s.t.Media[medium].Fixed == RubTest && s.cares[j].who == Student && !has(names, s.t.lower(s.t.Media[medium].Name)) {
					names = append(names, s.t.lower(s.t.Media[medium].Name))
				}
			}
		}
		now = steps[i].to
	}
	if len(names) == 0 {
		return ""
	}
	return s.t.fill("rub", "media", s.t.either(names))
}
