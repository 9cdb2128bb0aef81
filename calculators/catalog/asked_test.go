package catalog

import (
	"net/url"
	"strings"
	"testing"

	"slipbook/calculators/form"
	"slipbook/calculators/slip"
)

// solveText solves an encoded request in some settings.
func solveText(t *testing.T, request string, s Settings) *Answer {
	t.Helper()
	name, given, err := form.ReadRequest(request)
	if err != nil {
		t.Fatal(err)
	}
	return Solve(name, given, s)
}

// TestAsPeopleAsk holds the first words of answers to questions as people ask
// them at the bench, and what must or must not stand beside them.
func TestAsPeopleAsk(t *testing.T) {
	for _, test := range []struct{ name, request, headline, holds, lacks string }{
		{"twelve cups and no wash yet", "calculator=wash-dilute&from=20&to=5&steps=3&cups=4&each=30",
			"Make 210 mL of strong wash: it fills 12 cups of 30 mL, 4 of each of 3 strengths.", "stock-to-make=210; water-parts=9.37", "new-volume"},
		{"too little wash", "calculator=wash-dilute&volume=100&from=20&to=5&steps=3&cups=4&each=30",
			"These 12 cups need 210 mL of strong wash; you have 100 mL.", "stock-to-make=110; Make 110 mL more, or fill each cup with 14.3 mL only.", "water-to-add"},
		{"just enough wash", "calculator=wash-dilute&volume=210&from=20&to=5&steps=3&cups=4&each=30",
			"12 cups of 30 mL, 4 of each of 3 strengths, from strength 20 g/100 mL down to 5 g/100 mL.", "stock-needed=210", "stock-to-make"},
		{"as large as the wash allows", "calculator=wash-dilute&volume=90&from=16&to=2&steps=4",
			"4 cups of 48 mL, from strength 16 g/100 mL down to 2 g/100 mL.", "stock-needed=90", "of each of"},
		{"cups of one strength", "calculator=wash-dilute&from=20&to=5&cups=12&each=30",
			"Make 90 mL of strong wash and add 270 mL of water: that fills 12 cups of 30 mL.", "new-volume=360", ""},
		{"one cup of one strength", "calculator=wash-dilute&from=20&to=5&each=30",
			"Make 7.5 mL of strong wash and add 23 mL of water: that fills 1 cup of 30 mL.", "", ""},
		{"the whole lot, weighed", "calculator=wash-dilute&volume=40&from=25&to=10",
			"Add 60 mL of water, or weigh in 60 g; it then makes 100 mL.", "Water may be weighed; 10 g/100 mL: right for a wash of stain and flux", "stock-needed"},
		{"the whole lot fills them", "calculator=wash-dilute&volume=100&from=20&to=5&cups=12&each=30",
			"Add 300 mL of water, or weigh in 300 g; it then makes 400 mL.", "That fills 12 cups of 30 mL.", "stock-needed"},
		{"the whole lot does not fill them", "calculator=wash-dilute&volume=80&from=20&to=5&cups=12&each=30",
			"12 cups of 30 mL need 90 mL of strong wash; you have 80 mL.", "stock-needed=90", "That fills"},
		{"parted among cups", "calculator=wash-dilute&volume=100&from=20&to=5&cups=8",
			"Add 300 mL of water, or weigh in 300 g; it then makes 400 mL.", "Parted among 8 cups, that is 50 mL in each.", ""},
		{"a drop of wash", "calculator=wash-dilute&volume=0.001&from=20&to=5", "The water is too little to measure: thin a larger lot.", "", ""},
		{"a tub of wash", "calculator=wash-dilute&volume=5 L&from=20&to=5", "Add 15 L of water; it then makes 20 L.", "", ""},
		{"nothing to thin", "calculator=wash-dilute&volume=100&from=20&to=20",
			"Nothing to do: it has this strength already.", "water-to-add=0", ""},
		{"cups all alike", "calculator=wash-dilute&volume=100&from=20&to=20&steps=2", "2 cups of 50 mL, from strength 20 g/100 mL down to 20 g/100 mL.", "All cups are alike", "usual in the trade"},
		{"too pale to draw up", "calculator=wash-dilute&volume=100&from=20&to=0.2&steps=3&each=30", "3 cups of 30 mL, from strength 20 g/100 mL down to 0.2 g/100 mL.", "The palest cup takes 0.3 mL of strong wash, too little to measure well.", ""},

		{"a bucket a hair too thick", "calculator=slip-adjust&volume=2 L&from=1.46&to=1.45", "Right as it is: 1.46 is within 0.01 of 1.45, and no bucket is measured closer.", "water-to-add=0; new-volume=2000", "first-pour"},
		{"a bucket a hair too thin", "calculator=slip-adjust&volume=2 L&from=1.44&to=1.45&stain=8", "Right as it is: 1.44 is within 0.01 of 1.45, and no bucket is measured closer.", "water-to-add=0; new-volume=2000", "powder-to-add"},
		{"a bucket that is there", "calculator=slip-adjust&volume=2 L&from=1.45&to=1.45", "Right as it is: the bucket is already at 1.45.", "water-to-add=0", "first-pour"},
		{"a bucket not quite there", "calculator=slip-adjust&volume=2 L&from=1.4601&to=1.45", "Add 45 mL of water, 36 mL of it first.", "first-pour=", "Right as it is"},

		{"a stencil", "calculator=shrinkage-size&shrinkage=12&fired-size=90&state=leather-hard",
			"Make it 99.2 mm now, on leather-hard clay, give or take 1 mm.", "The state counts as 3 % shrunk so far, a quarter", "A stencil is cut"},
		{"nobody said what the pot is", "calculator=shrinkage-size&shrinkage=12&fired-size=90",
			"Make it 102.3 mm now, on fresh clay.", "A stencil is cut for leather-hard clay. There it would be about 99.2 mm: say what the pot is now.", "counts as"},
		{"a clay that shrinks 8", "calculator=shrinkage-size&shrinkage=8&wet-size=100&state=bone-dry",
			"Fired, it will be 95.8 mm, give or take 0.7 mm.", "The state counts as 4 % shrunk so far, half", ""},
		{"measured today", "calculator=shrinkage-size&shrinkage=12&so-far=4&fired-size=90&state=leather-hard",
			"Make it 98.2 mm now, on clay that has shrunk 4 % so far, give or take 0.5 mm.", "", "counts as"},
		{"on bisque", "calculator=shrinkage-size&shrinkage=12&state=bisque&capacity-fired=350", "It must hold 413.1 mL now, on bisque.", "seven twelfths", ""},
		{"a part for a percentage", "calculator=shrinkage-size&shrinkage=0.12&fired-size=90", "Make it 90.1 mm now, on fresh clay.", "0.12 % is less than 1 %. Did you mean 12 %?", "smaller than"},
		{"a unit left out", "calculator=shrinkage-size&shrinkage=12&fired-size=9.5", "Make it 10.8 mm now, on fresh clay.", "9.5 mm is smaller than any pot. A number alone counts in mm: write cm or in after it if you mean those.", ""},
		{"a button", "calculator=shrinkage-size&shrinkage=12&wet-size=10", "Fired, it will be 8.8 mm.", "", "smaller than"},

		{"slip of the body", "calculator=slip-fit&body=12&slip=12&state=leather-hard",
			"This slip would end 3.1 % too short, give or take 1.6 %: our guess is that it usually fits, in a thin coat.", "No sum can tell these apart: fire a tile.", "silica"},
		{"measured on the same bars", "calculator=slip-fit&body=12&slip=12&state=leather-hard&body-so-far=5",
			"This slip would end 5.3 % too short, give or take 1.4 %: our guess is that it is risky.", "our own guess", "counts as"},
		{"no mismatch to speak of", "calculator=slip-fit&body=12.0000001&slip=12&state=wet",
			"This slip would end as long as the pot, give or take 1.2 %: our guess is that it usually fits, in a thin coat.", "", "counts as"},
		{"a clay that shrinks little", "calculator=slip-fit&body=6&slip=6&state=bone-dry",
			"This slip would end 3.1 % too short, give or take 1.3 %: our guess is that it usually fits, in a thin coat.", "The state counts as 3 % shrunk so far, half", ""},
		{"parts for percentages", "calculator=slip-fit&body=0.12&slip=0.12&state=wet&bars-ci=0", "This slip would end as long as the pot, give or take 0 %: our guess is that it usually fits, in a thin coat.", "0.12 % is less than 1 %. Did you mean 12 %?", "reaches"},
		{"slip on bisque", "calculator=slip-fit&body=12&slip=12&state=bisque&body-so-far=7", "This slip would end 7.5 % too short, give or take 1.4 %: our guess is that it curls and flakes off.", "does not bond to fired clay; silica", ""},

		{"bars that agree", "calculator=shrinkage-test&plastic=100 100 100&dry=94 94 94&fired=88 88 88",
			"It shrinks 12.00 ± 0.08 % in all.", "their step of 0.1 mm alone leaves 0.077 % either way; The totals lie 0 % apart: they agree.", "stands apart"},
		{"one bar", "calculator=shrinkage-test&plastic=100&dry=94&fired=88", "It shrinks 12 % in all, by one bar.", "Make three.", "total-ci"},
		{"not fired yet", "calculator=shrinkage-test&plastic=100 100&dry=100 100&fired=100 100", "These bars have not shrunk at all. Are the fired lengths those of the fired bars?", "", ""},
		{"a bar apart", "calculator=shrinkage-test&plastic=100 100 100&dry=94 94 94&fired=88 88 86", "It shrinks 13 ± 3 % in all.", "Bar 3 stands apart: it shrinks 8.51 % in the firing, the others about 6.38 %.; The totals lie 2 % apart: more than good bars do.", "callipers"},
		{"measured at leather-hard too", "calculator=shrinkage-test&plastic=100 100&leather-hard=97 96&dry=94 94&fired=88 88", "It shrinks 12.00 ± 0.08 % in all.", "so-far=3.5", ""},

		{"stain for a damp lump", "calculator=clay-colour&clay=500&clay-water=20&stain=8", "Wedge in 32 g of stain.", "Reckoned on the damp clay it would have been 40 g of stain, 1.25 times as much.", ""},
		{"stain for dry clay", "calculator=clay-colour&clay=500&clay-water=0&stain=8", "Wedge in 40 g of stain.", "", "Reckoned on"},
		{"no stain", "calculator=clay-colour&clay=500&clay-water=20&stain=0", "Nothing to wedge in: you asked for 0 % of stain.", "", "Reckoned on"},
		{"hardly any stain", "calculator=clay-colour&clay=5&clay-water=20&stain=1", "The stain is too little to weigh: colour a larger lump.", "The stain would be 0.04 g, less than the scale can show.", ""},
		{"too much stain", "calculator=clay-colour&clay=500&clay-water=20&stain=80", "Wedge in 320 g of stain.", "80 %: strong (by what is usual in the trade). For colour in a slip, 1 to 15.", ""},

		{"a recipe by the litre", "calculator=recipe-scale&parts=40 25 20 15&additions=8&names=Kaolin, Ball clay, Feldspar, Quartz, Stain&volume=2 L&specific-gravity=1.45",
			"Weigh 1434 g of dry mix into 1466 g of water.", "what=Water; what=Kaolin; share=40; weigh=531; total=1997; weigh=106.3; total=2900; new-volume=2000", "adds up to"},
		{"a recipe by its dry weight", "calculator=recipe-scale&parts=2 1 1&additions=8&dry-mass=1000", "Weigh 1000 g of dry mix.",
			"base-mass=925.9; what=No. 4; weigh=74.1; The base adds up to 4, not to 100, and was scaled.", "water="},
		{"only so much of one material", "calculator=recipe-scale&parts=50 30 20&names=Clay, Quartz, Feldspar&which=quartz&have=300 g", "Weigh 1000 g of dry mix.", "This takes all 300 g of Quartz.; weigh=200", "additions-mass"},
		{"only so much of a numbered one", "calculator=recipe-scale&parts=50 30 20&which=3&have=300 g", "Weigh 1500 g of dry mix.", "This takes all 300 g of No. 3.; weigh=450", "adds up to"},
		{"gum into the water first", "calculator=recipe-scale&parts=50 50&additions=1&names=Clay, Frit, Gum&first=gum&dry-mass=1010&specific-gravity=1.4", "Weigh 1010 g of dry mix into 1171 g of water.", "weigh=10; total=1181", ""},
		{"a recipe with a little cobalt", "calculator=recipe-scale&parts=100&additions=0.5&dry-mass=2 kg", "Weigh 2000 g of dry mix.", "Weigh No. 2 alone on the fine scale: with the tub on it, a scale shows steps of 1 g", "off by up to"},
		{"a recipe for a class", "calculator=recipe-scale&parts=50 50&people=12&each=150&spare=0&specific-gravity=1.45&scale-limit=1 kg", "Weigh 1316 g of dry mix into 1294 g of water. The scale bears it in 3 equal loads: the lines are for one of them.",
			"That is 1800 mL in all: 150 mL for each of 12 people, and none to spare.; loads=3; total=870", "alone on"},
		{"a pinch of a recipe", "calculator=recipe-scale&parts=50 50&additions=1&dry-mass=20", "Weigh 20 g of dry mix.", "off by up to 1 %.; From 505 g of dry mix on, each is within 1 %.", "water="},
		{"a speck of a recipe", "calculator=recipe-scale&parts=50 50&dry-mass=0.01", "The dry mix is too little to weigh: make a larger batch.", "", ""},
		{"a recipe of one", "calculator=recipe-scale&parts=7&volume=1 L&specific-gravity=1.45", "Weigh 731 g of dry mix into 719 g of water.", "share=100; largest-error=0.034", "alone on"},

		{"two buckets in one", "calculator=bucket-mix&first-gravity=1.60&first-volume=600&second-gravity=1.30&second-volume=400", "Together they come to 1.48, and make 1000 mL.", "dry-base=780", "stain="},
		{"how much of the second", "calculator=bucket-mix&first-gravity=1.60&first-volume=2 L&second-gravity=1.30&to=1.45&first-stain=8", "Pour 2000 mL of the first and 2000 mL of the second together: 4 L of 1.45.", "5.16 % of stain: right; goes by the dry base in each pour", "What you have"},
		{"as much as both allow", "calculator=bucket-mix&first-gravity=1.60&first-volume=2 L&second-gravity=1.30&second-volume=1 L&to=1.45", "Pour 1000 mL of the first and 1000 mL of the second together: 2000 mL of 1.45.", "", "What you have"},
		{"more than there is", "calculator=bucket-mix&first-gravity=1.60&first-volume=1 L&second-gravity=1.30&to=1.45&volume=5 L", "Pour 2500 mL of the first and 2500 mL of the second together: 5 L of 1.45.", "What you have of the buckets makes only 2000 mL of this mix.", ""},
		{"one bucket is right", "calculator=bucket-mix&first-gravity=1.45&second-gravity=1.30&to=1.45&volume=1 L", "The first bucket alone is 1.45: take 1000 mL of it.", "second-pour=0", ""},
		{"the other is right", "calculator=bucket-mix&first-gravity=1.60&second-gravity=1.45&to=1.45&volume=1 L", "The second bucket alone is 1.45: take 1000 mL of it.", "first-pour=0", ""},
		{"a volume for no number", "calculator=bucket-mix&first-gravity=1.60&first-volume=1 L&second-gravity=1.30&second-volume=1 L&volume=3 L", "Together they come to 1.45, and make 2000 mL.", "is for a number wanted", ""},

		{"a bucket dried up", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.55&gravity-mixed=1.45", "Add 440 mL of water.", "water-gone=444; base-to-add=0", "slip-to-add"},
		{"a bucket used up", "calculator=bucket-top-up&volume=3 L&specific-gravity=1.55&gravity-mixed=1.45&volume-wanted=6 L&stain-now=8", "Add 2380 mL of water, 1550 g of dry base and 124 g of stain, in this order.",
			"slip-to-add=2333; Ready slip of 1.45 and the same stain does instead of powder, with less dust: 2330 mL of it, after 670 mL of water for what is there.", "stain-with-slip"},
		{"a darker bucket", "calculator=bucket-top-up&volume=1 L&specific-gravity=1.45&to=1.45&stain-now=3&stain=8", "Add 53 mL of water and 35.2 g of stain, in this order.", "stain-then=8", "slip-to-add"},
		{"a bucket rinsed thin", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.30&gravity-mixed=1.45", "Take off 670 mL of clear water.", "thinner than when it was mixed; Cloudy water", "water-gone"},
		{"a thin bucket filled up", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.30&to=1.45&volume-wanted=2 L", "Take off 190 mL of clear water. Add 487.5 g of dry base.", "", "slip-to-add"},
		{"a bucket that is enough", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.55&gravity-mixed=1.45&volume-wanted=2 L", "Add 440 mL of water.", "With that it holds 2440 mL, which is all you wanted", "slip-to-add"},
		{"a bucket as it was", "calculator=bucket-top-up&volume=2 L&specific-gravity=1.45&gravity-mixed=1.45", "Right as it is: there is nothing to add.", "water-gone=0", "thinner than"},

		{"a line of cups", "calculator=wet-blend&points=5&first-gravity=1.50&second-gravity=1.42&each=40", "5 cups: draw 96 mL of slip 1 and 104 mL of slip 2 in all.", "first-volume=18; second-volume=22; error=0.66; half of each would have been 54.3 % of slip 1 and 45.7 % of slip 2.", "off by up to"},
		{"a triaxial of cups", "calculator=wet-blend&kind=triaxial&points=3&first-gravity=1.5&second-gravity=1.5&third-gravity=1.4&each=30", "6 cups: draw 58 mL of slip 1, 58 mL of slip 2 and 64 mL of slip 3 in all.", "a third of each would have been 35.7 % of slip 1, 35.7 % of slip 2 and 28.6 % of slip 3.; third-for-hundred=125", "off by up to"},
		{"a third slip in a line", "calculator=wet-blend&points=3&first-gravity=1.5&second-gravity=1.4&third-gravity=1.45&each=90", "3 cups: draw 130 mL of slip 1 and 140 mL of slip 2 in all.", "A line has two slips, so the third was not used.", "third-needed"},
		{"cups too small", "calculator=wet-blend&points=3&first-gravity=1.5&second-gravity=1.4&each=5", "3 cups: draw 7 mL of slip 1 and 8 mL of slip 2 in all.", "", ""},
		{"cups far too small", "calculator=wet-blend&points=5&first-gravity=1.5&second-gravity=1.4&each=5", "5 cups: draw 12 mL of slip 1 and 13 mL of slip 2 in all.", "With this syringe a cup is off by up to", ""},

		{"three mixes by two slips", "calculator=tile-plan&kind=doubling&points=3&low=2&base=250", "Cut 3 tiles: 3 mixes.", "by-volume=3 + 1; by-volume=1 + 1; by-volume=0 + 1; a slip without the addition and the strongest", ""},
		{"five mixes by two slips", "calculator=tile-plan&points=5&low=4&high=8&base=125", "Cut 5 tiles: 5 mixes.", "by-volume=1 + 0; by-volume=3 + 1; by-volume=1 + 1; by-volume=1 + 3; by-volume=0 + 1; the first and the last mix", ""},
		{"what to scratch", "calculator=tile-plan&points=2&low=1&high=8&base=500&cones=06 6&finishes=bare, clear&coats=3", "Cut 24 tiles: 2 mixes × 3 coats × 2 cones × 2 finishes.",
			"Behind the code scratch a letter for the cone: A for 06, C for 6.; a letter for the finish: A for bare, C for clear.; from one stroke to 3", ""},
		{"a scale too coarse", "calculator=tile-plan&points=3&low=1&high=8&base=12", "Cut 3 tiles: 3 mixes.", "On this scale some amounts are off by up to 17 %.", ""},
		{"a scale fine enough", "calculator=tile-plan&points=3&low=1&high=8&base=500", "Cut 3 tiles: 3 mixes.", "", "On this scale"},
		{"too strong to blend", "calculator=tile-plan&points=3&low=0&high=10&base=100", "Cut 3 tiles: 3 mixes.", "", "by-volume"},
		{"too many parts to blend", "calculator=tile-plan&kind=doubling&points=6&low=0.25&base=500", "Cut 6 tiles: 6 mixes.", "", "by-volume"},

		{"mugs for a class", "calculator=coverage&width=80&height=100&coats=2&pots=20&spare=33&specific-gravity=1.45", "Have 334 mL of slip ready for 20 pots: 13 mL each, and 33 % to spare.", "common practice; 1.45: right", "A wet coat of"},
		{"a mug brushed twice", "calculator=coverage&width=8 cm&height=10 cm&coats=2&thickness=0.25&spare=0", "One pot takes 13 mL of slip, with none to spare.", "A wet coat of 0.5 mm in all: right", ""},
		{"one mug", "calculator=coverage&width=8 cm&height=10 cm&thickness=0.8&spare=0", "One pot takes 20 mL of slip, with none to spare.", "A wet coat of 0.8 mm in all: thick (by what is usual in the trade). For all coats together, wet, 0.4 to 0.6.; area=251.3", "dry-coat"},
		{"a bowl, inside", "calculator=coverage&width=16 cm&foot-width=7 cm&height=6 cm&sides=inside&pots=1", "Have 17 mL of slip ready for 1 pot: 15 mL each, and 10 % to spare.", "Half a millimetre wet, in all coats together, is common practice", ""},
		{"a coat weighed wet", "calculator=coverage&width=80&height=100&before=412.0&after=430.2&specific-gravity=1.45", "That coat was 0.499 ± 0.003 mm thick while wet.", "A wet coat of 0.5 mm in all: right", "Leather-hard clay loses"},
		{"a coat weighed dry", "calculator=coverage&area=251.3&before=412.0&after=421.2&weighed=dry&specific-gravity=1.45", "That coat was 0.501 ± 0.005 mm thick while wet.", "Leather-hard clay loses its own water meanwhile", ""},
		{"a coat by the jug", "calculator=coverage&area=250&taken=5&pots=1", "Have 5.5 mL of slip ready for 1 pot: 5 mL each, and 10 % to spare.", "A wet coat of 0.2 mm in all: thin", ""},
		{"nothing to speak of", "calculator=coverage&area=1&thickness=0.1", "The slip for one pot is too little to measure: check the sizes and the thickness.", "", ""},

		{"a slip to compare", "calculator=flow-log&slip-seconds=62&water-seconds=26 s", "It takes 2.38 ± 0.06 times as long as water.", "", "of the dry powder"},
		{"right, and so it stays", "calculator=flow-log&slip-seconds=49&water-seconds=26&wanted-seconds=45", "Right as it is: 49 seconds, where 45 are wanted. A tenth either way is our own rule.", "", "Choose"},
		{"the number is wrong", "calculator=flow-log&slip-seconds=62&water-seconds=26&wanted-seconds=45&specific-gravity=1.52&wanted-gravity=1.45", "First bring the number right: it is 1.52, and 1.45 is wanted. Then time it again.", "gravity-off=0.07", ""},
		{"the number is right, the flow slow", "calculator=flow-log&slip-seconds=62&water-seconds=26&wanted-seconds=45&specific-gravity=1.46&wanted-gravity=1.45", "The number is right, the flow is not: 62 seconds where 45 are wanted. Add deflocculant in steps, and no water.", "", "gravity-off"},
		{"the number is right, the flow fast", "calculator=flow-log&slip-seconds=30&water-seconds=26&wanted-seconds=45&specific-gravity=1.45&wanted-gravity=1.45&volume=5 L&step=0.2", "The number is right, the flow is not: 30 seconds where 45 are wanted. Add flocculant in steps, and no powder.", "A deflocculant makes it faster still. What you want is a flocculant.; The steps stop at 0.5 % of the dry powder: common practice.; total=14.6", "total=21.9"},
		{"slow, and who knows why", "calculator=flow-log&slip-seconds=110&water-seconds=26&wanted-seconds=45&additive=flocculant&step=0.1", "It runs too slowly: 110 seconds where 45 are wanted. Measure its number before you add anything.", "A flocculant makes it slower still.; flow cups are read between 20 and 100 seconds (ASTM D1200); The steps were not used", ""},
		{"fast, and who knows why", "calculator=flow-log&slip-seconds=28&water-seconds=26&rested-seconds=27&wanted-seconds=45&additive=flocculant", "It runs too fast: 28 seconds where 45 are wanted. Measure its number before you add anything.", "its clay has sunk", "ASTM"},
		{"drops for a jar", "calculator=flow-log&slip-seconds=62&water-seconds=26&dry-mass=100", "It takes 2.38 ± 0.06 times as long as water.", "One step is less than your scale shows.", ""},

		{"water in a slice", "calculator=clay-water&damp=100.0&dry=80.0", "It holds 20.00 ± 0.08 % of water, of its damp weight.", "water-of-dry=25", "silica"},
		{"dry clay in a bag", "calculator=clay-water&clay-water=20&clay=1250&mass-resolution=1", "The 1250 g hold 1000 g of dry clay and 250 g of water.", "The step of the scale was not used", "silica"},
		{"reclaim, softer", "calculator=clay-water&clay-water=1&clay=2 kg&to=25&hours=12", "Work 640 g of water into the 2 kg.", "let it fall apart under water; silica; The hours are for a pot", "water-to-lose"},
		{"reclaim, stiffer", "calculator=clay-water&clay-water=40&clay=2 kg&to=25", "Let the 2 kg lose 400 g of water: they are ready at 1600 g.", "", "silica"},
		{"reclaim, right", "calculator=clay-water&clay-water=25&clay=2 kg&to=25", "Nothing to do: it has that water already.", "water-to-add=0", "silica"},
		{"a part for a percentage, of water", "calculator=clay-water&clay-water=0.2", "It holds 0.2 % of water, of its damp weight.", "0.2 % is read as a percentage, less than 1 in 100.", ""},
		{"ready for the kiln", "calculator=clay-water&earlier=612.4&later=612.2&clay=3 kg&to=20", "Bone dry by weight: it loses 0.033 ± 0.014 % in a day, less than 0.1 %. That limit is common practice.", "who fires the kiln decides; for the pot they were not used", "gained"},
		{"not ready for the kiln", "calculator=clay-water&earlier=612.4&later=608.9", "Not yet: it loses 0.572 ± 0.014 % in a day, more than 0.1 %. It still dries, and would burst in a kiln that heats fast. That limit is common practice.", "", ""},
		{"too coarse a scale for the kiln", "calculator=clay-water&earlier=612&later=612", "This cannot be told: it loses 0.00 ± 0.14 % in a day, and 0.1 % is the limit (common practice). Wait longer between the weighings, or weigh on a finer scale.", "", ""},
		{"a damp day", "calculator=clay-water&earlier=612.4&later=612.8", "It dries no more: it takes up damp from the air. Keep it somewhere warmer until the firing.", "loss-a-day=-0.065", "Bone dry by weight"},

		{"five tiles", "calculator=absorption&dry=62.41 58.93 60.20 61.77 59.48&soaked=63.92 60.29 61.66 63.21 60.87&mass-resolution=0.01", "These 5 tiles drink 2.36 ± 0.07 % of their dry weight.", "not for that reason safe for food; no limit of the studio’s own is known", "with fewer"},
		{"one tile", "calculator=absorption&dry=100.0&soaked=105.0&suspended=60.0", "This tile drinks 5.00 ± 0.09 % of its dry weight.", "bulk-density=2.2222; with fewer, nobody can tell luck from clay", "least="},
		{"a tile of glass", "calculator=absorption&dry=60.0 60.1&soaked=60.0 60.1", "It drinks no more than the scale can tell: 0.00 ± 0.14 % of its dry weight.", "", "porosity="},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := solveText(t, test.request, british())
			if len(a.Errors) > 0 {
				t.Fatal(a.Errors)
			}
			said := strings.NewReplacer("\u00a0", " ", "\u202f", " ")
			if got := said.Replace(a.Headline); got != test.headline {
				t.Errorf("headline\n got %s\nwant %s", got, test.headline)
			}
			all := said.Replace(everything(a))
			for holds := range strings.SplitSeq(test.holds, "; ") {
				if !strings.Contains(all, holds) {
					t.Errorf("nothing of %q in %s", holds, all)
				}
			}
			if test.lacks != "" && strings.Contains(all, test.lacks) {
				t.Errorf("%q has no place in %s", test.lacks, all)
			}
		})
	}
}

// everything joins what an answer says beside its headline.
func everything(a *Answer) string {
	text := ""
	for _, r := range a.Outputs {
		text += r.Name + "=" + number(r.Value) + " "
	}
	for _, row := range a.Rows {
		for _, cell := range row {
			text += "\n" + cell.Column + "=" + cell.Text
		}
	}
	return text + "\n" + strings.Join(a.Cautions, "\n") + "\n" + strings.Join(a.Judged, "\n") + "\n" + strings.Join(a.Notes, "\n")
}

// TestBlendsAreNear holds what is said of blends: made of two slips of one
// specific gravity they hold a tenth less of the stain than the list says, at
// the most, whatever the stain weighs.
func TestBlendsAreNear(t *testing.T) {
	for _, heavy := range []float64{3, 4.5, 6} {
		plain := slip.Dry(1450, 1000, 2.6, 1)
		solids := slip.Mixed(2.6, mostBlended, heavy)
		base := slip.Dry(1450, 1000, solids, 1) / (1 + mostBlended/100.0)
		for parts := 1.0; parts < mostParts; parts++ {
			got := mostBlended * base / (base + parts*plain)
			want := mostBlended / (1 + parts)
			if off := 1 - got/want; off < 0 || off > 0.1 {
				t.Errorf("stain of %v, %v + 1: %v %% instead of %v %%", heavy, parts, got, want)
			}
		}
	}
}

// TestClays holds what a choice among the studio's clays fills in, and what is
// known where it is refused.
func TestClays(t *testing.T) {
	s := british()
	s.Bodies = []Body{{ID: "yard-stoneware", Name: "Yard stoneware", Shrinkage: 12.5, Cone: "6"}, {ID: "attic-porcelain", Name: "Attic porcelain", Shrinkage: 14, Cone: ""}}
	back, err := Configure([]byte(s.Encode()))
	if err != nil || back.Encode() != s.Encode() || len(back.Bodies) != 2 || back.Bodies[0] != s.Bodies[0] {
		t.Fatalf("%+v came back as %+v, %v", s.Bodies, back.Bodies, err)
	}
	a := solveText(t, "calculator=shrinkage-size&body=Yard Stoneware&wet-size=100", back)
	if got := valueOf(a, "fired-size"); got != 87.5 {
		t.Errorf("fired %v, want 87.5: %v", got, a.Errors)
	}
	if text := everything(a); !strings.Contains(text, "for Yard stoneware is what this handbook has, at cone 6.") {
		t.Error(text)
	}
	if len(a.Read) != 1 || a.Read[0] != (Phrase{Input: "body", Text: "shrinks 12.5\u00a0%"}) {
		t.Errorf("beside the choice: %v", a.Read)
	}
	if g := a.Inputs[0]; g.Name != "shrinkage" || g.Values[0] != 12.5 {
		t.Errorf("understood as %+v", a.Inputs)
	}
	if a := solveText(t, "calculator=slip-fit&clay=attic-porcelain&slip=14&state=wet", back); valueOf(a, "mismatch") != 0 {
		t.Errorf("%v %v", a.Errors, a.Outputs)
	}
	a = solveText(t, "calculator=slip-fit&clay=mud&slip=14&state=wet", back)
	if want := "“mud” is none of the choices. They are: yard-stoneware and attic-porcelain."; len(a.Errors) != 1 || a.Errors[0].Text != want {
		t.Errorf("%v, want %s", a.Errors, want)
	}
	for _, bad := range []string{"body=x", "body=" + url.QueryEscape("id=x&shrinkage=60"), "body=" + url.QueryEscape("id=x&shrinkage=a"), "body=" + url.QueryEscape("name=x&shrinkage=6")} {
		if _, err := Configure([]byte(bad)); err == nil {
			t.Errorf("%s was taken", bad)
		}
	}
}

// TestEqualSlipsBlendExactly: the remainder of binary fractions is no error of a syringe.
func TestEqualSlipsBlendExactly(t *testing.T) {
	for _, gravity := range []string{"1.40", "1.45", "1.47", "1.53"} {
		a := Solve("wet-blend", []form.Setting{{Name: "kind", Text: "line"}, {Name: "points", Text: "5"}, {Name: "each", Text: "40 mL"},
			{Name: "first-gravity", Text: gravity}, {Name: "second-gravity", Text: gravity}}, form.Settings{})
		if len(a.Rows) != 5 {
			t.Fatalf("%s: %d rows: %v", gravity, len(a.Rows), a.Errors)
		}
		for _, row := range a.Rows {
			if off := row[len(row)-1]; off.Column != "error" || off.Value != 0 {
				t.Errorf("%s: %+v", gravity, off)
			}
		}
	}
}
