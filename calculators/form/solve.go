package form

// List is a number of calculators, in the order of the handbook.
type List []*Calculator

// Find returns the calculator of that name, or nil.
func (l List) Find(name string) *Calculator {
	for _, c := range l {
		if c.Name == name {
			return c
		}
	}
	return nil
}

// Solve answers a request in the course's style by the calculator that it
// names.
func (l List) Solve(calculator string, given []Setting, s Settings) *Answer {
	if c := l.Find(calculator); c != nil {
		return c.Solve(given, s)
	}
	s = s.inWords()
	answer := &Answer{Calculator: calculator, Language: s.Words.Language}
	answer.Refuse("calculator", s.Words.Fill("form.no-calculator", "typed", Clip(calculator), "calculators", s.Words.List(l.names())))
	return answer
}

func (l List) names() []string {
	var n []string
	for _, c := range l {
		n = append(n, c.Name)
	}
	return n
}

// Solve answers a request in the course's style. It never panics: what the
// arithmetic cannot do is an error of the answer.
func (c *Calculator) Solve(given []Setting, s Settings) (answer *Answer) {
	s = s.inWords()
	answer = &Answer{Calculator: c.Name, Language: s.Words.Language}
	defer func() {
		if why := recover(); why != nil {
			*answer = Answer{Calculator: c.Name, Language: s.Words.Language}
			answer.Refuse("calculator", s.Words.Text("form.failed")+panicked(c.Name, why))
		}
	}()
	e := &Evaluation{Calculator: c, Settings: s, Answer: answer}
	e.take(given)
	if e.Refused() {
		e.finish()
		return answer
	}
	for _, note := range c.Says {
		answer.Notes = append(answer.Notes, s.Words.Text(c.Name+".note."+note))
	}
	answer.Cautions = append(answer.Cautions, s.CautionsOf(c)...)
	c.Work(e)
	e.finish()
	if !e.Refused() {
		e.onward()
		answer.Drawing = c.Draw(e)
	}
	return answer
}

// take reads the inputs, in order: which boxes are meant, what stands in them,
// which of several alternatives, and whether the numbers are in range.
func (e *Evaluation) take(given []Setting) {
	e.sort(given)
	e.choose()
	for i := range e.Calculator.Inputs {
		e.read(&e.Calculator.Inputs[i])
	}
}

// finish puts errors in the order of the inputs, and keeps an answer from
// being half given: with an error, nothing else is said.
func (e *Evaluation) finish() {
	a := e.Answer
	for _, r := range a.Outputs {
		if !finite(r.Value) {
			e.Refuse("calculator", "form.no-answer")
			break
		}
	}
	if e.Refused() {
		*a = Answer{Calculator: a.Calculator, Language: a.Language, Read: a.Read, Chosen: a.Chosen, Errors: e.inOrder(a.Errors), Wrong: a.Wrong}
	}
}

// inOrder sorts errors by the order of the inputs; those of no input come
// last, in the order they were found.
func (e *Evaluation) inOrder(errors []Phrase) []Phrase {
	var sorted []Phrase
	for _, in := range e.Calculator.Inputs {
		for _, wrong := range errors {
			if wrong.Input == in.Name {
				sorted = append(sorted, wrong)
			}
		}
	}
	for _, wrong := range errors {
		if e.Calculator.Input(wrong.Input) == nil {
			sorted = append(sorted, wrong)
		}
	}
	return sorted
}
