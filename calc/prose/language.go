package prose

import (
	"strings"

	"acreleaf/calc/unit"
)

// A Language has the words that numbers and units are said in.
type Language struct {
	numbers    map[string]float64 // one to nineteen, and the tens
	scales     map[string]float64 // hundred, thousand
	fractions  map[string]float64 // half, third: what one is divided by
	halves     []string           // fractions that a unit may follow at once: half an inch
	units      map[string]string  // words of a unit, and its symbol
	below      map[string]string  // what only stands below a line: tree, hour
	measures   map[string]string  // units that are of the trade only where a page works with them: hp, trees
	longer     map[string]string  // times that no rate is told by: month
	often      []string           // before "a month" they make a rate of it: once, times
	lasting    []string           // between a count and "a month" they keep the two apart: for, before
	substance  map[string]string
	joining    []string // between the two lengths of a spacing, also with dashes: 12-by-18-foot
	named      []string // before a number they make it a name, or a plain number: row 12, May 4, multiply 2
	per        []string // "per", "for each"; the symbols of what is below follow
	perEach    []string // those of per with a word for each: "for every" 100 gal
	each       []string // before an amount they say what it is for: "each tree"
	of         []string
	pointing   []string          // between "of" and a substance: this, the
	to         []string          // between the two numbers of a range
	comma      bool              // a comma parts the decimals: 12,5
	and        string            // between a number and its fraction
	between    string            // a range after it is joined by and
	articles   []string          // between a fraction and its unit
	offers     []string          // after a percentage they make it one of daily life: a 20 percent discount
	fillers    map[string]string // what may stand between a number and its unit: more, full, or so
	adjective  []string          // after a unit, before what goes on with it: libras netas de nitrógeno
	things     []string          // after a unit they make a name of a thing: a 5-gallon bucket
	doses      []string          // after a unit that hangs on its number they make no name: a 2-inch irrigation
	indefinite map[string]bool   // a, an
	bareHalf   bool              // a unit by itself may be one of it: "libra y media"
	hedges     []string          // before one of a unit they tell how near it is: nearly a pound
	people     []string          // a percentage of them is no figure of the trade

	perWords map[string]string // those of per, for match
	starts   [4096]bool        // by the mark of a word: whether a number may begin with it
	goesOn   map[string]bool   // the words that a unit may go on with
	follows  map[string]bool   // the words that may stand after the first word or the digits of an amount
	counted  map[string]bool   // the words that an article may make an amount of
	nexts    [4096]bool        // by the mark of a word: whether it may be one of these
}

// For gives the language of a code. For a language whose words are not known here it knows symbols and digits.
func For(code string) *Language {
	switch code {
	case "en":
		return English
	case "es":
		return Spanish
	}
	return symbolsOnly
}

// Points writes the decimal commas of a text as points where the language has them: 12,5 is 12.5. Each character keeps
// its place.
func (l *Language) Points(text string) string {
	if !l.comma {
		return text
	}
	return unit.PointDecimals(text)
}

// MisplacesComma says whether a text has a decimal comma, and its language none.
func (l *Language) MisplacesComma(text string) bool { return !l.comma && unit.HasDecimalComma(text) }

var symbolsOnly = (&Language{units: symbols(), below: symbolsBelow(), substance: substances(),
	per: []string{"per"}}).ready()

// symbols are the units of the trade as every language writes them.
func symbols() map[string]string {
	return table("lb lb lbs|oz oz|ton ton tons|kg kg|g g|mg mg|t t|in in|ft ft|yd yd|m m|cm cm|mm mm|" +
		"ac ac|ha ha|ft2 ft2 ft² sq_ft|m2 m2 m²|ft3 ft3 ft³ cu_ft|yd3 yd3 yd³ cu_yd|m3 m3 m³|gal gal gals|qt " +
		"qt qts|pt pt pts|floz floz fl_oz|tbsp tbsp|tsp tsp|L L l|mL mL ml cc|ac-in ac_in|ac-ft ac_ft acre_ft AF|" +
		"bu bu|ppm ppm|ppb ppb|% % pct|$ USD|gpm gpm|gph gph|cfs cfs|mi mi|km km|mi/h mph")
}

// symbolsOfMachines are the units of pumps, pressure and salts as every language writes them.
func symbolsOfMachines() map[string]string { return table("hp hp HP|kW kW|kWh kWh|psi psi|kPa kPa") }

// salts are units of electric conductivity, which are no words.
var salts = []string{"dS/m", "mS/cm", "uS/cm", "mmho/cm"}

func symbolsBelow() map[string]string { return table("h h|min min|s s") }

func substances() map[string]string {
	return table("N N total_N|NO3 NO3 NO₃|NO3-N NO3_N NO₃_N|NH3 NH3 NH₃|NH4 NH4 NH₄|NH4-N NH4_N NH₄_N|K K|" +
		"K2O K2O K₂O|P P|P2O5 P2O5 P₂O₅|S S|Ca Ca|product UAN CAN")
}

// table reads "symbol word word|symbol word"; an underline stands for a space in a word.
func table(text string) map[string]string {
	index := map[string]string{}
	for _, line := range strings.Split(text, "|") {
		fields := strings.Fields(line)
		for _, w := range fields[1:] {
			index[strings.ReplaceAll(w, "_", " ")] = fields[0]
		}
	}
	return index
}

// words makes a table of words alone.
func words(text string) map[string]string {
	index := map[string]string{}
	for _, w := range strings.Fields(text) {
		w = strings.ReplaceAll(w, "_", " ")
		index[w] = w
	}
	return index
}

// with adds a table to another.
func with(index map[string]string, text string) map[string]string {
	for w, symbol := range table(text) {
		index[w] = symbol
	}
	return index
}

// needsBelow are units that are of the trade only as a rate: trees an acre, miles an hour, cups a tree.
func needsBelow(symbol string) bool {
	return symbol == "tree" || symbol == "emitter" || symbol == "mi" || symbol == "km" || symbol == "cup"
}
