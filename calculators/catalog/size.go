package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var shrinkageSize = &Calculator{
	Name:    "shrinkage-size",
	Title:   "What size must I make it?",
	Purpose: "Turns a fired size into the size to make now, or the other way round, and gives the copier setting for a template.",
	Inputs: []Input{
		{Name: "shrinkage", Label: "The clay shrinks in all", Help: "From fresh to fired, from your own test bars.", Kind: quantity.Percent, Needed: true, Group: "clay", Finds: "shrinkage-test", First: true, Low: Limit{From, 0, ""}, High: noClay},
		{Name: "body", Label: clayOf, Help: clayOfHelp, Kind: quantity.Number, Needed: true, Group: "clay", First: true, Bodies: true},
		{Name: "state", Label: potIsNow, Help: "Fresh clay has all its shrinking before it. A stencil is cut for leather-hard clay. Blank counts as fresh.", Kind: quantity.Number, First: true, Choices: potStates, Said: saidLoss},
		{Name: "so-far", Label: shrunkSoFar, Help: shrunkSoFarHelp, Kind: quantity.Percent, First: true, Low: Limit{From, 0, ""}, High: noClay},
		{Name: "wet-size", Label: "Size now", Help: "If you know the size on the clay and want the fired one.", Kind: quantity.Length, Group: "size", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e5, ""}},
		{Name: "fired-size", Label: "Fired size", Help: "If you know the size you want out of the kiln.", Kind: quantity.Length, Group: "size", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e5, ""}},
		{Name: "capacity-wet", Label: "Holds now", Help: "If you know what the pot holds as it is.", Kind: quantity.Volume, Group: "capacity", Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e7, ""}},
		{Name: "capacity-fired", Label: "Must hold when fired", Help: "If you know what the fired pot must hold.", Kind: quantity.Volume, Group: "capacity", Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e7, ""}},
	},
	Outputs: []Output{
		{Name: "wet-size", Label: "Make it this size now", Unit: "mm", Digits: 4},
		{Name: "fired-size", Label: "Fired, it will be", Unit: "mm", Digits: 4},
		{Name: "capacity-wet", Label: "Must hold now", Unit: "mL", Digits: 4},
		{Name: "capacity-fired", Label: "Fired, it will hold", Unit: "mL", Digits: 4},
		{Name: "template-scale", Label: "Copier setting for a template", Unit: "%", Digits: 4},
		{Name: "enlargement", Label: "That is larger by", Unit: "%", Digits: 4},
		{Name: "remaining", Label: "Still to shrink, of the size now", Unit: "%", Digits: 4},
	},
	Notes: []string{
		"A template has to grow by more than the clay shrinks: shrinkage is counted from the large size, enlargement from the small one.",
		"This holds for the same clay, made the same way, fired to the same cone. Thrown pots may shrink differently in height and in width: measure both.",
	},
	Next: []Next{
		{Words: "Will the slip stay on it?", Calculator: "slip-fit", Carry: []Carry{{"body", "shrinkage"}, {"clay", "body"}, {"state", "state"}, {"body-so-far", "so-far"}}},
	},
	Example: Example{
		Case:  "A mug is to be 90 mm wide when fired, in a clay that shrinks 12 %.",
		Given: []Setting{{"shrinkage", "12"}, {"fired-size", "90 mm"}},
	},
	Table: Table{
		Caption: "Size to make now, mm",
		Down:    "fired-size", Values: []string{"20 mm", "50 mm", "80 mm", "100 mm", "120 mm", "150 mm", "200 mm", "250 mm", "300 mm"},
		Across: "shrinkage", AcrossValues: []string{"6 %", "8 %", "10 %", "12 %", "14 %", "16 %"},
		Show: []string{"wet-size"},
	},
	work: workSize,
	draw: drawSize,
}

func workSize(b *bench) {
	b.shrinks("shrinkage", "body")
	b.doubtPercent("shrinkage")
	total := b.value("shrinkage")
	sofar, doubt := b.soFar(total, "so-far")
	if !b.has("wet-size") && !b.has("fired-size") && !b.has("capacity-wet") && !b.has("capacity-fired") {
		b.refuse("fired-size", "Give one of these: the size now, the fired size, or what it holds now or fired.")
	}
	if b.refused() {
		return
	}
	remaining := shrinkage.Remaining(total, sofar)
	switch {
	case b.has("wet-size"):
		fired := shrinkage.Fired(b.value("wet-size"), remaining)
		b.set("fired-size", fired)
		b.headline("Fired, it will be {fired-size}" + b.giveOrTake(fired, sofar, doubt) + ".")
	case b.has("fired-size"):
		wet := shrinkage.Unfired(b.value("fired-size"), remaining)
		b.set("wet-size", wet)
		b.headline("Make it {wet-size} now, " + b.onClay() + b.giveOrTake(wet, sofar, doubt) + ".")
	}
	b.set("remaining", remaining)
	b.set("enlargement", shrinkage.Enlargement(remaining))
	b.set("template-scale", 100+shrinkage.Enlargement(remaining))
	b.capacity(remaining)
	b.saySize(total, sofar)
}

// onClay words the clay that "now" is about.
func (b *bench) onClay() string {
	switch {
	case b.has("so-far"):
		return "on clay that has shrunk {so-far} so far"
	case b.potState() == shrinkage.LeatherHard:
		return "on leather-hard clay"
	case b.potState() == shrinkage.BoneDry:
		return "on bone-dry clay"
	case b.potState() == shrinkage.Bisque:
		return "on bisque"
	}
	return "on fresh clay"
}

// giveOrTake words how far a size may be off because nobody knows exactly what
// the pot has shrunk so far (%): by doubt (%) either way. Fresh clay leaves no
// doubt.
func (b *bench) giveOrTake(size, sofar, doubt float64) string {
	if doubt == 0 {
		return ""
	}
	return ", give or take " + b.amount(size*doubt/(100-sofar), "mm", 1, 0, Reckoned)
}

// saySize says what a wrong shrinkage does to the size, and what a stencil
// would be where nobody said what the pot is now.
func (b *bench) saySize(total, sofar float64) {
	off, what := b.value("wet-size")/(100-sofar), "fired size"
	r, now := b.result("wet-size")
	if now {
		off, what = r.Value/(100-total), "size now"
	}
	if off > 0 && total > 0 {
		b.note("For each 1\u00a0% that the clay shrinks more or less, the {} is off by {}.", what, b.amount(off, "mm", 2, 0, Reckoned))
	}
	if now && total > 0 && !b.has("state") && !b.has("so-far") {
		gone, _ := shrinkage.SoFar(total, shrinkage.LeatherHard)
		b.note("A stencil is cut for leather-hard clay. There it would be about {}: say what the pot is now.", b.amount(float64(r.Value*(1-gone/100)), "mm", 3, 0, Reckoned))
	}
}

func (b *bench) capacity(remaining float64) {
	switch {
	case b.has("capacity-wet"):
		b.set("capacity-fired", shrinkage.FiredCapacity(b.value("capacity-wet"), remaining))
		b.capacityHeadline("Fired, it will hold {capacity-fired}.")
	case b.has("capacity-fired"):
		b.set("capacity-wet", shrinkage.UnfiredCapacity(b.value("capacity-fired"), remaining))
		b.capacityHeadline("It must hold {capacity-wet} now, " + b.onClay() + ".")
	}
}

// capacityHeadline says the capacity after the size, when there is one.
func (b *bench) capacityHeadline(sentence string) {
	size := b.answer.Headline
	b.headline(sentence)
	if size != "" {
		b.answer.Headline = size + " " + b.answer.Headline
	}
}
