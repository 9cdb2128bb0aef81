package catalog

// Solve answers a request in the course's style. It never panics: what the
// arithmetic cannot do is an error of the answer.
func Solve(calculator string, given []Setting, s Settings) (answer *Answer) {
	answer = &Answer{Calculator: calculator}
	c := Find(calculator)
	if c == nil {
		answer.refuse("calculator", "There is no calculator called “"+clip(calculator)+"”. There are: "+listing(names())+".")
		return answer
	}
	defer func() {
		if recover() != nil {
			*answer = Answer{Calculator: calculator}
			answer.refuse("calculator", "This calculation failed, and that is a mistake of the handbook, not yours. Please tell your instructor what you typed.")
		}
	}()
	b := &bench{calculator: c, settings: s, answer: answer}
	b.take(given)
	if b.refused() {
		b.finish()
		return answer
	}
	answer.Notes = append(answer.Notes, c.Notes...)
	answer.Cautions = append(answer.Cautions, s.CautionsOf(c)...)
	c.work(b)
	b.finish()
	if !b.refused() {
		b.onward()
		answer.Drawing = c.draw(b)
	}
	return answer
}

// take reads the inputs, in order: which boxes are meant, what stands in them,
// which of several alternatives, and whether the numbers are in range.
func (b *bench) take(given []Setting) {
	b.sort(given)
	b.choose()
	for i := range b.calculator.Inputs {
		b.read(&b.calculator.Inputs[i])
	}
}

// finish puts errors in the order of the inputs, and keeps an answer from
// being half given: with an error, nothing else is said.
func (b *bench) finish() {
	a := b.answer
	for _, r := range a.Outputs {
		if !finite(r.Value) {
			a.refuse("calculator", "These numbers lead to no sensible answer. Check each of them for a slipped decimal mark.")
			break
		}
	}
	if b.refused() {
		*a = Answer{Calculator: a.Calculator, Read: a.Read, Chosen: a.Chosen, Errors: b.inOrder(a.Errors), Wrong: a.Wrong}
	}
}

// inOrder sorts errors by the order of the inputs; those of no input come
// last, in the order they were found.
func (b *bench) inOrder(errors []Phrase) []Phrase {
	var sorted []Phrase
	for _, in := range b.calculator.Inputs {
		for _, e := range errors {
			if e.Input == in.Name {
				sorted = append(sorted, e)
			}
		}
	}
	for _, e := range errors {
		if b.calculator.Input(e.Input) == nil {
			sorted = append(sorted, e)
		}
	}
	return sorted
}

func names() []string {
	var n []string
	for _, c := range all {
		n = append(n, c.Name)
	}
	return n
}
