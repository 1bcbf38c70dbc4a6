package unit

import "strings"

// Spoken writes the range as it is said in a sentence: "14.3 lb of nitrogen an acre", "$12 an acre". What is below the
// line is said in words; a share and a unit that has no words for it are written as String has them.
func (r Range) Spoken() string { return r.Unit.Spoken(r.Numbers()) }

// Spoken puts a unit to the text of a number, as it is said in a sentence.
func (u Unit) Spoken(numbers string) string {
	above, below, sayable := u.parts()
	if !sayable {
		return label(numbers, u)
	}
	rest, money := strings.CutPrefix(above, "$")
	if !money {
		return strings.TrimSpace(numbers+" "+above) + below
	}
	if negative, is := strings.CutPrefix(numbers, "-"); is {
		return "-$" + negative + rest + below
	}
	return "$" + numbers + rest + below
}

// parts says a unit in words: "lb of nitrogen" and " an acre". False when there are no words for it.
func (u Unit) parts() (above, below string, sayable bool) {
	var over, under []string
	for _, t := range u.terms {
		if t.symbol.kind == accountKind {
			continue // the words around the number tell what was done with it
		}
		said, ok := t.spoken()
		switch {
		case !ok:
			return "", "", false
		case t.power > 0:
			over = append(over, said)
		default:
			under = append(under, said)
		}
	}
	if len(over) > 1 || len(over) == 0 && len(under) > 0 {
		return "", "", false
	}
	for i, said := range under {
		join := " for each "
		if i == 0 {
			join = " " + article(said) + " "
		}
		below += join + said
	}
	return strings.Join(over, ""), below, true
}

// spoken says one term of a unit: "lb of nitrogen" above the line, "acre" below it.
func (t term) spoken() (string, bool) {
	if t.number != "" || t.carrier != nil || t.inner != 1 || t.symbol.kind == ratio && t.substance != nil {
		return "", false
	}
	said, known := t.text, true
	switch t.power {
	case 1:
	case 2:
		said, known = squares[t.symbol.name]
	case -1:
		said, known = singulars[t.symbol.name]
	default:
		return "", false
	}
	if t.substance != nil {
		said += " of " + t.substance.spoken()
	}
	return said, known
}

// spoken is what a substance is called in a sentence of a worksheet. A product is what the grower calls a material.
func (s *substance) spoken() string {
	if s.base == product {
		return "material"
	}
	return s.words
}

// singulars are what one of a unit is called, and squares what an area is counted in.
var (
	singulars = map[string]string{
		"ac": "acre", "ha": "hectare", "tree": "tree", "emitter": "emitter", "feed": "feed", "lb": "pound", "oz": "ounce",
		"kg": "kilogram", "g": "gram", "ton": "ton", "t": "metric ton", "gal": "gallon", "L": "liter", "in": "inch",
		"ft": "foot", "mm": "millimeter", "h": "hour", "min": "minute", "day": "day",
	}
	squares = map[string]string{"ft": "square feet", "m": "square meters"}
)

// article is "an" before what begins with the sound of a vowel.
func article(word string) string {
	if word == "hour" || strings.ContainsAny(word[:1], "aeiou") {
		return "an"
	}
	return "a"
}
