package prose

import "strings"

// A class is what units measure, or what the grammar may do with them.
type class uint16

const (
	areaUnit class = 1 << iota
	lengthUnit
	distanceUnit // so long that it is of the trade only as a speed
	volumeUnit
	layerUnit // water over an area
	massUnit
	moneyUnit
	nominalUnit // "units" of nitrogen, which are pounds
	shareUnit
	timeUnit
	pieceUnit  // a thing that is counted, and that a rate may be for
	rateOnly   // of the trade only as a rate: trees an acre, miles an hour, cups a tree
	doseUnit   // a feed is weighed or poured by it
	fieldBase  // what a rate is for in any sentence, without a word such as "per" to say so
	flowBase   // the time in which water runs
	columnHead // short, and still the unit of a column by itself: "lb", but not "in" or "g"
)

// classes gives the units of each class by their symbols in calc/unit. A unit may be in several.
var classes = []struct {
	class   class
	symbols string
}{
	{areaUnit, "ac ha ft2 m2"},
	{lengthUnit, "in ft yd m cm mm"},
	{distanceUnit, "mi km"},
	{volumeUnit, "gal qt pt cup floz tbsp tsp L mL ft3 yd3 m3 bu"},
	{layerUnit, "ac-in ac-ft"},
	{massUnit, "lb oz ton kg g mg t"},
	{moneyUnit, "$ cent"},
	{nominalUnit, "unit"},
	{shareUnit, "% ppm ppb"},
	{timeUnit, "h min s day week"},
	{pieceUnit, "tree emitter"},
	{rateOnly, "tree emitter mi km cup"},
	{doseUnit, "lb oz ton kg g gal qt L"},
	{fieldBase, "ac ha tree"},
	{flowBase, "h min s"},
	{columnHead, "% lb oz ft"},
}

// sizeUnit is what a size is told in.
const sizeUnit = areaUnit | lengthUnit | distanceUnit | volumeUnit | layerUnit | massUnit

// A symbol is a unit as calc/unit writes it, with its classes.
type symbol struct {
	name  string
	class class
}

// The units with rules of their own.
var (
	plain     = symbolOf("1") // of a rate that leaves its unit out: 48 per acre
	acre      = symbolOf("ac")
	hectare   = symbolOf("ha")
	tree      = symbolOf("tree")
	pound     = symbolOf("lb")
	inch      = symbolOf("in")
	foot      = symbolOf("ft")
	milligram = symbolOf("mg")
	percent   = symbolOf("%")
	dollar    = symbolOf("$")
	cent      = symbolOf("cent") // counted as money: 0.01 $
)

// product is the substance of a material, whatever its name.
const product = "product"

// materialSubstances are no nutrients: their names tell what an amount is of.
var materialSubstances = set("product lime kernels")

// symbols are all symbols by their names.
var symbols = func() map[string]*symbol {
	all := map[string]*symbol{}
	for _, c := range classes {
		for name := range strings.FieldsSeq(c.symbols) {
			if all[name] == nil {
				all[name] = &symbol{name: name}
			}
			all[name].class |= c.class
		}
	}
	return all
}()

// symbolOf gives the symbol of a name. One in no class is made here.
func symbolOf(name string) *symbol {
	if symbols[name] == nil {
		symbols[name] = &symbol{name: name}
	}
	return symbols[name]
}

// is says whether a unit is in one of some classes. No unit is in none.
func (s *symbol) is(c class) bool { return s != nil && s.class&c != 0 }

// Every language writes these units and substances as they are here: the symbol, and what people write for it. An
// underline is a space.
const (
	commonUnits = "lb lb lbs|oz oz|ton ton tons|kg kg|g g|mg mg|t t|in in|ft ft|yd yd|m m|cm cm|mm mm|ac ac|ha ha|" +
		"ft2 ft2 ft² sq_ft|m2 m2 m²|ft3 ft3 ft³ cu_ft|yd3 yd3 yd³ cu_yd|m3 m3 m³|gal gal gals|qt qt qts|pt pt pts|" +
		"floz floz fl_oz|tbsp tbsp|tsp tsp|L L l|mL mL ml cc|ac-in ac_in|ac-ft ac_ft acre_ft AF|bu bu|ppm ppm|" +
		"ppb ppb|% % pct|$ USD|gpm gpm|gph gph|cfs cfs|mi mi|km km|mi/h mph"
	commonBases      = "h h|min min|s s"
	commonMeasures   = "hp hp HP|kW kW|kWh kWh|psi psi|kPa kPa"
	commonSubstances = "N N total_N|NO3 NO3 NO₃|NO3-N NO3_N NO₃_N|NH3 NH3 NH₃|NH4 NH4 NH₄|NH4-N NH4_N NH₄_N|K K|" +
		"K2O K2O K₂O|P P|P2O5 P2O5 P₂O₅|S S|Ca Ca|product UAN CAN"
	acreBelow = "A" // an acre, but only after a stroke: 2 qt/A
)

// materials are short names of materials whose numbers are their nitrogen: UAN-32, AN-20. Some need no number.
var materials = map[string]bool{"UAN": true, "CAN": true, "AN": false, "UN": false}

const materialInitials = "ACU"

// conductivities are units of salts in water, which are no words.
var conductivities = []string{"dS/m", "mS/cm", "uS/cm", "mmho/cm"}

// times is the letter between two numbers of a spacing: 12x18 ft.
const times = 'x'

// signUnits are the units that are a sign right after their number. A sign that also closes a quotation is no unit
// where a quotation is open.
var signUnits = []struct {
	sign, opening string
	unit          *symbol
	anywhere      bool // also after a space, or a word
}{
	{sign: "#", unit: pound, anywhere: true},
	{sign: "¢", unit: cent, anywhere: true},
	{sign: "″", unit: inch},
	{sign: "′", unit: foot},
	{sign: `"`, opening: `"`, unit: inch},
	{sign: "”", opening: "“", unit: inch},
	{sign: "'", opening: "'", unit: foot},
	{sign: "’", opening: "‘", unit: foot},
}
