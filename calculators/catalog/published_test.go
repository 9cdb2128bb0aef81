package catalog

import (
	"encoding/csv"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slipbook/calculators/shrinkage"
	"slipbook/calculators/slip"
)

// published is where the check values stand, each with its source.
const published = "../../testdata/published/mixing-checks.csv"

// check is one row of the published values.
type check struct {
	id, topic, source, status string
	in                        map[string]float64
	expected, tolerance       float64
}

func checks(t *testing.T) []check {
	t.Helper()
	file, err := os.Open(published)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []check
	for _, r := range rows[1:] {
		c := check{id: r[0], topic: r[1], source: r[6], status: r[7], in: map[string]float64{}}
		for pair := range strings.SplitSeq(r[3], ";") {
			if name, value, ok := strings.Cut(pair, "="); ok {
				if x, err := strconv.ParseFloat(value, 64); err == nil {
					c.in[name] = x
				}
			}
		}
		c.expected, _ = strconv.ParseFloat(r[4], 64)
		c.tolerance, _ = strconv.ParseFloat(r[5], 64)
		list = append(list, c)
	}
	return list
}

// output solves a request and gives one output; a refused request is NaN.
func output(calculator, name string, inputs ...any) float64 {
	var given []Setting
	for i := 0; i < len(inputs); i += 2 {
		text, isText := inputs[i+1].(string)
		if !isText {
			text = number(inputs[i+1].(float64))
		}
		given = append(given, Setting{Name: inputs[i].(string), Text: text})
	}
	for _, r := range Solve(calculator, given, british()).Outputs {
		if r.Name == name {
			return r.Value
		}
	}
	return math.NaN()
}

// atGravity weighs a litre of slip of a specific gravity.
func atGravity(name string, gravity, solids float64) float64 {
	return output("slip-density", name, "mass", 1000*gravity, "volume", "1 L", "solids-density", solids)
}

func cup(n int, from, to, cups float64) float64 {
	a := Solve("wash-dilute", []Setting{{Name: "volume", Text: "100"}, {Name: "from", Text: number(from)}, {Name: "to", Text: number(to)}, {Name: "steps", Text: number(cups)}}, british())
	return a.Rows[n-1][1].Value
}

func dryOf(c check) float64 {
	return output("slip-density", "dry-content", "mass", c.in["slip_g"], "volume", c.in["V_mL"], "solids-density", c.in["s"])
}

func waterPerDry(c check) float64 {
	return atGravity("water-per-litre", c.in["d"], c.in["s"]) / atGravity("dry-per-litre", c.in["d"], c.in["s"])
}

func adjust(out string) func(check) float64 {
	return func(c check) float64 {
		return output("slip-adjust", out, "volume", c.in["V_mL"], "from", c.in["d1"], "to", c.in["d2"], "solids-density", max(c.in["s"], 2.6))
	}
}

func cardew(c check) float64 {
	return atGravity("dry-per-litre", c.in["P_oz"]/20, c.in["g"]) * 20 / 1000
}

func baumeOf(c check) float64 { return atGravity("baume", c.in["sg"], 2.6) }

// twaddellBack runs the expected gravity through the calculator and must meet
// the Twaddell figure that the source started from.
func twaddellBack(c check) float64 {
	return 1 + atGravity("twaddell", c.expected, 2.6)/200
}

func waterAt(c check) float64 { return 1000 * slip.WaterDensity(c.in["t_C"]) }

func total(before, after string) func(check) float64 {
	return func(c check) float64 {
		return output("shrinkage-test", "total", "plastic", c.in[before], "dry", c.in[before], "fired", c.in[after])
	}
}

func compounded(c check) float64 {
	dry := 100 - c.in["Sd"]
	return output("shrinkage-test", "total", "plastic", "100", "dry", dry, "fired", dry*(1-c.in["Sf"]/100))
}

func fresh(c check) float64 {
	return output("shrinkage-size", "wet-size", "shrinkage", c.in["S"], "fired-size", c.in["fired"])
}

func volumeOf(c check) float64 {
	return output("shrinkage-test", "volume", "plastic", "100", "dry", "100", "fired", 100-c.in["S"])
}

func remaining(c check) float64 {
	return output("shrinkage-size", "remaining", "shrinkage", c.in["St"], "so-far", c.in["Ssofar"], "wet-size", "100")
}

