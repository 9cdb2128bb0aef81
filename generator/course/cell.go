package course

import (
	"fmt"
	"slices"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// readCells reads what a technique says of each state.
func (t *table) readCells(v source.Value, q *Technique) map[string]Cell {
	on := map[string]Cell{}
	t.eachState(v, q.Name, func(id string, cell source.Value) {
		if c := t.readCell(cell, q, id); len(c) > 0 {
			on[id] = c
			t.Origin.count(cell, q.Name)
		}
	})
	return on
}

// readCell reads what a technique says of one state: a pair, or pairs by
// medium.
func (t *table) readCell(v source.Value, q *Technique, state string) Cell {
	var cell Cell
	care := t.careBelow(v)
	for said := []string(nil); ; {
		f := v.Fields(cellKeys...)
		only, others := f.Get("only"), f.Get("others")
		one := Case{Pair: t.readPair(f, state, care), Only: t.readOnly(only, q, said), Wait: readWait(f.Get("wait"), q)}
		said = append(said, one.Only...)
		if one.Verdict != "" && (only.Absent() || len(one.Only) > 0) {
			cell = append(cell, one)
		}
		switch {
		case only.Absent() && !others.Absent():
			others.Report(finding.TablePair, "`others` stands without `only`", "Write `only` with the media that the words before are about, or take `others` out.")
			return cell
		case !only.Absent() && others.Absent():
			f.Of.Report(finding.TablePair, "`only` says nothing of the other media", "Add `others: {verdict: never, rule: …, reason: …, fault: …, remedy: …}`.")
			return cell
		case others.Absent():
			return cell
		}
		v = others
	}
}

// readOnly reads the media that a case is for; said are those of the cases
// before.
func (t *table) readOnly(v source.Value, q *Technique, said []string) []string {
	var only []string
	for _, item := range v.List() {
		id := t.mediumNamed(item)
		switch {
		case id == "":
		case len(q.With) > 0 && !slices.Contains(q.With, id):
			item.Report(finding.TablePair, fmt.Sprintf("`only` names `%s`, and `with` does not", id), "Add it to `with`, or take it out here.")
		case slices.Contains(said, id) || slices.Contains(only, id):
			item.Report(finding.TablePair, fmt.Sprintf("`%s` is already spoken of in this state", id), "Keep it in one of the two.")
		default:
			only = append(only, id)
		}
	}
	return only
}

// mildest is the verdict of the case of a cell that allows most; empty of one
// without any.
func (c Cell) mildest() Verdict {
	verdicts := []Verdict{Yes, Label, Risky, Never, ""}
	best := len(verdicts) - 1
	for _, one := range c {
		best = min(best, slices.Index(verdicts, one.Verdict))
	}
	return verdicts[best]
}

// whole is a cell as one pair, for what is said of all media: the case that
// forbids most, with the care of all.
func (c Cell) whole() Pair {
	var p Pair
	var care Care
	for _, one := range c {
		worse := one.Verdict == Never && p.Verdict != Never || one.Verdict == Never && one.Rule == physics
		if p.Verdict == "" || worse {
			p = one.Pair
		}
		care = care.with(one.Care)
	}
	p.Care = care
	return p
}

// readWait reads when to begin with what takes away.
func readWait(v source.Value, q *Technique) string {
	if !q.Takes && !v.Absent() {
		v.Report(finding.ValueForm, "`wait` belongs to techniques that take away", "Add `works: takes`, or take `wait` out.")
	}
	return v.Text()
}
