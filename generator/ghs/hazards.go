package ghs

// The two signal words of the standard. Danger is the graver.
const (
	Danger  = "Danger"
	Warning = "Warning"
)

// either stands in the table for a signal word that only the category tells: the
// graver one is meant, the other is no contradiction.
const either = "either"

// hazards holds the hazard statements that can stand on the sheets of a studio:
// of earths, oxides, salts, stains, lusters, solvents, sprays and fuel gas.
var hazards = []statement{
	{"H220", Danger, "GHS02", physical, "Extremely flammable gas"},
	{"H222", Danger, "GHS02", physical, "Extremely flammable aerosol"},
	{"H223", Warning, "GHS02", physical, "Flammable aerosol"},
	{"H224", Danger, "GHS02", physical, "Extremely flammable liquid and vapor"},
	{"H225", Danger, "GHS02", physical, "Highly flammable liquid and vapor"},
	{"H226", Warning, "GHS02", physical, "Flammable liquid and vapor"},
	{"H227", Warning, "", physical, "Combustible liquid"},
	{"H228", either, "GHS02", physical, "Flammable solid"},
	// Of aerosols that burn, H222 or H223 brings the flame.
	{"H229", Warning, "", physical, "Pressurized container: may burst if heated"},
	{"H270", Danger, "GHS03", physical, "May cause or intensify fire; oxidizer"},
	{"H271", Danger, "GHS03", physical, "May cause fire or explosion; strong oxidizer"},
	{"H272", either, "GHS03", physical, "May intensify fire; oxidizer"},
	{"H280", Warning, "GHS04", physical, "Contains gas under pressure; may explode if heated"},
	{"H290", Warning, "GHS05", physical, "May be corrosive to metals"},

	{"H300", Danger, "GHS06", eaten, "Fatal if swallowed"},
	{"H301", Danger, "GHS06", eaten, "Toxic if swallowed"},
	{"H302", Warning, "GHS07", eaten, "Harmful if swallowed"},
	{"H303", Warning, "", eaten, "May be harmful if swallowed"},
	{"H304", Danger, "GHS08", eaten, "May be fatal if swallowed and enters airways"},
	{"H305", Warning, "GHS08", eaten, "May be harmful if swallowed and enters airways"},
	{"H310", Danger, "GHS06", touched, "Fatal in contact with skin"},
	{"H311", Danger, "GHS06", touched, "Toxic in contact with skin"},
	{"H312", Warning, "GHS07", touched, "Harmful in contact with skin"},
	{"H313", Warning, "", touched, "May be harmful in contact with skin"},
	{"H314", Danger, "GHS05", burning, "Causes severe skin burns and eye damage"},
	{"H315", Warning, "GHS07", irritating, "Causes skin irritation"},
	{"H316", Warning, "", irritating, "Causes mild skin irritation"},
	{"H317", Warning, "GHS07", skinAllergy, "May cause an allergic skin reaction"},
	{"H318", Danger, "GHS05", irritating, "Causes serious eye damage"},
	{"H319", Warning, "GHS07", irritating, "Causes serious eye irritation"},
	{"H320", Warning, "", irritating, "Causes eye irritation"},
	{"H330", Danger, "GHS06", breathed, "Fatal if inhaled"},
	{"H331", Danger, "GHS06", breathed, "Toxic if inhaled"},
	{"H332", Warning, "GHS07", breathed, "Harmful if inhaled"},
	{"H333", Warning, "", breathed, "May be harmful if inhaled"},
	{"H334", Danger, "GHS08", lungAllergy, "May cause allergy or asthma symptoms or breathing difficulties if inhaled"},
	{"H335", Warning, "GHS07", airways, "May cause respiratory irritation"},
	{"H336", Warning, "GHS07", airways, "May cause drowsiness or dizziness"},
	{"H340", Danger, "GHS08", lasting, "May cause genetic defects"},
	{"H341", Warning, "GHS08", lasting, "Suspected of causing genetic defects"},
	{"H350", Danger, "GHS08", lasting, "May cause cancer"},
	{"H350i", Danger, "GHS08", lasting, "May cause cancer by inhalation"},
	{"H351", Warning, "GHS08", lasting, "Suspected of causing cancer"},
	{"H360", Danger, "GHS08", lasting, "May damage fertility or the unborn child"},
	{"H360F", Danger, "GHS08", lasting, "May damage fertility"},
	{"H360D", Danger, "GHS08", lasting, "May damage the unborn child"},
	{"H360FD", Danger, "GHS08", lasting, "May damage fertility. May damage the unborn child"},
	{"H360Fd", Danger, "GHS08", lasting, "May damage fertility. Suspected of damaging the unborn child"},
	{"H360Df", Danger, "GHS08", lasting, "May damage the unborn child. Suspected of damaging fertility"},
	{"H361", Warning, "GHS08", lasting, "Suspected of damaging fertility or the unborn child"},
	{"H361f", Warning, "GHS08", lasting, "Suspected of damaging fertility"},
	{"H361d", Warning, "GHS08", lasting, "Suspected of damaging the unborn child"},
	{"H361fd", Warning, "GHS08", lasting, "Suspected of damaging fertility. Suspected of damaging the unborn child"},
	{"H362", "", "", lasting, "May cause harm to breast-fed children"},
	{"H370", Danger, "GHS08", lasting, "Causes damage to organs"},
	{"H371", Warning, "GHS08", lasting, "May cause damage to organs"},
	{"H372", Danger, "GHS08", lasting, "Causes damage to organs through prolonged or repeated exposure"},
	{"H373", Warning, "GHS08", lasting, "May cause damage to organs through prolonged or repeated exposure"},

	{"H400", Warning, "GHS09", nature, "Very toxic to aquatic life"},
	{"H401", "", "", nature, "Toxic to aquatic life"},
	{"H402", "", "", nature, "Harmful to aquatic life"},
	{"H410", Warning, "GHS09", nature, "Very toxic to aquatic life with long lasting effects"},
	{"H411", "", "GHS09", nature, "Toxic to aquatic life with long lasting effects"},
	{"H412", "", "", nature, "Harmful to aquatic life with long lasting effects"},
	{"H413", "", "", nature, "May cause long lasting harmful effects to aquatic life"},
	{"H420", Warning, "GHS07", nature, "Harms public health and the environment by destroying ozone in the upper atmosphere"},

	// What only Europe asks for bears neither a signal word nor a pictogram.
	{"EUH029", "", "", airways, "Contact with water liberates toxic gas"},
	{"EUH031", "", "", airways, "Contact with acids liberates toxic gas"},
	{"EUH032", "", "", airways, "Contact with acids liberates very toxic gas"},
	{"EUH066", "", "", irritating, "Repeated exposure may cause skin dryness or cracking"},
	{"EUH070", "", "", irritating, "Toxic by eye contact"},
	{"EUH071", "", "", airways, "Corrosive to the respiratory tract"},
	{"EUH201", "", "", note, "Contains lead. Should not be used on surfaces liable to be chewed or sucked by children"},
	{"EUH201A", "", "", note, "Warning! Contains lead"},
	{"EUH203", "", "", skinAllergy, "Contains chromium (VI). May produce an allergic reaction"},
	{"EUH207", "", "", airways, "Warning! Contains cadmium. Dangerous fumes are formed during use. See information supplied by the manufacturer. Comply with the safety instructions"},
	// It is said of what makes the skin allergic and of what makes the lungs so.
	{"EUH208", "", "", airways, "Contains a sensitizing substance. May produce an allergic reaction"},
	{"EUH210", "", "", note, "Safety data sheet available on request"},
}
