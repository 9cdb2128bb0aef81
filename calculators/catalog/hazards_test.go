package catalog

import (
	"strings"
	"testing"

	"slipbook/calculators/form"
)

// TestAnswersWarnOfWhatTheyAskFor wants an answer to warn of each thing that it
// has somebody handle, in the course's words, and of nothing else.
func TestAnswersWarnOfWhatTheyAskFor(t *testing.T) {
	s := british()
	for _, id := range HazardIDs() {
		s.Hazards = append(s.Hazards, Hazard{ID: id, Words: "mind: " + id})
	}
	for _, c := range []struct{ what, request, warns string }{
		{"weighing a jar", "calculator=slip-density&mass=150&volume=100", ""},
		{"thinning a bucket", "calculator=slip-adjust&volume=2 L&from=1.60&to=1.45&stain=8", ""},
		{"thickening a bucket", "calculator=slip-adjust&volume=2 L&from=1.40&to=1.50", "dry-powder rinse-water"},
		{"thickening a coloured bucket", "calculator=slip-adjust&volume=2 L&from=1.40&to=1.50&stain=8", "dry-powder stain-powder rinse-water"},
		{"a plain slip", "calculator=slip-batch&volume=1 L&specific-gravity=1.45", "dry-powder"},
		{"a coloured slip", "calculator=slip-batch&volume=1 L&specific-gravity=1.45&stain=8", "dry-powder stain-powder"},
		{"colour for a bucket", "calculator=slip-colour&volume=1 L&specific-gravity=1.45&stain=8", "stain-powder"},
		{"colour for clay", "calculator=clay-colour&clay=1 kg&clay-water=20&stain=8", "stain-powder"},
		{"a new wash", "calculator=wash-mix&volume=100", "stain-powder wash-colour"},
		{"more strong wash to make", "calculator=wash-dilute&volume=10&from=25&to=10&each=30&cups=12", "colour wash-colour stain-powder"},
		{"a thinned wash", "calculator=wash-dilute&volume=40&from=25&to=10", "colour wash-colour"},
		{"a slip that fits", "calculator=slip-fit&body=12&slip=12&body-so-far=2", ""},
		{"a slip that lifts", "calculator=slip-fit&body=12&slip=8&body-so-far=0", "dry-powder"},
		{"a slip that peels", "calculator=slip-fit&body=12&slip=20&body-so-far=6", "dry-powder"},
		{"a recipe", "calculator=recipe-scale&parts=50 50&dry-mass=1 kg", "dry-powder"},
		{"a recipe with additions", "calculator=recipe-scale&parts=50 50&additions=8&dry-mass=1 kg", "dry-powder stain-powder"},
		{"two white buckets", "calculator=bucket-mix&first-gravity=1.6&first-volume=1 L&second-gravity=1.3&second-volume=1 L", ""},
		{"two coloured buckets", "calculator=bucket-mix&first-gravity=1.6&first-volume=1 L&second-gravity=1.3&second-volume=1 L&second-stain=8", "colour rinse-water"},
		{"a bucket that dried up", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.6&to=1.45", ""},
		{"a bucket topped up", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.6&to=1.45&volume-wanted=5 L", "dry-powder"},
		{"a coloured bucket topped up", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.6&to=1.45&volume-wanted=5 L&stain-now=8", "colour dry-powder stain-powder"},
		{"a coloured bucket that dried up", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.6&to=1.45&stain-now=8", "colour"},
		{"a bucket that is too thin", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.3&to=1.45", "rinse-water"},
		{"more colour for a bucket", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.45&to=1.45&stain=8", "stain-powder"},
		{"a blend", "calculator=wet-blend&points=3&first-gravity=1.5&second-gravity=1.4&each=50", "colour"},
		{"test tiles", "calculator=tile-plan&points=5&low=1&high=8&base=30", "dry-powder stain-powder"},
		{"slip for pots", "calculator=coverage&area=250", "colour"},
		{"timing a slip", "calculator=flow-log&slip-seconds=62&water-seconds=26", ""},
		{"drying a lump", "calculator=clay-water&damp=100&dry=80", ""},
		{"clay to be slaked", "calculator=clay-water&clay-water=1&clay=1 kg&to=25", "dry-powder"},
		{"soaking tiles", "calculator=absorption&dry=100&soaked=105", ""},
	} {
		name, given, err := form.ReadRequest(c.request)
		if err != nil {
			t.Fatal(err)
		}
		answer := Solve(name, given, s)
		var warned []string
		own := 0
		for _, caution := range answer.Cautions {
			if id, of := strings.CutPrefix(caution, "mind: "); of {
				warned = append(warned, id)
			} else {
				own++
			}
		}
		if want := len(Find(name).Cares); own != want {
			t.Errorf("%s has %d cautions of its own, want %d: %q", c.what, own, want, answer.Cautions)
		}
		if got := strings.Join(warned, " "); got != c.warns || len(answer.Errors) > 0 {
			t.Errorf("%s warns of %q, want %q %v", c.what, got, c.warns, answer.Errors)
		}
	}
}

// TestDoubtOfASlipGoesFromLessToMore wants what a slip may do within the doubt to
// be said in the order in which it shrinks, so that the risk stands last.
func TestDoubtOfASlipGoesFromLessToMore(t *testing.T) {
	for _, c := range []struct{ slip, low, high string }{
		{"16", "“usually fits", "to “curls and flakes off"},
		{"11.2", "“may lift", "to “usually fits"},
	} {
		answer := Solve("slip-fit", []form.Setting{{Name: "body", Text: "12"}, {Name: "body-so-far", Text: "0"}, {Name: "slip", Text: c.slip}}, british())
		notes := strings.Join(answer.Notes, " ")
		low, high := strings.Index(notes, c.low), strings.Index(notes, c.high)
		if low < 0 || high < low {
			t.Errorf("slip of %s %%: %q then %q is wanted: %s %v", c.slip, c.low, c.high, notes, answer.Errors)
		}
	}
}
