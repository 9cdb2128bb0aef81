package catalog

import (
	"strings"
	"testing"

	"slipbook/calculators/form"
)

// thereAre lists the calculators as a refusal does: in the order of the
// handbook.
var thereAre = func() string {
	var names []string
	for _, c := range all {
		names = append(names, c.Name)
	}
	return WordsIn("en-GB").List(names) + "."
}()

// lightPowder is what is said of a powder that is lighter than its slip.
func lightPowder(solids, gravity string) string {
	return "Powder of " + solids + "\u00a0g/mL cannot make a slip of " + gravity + ": dry powder is heavier than any slip of it. Either number may be mistyped; clay is about 2.6."
}

// TestRefusals holds the words of every refusal that is the catalog's own.
func TestRefusals(t *testing.T) {
	tests := []struct{ name, request, input, want string }{
		{"no calculator", "calculator=slip-weight", "calculator", "There is no calculator called “slip-weight”. There are: " + thereAre},
		{"no name at all", "mass=3", "calculator", "There is no calculator called “”. There are: " + thereAre},
		{"an input that does not exist", "calculator=wash-dilute&volume=1&from=2&to=1&colour=red", "colour", "“wash-dilute” has no input called “colour”. Its inputs are: volume, from, to, steps, cups and each."},
		{"missing", "calculator=slip-density", "mass", "This is still missing: “Weight on the scale”."},
		{"given twice", "calculator=slip-density&mass=150&mass=160", "mass", "This was given twice. Give it once."},
		{"negative", "calculator=slip-density&mass=-150", "mass", "This was read as −150\u00a0g, but it has to be more than 0\u00a0g."},
		{"negative where zero is fine", "calculator=slip-density&mass=150&tare=-1", "tare", "This was read as −1\u00a0g, but it cannot be less than 0\u00a0g."},
		{"zero", "calculator=slip-density&mass=150&volume=0", "volume", "This was read as 0\u00a0mL, but it has to be more than 0\u00a0mL."},
		{"enormous", "calculator=slip-density&mass=9000 kg", "mass", "This was read as 9\u202f000\u202f000\u00a0g, but it cannot be more than 1\u202f000\u202f000\u00a0g. Is the unit right?"},
		{"jar heavier than all", "calculator=slip-density&mass=150&tare=200&volume=100", "tare", "The empty jar (200\u00a0g) cannot weigh as much as the full one (150\u00a0g). Are the two boxes swapped?"},
		{"water lighter than the jar", "calculator=slip-density&mass=250&tare=100&water-mass=90", "water-mass", "The jar full of water (90\u00a0g) has to weigh more than the empty jar (100\u00a0g)."},
		{"thinner than water", "calculator=slip-density&mass=95&volume=100", "mass", "That makes a specific gravity of 0.95, thinner than water, and no slip is. Check the weight, the jar and the volume; is there froth in it?"},
		{"denser than its solids", "calculator=slip-density&mass=261&volume=100", "mass", "That makes a specific gravity of 2.61, heavier than the dry powder itself (2.6\u00a0g/mL). Check the weight and the volume; was the jar taken off?"},
		{"both alternatives", "calculator=slip-density&mass=150&volume=100&water-mass=160", "volume", "Only one of these can be used: volume of slip, or jar full of water. Empty the other."},
		{"neither alternative", "calculator=slip-adjust&from=1.5&to=1.4", "volume", "Give one of these: slip in the bucket, by volume, or slip in the bucket, by weight."},
		{"half an alternative", "calculator=wash-mix&people=4", "each", "This is still missing: “Amount each”."},
		{"both of a class and a lot", "calculator=wash-mix&people=4&each=20&volume=100", "volume", "Only one of these can be used: how much wash, or people with amount each. Empty the other."},
		{"half a person", "calculator=wash-mix&people=2.5&each=20", "people", "This was read as 2.5, but it has to be a whole number."},
		{"ice", "calculator=slip-density&mass=150&temperature=-3", "temperature", "Water below 0 °C is ice. Give a temperature from 0 to 40 °C."},
		{"to plain water", "calculator=slip-adjust&volume=1000&from=1.5&to=1", "to", "This was read as 1. 1 is plain water: no amount of water brings a slip that far. Give a number above 1, for example 1.45."},
		{"from thinner than water", "calculator=slip-adjust&volume=1000&from=0.9&to=1.4", "from", "This was read as 0.9. 1 is plain water, and less than 1 is thinner than water. A slip is more than 1, for example 1.60."},
		{"from heavier than powder", "calculator=slip-adjust&volume=1000&from=2.7&to=1.4", "from", "A slip of 2.70 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"from heavier than the usual powder, typed", "calculator=slip-adjust&volume=1000&from=2.7&to=1.4&solids-density=2.60 g/mL", "from", "A slip of 2.70 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"powder lighter than the slip now", "calculator=slip-adjust&volume=1000&from=1.5&to=1.4&solids-density=1.45", "solids-density", lightPowder("1.45", "1.50")},
		{"powder lighter than the slip wanted", "calculator=slip-adjust&volume=1000&from=1.4&to=1.5&solids-density=1.5 g/cm3", "solids-density", lightPowder("1.5", "1.50")},
		{"powder lighter than the slip weighed", "calculator=slip-density&mass=150&solids-density=1.4&temperature=20&volume=100", "solids-density", lightPowder("1.4", "1.503")},
		{"powder lighter than the slip to make", "calculator=slip-batch&volume=1 L&specific-gravity=1.45&solids-density=1.26", "solids-density", lightPowder("1.26", "1.45")},
		{"powder lighter than the slip to colour", "calculator=slip-colour&volume=1 L&specific-gravity=1.45&stain=3&solids-density=1.26 kg/L", "solids-density", lightPowder("1.26", "1.45")},
		{"stain that makes the mix too light", "calculator=slip-batch&volume=1 L&specific-gravity=1.7&solids-density=2.5&stain=100&stain-density=1.2", "specific-gravity", "There is no slip of 1.70 without water in it: the dry mix itself is only 1.622\u00a0g/mL."},
		{"a density in another unit", "calculator=slip-density&mass=150&solids-density=2.6 g", "solids-density", "g measures weight; this box wants a density, in g/mL, for example 2.6."},
		{"thicker than powder", "calculator=slip-adjust&volume=1000&from=1.5&to=2.6", "to", "No amount of powder makes a slip of 2.60: the dry powder itself is only 2.6\u00a0g/mL."},
		{"stronger by water", "calculator=wash-dilute&volume=100&from=10&to=12", "to", "Water cannot make a wash stronger: 12\u00a0g/100 mL is more than the 10\u00a0g/100 mL it has now. Weigh in more powder instead."},
		{"to no strength", "calculator=wash-dilute&volume=100&from=10&to=0", "to", "A strength of 0 is plain water: no amount of water brings a wash that far. Give a number above 0."},
		{"too many cups", "calculator=wash-dilute&volume=100&from=10&to=1&steps=51", "steps", "This was read as 51, but it cannot be more than 50."},
		{"a wash without water", "calculator=wash-mix&volume=100&water-parts=0", "water-parts", "A wash needs water. Give its parts by weight, for example 10."},
		{"unequal lists", "calculator=shrinkage-test&plastic=100 100&dry=94&fired=88 88", "dry", "This has 1 length, and fresh clay has 2 lengths. Give one of each for every bar, in the same order."},
		{"a bar with a typing mistake", "calculator=shrinkage-test&plastic=100 100 100&dry=94 93 49&fired=88 88 88", "dry", "Bar 3 would shrink from 100\u00a0mm to 49\u00a0mm in drying. No clay loses a quarter of its length so; is one of the two mistyped?"},
		{"a bar unlike the others in drying", "calculator=shrinkage-test&plastic=100 100 100&dry=94 83 94&fired=88 82 88", "dry", "Bar 2 would shrink 17\u00a0% in drying, and the others about 6\u00a0%. Is one of its lengths mistyped?"},
		{"a bar unlike the others in the firing", "calculator=shrinkage-test&plastic=100 100 100&dry=94 94 94&fired=88 88 78", "fired", "Bar 3 would shrink 17\u00a0% in the firing, and the others about 6.38\u00a0%. Is one of its lengths mistyped?"},
		{"a bar that grew, in inches", "calculator=shrinkage-test&plastic=4; 4 in&dry=3.75; 4 1/4 in&fired=3.5; 3.5 in", "dry", "Bar 2 is longer dry (4.25\u00a0in) than fresh (4\u00a0in). Clay does not grow in drying; are the bars in the same order?"},
		{"a bar that grew in the fire", "calculator=shrinkage-test&plastic=100 100&dry=94 93&fired=88 94.1", "fired", "Bar 2 is longer fired (94.1\u00a0mm) than dry (93\u00a0mm). Clay hardly grows in a firing; is one of the two mistyped?"},
		{"fresh lengths where the fired belong", "calculator=shrinkage-test&plastic=100&dry=94&fired=100", "fired", "Bar 1 is longer fired (100\u00a0mm) than dry (94\u00a0mm). Clay hardly grows in a firing; is one of the two mistyped?"},
		{"leather-hard bars that grew", "calculator=shrinkage-test&plastic=100&leather-hard=101&dry=94&fired=88", "leather-hard", "Bar 1 is longer leather-hard (101\u00a0mm) than fresh (100\u00a0mm). Are the bars in the same order?"},
		{"leather-hard bars drier than dry", "calculator=shrinkage-test&plastic=100&leather-hard=93&dry=94&fired=88", "leather-hard", "Bar 1 is shorter leather-hard (93\u00a0mm) than bone dry (94\u00a0mm). Are the bars in the same order?"},
		{"a bar less leather-hard", "calculator=shrinkage-test&plastic=100 100&leather-hard=97&dry=94 94&fired=88 88", "leather-hard", "This has 1 length, and fresh clay has 2 lengths. Give one of each for every bar, in the same order."},
		{"neither wash nor cups", "calculator=wash-dilute&from=20&to=5", "volume", "Give one of these: the strong wash you have, or the amount in a cup. With the second alone the answer says how much to make."},
		{"a clay that nobody knows", "calculator=shrinkage-size&body=mud&wet-size=100", "body", "No clay is known here by its name. Give the number instead; on the command line, --content names the course whose clays are meant."},
		{"a clay and a number", "calculator=shrinkage-size&body=mud&shrinkage=12&wet-size=100", "shrinkage", "Only one of these can be used: the clay shrinks in all, or clay of the studio. Empty the other."},
		{"a cone too hot", "calculator=tile-plan&points=3&low=0&high=10&base=100&cones=6 15", "cones", "“15” is no cone. Cones go from 022 over 01 and 1 to 14, for example 06 6."},
		{"a cone too cool", "calculator=tile-plan&points=3&low=0&high=10&base=100&cones=023", "cones", "“023” is no cone. Cones go from 022 over 01 and 1 to 14, for example 06 6."},
		{"a cone of nought", "calculator=tile-plan&points=3&low=0&high=10&base=100&cones=0", "cones", "“0” is no cone. Cones go from 022 over 01 and 1 to 14, for example 06 6."},
		{"a bar that grew", "calculator=shrinkage-test&plastic=100 100&dry=94 101&fired=88 88", "dry", "Bar 2 is longer dry (101\u00a0mm) than fresh (100\u00a0mm). Clay does not grow in drying; are the bars in the same order?"},
		{"one bad value of a list", "calculator=shrinkage-test&plastic=100 x 100&dry=94&fired=88", "plastic", "Value 2, “x”: “x” is not a number. Write a length with the digits 0 to 9, for example 120 mm. Part the values with spaces or semicolons."},
		{"nothing but separators", "calculator=shrinkage-test&plastic=;&dry=94&fired=88", "plastic", "This is still missing: “Between the marks, fresh clay”."},
		{"grouped digits in a list", "calculator=shrinkage-test&plastic=1 000&dry=940&fired=880", "plastic", "Value 2, “000”: in a list digits are not grouped; for one thousand write 1000. This was read as 0\u00a0mm, but it has to be more than 0\u00a0mm."},
		{"a negative value of a list", "calculator=shrinkage-test&plastic=100 -100&dry=94 94&fired=88 88", "plastic", "Value 2, “-100”: This was read as −100\u00a0mm, but it has to be more than 0\u00a0mm."},
		{"a fraction over one in a list", "calculator=shrinkage-test&plastic=4 9/8 in&dry=3&fired=2", "plastic", "Value 1, “4 9/8 in”: 4 9/8 has a fraction of 1 or more beside its whole number. Write it as on the rule, for example 4 1/2 in. Part the values with spaces or semicolons."},
		{"a slipped mark", "calculator=shrinkage-test&plastic=100&dry=94&fired=8.8", "fired", "Bar 1 would shrink from 100\u00a0mm to 8.8\u00a0mm. No clay shrinks by more than half; has the decimal mark slipped?"},
		{"negative parts", "calculator=wash-mix&volume=100&stain-parts=-5", "stain-parts", "This was read as −5, but it has to be more than 0."},
		{"too many bars", "calculator=shrinkage-test&plastic=" + strings.Repeat("100 ", 61) + "&dry=94&fired=88", "plastic", "There are 61 values here, and at most 60 can be reckoned at once."},
		{"no size", "calculator=shrinkage-size&shrinkage=12", "fired-size", "Give one of these: the size now, the fired size, or what it holds now or fired."},
		{"both sizes", "calculator=shrinkage-size&shrinkage=12&wet-size=100&fired-size=88", "wet-size", "Only one of these can be used: size now, or fired size. Empty the other."},
		{"shrunk too far", "calculator=shrinkage-size&shrinkage=12&so-far=13&wet-size=100", "so-far", "The clay cannot have shrunk 13\u00a0% already when it shrinks 12\u00a0% in all. Both are counted on the fresh length."},
		{"shrinks to nothing", "calculator=shrinkage-size&shrinkage=100&wet-size=100", "shrinkage", "No clay shrinks by more than half. Give percent, for example 12."},
		{"a batch of plain water", "calculator=slip-batch&volume=1 L&specific-gravity=1", "specific-gravity", "This was read as 1. 1 is plain water, with no clay in it. Give a number above 1, for example 1.45."},
		{"a batch without water", "calculator=slip-batch&volume=1 L&specific-gravity=2.7&stain=8", "specific-gravity", "There is no slip of 2.70 without water in it: the dry mix itself is only 2.684\u00a0g/mL."},
		{"clay wetter than the slip", "calculator=slip-batch&volume=1 L&specific-gravity=1.75&clay-water=40", "clay-water", "The damp clay brings 812.5\u00a0g of water with it, and this slip has room for 531.3\u00a0g. Let the clay dry to 30\u00a0% of water or less, or start from powder."},
		{"hardly any clay", "calculator=slip-batch&volume=1 L&specific-gravity=1.2&clay-water=95", "clay-water", "That is water with a little clay in it. Clay from the bag holds about 20 %."},
		{"loads without end", "calculator=slip-batch&volume=100 L&specific-gravity=1.45&scale-limit=2 kg", "scale-limit", "In loads of 2\u00a0kg this would take more than 60 of them. Use a scale that bears more, or make less slip."},
		{"colour taken out", "calculator=slip-colour&volume=1 L&specific-gravity=1.45&stain=3&stain-now=8", "stain", "There is more stain in it already (8\u00a0%) than the 3\u00a0% you want, and stain cannot be taken out. Mix in slip without stain instead."},
		{"no stain named", "calculator=slip-colour&volume=1 L&specific-gravity=1.45", "stain", "This is still missing: “Stain wanted”."},
		{"a bucket heavier than powder", "calculator=slip-colour&volume=1 L&specific-gravity=2.65&stain=3", "specific-gravity", "A slip of 2.65 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"stain lighter than the slip", "calculator=slip-colour&volume=1 L&specific-gravity=1.45&stain=3&stain-density=1.4", "stain-density", "A stain of 1.4\u00a0g/mL is lighter than the slip (1.45) and would thin it, so there is no water to add. Check its density; most stains are about 4.5."},
		{"clay of unknown water", "calculator=clay-colour&clay=500&stain=8", "clay-water", "This is still missing: “Water in the clay”."},
		{"no state of the pot", "calculator=slip-fit&body=12&slip=12", "state", "Give one of these: what the pot is now, or what it has shrunk so far."},
		{"a state of its own", "calculator=slip-fit&body=12&slip=12&state=damp", "state", "“damp” is none of the choices. They are: wet, leather-hard, bone-dry and bisque."},
		{"shrunk further than it can", "calculator=slip-fit&body=5&slip=12&body-so-far=5.5", "body-so-far", "The clay cannot have shrunk 5.5\u00a0% already when it shrinks 5\u00a0% in all. Both are counted on the fresh length."},
		{"a kind of its own", "calculator=tile-plan&kind=square&points=3&base=100", "kind", "“square” is none of the choices. They are: line, doubling and triaxial."},
		{"a single mix", "calculator=tile-plan&points=1&low=0&high=10&base=100", "points", "A test needs at least 2 mixes to compare."},
		{"a line without its end", "calculator=tile-plan&points=3&low=0&base=100", "high", "This is still missing: “Highest addition”."},
		{"a line that goes nowhere", "calculator=tile-plan&points=3&low=5&high=5&base=100", "high", "The highest addition (5\u00a0%) has to be more than the lowest (5\u00a0%)."},
		{"twice nothing", "calculator=tile-plan&kind=doubling&points=3&low=0&base=100", "low", "Twice nothing is nothing: a doubling has to begin above 0, for example at 0.25 %."},
		{"a doubling without its start", "calculator=tile-plan&kind=doubling&points=3&base=100", "low", "This is still missing: “Lowest addition”."},
		{"doubled too often", "calculator=tile-plan&kind=doubling&points=20&low=0.5&base=100", "points", "From 0.5\u00a0% on, mix 12 of the doubling would be more than 1000\u00a0%. Give at most 11 mixes."},
		{"too large a triaxial", "calculator=tile-plan&kind=triaxial&points=14&base=100", "points", "A triaxial with 14 along a side has 105 mixes, and at most 100 can be planned at once."},
		{"too long a line", "calculator=tile-plan&points=101&low=0&high=10&base=100", "points", "This was read as 101, but it cannot be more than 100."},
		{"a scale without steps", "calculator=tile-plan&points=3&low=0&high=10&base=100&mass-resolution=0", "mass-resolution", "This was read as 0\u00a0g, but it has to be more than 0\u00a0g."},
		{"a cone twice", "calculator=tile-plan&points=3&low=0&high=10&base=100&cones=6 06 6", "cones", "“6” stands here twice."},
		{"too many finishes", "calculator=tile-plan&points=3&low=0&high=10&base=100&finishes=a,b,c,d,e,f,g,h,i,j,k", "finishes", "There are 11 here, and at most 10 can be planned at once."},
		{"words without end", "calculator=tile-plan&points=3&low=0&high=10&base=100&cones=" + strings.Repeat("6", 601), "cones", "That is too much text for this box."},
		{"no state", "calculator=stage-plan&layers=slip", "state", "This is still missing: “Your pot is now”."},
		{"a state that is none", "calculator=stage-plan&state=soggy&layers=slip", "state", "“soggy” is none of the choices. They are: wet, leather-hard, soft-leather-hard, firm-leather-hard, stiff-leather-hard, bone-dry, bisque, unfired-glaze and glaze-fired."},
		{"no layers", "calculator=stage-plan&state=wet&layers=,", "layers", "This is still missing: “Layers you want, the lowest first”."},
		{"a layer that is none", "calculator=stage-plan&state=wet&layers=mud", "layers", "“mud” names no medium of the table. There are: coloured slip, engobe, underglaze, stain wash, oxide wash, glaze, opaque glaze, enamel, decal, lustre, wax, latex."},
		{"clay that makes no exception", "calculator=stage-plan&state=wet&layers=slip&body=Mud", "body", "The studio’s table makes no exception for “Mud”. Leave this blank, or give one of: Yard paper clay."},
		{"bare under a glaze", "calculator=stage-plan&state=bisque&layers=wash, clear glaze&finish=bare", "finish", "A pot with a glaze on it does not end bare. Say glazed, or leave the glaze out."},
		{"a recipe of nothing", "calculator=recipe-scale&parts=0&dry-mass=100", "parts", "Value 1, “0”: This was read as 0, but it has to be more than 0."},
		{"a recipe without a size", "calculator=recipe-scale&parts=50 50", "dry-mass", "Give one of these: dry mix in all, or how much when it is mixed, or people with amount each, or there is only so much of this one with so much of it."},
		{"a recipe of two sizes", "calculator=recipe-scale&parts=50 50&dry-mass=100&volume=1 L", "dry-mass", "Only one of these can be used: dry mix in all, or how much when it is mixed, or people with amount each, or there is only so much of this one with so much of it. Empty the other."},
		{"a volume of a recipe at no number", "calculator=recipe-scale&parts=50 50&volume=1 L", "specific-gravity", "This is still missing: “Specific gravity wanted”."},
		{"a recipe as plain water", "calculator=recipe-scale&parts=50 50&volume=1 L&specific-gravity=1", "specific-gravity", "This was read as 1. 1 is plain water, with nothing dry in it. Give a number above 1, for example 1.45."},
		{"a recipe without water", "calculator=recipe-scale&parts=50 50&volume=1 L&specific-gravity=2.7", "specific-gravity", "There is no mix of 2.70 without water in it: the dry mix itself is only 2.6\u00a0g/mL."},
		{"powder lighter than the recipe", "calculator=recipe-scale&parts=50 50&volume=1 L&specific-gravity=1.45&solids-density=1.26", "solids-density", lightPowder("1.26", "1.45")},
		{"names that do not fit", "calculator=recipe-scale&parts=50 50&additions=8&names=Kaolin, Quartz&dry-mass=100", "names", "This is 2 names for 3 materials. Name each of them, the base first and then the additions, or leave this blank."},
		{"one name for one too many", "calculator=recipe-scale&parts=50 50&names=Kaolin&dry-mass=100", "names", "This is 1 name for 2 materials. Name each of them, the base first and then the additions, or leave this blank."},
		{"a name twice", "calculator=recipe-scale&parts=50 50&names=Kaolin, Kaolin&dry-mass=100", "names", "“Kaolin” stands here twice."},
		{"a material that is none", "calculator=recipe-scale&parts=50 50&names=Kaolin, Quartz&which=Cobalt&have=100", "which", "“Cobalt” is none of the recipe. Give the number of one of these, or its name: Kaolin and Quartz."},
		{"into the water first, what is not in it", "calculator=recipe-scale&parts=50 50&first=gum&dry-mass=100", "first", "“gum” is none of the recipe. Give the number of one of these, or its name: No. 1 and No. 2."},
		{"a number beyond the recipe", "calculator=recipe-scale&parts=50 50&which=3&have=100", "which", "“3” is none of the recipe. Give the number of one of these, or its name: No. 1 and No. 2."},
		{"a material of which nothing is in it", "calculator=recipe-scale&parts=50 50&additions=0&which=3&have=100", "which", "The recipe has 0\u00a0% of that, so any batch will do. Give the size in another way."},
		{"a material and no amount", "calculator=recipe-scale&parts=50 50&which=1", "have", "This is still missing: “So much of it”."},
		{"too long a recipe", "calculator=recipe-scale&parts=1 1 1 1 1 1 1 1 1 1 1 1 1&dry-mass=100", "parts", "There are 13 values here, and at most 12 can be reckoned at once."},
		{"a recipe in loads without end", "calculator=recipe-scale&parts=50 50&dry-mass=100 kg&scale-limit=1 kg", "scale-limit", "In loads of 1\u00a0kg this would take more than 60 of them. Use a scale that bears more, or make less."},
		{"a bucket thinner than water", "calculator=bucket-mix&first-gravity=0.9&second-gravity=1.3&first-volume=1 L&second-volume=1 L", "first-gravity", "This was read as 0.9. Less than 1 is thinner than water. A slip is more than 1, for example 1.60; 1 is plain water."},
		{"two buckets of water", "calculator=bucket-mix&first-gravity=1&second-gravity=1&first-volume=1 L&second-volume=1 L", "second-gravity", "Both are plain water. A slip is more than 1, for example 1.30."},
		{"a mix of one bucket", "calculator=bucket-mix&first-gravity=1.6&second-gravity=1.3&first-volume=1 L", "second-volume", "This is still missing: “Second bucket: how much of it”."},
		{"a mix of no size", "calculator=bucket-mix&first-gravity=1.6&second-gravity=1.3&to=1.45", "volume", "Say how much of the mix you want, or how much there is in one of the buckets."},
		{"thicker than both", "calculator=bucket-mix&first-gravity=1.6&second-gravity=1.3&to=1.65&volume=1 L", "to", "1.65 is thicker than both buckets (1.60 and 1.30), so no mix of them comes to it. Thicken one of them first, with dry mix or by taking off clear water."},
		{"thinner than both", "calculator=bucket-mix&first-gravity=1.6&second-gravity=1.3&to=1.25&volume=1 L", "to", "1.25 is thinner than both buckets (1.60 and 1.30), so no mix of them comes to it. Thin with water instead: as a second bucket, water is 1."},
		{"both there already", "calculator=bucket-mix&first-gravity=1.45&second-gravity=1.45&to=1.45&volume=1 L", "to", "Both buckets have this number already, and so has any mix of them. Leave it blank, and give how much there is of each."},
		{"a mix of a bucket heavier than powder", "calculator=bucket-mix&first-gravity=1.6&second-gravity=2.7&to=1.7&volume=1 L", "second-gravity", "A slip of 2.70 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"a bucket to no number", "calculator=bucket-top-up&volume=1 L&specific-gravity=1.5", "to", "Say which specific gravity you want, or which it had when it was mixed."},
		{"a bucket to plain water", "calculator=bucket-top-up&volume=1 L&specific-gravity=1.5&to=1", "to", "This was read as 1. 1 is plain water: no amount of water brings a slip that far. Give a number above 1, for example 1.45."},
		{"a used bucket heavier than powder", "calculator=bucket-top-up&volume=1 L&specific-gravity=2.7&to=1.5", "specific-gravity", "A slip of 2.70 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"a bucket topped up to powder", "calculator=bucket-top-up&volume=1 L&specific-gravity=1.5&to=2.7", "to", "There is no slip of 2.70 without water in it: the dry mix itself is only 2.6\u00a0g/mL."},
		{"colour that stays", "calculator=bucket-top-up&volume=1 L&specific-gravity=1.45&to=1.45&volume-wanted=3 L&stain-now=8&stain=0", "stain", "There is stain in it already (8\u00a0%), and it cannot be taken out. Give the stain you can accept, or mix a new bucket."},
		{"too much colour for so little", "calculator=bucket-top-up&volume=1 L&specific-gravity=1.45&to=1.45&volume-wanted=3 L&stain-now=8&stain=2", "stain", "There is more stain in it already (8\u00a0%) than 3\u00a0L of slip with 2\u00a0% holds. Fresh slip without stain thins it to that from 3.72\u00a0L on."},
		{"too much colour, no amount", "calculator=bucket-top-up&volume=1 L&specific-gravity=1.45&to=1.45&stain-now=8&stain=2", "stain", "There is more stain in it already (8\u00a0%) than the 2\u00a0% you want. Fresh slip without stain thins it to that from 3.72\u00a0L on: give that as the amount you want in it."},
		{"a blend of one cup", "calculator=wet-blend&points=1&first-gravity=1.5&second-gravity=1.4&each=50", "points", "A blend needs at least 2 cups to compare."},
		{"a triaxial of two", "calculator=wet-blend&kind=triaxial&points=4&first-gravity=1.5&second-gravity=1.4&each=50", "third-gravity", "This is still missing: “Slip 3: specific gravity”."},
		{"too many cups of a triaxial", "calculator=wet-blend&kind=triaxial&points=14&first-gravity=1.5&second-gravity=1.4&third-gravity=1.4&each=50", "points", "A triaxial with 14 along a side has 105 cups, and at most 100 can be planned at once."},
		{"a blend with powder", "calculator=wet-blend&points=3&first-gravity=1.5&second-gravity=2.7&each=50", "second-gravity", "A slip of 2.70 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"cups too small to draw", "calculator=wet-blend&points=11&first-gravity=1.5&second-gravity=1.4&each=4", "each", "A syringe with steps of 1\u00a0mL cannot draw 0.49\u00a0mL. Fill larger cups, or use a finer syringe."},
		{"a pot without sizes", "calculator=coverage", "width", "Give one of these: width at the rim with height, or area to coat."},
		{"a pot without height", "calculator=coverage&width=80", "height", "This is still missing: “Height”."},
		{"a plate coated outside", "calculator=coverage&width=200&height=0", "height", "A pot without height has no outside. Give a height, or say that the inside is coated."},
		{"a coat weighed without its number", "calculator=coverage&area=250&before=300&after=318", "specific-gravity", "To turn grams into a thickness, the slip’s specific gravity is needed. Measure the slip, for example 1.45."},
		{"a coat that weighs nothing", "calculator=coverage&area=250&before=318&after=300&specific-gravity=1.45", "after", "After its coat the pot (300\u00a0g) has to weigh more than before (318\u00a0g). Are the two boxes swapped?"},
		{"a coat of stone", "calculator=coverage&area=250&specific-gravity=2.7", "specific-gravity", "A slip of 2.70 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"an area in grams", "calculator=coverage&area=250 g", "area", "g measures weight; this box wants an area, in cm² or in², for example 250 cm²."},
		{"a weight box given an area", "calculator=slip-density&mass=25 cm2", "mass", "cm² measures area; this box wants a weight, in g, kg, oz or lb, for example 174.5 g."},
		{"slip faster than water", "calculator=flow-log&slip-seconds=20&water-seconds=26", "water-seconds", "The slip (20 seconds) cannot run faster than water (26). Are the two boxes swapped?"},
		{"a bucket of unknown number", "calculator=flow-log&slip-seconds=62&water-seconds=26&volume=5 L", "specific-gravity", "To know the dry powder in the bucket, its specific gravity is needed. Measure the slip, for example 1.45, or give the dry powder."},
		{"a flood of deflocculant", "calculator=flow-log&slip-seconds=62&water-seconds=26&dry-mass=1 kg&step=2", "step", "More than 0.5 % of the dry powder is more than helps, in all its steps: common practice. Give for example 0.02."},
		{"a slip that is stone", "calculator=flow-log&slip-seconds=62&water-seconds=26&specific-gravity=2.7", "specific-gravity", "A slip of 2.70 would be heavier than its dry powder (2.6\u00a0g/mL). Measure it again."},
		{"a bucket twice", "calculator=flow-log&slip-seconds=62&water-seconds=26&volume=5 L&dry-mass=2 kg", "volume", "Only one of these can be used: slip in the bucket, by volume, or slip in the bucket, by weight, or dry powder in the bucket. Empty the other."},
		{"no water timed", "calculator=flow-log&slip-seconds=62 s", "water-seconds", "This is still missing: “Seconds of water”."},
		{"neither lump nor pot", "calculator=clay-water", "damp", "Give one of these: lump, damp with the same lump, dry, or water in the clay, or pot, first weighing with pot, second weighing."},
		{"a lump that gained", "calculator=clay-water&damp=80&dry=100", "dry", "The lump cannot weigh more dry (100\u00a0g) than damp (80\u00a0g). Are the two boxes swapped?"},
		{"a lump that was a puddle", "calculator=clay-water&damp=100&dry=5", "dry", "From 100\u00a0g to 5\u00a0g more than nine tenths would be water. Was the dish taken off both times?"},
		{"softer clay of no lot", "calculator=clay-water&clay-water=20&to=25", "clay", "This is still missing: “The whole lot, as it is”."},
		{"a pot that gained", "calculator=clay-water&earlier=500&later=520", "later", "The pot cannot gain so much in drying (500\u00a0g, then 520\u00a0g). Are the two boxes swapped?"},
		{"another pot", "calculator=clay-water&earlier=500&later=200", "later", "From 500\u00a0g to 200\u00a0g it would lose more than half. Is it the same pot?"},
		{"weighed at once", "calculator=clay-water&earlier=500&later=500&hours=0.5", "hours", "In less than an hour no scale sees a pot dry. Weigh it again tomorrow."},
		{"a tile not soaked", "calculator=absorption&dry=62.4 58.9&soaked=63.9", "soaked", "This has 1 weight, and the dry tiles have 2 weights. Give one for every tile, in the same order."},
		{"a tile too many in water", "calculator=absorption&dry=62.4&soaked=63.9&suspended=36 37", "suspended", "This has 2 weights, and the dry tiles have 1 weight. Give one for every tile, in the same order."},
		{"tiles mixed up", "calculator=absorption&dry=62.4 58.9&soaked=63.9 58.2", "soaked", "Tile 2 weighs less soaked (58.2\u00a0g) than dry (58.9\u00a0g). Are the tiles in the same order?"},
		{"a sponge", "calculator=absorption&dry=62.4&soaked=163.9", "soaked", "Tile 1 would drink from 62.4\u00a0g to 163.9\u00a0g, more than any fired clay. Is one of the two mistyped?"},
		{"a tile on the bottom", "calculator=absorption&dry=62.4&soaked=63.9&suspended=62.4", "suspended", "Tile 1 weighs as much hanging in water (62.4\u00a0g) as dry (62.4\u00a0g). Water bears part of it: is it read while it hangs under water?"},
		{"too much text", "calculator=" + strings.Repeat("x", 20000), "calculator", "That is too much text for one calculation."},
		{"too many inputs", strings.Repeat("a=1&", 301), "calculator", "Those are too many inputs for one calculation."},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			fields, err := fieldsOf(string(Respond([]byte(test.request), studio())))
			if err != nil {
				t.Fatal(err)
			}
			got, others := "", ""
			for _, f := range fields {
				if f.Name == "error."+test.input {
					got = f.Text
				}
				if strings.HasPrefix(f.Name, "value.") || f.Name == "headline" || f.Name == "drawing" {
					others += f.Name + " "
				}
			}
			if got != test.want {
				t.Errorf("got  %q\nwant %q", got, test.want)
			}
			if others != "" {
				t.Errorf("refused, and yet it says %s", others)
			}
		})
	}
}

// TestAccepted holds what looks wrong and is right.
func TestAccepted(t *testing.T) {
	for _, request := range []string{
		"calculator=slip-density&mass=100&volume=100", // plain water
		"calculator=slip-density&mass=0.15 kg&volume=100 cc&temperature=20",
		"calculator=slip-density&mass=5 oz&volume=&water-mass=110",
		"calculator=slip-adjust&slip-mass=20 lb&from=1.4&to=1.4",
		"calculator=wash-mix&people=3&each=20&spare=&flux-parts=0",
		"calculator=shrinkage-test&plastic=100&plastic=100&dry=94;94&fired=88 mm 88 mm",
		"calculator=shrinkage-test&plastic=4 in; 4 1/2 in&dry=3.8 in 4-1/4&dry.unit=in&fired=85 90",
		"calculator=shrinkage-size&shrinkage=12&wet-size=4 1/2 in",
		"calculator=shrinkage-size&shrinkage=0&so-far=0&fired-size=100",
		"calculator=slip-batch&people=4&each=1 US cup&spare=&specific-gravity=1.45&clay-water=22.5&scale-limit=1 lb",
		"calculator=slip-batch&volume=1 L&specific-gravity=1.75&clay-water=30", // nearly all water comes with the clay
		"calculator=slip-colour&slip-mass=20 lb&specific-gravity=1.45&stain=0",
		"calculator=clay-colour&clay=2 lb 3 oz&clay-water=0&stain=8",
		"calculator=slip-fit&body=12&slip=9.5&state=Bone dry",
		"calculator=slip-fit&body=0&slip=0&state=wet",
		"calculator=slip-fit&body=5&slip=12&state=bone-dry", // a state takes its part of what the clay shrinks
		"calculator=slip-fit&body=12&slip=12&state=fresh&body-so-far=2",
		"calculator=wash-dilute&from=20&to=5&each=30 mL&cups=12",
		"calculator=shrinkage-size&shrinkage=12&state=Leather hard&fired-size=60",
		"calculator=shrinkage-test&plastic=100&dry=94&fired=94.9", // clay may grow by a hair
		"calculator=shrinkage-test&plastic=100 100&leather-hard=97 97.2&dry=94 94&fired=88 88",
		"calculator=tile-plan&points=3&low=0&high=10&base=100&cones=022 14",
		"calculator=tile-plan&points=5&low=0&high=100&base=100&cones=06&cones=6&finishes=bare; clear glaze,",
		"calculator=slip-batch&volume=1 L&specific-gravity=1.45&solids-density=2.6 g/mL&stain-density=4,5 g/cm³",
		"calculator=wash-mix&volume=3 tbsp&flux-density=2.5 kg/L",
		"calculator=tile-plan&kind=Triaxial&points=6&base=20&low=3&high=1",
		"calculator=coverage&width=8 in&height=0&sides=inside", // a plate
		"calculator=coverage&area=40 sq in&taken=1/8 US cup",
	} {
		if wire := string(Respond([]byte(request), british())); strings.Contains(wire, "error.") {
			t.Errorf("%s\n%s", request, unescape(wire))
		}
	}
}

// TestTriaxialWithoutEnds says once that a triaxial has no lowest and highest
// addition, and only when one of them was given.
func TestTriaxialWithoutEnds(t *testing.T) {
	const note = "A triaxial has no lowest or highest addition: its three corners are 100 % each, so what you gave was not used."
	for given, want := range map[string]int{"": 0, "&low=1": 1, "&high=5": 1, "&low=1&high=5": 1} {
		wire := unescape(string(Respond([]byte("calculator=tile-plan&kind=triaxial&points=3&base=30"+given), british())))
		if got := strings.Count(wire, note); got != want {
			t.Errorf("%q: the note stands there %d times, want %d: %s", given, got, want, wire)
		}
	}
}

// TestUnderstoodElsewhere holds what is said of boxes that other units are
// typed into, in the style of a course.
func TestUnderstoodElsewhere(t *testing.T) {
	for _, test := range []struct{ request, settings, input, want string }{
		{"calculator=slip-batch&volume=1 L&specific-gravity=1.45&scale-limit=5 lb", "", "scale-limit", "read as 2267.962\u00a0g"},
		{"calculator=slip-batch&volume=1 L&specific-gravity=1.45&scale-limit=5&scale-limit.unit=lb", "", "scale-limit", "read as 2267.962\u00a0g"},
		{"calculator=slip-batch&volume=100 L&specific-gravity=1.45&scale-limit=5 lb", "", "scale-limit", "read as 2267.962\u00a0g"}, // refused, and says how it was read
		{"calculator=wash-mix&volume=2 tbsp", "", "volume", "read as 30\u00a0mL"},
		{"calculator=wash-mix&volume=2 tbsp", "decimal=%2C&measures=us", "volume", "read as 29,57353\u00a0mL"},
		{"calculator=slip-density&mass=174·5", "", "mass", "read as 174.5\u00a0g"},
		{"calculator=slip-density&mass=150&solids-density=2.6 g/cm³", "", "solids-density", "read as 2.6\u00a0g/mL"},
		{"calculator=slip-density&mass=150&solids-density=2.6 g/mL", "", "solids-density", ""},
	} {
		s, err := Configure([]byte(test.settings))
		if err != nil {
			t.Fatal(err)
		}
		fields, err := fieldsOf(string(Respond([]byte(test.request), s)))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, f := range fields {
			if f.Name == "read."+test.input {
				got = f.Text
			}
		}
		if got != test.want {
			t.Errorf("%s in %q: got %q, want %q", test.request, test.settings, got, test.want)
		}
	}
}

// TestUnderstood holds when an answer says how a box was read.
func TestUnderstood(t *testing.T) {
	for typed, want := range map[string]string{
		"174.5": "", "174.5 g": "", "174.50": "", " 180 ": "", "1 745": "read as 1745\u00a0g", "0.18 kg": "read as 180\u00a0g", "174,5": "read as 174.5\u00a0g", "6 oz": "read as 170.0971\u00a0g",
	} {
		a := Solve("slip-density", []Setting{{Name: "mass", Text: typed}, {Name: "volume", Text: "1 L"}, {Name: "tare", Text: "0"}}, british())
		if typed != "1 745" {
			a = Solve("slip-density", []Setting{{Name: "mass", Text: typed}}, british())
		}
		got := ""
		for _, r := range a.Read {
			if r.Input == "mass" {
				got = r.Text
			}
		}
		if got != want {
			t.Errorf("%q: got %q, want %q", typed, got, want)
		}
	}
}

// TestErrorsStandInTheOrderOfTheInputs wants what is wrong with a form to be told
// from its top to its bottom, and what belongs to no input last.
func TestErrorsStandInTheOrderOfTheInputs(t *testing.T) {
	a := Solve("slip-batch", []form.Setting{{Name: "weight", Text: "1"}, {Name: "stain", Text: "many"}, {Name: "specific-gravity", Text: "0.5"}}, british())
	var order []string
	for _, e := range a.Errors {
		order = append(order, e.Input)
	}
	if got := strings.Join(order, " "); got != "volume specific-gravity stain weight" {
		t.Errorf("the errors stand in the order %s: %v", got, a.Errors)
	}
}
