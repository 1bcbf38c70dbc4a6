package unit

import (
	"cmp"
	"strings"
)

// Spoken puts a unit to the text of a number, as it is said in a sentence of a language: "14.3 lb of nitrogen an acre",
// "$12 an acre". What is below the line is said in words; a share and a unit that has no words for it are written as
// String has them. English stands in for a language that has no words here.
func (u Unit) Spoken(numbers, language string) string {
	words, known := speeches[language]
	if !known {
		words = speeches["en"]
	}
	above, below, sayable := u.parts(words)
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
func (u Unit) parts(words *speech) (above, below string, sayable bool) {
	var over, under []string
	for _, t := range u.terms {
		if t.symbol.kind == accountKind {
			continue // the words around the number tell what was done with it
		}
		said, ok := t.spoken(words)
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
		join := words.forEach
		if i == 0 {
			join = words.a(said)
		}
		below += " " + join + " " + said
	}
	return strings.Join(over, ""), below, true
}

// spoken says one term of a unit: "lb of nitrogen" above the line, "acre" below it.
func (t term) spoken(words *speech) (string, bool) {
	if t.number != "" || t.carrier != nil || t.inner != 1 || t.symbol.kind == ratio && t.substance != nil {
		return "", false
	}
	said, known := t.text, true
	switch t.power {
	case 1:
		said = cmp.Or(words.counts[t.symbol.name], said)
	case 2:
		said, known = words.squares[t.symbol.name]
	case -1:
		said, known = words.singulars[t.symbol.name]
	default:
		return "", false
	}
	if t.substance != nil {
		said += " " + words.of + " " + t.substance.spoken(words)
	}
	return said, known
}

// spoken is what a substance is called in a sentence of a worksheet. A product is what the grower calls a material.
func (s *substance) spoken(words *speech) string {
	if s.base == product {
		return "material"
	}
	return cmp.Or(words.substances[s.base], s.words)
}