func doubt(c check) float64 {
	d := slip.Doubt{Resolution: c.in["um"] * math.Sqrt(12), Tolerance: c.in["uV"] * math.Sqrt(3)}
	return d.ByVolume(c.in["m_g"]/c.in["V_mL"], c.in["m_g"], c.in["V_mL"])
}

// batch returns an output of a slip without stain.
func batch(out string, c check) float64 {
	return output("slip-batch", out, "volume", c.in["V_mL"], "specific-gravity", c.in["d"], "solids-density", c.in["s"])
}

// baseShare returns the base as a share of base and stain together.
func baseShare(percent float64) float64 {
	given := []any{"volume", "1 L", "specific-gravity", "1.5", "stain", percent}
	base := output("slip-batch", "dry-base", given...)
	return base / (base + output("slip-batch", "stain-mass", given...))
}

// stainOver returns the stain that goes into a bucket for each gram of its base.
func stainOver(percent, gravity, solids float64) float64 {
	given := []any{"volume", "1 L", "specific-gravity", gravity, "solids-density", solids, "stain", percent}
	return output("slip-colour", "stain-mass", given...) / output("slip-colour", "dry-base", given...)
}

func intoBucket(c check) float64 {
	return output("slip-colour", "stain-mass", "volume", c.in["V_mL"], "specific-gravity", c.in["d"], "solids-density", c.in["s"], "stain", c.in["pct"])
}

// waterOverDry returns the water of damp clay for each gram of its dry clay.
func waterOverDry(percent float64) float64 {
	given := []any{"clay", "1 kg", "clay-water", percent, "stain", "0"}
	return output("clay-colour", "water-held", given...) / output("clay-colour", "dry-clay", given...)
}

// plan returns the rows of a plan of tiles on 100 g of base.
func plan(inputs ...any) [][]Cell {
	given := []Setting{{Name: "base", Text: "100"}}
	for i := 0; i < len(inputs); i += 2 {
		text, isText := inputs[i+1].(string)
		if !isText {
			text = number(inputs[i+1].(float64))
		}
		given = append(given, Setting{Name: inputs[i].(string), Text: text})
	}
	return Solve("tile-plan", given, british()).Rows
}

// mix returns the addition in mix i of a line from nothing.
func mix(c check, inputs ...any) float64 {
	return plan(append(inputs, "points", c.in["N"], "low", "0")...)[int(c.in["i"])][1].Value
}

func triaxial(c check) [][]Cell { return plan("kind", "triaxial", "points", c.in["n"]) }

// blends counts the blends of a triaxial that have at most so many and at
// least so many of the three mixes in them.
func blends(most, least int) func(check) float64 {
	return func(c check) float64 {
		count := 0.0
		for _, row := range triaxial(c) {
			parts := 0
			for _, share := range row[1:4] {
				if share.Value > 0 {
					parts++
				}
			}
			if parts <= most && parts >= least {
				count++
			}
		}
		return count
	}
}

// recipeOf returns an output of a recipe, or of the batch that a mass of one of
// its materials allows.
func recipeOf(out string, inputs ...any) func(check) float64 {
	return func(c check) float64 {
		given := append([]any{"parts", "40 25 20 15"}, inputs...)
		for _, in := range [][2]string{{"D_g", "dry-mass"}, {"V_mL", "volume"}, {"have_g", "have"}, {"d", "specific-gravity"}, {"s", "solids-density"}, {"pct", "additions"}} {
			if value, ok := c.in[in[0]]; ok {
				given = append(given, in[1], value)
			}
		}
		return output("recipe-scale", out, given...)
	}
}

// poured returns an output of two slips poured together, or of their mix of a
// wanted number.
func poured(out string) func(check) float64 {
	return func(c check) float64 {
		given := []any{"first-gravity", c.in["d1"], "second-gravity", c.in["d2"], "first-stain", c.in["p1"], "stain-density", "2.6"}
		if to, wanted := c.in["d"]; wanted {
			return output("bucket-mix", out, append(given, "to", to, "volume", c.in["V_mL"])...)
		}
		return output("bucket-mix", out, append(given, "first-volume", c.in["V1_mL"], "second-volume", c.in["V2_mL"])...)
	}
}

// topped returns an output of a bucket that is brought to a number, and to so
// much where that is wanted.
func topped(out string) func(check) float64 {
	return func(c check) float64 {
		given := []any{"volume", c.in["V_mL"], "specific-gravity", c.in["d1"], "gravity-mixed", c.in["d2"], "solids-density", max(c.in["s"], 2.5)}
		if wanted, ok := c.in["N_mL"]; ok {
			given = append(given, "volume-wanted", wanted)
		}
		return output("bucket-top-up", out, given...)
	}
}

