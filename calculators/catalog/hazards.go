package catalog

// The hazards of weighing out. Media and steps have the table's.
const (
	dryPowder   = "dry-powder"   // dry clay, or a dry mix for slip
	stainPowder = "stain-powder" // stain and flux as powder
	rinseWater  = "rinse-water"  // water from a coloured bucket
	wetColour   = "colour"       // colour on hands and lips
	washColour  = "wash-colour"  // a wash, which runs over the fingers
)

// HazardIDs lists the hazards whose words a course brings.
func HazardIDs() []string { return []string{dryPowder, stainPowder, rinseWater, wetColour, washColour} }
