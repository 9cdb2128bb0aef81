package form

import "slipbook/calculators/letters"

// Hazard is one thing that can hurt whoever does what an answer says, with the
// words that are printed before its figures.
type Hazard struct{ ID, Words string }

// HazardWords returns what is said of a hazard: the course's words, or the program's.
func (s Settings) HazardWords(id string) string {
	for _, h := range s.Hazards {
		if h.ID == id {
			return h.Words
		}
	}
	return s.inWords().Words.Text("hazard." + id)
}

// CautionsOf returns what is said before the form of a calculator, whatever its
// numbers: the hazards that it names, and its own cautions.
func (s Settings) CautionsOf(c *Calculator) []string {
	var cautions []string
	for _, id := range c.Hazards {
		cautions = append(cautions, s.HazardWords(id))
	}
	for _, care := range c.Cares {
		cautions = append(cautions, s.inWords().Words.Text(c.Name+".caution."+care))
	}
	return cautions
}

// Warn adds the hazards of this answer to its cautions.
func (e *Evaluation) Warn(ids ...string) {
	for _, id := range ids {
		if words := e.Settings.HazardWords(id); !letters.In(e.Answer.Cautions, words) {
			e.Answer.Cautions = append(e.Answer.Cautions, words)
		}
	}
}