// blendOf returns an output of a line of three cups of two slips.
func blendOf(out string, c check) float64 {
	return output("wet-blend", out, "points", "3", "first-gravity", c.in["dA"], "second-gravity", c.in["dB"], "each", "1 L", "volume-resolution", "0.000000001")
}

// halfByVolume returns the dry share (%) of the first slip where both go in by
// equal volumes.
func halfByVolume(c check) float64 {
	match := blendOf("second-for-hundred", c)
	return 100 * match / (100 + match)
}

// matchingVolume returns what holds as much dry of the second slip as so much
// of the first: all that the cups of the line take of both, which is half and
// half.
func matchingVolume(c check) float64 {
	return c.in["V_A"] * (blendOf("second-needed", c) - 1000) / (blendOf("first-needed", c) - 1000)
}

// spread returns how many m² a litre coats at a dry thickness (µm) with so much
// of it (%) solid.
func spread(c check) float64 {
	wet := c.in["dry_um"] / 1000 / (c.in["solids_pct"] / 100)
	return 1000 / output("coverage", "each", "area", "10000", "thickness", wet)
}

// coat returns an output of a coat on a pot of sizes in mm.
func coat(out string, top, foot, height float64, inputs ...any) float64 {
	return output("coverage", out, append(inputs, "width", top, "foot-width", foot, "height", height)...)
}

// dose returns what one step of an additive weighs.
func dose(c check) float64 {
	return output("flow-log", "step-mass", "slip-seconds", "60", "water-seconds", "26", "dry-mass", c.in["D_g"], "step", c.in["pct"], "strength", c.in["strength_pct"])
}

// overDry returns the water of a lump in percent of its dry weight, weighed in a
// can.
func overDry(c check) float64 {
	return output("clay-water", "water-of-dry", "damp", c.in["damp_g"]-c.in["can_g"], "dry", c.in["dry_g"]-c.in["can_g"])
}

// firedTile returns an output of a fired tile; one that the row gives no weight of
// weighs 100 g dry, the same soaked, and 60 g in water.
func firedTile(out string, c check) float64 {
	weight := func(name string, or float64) float64 {
		if w, ok := c.in[name]; ok {
			return w
		}
		return or
	}
	dry := weight("D_g", 100)
	return output("absorption", out, "dry", dry, "soaked", weight("M_g", dry), "suspended", weight("S_g", 60))
}

