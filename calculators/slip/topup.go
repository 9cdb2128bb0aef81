package slip

// Batch returns what is in the bucket now: its base, its stain and its water.
func (b Bucket) Batch() Batch { return Make(b.Volume, b.Gravity, b.Solids, b.Now, b.Stain) }

// Step is what brings a bucket to a number: stain and water to add (g), less
// than 0 where that much would have to come out, and the volume (mL) of all of
// it then.
type Step struct{ Stain, Water, Volume float64 }

// Brought returns what brings the bucket to a specific gravity above 1 and to
// percent of stain, its base as it is. By mass and volume balance.
func (b Bucket) Brought(gravity, percent float64) Step {
	stain := b.Base() * (percent - b.Now) / 100
	room := b.Volume + stain/b.Stain
	water := (float64(b.Volume*b.Gravity) + stain - float64(room*gravity)) / (gravity - 1)
	return Step{Stain: stain, Water: water, Volume: room + water}
}
