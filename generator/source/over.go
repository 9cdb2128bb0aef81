package source

import "slices"

// One file may lie over another: where both have a key, the upper one's value
// counts, and where the upper one is silent, the lower one's. So a course
// writes only what is different in its studio.

// Over returns the value with what lies below it.
func (v Value) Over(below Value) Value {
	v.below = &below
	return v
}

// Below returns what the value lies over, an absent one where that is nothing.
func (v Value) Below() Value {
	if v.below == nil {
		return Value{doc: v.doc, name: v.name}
	}
	return *v.below
}

// Inherited reports whether the value is of the lower file, and the upper one
// has none in its place.
func (v Value) Inherited() bool { return v.above != nil }

// Merged takes a set of keys apart as Fields does. The keys that it has not are
// those of the lower file; to those that both have, it leaves what lies below.
func (v Value) Merged(known ...string) Fields {
	f := v.Fields(known...)
	if v.below == nil || !v.below.IsMapping() {
		return f
	}
	for i := 0; i+1 < len(v.below.node.Content); i += 2 {
		key := v.below.node.Content[i].Value
		below := Value{doc: v.below.doc, node: v.below.node.Content[i+1], name: key, above: &v}
		if own := f.find(key); own >= 0 {
			f.values[own] = f.values[own].Over(below)
		} else {
			f.values = append(f.values, below)
		}
	}
	return f
}

// Entries returns the items of a list whose items have ids: those of the lower
// file in their order, each with what the upper one says over it, then those
// that are the upper one's alone.
func (v Value) Entries() []Value {
	own := v.List()
	if v.below == nil {
		return own
	}
	var all []Value
	for _, below := range v.below.List() {
		id := below.PlainID()
		i := slices.IndexFunc(own, func(item Value) bool { return item.PlainID() == id })
		if i < 0 {
			all = append(all, below)
			continue
		}
		all = append(all, own[i].Over(below))
		own = slices.Delete(own, i, i+1)
	}
	return append(all, own...)
}

// PlainID returns what stands at the key id, unchecked; empty where that is no
// text.
func (v Value) PlainID() string {
	if id := v.Key("id"); id.IsText() {
		return id.node.Value
	}
	return ""
}