// covered says how each row is reckoned by our calculators. Keys are ids or,
// ending in "*", the beginnings of ids.
var covered = map[string]func(check) float64{
	"SD-01": dryOf, "SD-04": dryOf, "SD-06": dryOf, "SD-09": dryOf, "SD-14": dryOf,
	"SD-05": func(c check) float64 {
		return output("slip-density", "water-per-litre", "mass", c.in["M_g"], "volume", "1 L", "solids-density", "2.5")
	},
	"SD-07": waterPerDry, "SD-10": waterPerDry,
	"SD-08": func(c check) float64 { return c.in["D_kg"] * waterPerDry(c) },
	"SD-11": func(c check) float64 { return c.in["D_kg"] * waterPerDry(c) },
	"HB-*":  func(c check) float64 { return atGravity("dry-per-litre", c.in["d"], c.in["s"]) },
	"HV-*":  func(c check) float64 { return 100 * 1000 / atGravity("dry-per-litre", c.in["d"], c.in["s"]) },
	// A trap: weight minus volume misses 1/s of the dry content.
	"SD-15": func(c check) float64 {
		dry := atGravity("dry-per-litre", 1.3, c.in["s"])
		return (dry - (1300 - 1000)) / dry
	},
	"SD-16": func(c check) float64 {
		return output("slip-density", "specific-gravity", "mass", c.in["mass_g"], "volume", c.in["volume_mL"])
	},
	"SD-17": func(c check) float64 { return atGravity("solids-by-mass", c.in["d"], c.in["s"]) / 100 },
	"SD-18": func(c check) float64 { return atGravity("solids-by-volume", c.in["d"], c.in["s"]) / 100 },
	"SD-19": func(c check) float64 {
		return c.expected * atGravity("solids-by-mass", c.expected, c.in["s"]) / 100 / c.in["x"]
	},
	"SD-20": func(c check) float64 {
		return c.expected * atGravity("solids-by-mass", c.expected, c.in["s"]) / 50
	},
	"SD-21": adjust("water-to-add"), "SD-22": adjust("water-to-add"), "SD-23": adjust("new-volume"),
	"SD-24": adjust("water-to-remove"), "SD-25": adjust("powder-to-add"), "SD-26": adjust("volume-after-powder"),
	"PW-01": cardew, "PW-02": cardew, "PW-03": cardew, "PW-04": cardew, "PW-05": cardew, "PW-06": cardew,
	"PW-07": func(c check) float64 { return c.expected * c.in["P_oz"] / atGravity("pint-weight", c.expected, 2.6) },
	"PW-08": func(c check) float64 { return atGravity("pint-weight", 1+c.in["Tw"]/200, 2.6) },
	"PW-09": func(c check) float64 {
		return 1000 * output("slip-density", "specific-gravity", "mass", "26 oz", "volume", "1 imperial pint")
	},
	"PW-10": func(c check) float64 {
		return 30 / output("slip-density", "specific-gravity", "mass", "30 oz", "volume", "1 imperial pint")
	},
	"PW-12": func(c check) float64 {
		return 30 / output("slip-density", "specific-gravity", "mass", "30 oz", "volume", "1 US pint")
	},
	"PW-13": func(c check) float64 {
		return 16 * c.in["d"] / output("slip-density", "specific-gravity", "mass", "16 lb", "volume", "1 US gallon")
	},
	"BT-02": twaddellBack, "BT-04": twaddellBack, "BT-05": twaddellBack,
	"BT-03": func(c check) float64 { return atGravity("twaddell", c.in["sg"], 2.6) },
	"BT-22": func(c check) float64 { return atGravity("twaddell", c.in["sg"], 2.6) },
	"BT-06": baumeOf, "BT-07": baumeOf, "BT-08": baumeOf, "BT-09": baumeOf, "BT-10": baumeOf, "BT-11": baumeOf,
	"BT-12": baumeOf, "BT-13": baumeOf, "BT-14": baumeOf, "BT-15": baumeOf, "BT-16": baumeOf,
	"BT-17": func(c check) float64 { return c.expected * atGravity("baume", c.expected, 2.6) / c.in["B"] },
	"BT-23": func(c check) float64 {
		gravity := 145 / (145 - c.in["B"])
		return atGravity("twaddell", gravity, 2.6)
	},
	"WD-01": waterAt, "WD-02": waterAt, "WD-03": waterAt, "WD-04": waterAt, "WD-05": waterAt, "WD-06": waterAt,
	"WD-07": waterAt, "WD-08": waterAt, "WD-09": waterAt, "WD-10": waterAt, "WD-11": waterAt, "WD-12": waterAt,
	"WD-13": func(c check) float64 { return slip.WaterDensity(c.in["t_C"]) },
	"WD-14": func(c check) float64 { return slip.WaterDensity(c.in["t_C"]) },
	"WD-15": func(c check) float64 { return slip.WaterDensity(c.in["t_C"]) },
	"WD-16": func(c check) float64 { return slip.WaterDensity(c.in["t_C"]) },
	"WD-17": func(c check) float64 { return densest(c.expected) },
	"WD-18": func(c check) float64 {
		return output("slip-density", "specific-gravity", "mass", 100*c.in["density_g_mL"], "volume", "100", "temperature", "20")
	},
	"WD-19": func(check) float64 {
		warm := output("slip-density", "specific-gravity", "mass", "150", "volume", "100", "temperature", "25")
		return 100 * (1 - 1.5/warm)
	},
	"WD-20": func(c check) float64 { return slip.Dry(c.in["M_g"], c.in["V_mL"], c.in["rho_s"], c.in["rho_w"]) },
	"SD-03": func(c check) float64 { return c.in["D_kg"] * stainOver(c.in["pct"], 1.5, 2.6) },
	"SD-13": func(c check) float64 {
		// The thin batch of SD-08, thickened to the slip of SD-11.
		volume := c.in["D_kg"] * 1e6 / atGravity("dry-per-litre", 1.5, 2.5)
		return output("slip-adjust", "powder-to-add", "volume", volume, "from", "1.5", "to", "1.75", "solids-density", "2.5") / 1000
	},
	"SD-28": func(c check) float64 { return batch("dry-base", c) }, "SD-29": func(c check) float64 { return batch("water", c) },
	"SD-31": func(c check) float64 {
		clay := slip.Mixed(c.in["s_kaolin"], 100*c.in["w_quartz"]/c.in["w_kaolin"], c.in["s_quartz"])
		return slip.Mixed(clay, 100*c.in["w_feldspar"]/(c.in["w_kaolin"]+c.in["w_quartz"]), c.in["s_feldspar"])
	},
	"SD-32": func(c check) float64 {
		given := []any{"volume", "1 L", "specific-gravity", "1.5", "stain", c.in["w_stain"], "solids-density", c.in["s_clay"], "stain-density", c.in["s_stain"]}
		water := output("slip-batch", "water", given...)
		return (1500 - water) / (1000 - water)
	},
	"CO-01": func(c check) float64 { return c.in["base_g"] / baseShare(c.in["pct"]) },
	"CO-02": func(c check) float64 { return 100 * (1 - baseShare(c.in["pct"])) },
	"CO-03": func(c check) float64 { return c.in["total_g"] * baseShare(c.in["pct"]) },
	"CO-04": func(c check) float64 { return c.in["total_g"] * (1 - baseShare(c.in["pct"])) },
	"CO-05": func(c check) float64 { return c.expected * 100 * (1 - baseShare(c.expected)) / c.in["p"] },
	"CO-06": intoBucket, "CO-07": intoBucket,
	// A trap: a percentage taken on the wet mass is this many times too much.
	"CO-08": func(c check) float64 { return 100 / atGravity("solids-by-mass", c.in["d"], c.in["s"]) },
	"CO-14": func(c check) float64 {
		return output("wash-mix", "stain-by-mass", "volume", "100", "stain-parts", c.in["stain_g"], "flux-parts", c.in["frit_g"], "water-parts", c.in["water_g"])
	},
	"CO-15": func(c check) float64 {
		return output("wash-mix", "density", "volume", "100", "stain-parts", c.in["stain_g"], "flux-parts", c.in["frit_g"], "water-parts", c.in["water_g"], "stain-density", c.in["s_stain"], "flux-density", c.in["s_frit"])
	},
	"CO-17": func(c check) float64 {
		return output("wash-dilute", "new-volume", "volume", c.in["V1_mL"], "from", c.in["C1"], "to", c.in["C2"])
	},
	"CO-18": func(c check) float64 {
		return output("wash-dilute", "water-to-add", "volume", c.in["V1_mL"], "from", c.in["C1"], "to", c.in["C2"])
	},
	"CO-19": func(c check) float64 { return cup(2, 40, 1.25, 6) }, "CO-20": func(c check) float64 { return cup(3, 40, 1.25, 6) },
	"CO-21": func(c check) float64 { return cup(4, 40, 1.25, 6) }, "CO-22": func(c check) float64 { return cup(5, 40, 1.25, 6) },
	"CO-23": func(c check) float64 { return cup(6, 40, 1.25, 6) }, "CO-24": func(c check) float64 { return cup(4, 32, 0.5, 4) },
	"CO-26": func(c check) float64 { return 100 - mix(c, "high", "100") }, "CO-27": func(c check) float64 { return 100 - mix(c, "high", "100") },
	"CO-28": func(c check) float64 { return mix(c, "high", c.in["hi"]) },
	"CO-29": func(c check) float64 {
		rows := plan("kind", "doubling", "points", c.in["N"], "low", c.in["lo"])
		if rows[4][1].Value != c.in["hi"] {
			return math.NaN()
		}
		return rows[1][1].Value / rows[0][1].Value
	},
	"CO-30": blends(3, 0), "CO-31": blends(3, 0), "CO-32": blends(3, 0), "CO-33": blends(3, 0), "CO-34": blends(3, 0), "CO-35": blends(3, 0), "CO-36": blends(3, 0),
	"CO-37": func(c check) float64 {
		rows := triaxial(c)
		return rows[0][1].Value - rows[1][1].Value
	},
	"CO-38": blends(3, 3), "CO-39": blends(2, 0),
	// A grid is a line whose every mix is tried in so many coats.
	"CO-41": func(c check) float64 {
		return output("tile-plan", "tiles", "points", c.in["rows"], "low", "0", "high", "10", "base", "100", "coats", c.in["cols"])
	},
	"SH-01": func(c check) float64 {
		return output("shrinkage-test", "drying", "plastic", c.in["Lp_mm"], "dry", c.in["Ld_mm"], "fired", c.in["Ld_mm"])
	},
	"SH-02": total("Lp_mm", "Lf_mm"), "SH-08": total("Lp", "Lf"), "SH-09": total("Lp", "Lf"), "SH-10": total("Lp", "Lf"),
	"SH-03": func(c check) float64 {
		return output("shrinkage-test", "firing", "plastic", "100", "dry", c.in["Ld_mm"], "fired", c.in["Lf_mm"])
	},
	"SH-04": func(c check) float64 {
		return output("shrinkage-test", "firing-plastic", "plastic", "100", "dry", 100-c.in["Sd"], "fired", 100-c.in["St"])
	},
	// Two of these are traps: percentages on two lengths added would be more.
	"SH-05": compounded, "SH-06": compounded, "SH-07": compounded,
	"SH-11": func(c check) float64 {
		return output("shrinkage-size", "fired-size", "shrinkage", c.in["S"], "wet-size", c.in["wet_in"])
	},
	"SH-12": fresh, "SH-13": fresh, "SH-14": fresh, "SH-15": fresh, "SH-16": fresh,
	"SH-17": func(c check) float64 {
		return output("shrinkage-size", "enlargement", "shrinkage", c.in["S"], "wet-size", "100")
	},
	// A trap: a size made larger by the shrinkage itself fires too small.
	"SH-18": func(c check) float64 {
		return output("shrinkage-size", "fired-size", "shrinkage", c.in["S"], "wet-size", c.in["fired"]*(1+c.in["S"]/100))
	},
	"SH-19": volumeOf, "SH-20": volumeOf, "SH-21": volumeOf, "SH-22": volumeOf, "SH-23": volumeOf, "SH-24": volumeOf, "SH-25": volumeOf,
	"SH-26": func(c check) float64 { return 10 + (c.in["Sv"]-shrinkage.Volume(10))/3 },
	"SH-27": func(c check) float64 {
		return output("shrinkage-size", "capacity-wet", "shrinkage", c.in["S"], "capacity-fired", c.in["fired_mL"])
	},
	"SH-28": func(c check) float64 {
		return output("shrinkage-size", "capacity-fired", "shrinkage", c.in["S"], "capacity-wet", c.in["wet_mL"])
	},
	"SH-30": remaining, "SH-31": remaining, "SH-32": remaining,
	"SH-33": func(c check) float64 {
		return output("slip-fit", "mismatch", "body", c.in["S_rem_body"], "body-so-far", "0", "slip", c.in["S_slip"])
	},
	"MO-01": func(c check) float64 { return 100 * waterOverDry(c.in["w_pct"]) },
	"MO-02": func(c check) float64 { return c.expected * 100 * waterOverDry(c.expected) / c.in["m_pct"] },
	"MO-03": func(c check) float64 {
		return output("clay-colour", "dry-clay", "clay", c.in["M_g"], "clay-water", c.in["w_pct"], "stain", "0")
	},
	"MO-04": func(c check) float64 {
		given := []any{"volume", "1 L", "specific-gravity", "1.45", "clay-water", c.in["w_pct"]}
		return c.in["D_g"] * output("slip-batch", "clay-to-weigh", given...) / output("slip-batch", "dry-base", given...)
	},
	"SH-34": func(c check) float64 {
		return output("shrinkage-size", "template-scale", "shrinkage", c.in["S"], "wet-size", "100")
	},
	"SD-27": poured("specific-gravity"), "BM-01": poured("first-share"), "BM-03": poured("stain"),
	"BM-02": func(c check) float64 {
		two := output("bucket-mix", "specific-gravity", "first-gravity", c.in["d1"], "first-volume", c.in["V1_mL"], "second-gravity", c.in["d2"], "second-volume", c.in["V2_mL"])
		return slip.Joined(c.in["V1_mL"]+c.in["V2_mL"], two, c.in["V3_mL"], c.in["d3"])
	},
	"RC-01": func(c check) float64 { return recipeOf("base-mass")(c) / 1000 },
	"RC-02": func(c check) float64 {
		given := []any{"parts", "100", "additions", c.in["pct"], "which", "1", "have", number(c.in["D_kg"]) + " kg"}
		return output("recipe-scale", "additions-mass", given...) / 1000
	},
	"RC-03": recipeOf("dry-total"), "RC-04": recipeOf("water"), "RC-05": recipeOf("base-mass"), "RC-06": recipeOf("additions-mass"),
	"RC-07": recipeOf("water"), "RC-08": recipeOf("water"), "RC-09": recipeOf("base-mass", "which", "4"),
	"TU-01": topped("dry-left"), "TU-02": topped("water-gone"), "TU-03": topped("water-to-add"), "TU-04": topped("water-to-remove"),
	"TU-05": topped("base-to-add"), "TU-06": topped("base-to-add"), "TU-07": topped("water-to-add"),
	"CO-42": halfByVolume, "WB-01": halfByVolume, "CO-43": matchingVolume, "WB-02": matchingVolume,
	"UC-01": doubt, "UC-02": doubt,
	"UC-04": func(c check) float64 { return slip.Doubt{Tolerance: c.in["a"]}.ByVolume(1, 1, 1) },
	"UC-05": func(c check) float64 { return slip.Doubt{Resolution: c.in["r"]}.ByVolume(1, 1, 1) },
	"UC-09": func(c check) float64 {
		high := output("slip-density", "specific-gravity-high", "mass", "150", "volume", "100")
		u := output("slip-density", "specific-gravity-u", "mass", "150", "volume", "100")
		return (high - 1.5) / u * c.in["u"]
	},
	"ED-01": func(c check) float64 {
		return output("slip-density", "dry-content", "mass", "100", "volume", "100", "solids-density", "2.5")
	},
	"ED-02": func(c check) float64 { return atGravity("water-per-litre", c.in["d"], c.in["s"]) },
	"ED-03": adjust("water-to-add"),
	"ED-04": fresh,
	"ED-05": func(c check) float64 {
		thin := (c.in["V_mL"]*c.in["d"] + c.in["w_mL"]) / (c.in["V_mL"] + c.in["w_mL"])
		removed := output("slip-adjust", "water-to-remove", "volume", c.in["V_mL"]+c.in["w_mL"], "from", thin, "to", c.in["d"])
		return c.in["d"] * removed / c.in["w_mL"]
	},
	"ED-06": func(c check) float64 {
		return atGravity("dry-per-litre", c.in["d"], c.in["s"])/c.in["s"] + atGravity("water-per-litre", c.in["d"], c.in["s"])
	},
	"CV-01": func(c check) float64 {
		return coat("area", c.in["width_mm"], c.in["width_mm"], c.in["height_mm"])
	},
	"CV-02": func(c check) float64 {
		return coat("area", 2*c.in["R_mm"], 2*c.in["r_mm"], c.in["h_mm"])
	},
	"CV-03": func(c check) float64 {
		return output("coverage", "each", "area", c.in["area_cm2"], "thickness", c.in["wet_mm"])
	},
	"CV-04": spread, "CV-05": spread,
	"CV-06": func(c check) float64 {
		return output("coverage", "dry-coat", "area", "100", "thickness", c.in["wet_mm"], "specific-gravity", c.in["d"], "solids-density", c.in["s"])
	},
	"CV-07": func(c check) float64 {
		return output("coverage", "coat", "area", c.in["area_cm2"], "before", "300", "after", 300+c.in["gain_g"], "specific-gravity", c.in["d"])
	},
	"FL-01": func(c check) float64 {
		return output("flow-log", "flow-ratio", "slip-seconds", c.in["slip_s"], "water-seconds", c.in["water_s"])
	},
	"FL-02": func(c check) float64 {
		return output("flow-log", "gelling", "slip-seconds", c.in["stirred_s"], "water-seconds", "26", "rested-seconds", c.in["rested_s"])
	},
	"FL-03": dose, "FL-04": dose, "FL-05": dose, "FL-06": dose,
	"DW-01": overDry, "DW-02": overDry, "DW-03": overDry, "DW-04": overDry,
	"DW-05": func(c check) float64 {
		return output("clay-water", "dry-clay", "clay-water", c.in["w_pct"], "clay", c.in["M_g"])
	},
	"DW-06": func(c check) float64 {
		return output("clay-water", "water-to-add", "clay-water", c.in["w_pct"], "clay", c.in["M_g"], "to", c.in["w2_pct"])
	},
	"DW-07": func(c check) float64 {
		return output("clay-water", "loss-a-day", "earlier", c.in["M1_g"], "later", c.in["M2_g"], "hours", c.in["h"])
	},
	"AB-01": func(c check) float64 { return firedTile("absorption", c) },
	"AB-02": func(c check) float64 { return 100 / firedTile("bulk-density", c) },
	"AB-03": func(c check) float64 { return firedTile("absorption", c) * c.in["D_g"] / 100 },
	"AB-04": func(c check) float64 { return firedTile("porosity", c) },
	"AB-05": func(c check) float64 { return firedTile("bulk-density", c) },
	"AB-06": func(c check) float64 { return firedTile("apparent-gravity", c) },
	"AB-07": func(c check) float64 {
		c.in["D_g"], c.in["M_g"] = 100, 100+c.in["A"]
		c.in["S_g"] = c.in["M_g"] - 100/c.in["B"]
		return firedTile("porosity", c)
	},
}

