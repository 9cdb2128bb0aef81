package form

import "slipbook/calculators/letters"

// Hazard is one thing that can hurt whoever does what an answer says, with the
// words that are printed before its figures.
type Hazard struct{ ID, Words string }

// standing are the words of the hazards where no course brings its own: on a
// command line without one. They are those of the program's own hazards.yaml,
// and a test of the course's package holds the two together.
var standing = []Hazard{
	{"dry-powder", "Dry clay and dry mixes make fine dust with silica in it. Breathed in over the years, it scars the lungs and can cause cancer. " +
		"Wear a fitted respirator and gloves, scoop low, put powder onto water, and wipe up wet. Who is not fit-tested has the instructor weigh it, or starts from damp clay."},
	{"stain-powder", "Stain and flux are fine dust with metals or borates in it. Breathed in or swallowed, they can harm. " +
		"Wear a fitted respirator until all of it is wet, and gloves throughout, put powder onto water, and wipe up wet. Who is not fit-tested has the instructor weigh it."},
	{"rinse-water", "Water from a coloured bucket may carry stain and metal. " +
		"Keep it in a labelled jug or in the settling bucket. None of it goes down the sink."},
	{"colour", "Colours and glazes hold metals, and wet jars hold preservatives. Swallowed they harm, and on the skin some cause a rash. " +
		"Keep brush and fingers out of your mouth, and food and drink out of the room. Wash your hands before you leave. Wear nitrile gloves for a wash, on broken skin, and where the label says so."},
	{"wash-colour", "A wash is thin. It runs over your fingers, and they carry it to all that you touch. " +
		"Wear nitrile gloves while the wash is wet, and as long as it rubs off. Take them off before you touch a door, a tap or your face."},
}

// HazardIDs lists the hazards whose words a course brings.
func HazardIDs() []string {
	var ids []string
	for _, h := range standing {
		ids = append(ids, h.ID)
	}
	return ids
}

// StandingWords returns what is said of a hazard without a course.
func StandingWords(id string) string { return Settings{}.HazardWords(id) }

// HazardWords returns what is said of a hazard: the course's words, or the program's.
func (s Settings) HazardWords(id string) string {
	for _, list := range [...][]Hazard{s.Hazards, standing} {
		for _, h := range list {
			if h.ID == id {
				return h.Words
			}
		}
	}
	return ""
}

// CautionsOf returns what is said before the form of a calculator, whatever its
// numbers: the hazards that it names, and its own cautions.
func (s Settings) CautionsOf(c *Calculator) []string {
	var cautions []string
	for _, id := range c.Hazards {
		cautions = append(cautions, s.HazardWords(id))
	}
	return append(cautions, c.Cautions...)
}

// Warn adds the hazards of this answer to its cautions.
func (e *Evaluation) Warn(ids ...string) {
	for _, id := range ids {
		if words := e.Settings.HazardWords(id); !letters.In(e.Answer.Cautions, words) {
			e.Answer.Cautions = append(e.Answer.Cautions, words)
		}
	}
}
