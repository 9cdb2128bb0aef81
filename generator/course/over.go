package course

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// readOvers reads what may lie on what while the lower one is not yet fired.
// One entry may name several media below and above. Every pair that can come
// about must be there, once: a pair that nobody thought of is not a yes. What
// the course says of a pair goes before what the program's own table says.
func (t *table) readOvers(f source.Fields) {
	v := f.Get("over")
	if v.Absent() && f.Of.IsMapping() && len(t.below()) > 0 {
		f.Of.Report(finding.TableOver, "`over` is missing", "Write a list that says which medium may lie on which while that one is not yet fired, with entries such as `{under: coloured-slip, above: [underglaze, glaze], verdict: yes, reason: …}`.")
		return
	}
	seen := map[[2]string]source.Value{}
	var whole []source.Value // those about all media, which give way to the others
	for _, item := range append(v.List(), v.Below().List()...) {
		if item.Key("under").Says(everyMedium) || item.Key("above").Says(everyMedium) {
			whole = append(whole, item)
		} else {
			t.readOver(item, seen, false)
		}
	}
	for _, item := range whole {
		t.readOver(item, seen, true)
	}
	place := func(id string) int { return slices.IndexFunc(t.Media, func(m Medium) bool { return m.ID == id }) }
	slices.SortStableFunc(t.Overs, func(a, b Over) int {
		return cmp.Or(cmp.Compare(place(a.Under), place(b.Under)), cmp.Compare(place(a.Above), place(b.Above)))
	})
	if v.IsList() {
		t.missingOvers(v, seen)
	}
}

// everyMedium stands for all media that may lie there, in an entry that says
// what holds where no other entry does.
const everyMedium = "all"

// overKeys are the keys of an entry. Layers meet in no state, so they want no
// part of one.
var overKeys = append([]string{"under", "above", "unless", "fired"}, slices.DeleteFunc(slices.Clone(pairKeys), func(key string) bool { return key == "part" })...)

// readOver reads one entry, which may be about several pairs; one about all
// media gives way to those read before.
func (t *table) readOver(item source.Value, seen map[[2]string]source.Value, givesWay bool) {
	f := item.Fields(overKeys...)
	o := Over{Pair: t.readPair(f, "", Care{}), Fired: yes(f.Get("fired"))}
	for _, technique := range f.Get("unless").List() {
		if id := t.techniqueNamed(technique); id != "" {
			o.Unless = append(o.Unless, id)
		}
	}
	aboves := t.layers(f.Need("above", "above: [underglaze, glaze]"), true)
	for _, under := range t.layers(f.Need("under", "under: coloured-slip"), false) {
		for _, above := range aboves {
			if _, said := seen[[2]string{under.id, above.id}]; !said || !givesWay {
				t.addOver(o, under, above, seen, item)
			}
		}
	}
}

// layer is a medium that an entry names.
type layer struct {
	id string
	source.Value
}

// layers reads the media below or above, one or a list.
func (t *table) layers(v source.Value, above bool) []layer {
	var layers []layer
	if v.Says(everyMedium) {
		for _, m := range t.Media {
			if m.Kind != "" && m.Kind != onGlazeKind && (above || m.Kind != glazeKind) {
				layers = append(layers, layer{m.ID, v})
			}
		}
		return layers
	}
	items := []source.Value{v}
	if !v.IsText() {
		items = v.List()
	}
	for _, item := range items {
		id := t.mediumNamed(item)
		m, there := t.FindMedium(id)
		switch {
		case !there:
		case m.Kind == onGlazeKind:
			item.Report(finding.TableOver, fmt.Sprintf("`%s` goes on the fired glaze, where nothing unfired lies beneath it", id), "Take it out: its states and `heat` say all there is to say.")
		case m.Kind == glazeKind && !above:
			item.Report(finding.TableOver, fmt.Sprintf("`%s` as the lower one is the state unfired-glaze", id), "Take it out: what may go on it, each medium says under `states`.")
		default:
			layers = append(layers, layer{id, item})
		}
	}
	return layers
}

func (t *table) addOver(o Over, under, above layer, seen map[[2]string]source.Value, item source.Value) {
	o.Under, o.Above = under.id, above.id
	pair := [2]string{o.Under, o.Above}
	first, repeated := seen[pair]
	if repeated && item.Inherited() && !first.Inherited() {
		return // the course has said it
	}
	if repeated {
		above.Report(finding.TableOver, fmt.Sprintf("`%s` on `%s` is already in the entry of %s", o.Above, o.Under, first.Line()), "Keep it in one of the two.")
		return
	}
	seen[pair] = item
	if o.Verdict != "" {
		t.Origin.count(item, above.id+" on "+under.id)
		t.Overs = append(t.Overs, o)
	}
}

// below lists the media that can lie beneath another while not yet fired.
func (t *table) below() []Medium {
	return slices.DeleteFunc(slices.Clone(t.Media), func(m Medium) bool {
		return m.Kind == onGlazeKind || m.Kind == glazeKind || m.Kind == ""
	})
}

// missingOvers reports, for each lower medium, those above it of which nothing
// is said.
func (t *table) missingOvers(v source.Value, seen map[[2]string]source.Value) {
	for _, under := range t.below() {
		var missing []string
		for _, above := range t.Media {
			_, there := seen[[2]string{under.ID, above.ID}]
			if !there && above.Kind != onGlazeKind && above.Kind != "" {
				missing = append(missing, above.ID)
			}
		}
		if len(missing) > 0 {
			v.Report(finding.TableOver, fmt.Sprintf("nothing says whether these may lie on unfired `%s`: %s", under.ID, strings.Join(missing, ", ")),
				"Add `{under: "+under.ID+", above: ["+strings.Join(missing, ", ")+"], verdict: …, reason: …}`, or name them in an entry that fits.")
		}
	}
}
