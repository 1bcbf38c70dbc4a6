package said

import "strings"

// A Language has the words that numbers and units are said in.
type Language struct {
	numbers   map[string]float64 // one to nineteen, and the tens
	scales    map[string]float64 // hundred, thousand
	fractions map[string]float64 // half, third: what one is divided by
	halves    []string           // fractions that a unit may follow at once: half an inch
	units     map[string]string  // words of a unit, and its symbol
	below     map[string]string  // what only stands below a line: tree, hour
	substance map[string]string
	per       []string // "per", "for each"; the symbols of what is below follow
	of        []string
	pointing  []string // between "of" and a substance: this, the
	to        []string // between the two numbers of a range
	and       string   // between a number and its fraction
	between   string   // a range after it is joined by and
	articles  []string // between a fraction and its unit
	between2  []string // words between a number and its unit: more, full
	things    []string // after a unit they make a name of a thing: a 5-gallon bucket

	starts [256]uint32 // by the first letter of a word that a number may begin with: its lengths, one bit each
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

var symbolsOnly = (&Language{units: symbols(), below: symbolsBelow(), substance: substances(), per: []string{}}).ready()

// ready makes the table that lets a reader pass over most words with one look.
func (l *Language) ready() *Language {
	for _, words := range []map[string]float64{l.numbers, l.fractions} {
		for w := range words {
			l.starts[w[0]] |= 1 << min(len(w), 31)
			l.starts[w[0]-'a'+'A'] |= 1 << min(len(w), 31)
		}
	}
	return l
}

// symbols are the units of the trade as every language writes them.
func symbols() map[string]string {
	return table("lb lb lbs|oz oz|kg kg|g g|mg mg|t t|in in|ft ft|m m|cm cm|mm mm|ac ac|ha ha|ft2 ft2 ft²|m2 m2 m²|" +
		"gal gal|qt qt|pt pt|floz floz fl_oz|L L l|mL mL ml|ac-in ac_in|ac-ft ac_ft|ppm ppm|ppb ppb|% %|gpm gpm|gph gph|" +
		"cfs cfs|mi mi|km km|mi/h mph")
}

func symbolsBelow() map[string]string { return table("h h|min min|s s") }

func substances() map[string]string {
	return table("N N|NO3 NO3|NO3-N NO3_N|NH4 NH4|NH4-N NH4_N|K K|K2O K2O|P P|P2O5 P2O5|S S|Ca Ca|product UAN CAN")
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

// with adds a table to another.
func with(index map[string]string, text string) map[string]string {
	for w, symbol := range table(text) {
		index[w] = symbol
	}
	return index
}

// needsBelow are units that are of the trade only as a rate: trees an acre, miles an hour.
func needsBelow(symbol string) bool {
	return symbol == "tree" || symbol == "emitter" || symbol == "mi" || symbol == "km"
}
