package unit

import (
	"math/big"
	"strings"
)

// A kind is what a symbol measures by itself, which decides what may be said after it and how a message names it.
type kind uint8

const (
	ratio     kind = iota // %, ppm: a share of something
	molarKind             // mmol/L: a share of something by its count of molecules
	lengthKind
	areaKind
	volumeKind
	massKind
	timeKind
	flowKind
	moneyKind
	countKind   // trees, emitters, feeds
	accountKind // fed, taken up, present
)

// A symbol is one known unit.
type symbol struct {
	name      string
	kind      kind
	dimension Dimension
	scale     *big.Rat // in the SI unit of its dimension; 1 for what SI does not measure
}

// A definition says what a symbol is worth in symbols defined before it.
type definition struct {
	name   string
	kind   kind
	amount string // a decimal or a fraction, exact
	of     string // "in", "ft3", "gal/min"; empty for a plain number
}

// roots are the symbols that the others are defined by.
var roots = []symbol{
	{"m", lengthKind, length.of(1), rational("1")},
	{"kg", massKind, mass.of(1), rational("1")},
	{"s", timeKind, time.of(1), rational("1")},
	{"$", moneyKind, money.of(1), rational("1")},
	{"tree", countKind, tree.of(1), rational("1")},
	{"emitter", countKind, emitter.of(1), rational("1")},
	{"feed", countKind, feed.of(1), rational("1")},
	{"nut", countKind, nut.of(1), rational("1")},
	{"head", countKind, head.of(1), rational("1")},
	{"hive", countKind, hive.of(1), rational("1")},
	{"bale", countKind, bale.of(1), rational("1")},
	{"siemens", flowKind, conductance.of(1), rational("1")},
	{accountWords[fed], accountKind, fed.of(1), rational("1")},
	{accountWords[takenUp], accountKind, takenUp.of(1), rational("1")},
	{accountWords[present], accountKind, present.of(1), rational("1")},
}

// definitions are exact, by law or by agreement: the inch and the pound of 1959, the US gallon of 231 cubic inches,
// the acre of 43,560 square feet of 0.3048 m (NIST Handbook 44, Appendix C). Three need a word:
//   - mg/L is a millionth: the water of a well or a drip line is dilute, so a litre of it is a kilogram.
//   - a year is the mean Gregorian year of 365.2425 days, and a month a twelfth of it.
//   - an acre-inch is 3,630 cubic feet and an acre-foot 43,560.
var definitions = []definition{
	{"%", ratio, "0.01", ""},
	{"ppm", ratio, "1/1000000", ""},
	{"ppb", ratio, "1/1000000000", ""},
	{"mg/L", ratio, "1/1000000", ""},
	{"mg/kg", ratio, "1/1000000", ""},
	{"g/kg", ratio, "1/1000", ""},
	{"ug/L", ratio, "1/1000000000", ""},
	{"ug/kg", ratio, "1/1000000000", ""},
	{"mmol/L", molarKind, "1/1000000", ""},
	{"umol/L", molarKind, "1/1000000000", ""},
	{"meq/L", molarKind, "1/1000000", ""},

	{"cm", lengthKind, "0.01", "m"},
	{"mm", lengthKind, "0.001", "m"},
	{"km", lengthKind, "1000", "m"},
	{"in", lengthKind, "0.0254", "m"},
	{"ft", lengthKind, "12", "in"},
	{"yd", lengthKind, "3", "ft"},
	{"mi", lengthKind, "5280", "ft"},

	{"ac", areaKind, "43560", "ft2"},
	{"ha", areaKind, "10000", "m2"},

	{"L", volumeKind, "0.001", "m3"},
	{"mL", volumeKind, "0.001", "L"},
	{"gal", volumeKind, "231", "in3"},
	{"qt", volumeKind, "1/4", "gal"},
	{"pt", volumeKind, "1/8", "gal"},
	{"cup", volumeKind, "1/16", "gal"},
	{"floz", volumeKind, "1/128", "gal"},
	{"tbsp", volumeKind, "1/256", "gal"},
	{"tsp", volumeKind, "1/768", "gal"},
	{"ac-in", volumeKind, "3630", "ft3"},
	{"ac-ft", volumeKind, "43560", "ft3"},

	{"g", massKind, "0.001", "kg"},
	{"mg", massKind, "0.001", "g"},
	{"ug", massKind, "0.001", "mg"},
	{"t", massKind, "1000", "kg"},
	{"lb", massKind, "0.45359237", "kg"},
	{"oz", massKind, "1/16", "lb"},
	{"ton", massKind, "2000", "lb"},

	{"min", timeKind, "60", "s"},
	{"h", timeKind, "60", "min"},
	{"day", timeKind, "24", "h"},
	{"week", timeKind, "7", "day"},
	{"year", timeKind, "365.2425", "day"},
	{"month", timeKind, "1/12", "year"},

	{"cent", moneyKind, "1/100", "$"},
	{"bu", volumeKind, "2150.42", "in3"},

	{"mph", flowKind, "1", "mi/h"},
	{"gpm", flowKind, "1", "gal/min"},
	{"gph", flowKind, "1", "gal/h"},
	{"cfs", flowKind, "1", "ft3/s"},
}

