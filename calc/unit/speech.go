package unit

import "strings"

// A speech has the words that units are said in, in a sentence of one language.
type speech struct {
	of, forEach string
	a           func(word string) string // before what is below the line
	counts      map[string]string        // above the line, where the symbol is a word of another language
	singulars   map[string]string        // what one of a unit is called
	squares     map[string]string        // what an area is counted in
	substances  map[base]string          // where they differ from the table's
}

var speeches = map[string]*speech{
	"en": {
		of: "of", forEach: "for each", a: article,
		singulars: map[string]string{
			"ac": "acre", "ha": "hectare", "tree": "tree", "emitter": "emitter", "feed": "feed", "lb": "pound", "oz": "ounce",
			"kg": "kilogram", "g": "gram", "ton": "ton", "t": "metric ton", "gal": "gallon", "L": "liter", "in": "inch",
			"ft": "foot", "mm": "millimeter", "h": "hour", "min": "minute", "day": "day",
		},
		squares: map[string]string{"ft": "square feet", "m": "square meters"},
	},
	"es": {
		of: "de", forEach: "por cada", a: func(string) string { return "por" },
		counts: map[string]string{
			"tree": "árboles", "emitter": "emisores", "feed": "aplicaciones", "day": "días", "ton": "toneladas",
		},
		singulars: map[string]string{
			"ac": "acre", "ha": "hectárea", "tree": "árbol", "emitter": "emisor", "feed": "aplicación", "lb": "libra",
			"oz": "onza", "kg": "kilo", "g": "gramo", "ton": "tonelada", "t": "tonelada métrica", "gal": "galón",
			"L": "litro", "in": "pulgada", "ft": "pie", "mm": "milímetro", "h": "hora", "min": "minuto", "day": "día",
		},
		squares: map[string]string{"ft": "pies cuadrados", "m": "metros cuadrados"},
		substances: map[base]string{
			soil: "suelo", water: "agua", crop: "cosecha", kernels: "pepita", inShell: "nuez con cáscara",
			assessed: "peso CPC", husks: "cáscaras", lime: "cal", nitrogen: "nitrógeno",
			nitrateN: "nitrógeno de nitrato", nitriteN: "nitrógeno de nitrito", ammoniumN: "nitrógeno de amonio",
			ammoniaN: "nitrógeno de amoníaco", ureaN: "nitrógeno de urea", nitrate: "nitrato", nitrite: "nitrito",
			ammonium: "amonio", ammonia: "amoníaco", phosphorus: "fósforo", phosphate: "fosfato", potassium: "potasio",
			potash: "potasa", sulfur: "azufre", sulfate: "sulfato", calcium: "calcio", calciumOxide: "óxido de calcio",
			zinc: "zinc", boron: "boro", sodium: "sodio", chloride: "cloruro",
		},
	},
}

// article is "an" before what begins with the sound of a vowel.
func article(word string) string {
	if word == "hour" || strings.ContainsAny(word[:1], "aeiou") {
		return "an"
	}
	return "a"
}