// elsewhere says why a row is no affair of these calculators.
var elsewhere = map[string]string{
	"SD-02": "a product of two printed figures", "SD-12": "a difference of two printed figures",
	"SD-30": "a derivative", "PW-11": "weighing in air",
	"BT-01": "another modulus of Baumé", "BT-18": "another modulus of Baumé", "BT-19": "another modulus of Baumé", "BT-20": "another modulus of Baumé", "BT-21": "another modulus of Baumé",
	"CO-09": "an underglaze recipe", "CO-10": "an underglaze recipe", "CO-11": "an underglaze recipe", "CO-12": "an underglaze recipe", "CO-13": "an underglaze recipe",
	"CO-16": "spoons and cups of powder are refused", "CO-25": "a logarithm", "CO-40": "no calculator blends four mixes",
	"CO-44": "oxides", "CO-45": "oxides", "CO-46": "oxides", "CO-47": "oxides",
	"SH-29": "no calculator gives areas", "SH-35": "the bars themselves give the doubt",
	"MO-05": "what clay loses in the fire", "CN-*": "cones", "CS-*": "cones", "CL-*": "cones", "CF-*": "cones", "CG-*": "cones",
	"TC-*": "temperatures of kilns", "UN-*": "checked in package quantity", "UC-03": "a sum of errors no calculator shows", "UC-06": "a derivative", "UC-07": "a derivative", "UC-08": "a derivative",
}