// A spelling is a word for a symbol. A long name is tidied to the symbol; a counted thing keeps its plural.
type spelling struct {
	text   string // as it is written back
	symbol *symbol
}

// aliases are other words for a symbol, separated by spaces, which are tidied to it.
var aliases = map[string]string{
	"in":    "inch inches \" ” ″",
	"ft":    "foot feet ' ’ ′",
	"yd":    "yard yards",
	"mi":    "mile miles",
	"m":     "meter meters metre metres",
	"ac":    "acre acres A",
	"ha":    "hectare hectares",
	"L":     "l liter liters litre litres",
	"mL":    "ml milliliter milliliters cc",
	"gal":   "gallon gallons",
	"qt":    "quart quarts",
	"pt":    "pint pints",
	"cup":   "cups",
	"tbsp":  "tablespoon tablespoons",
	"tsp":   "teaspoon teaspoons",
	"ac-in": "acre-inch acre-inches",
	"ac-ft": "acre-foot acre-feet",
	"lb":    "lbs pound pounds #",
	"oz":    "ounce ounces",
	"kg":    "kilogram kilograms",
	"g":     "gram grams",
	"mg":    "milligram milligrams",
	"ug":    "µg μg mcg",
	"t":     "tonne tonnes Mg",
	"mm":    "millimeter millimeters millimetre millimetres",
	"cm":    "centimeter centimeters centimetre centimetres",
	"min":   "minute minutes",
	"h":     "hr hrs hour hours",
	"s":     "sec second seconds",
	"%":     "percent",
	"cent":  "¢",
	"bu":    "bushel bushels",
	"hp":    "horsepower",
}

// plurals keep the number they are written in: 110 trees, 1 tree.
var plurals = map[string]string{
	"tree": "trees", "emitter": "emitters", "feed": "feeds", "ton": "tons",
	"nut": "nuts", "hive": "hives", "bale": "bales",
	"cent": "cents",
	"day":  "days", "week": "weeks", "month": "months", "year": "years",
}

// spellings finds a symbol by any of its words.
var spellings = indexSpellings()

func indexSpellings() map[string]spelling {
	index := map[string]spelling{}
	for i := range roots {
		index[roots[i].name] = spelling{roots[i].name, &roots[i]}
	}
	for _, d := range definitions {
		index[d.name] = spelling{d.name, d.resolve(index)}
	}
	for i := range derived {
		index[derived[i].name] = spelling{derived[i].name, &derived[i]}
	}
	for name, words := range aliases {
		for _, word := range strings.Fields(words) {
			index[word] = index[name]
		}
	}
	for name, word := range plurals {
		index[word] = spelling{word, index[name].symbol}
	}
	return index
}

// resolve works a definition out from the symbols before it.
func (d definition) resolve(known map[string]spelling) *symbol {
	s := &symbol{name: d.name, kind: d.kind, scale: rational(d.amount)}
	if d.of == "" {
		return s
	}
	above, below, divided := strings.Cut(d.of, "/")
	name := strings.TrimRight(above, "23")
	power := 1
	if name != above {
		power = int(above[len(name)] - '0')
	}
	s.dimension = known[name].symbol.dimension.Power(power)
	s.scale.Mul(s.scale, powerOf(known[name].symbol.scale, power))
	if divided {
		s.dimension = s.dimension.Over(known[below].symbol.dimension)
		s.scale.Quo(s.scale, known[below].symbol.scale)
	}
	return s
}
