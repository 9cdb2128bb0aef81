package stage

// ground is a rule that a step rests on, and what it is a rule of.
type ground struct {
	*Rule
	of    origin
	which int // the medium, the technique, the medium below, the part from 1, or the transition
}

// origin says what a rule is a rule of.
type origin uint8

const (
	ofMedium origin = iota
	ofWay
	ofUnder
	ofMetal
	ofPart
	ofMove
	ofCoat // that is on the pot already
)

// rules gathers what the table says of an act on a pot: of the medium in this
// state, of each way of working, of what lies loose below, and of a metal that
// was named. The worst of them decides.
func (s *search) rules(p *pot, a act) []ground {
	rules := s.rulesIn(a, int(p.state))
	if a.takes || a.bare {
		return rules
	}
	rules = append(rules, s.overRules(p, s.medium(a), a.layer+s.before, a.ways)...)
	if s.w.Layers[a.layer].Metal != "" {
		rules = append(rules, ground{&s.t.Metals.Rule, ofMetal, 0})
		if s.t.anyOf(a.ways, s.t.Metals.NotOver) {
			rules = append(rules, ground{&s.blown, ofMetal, 0})
		}
	}
	return rules
}

// rulesIn gathers what the table says of an act in a state, whatever lies
// below.
func (s *search) rulesIn(a act, state int) []ground {
	rules := make([]ground, 0, 4)
	base := ""
	if !a.bare {
		m := s.medium(a)
		base = m.Base
		if !a.takes {
			rules = append(rules, ground{s.mediumRule(m, state), ofMedium, s.w.Layers[a.layer].Medium})
		}
	}
	for _, q := range a.ways {
		rules = append(rules, ground{s.t.Techniques[q].On[state].For(base), ofWay, q})
	}
	return rules
}

// mediumRule is the rule of a medium in a state, for the clay in hand.
func (s *search) mediumRule(m *Medium, state int) *Rule {
	if s.w.Body >= 0 {
		for i := range s.t.Bodies[s.w.Body].Changes {
			c := &s.t.Bodies[s.w.Body].Changes[i]
			if c.Medium == m.Base && c.State == state {
				return &c.Rule
			}
		}
	}
	return &m.On[state]
}

// overRules are the rules of a medium on each layer below it that no glaze
// covers: those that are loose, and where the table says so, those that have
// been fired on. On places of their own the layers of a wish do not meet; what
// is on the pot already, and the glaze that is added (layer -1), lie under and
// over all of them. What blows a loose coat about that harms does not go on while
// it lies open, wherever that is.
func (s *search) overRules(p *pot, m *Medium, layer int, ways []int) []ground {
	var rules []ground
	for i, under := range s.layers {
		if i == layer || under < 0 || !p.open.has(i) {
			continue
		}
		if s.powdery(p, i) && s.cares[i].who > Student && (m.peels() || s.t.anyOf(ways, s.t.Metals.NotOver)) {
			rules = s.joined(rules, ground{&s.blown, ofUnder, under})
			continue
		}
		if s.w.Apart && layer >= 0 && i >= s.before {
			continue
		}
		o, loose := s.t.over(s.t.Media[under].Base, m.Base), p.loose.has(i)
		if o == nil || !loose && (!o.Fired || s.t.Media[under].Kind == Glaze && p.state == s.coat) {
			continue
		}
		r := &o.Rule
		if loose && s.t.anyOf(ways, o.Unless) {
			r = o.forbidden()
		}
		rules = s.joined(rules, ground{r, ofUnder, under})
	}
	return rules
}

// anyOf reports whether one of some ways is among techniques, by id.
func (t *Table) anyOf(ways []int, ids []string) bool {
	for _, q := range ways {
		if has(ids, t.Techniques[q].ID) {
			return true
		}
	}
	return false
}

// joined adds the rule for a layer below to those of others, each row of the
// table once: where it forbids the way of working, so.
func (s *search) joined(rules []ground, next ground) []ground {
	for i := range rules {
		if s.t.Media[rules[i].which].Base == s.t.Media[next.which].Base {
			if next.Verdict > rules[i].Verdict {
				rules[i] = next
			}
			return rules
		}
	}
	return append(rules, next)
}

// forbidden is the rule of a row for a way of working that has to wait until
// what lies below is fixed. What a firing would allow is neither physics nor a
// rule of the house.
func (o *Over) forbidden() *Rule {
	wait := o.Rule
	wait.Verdict, wait.Basis = Never, Unsaid
	return &wait
}

// over is the row of the table about one medium on another; nil where it has
// none.
func (t *Table) over(under, above string) *Over {
	for i := range t.Overs {
		if o := &t.Overs[i]; o.Under == under && o.Above == above {
			return o
		}
	}
	return nil
}