// find looks an id up, exact before beginning.
func find[T any](table map[string]T, id string) (T, bool) {
	if v, ok := table[id]; ok {
		return v, true
	}
	v, ok := table[id[:3]+"*"]
	if !ok {
		v, ok = table[id[:4]+"*"]
	}
	return v, ok
}

// TestEveryCheckHasItsRow wants what is said of rows to be of rows that stand in
// the file.
func TestEveryCheckHasItsRow(t *testing.T) {
	rows := checks(t)
	for _, id := range append(slices.Collect(maps.Keys(covered)), slices.Collect(maps.Keys(elsewhere))...) {
		beginning, many := strings.CutSuffix(id, "*")
		if !slices.ContainsFunc(rows, func(c check) bool { return c.id == id || many && strings.HasPrefix(c.id, beginning) }) {
			t.Errorf("there is no row %s: write it into testdata/published/mixing-checks.csv, with its source", id)
		}
	}
}

// TestPublished runs every row of the published check values that these
// calculators cover, and fails on a row that nobody claims.
func TestPublished(t *testing.T) {
	ran := 0
	for _, c := range checks(t) {
		reckon, ours := find(covered, c.id)
		if _, not := find(elsewhere, c.id); not == ours {
			t.Errorf("row %s (%s): write either into covered how it is reckoned, or into elsewhere why it is not", c.id, c.topic)
		}
		if !ours {
			continue
		}
		ran++
		if c.id >= "CO-19" && c.id <= "CO-24" && c.topic != "serial-dilution" {
			t.Errorf("row %s: moved", c.id)
		}
		if got := reckon(c); !(math.Abs(got-c.expected) <= c.tolerance+1e-12) {
			t.Errorf("row %s: got %v, published %v ± %v\n\t%s (%s)", c.id, got, c.expected, c.tolerance, c.source, c.status)
		}
	}
	if ran < 100 {
		t.Errorf("only %d rows ran", ran)
	}
}

// densest returns a temperature when the density of water falls on both sides
// of it, and is there what Tanaka's paper names the largest; else NaN.
func densest(celsius float64) float64 {
	top := slip.WaterDensity(celsius)
	if top > slip.WaterDensity(celsius-1e-3) && top > slip.WaterDensity(celsius+1e-3) && math.Abs(1000*top-999.974950) < 1e-9 {
		return celsius
	}
	return math.NaN()
}
