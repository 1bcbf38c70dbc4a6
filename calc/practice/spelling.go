package practice

import (
	"regexp"
	"strings"
)

// spellings are words for units in English and Spanish that people type, and what they are compared as.
var spellings = replacements(true,
	"per cent|percent|por ciento", "%",
	"dollars?|dolar|dolares|usd", "$",
	"por|cada|each", "per",
	"of|de|del", "",
	"nitrogen|nitrogeno", "n",
	"nitrato", "nitrate",
	"square feet|square foot|sq ft|pies? cuadrados?", "ft2",
	"libras?", "lb",
	"onzas?", "oz",
	"galon|galones", "gal",
	"pulgadas?", "in",
	"pies?", "ft",
	"arbol|arboles", "tree",
	"hours?|hrs?|horas?", "h",
	"minutes?|mins?|minutos?", "min",
	"dias?", "day",
	"hectares?|hectareas?", "ha",
	"kilograms?|kilos?|kilogramos?", "kg",
	"grams?|gramos?", "g",
	"liters?|litres?|litros?", "l",
)

// folding takes out what does not tell one unit from another: "PPM nitrate-N" is "ppmno3n". Crop, soil and product go
// without saying. It is that of the page (theme/script/unitword.ts).
var folding = replacements(false,
	` +`, " ",
	` (per|por|an?) `, "/",
	`nitrate`, "no3",
	`no3( as|[ _-])? ?n\b|n-no3`, "no3n",
	`inch(es)?|["”″]`, "in",
	`f(ee|oo)t|['’′]`, "ft",
	`pound`, "lb",
	`ounce`, "oz",
	`gallon`, "gal",
	`acre|\ba$`, "ac",
	`\$`, "usd",
	`[^a-z0-9%/]|s\b|(de )?(crop|soil|producto?|suelo|cosecha)`, "",
)

// unsaid is what may be left unsaid of a unit: nothing; what was done with the nitrogen; and that, and its form.
var unsaid = []*regexp.Regexp{
	regexp.MustCompile(`^$`),
	regexp.MustCompile(` (fed|taken up|presente?|(aplica|absorbi)do)$`),
	regexp.MustCompile(` (NO3-N|NO3|N)\b| (fed|taken up|presente?|(aplica|absorbi)do)(/fed|/aplicado)?$`),
}

// means says whether what was typed means a unit.
func means(typed, unit string) bool {
	for _, part := range unsaid {
		if folded(part.ReplaceAllString(unit, "")) == folded(typed) {
			return true
		}
	}
	return false
}

// folded is a unit as it is compared.
func folded(text string) string {
	text = plainly.Replace(strings.ToLower(text))
	for _, list := range [][]replacement{spellings, folding} {
		for _, r := range list {
			text = r.word.ReplaceAllLiteralString(text, r.by)
		}
	}
	return millionths.ReplaceAllLiteralString(text, "ppm")
}

// millionths are the names of ppm in soil and in water, as in calc/unit.
var millionths = regexp.MustCompile(`mg/(kg|l)`)

var plainly = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ü", "u", "ñ", "n",
	"²", "2", "³", "3")

// A replacement puts one text in the place of another.
type replacement struct {
	word *regexp.Regexp
	by   string
}

func replacements(whole bool, pairs ...string) []replacement {
	var list []replacement
	for i := 0; i < len(pairs); i += 2 {
		pattern := pairs[i]
		if whole {
			pattern = `\b(?:` + pattern + `)\b`
		}
		list = append(list, replacement{regexp.MustCompile(pattern), pairs[i+1]})
	}
	return list
}
