package unit

import (
	"slices"
	"strings"
	"sync"
	"unicode"
)

// A tongue has the words that units are written in, in a language other than English. Symbols of measures (lb, ac, in)
// and of chemistry (NO3-N) are the same in all.
type tongue struct {
	words map[string]string // what is written for an English word of a unit
	carry string            // comes before what a mass is of: lb de producto
	to    string            // between the ends of a range
	known sync.Map          // units that were written, by their English text
}

var tongues = map[string]*tongue{
	"es": {
		carry: "de", to: "a",
		words: map[string]string{
			"per": "por", "of": "de", "fed": "aplicado", "taken up": "absorbido", "present": "presente",
			"tree": "árbol", "trees": "árboles", "emitter": "emisor", "emitters": "emisores", "feed": "aplicación",
			"feeds": "aplicaciones", "nut": "nuez", "nuts": "nueces", "hive": "colmena", "hives": "colmenas", "bale": "paca",
			"bales": "pacas", "head": "cabeza", "ton": "tonelada", "tons": "toneladas", "day": "día", "days": "días",
			"week": "semana", "weeks": "semanas", "month": "mes", "months": "meses", "year": "año", "years": "años",
			"soil": "suelo", "water": "agua", "product": "producto", "material": "material", "fertilizer": "fertilizante",
			"crop": "cosecha", "kernels": "pepita", "in-shell": "nuez con cáscara", "CPC": "peso CPC",
			"shells-and-hulls": "cáscaras", "lime": "cal",
		},
	},
}

// In gives the same unit as it is written in a language, of which it has the words. Units that are worked out from it
// are written in that language too. Parse reads it back.
func (u Unit) In(language string) Unit {
	u.tongue = tongues[language]
	return u
}

// Like gives the same unit as it is written in the language of another.
func (u Unit) Like(v Unit) Unit {
	u.tongue = v.tongue
	return u
}

// write puts an English text of a unit into other words.
func (t *tongue) write(english string) string {
	if text, known := t.known.Load(english); known {
		return text.(string)
	}
	var b strings.Builder
	for rest := english; rest != ""; {
		size := max(run(rest, isUnitLetter), 1)
		if strings.HasPrefix(rest, takenUpWord) {
			size = len(takenUpWord)
		}
		word := rest[:size]
		said, differs := t.words[word]
		switch s := substanceBySymbol[word]; {
		case !differs:
			said = word
		case s != nil && s.base.isCarrier() && !strings.HasSuffix(b.String(), t.words["of"]+" "):
			said = t.carry + " " + said
		}
		b.WriteString(said)
		rest = rest[size:]
	}
	t.known.Store(english, b.String())
	return b.String()
}

func isUnitLetter(r rune) bool { return unicode.IsLetter(r) || r == '-' }

// number gives the words for one and for several of a counted thing.
func (t *tongue) number(symbol string) (one, many string, counts bool) {
	many, counts = plurals[symbol]
	if !counts || t == nil {
		return symbol, many, counts
	}
	return t.words[symbol], t.words[many], t.words[symbol] != "" && t.words[many] != ""
}

// english has the English words for those of other languages, and for what people write in them in full.
var english = sync.OnceValue(func() map[string]string {
	words := map[string]string{
		"arbol": "tree", "arboles": "trees", "aplicacion": "feed", "dia": "day", "dias": "days",
		"aplicada": "fed", "aplicados": "fed", "aplicadas": "fed", "absorbida": takenUpWord, "absorbidos": takenUpWord,
		"absorbidas": takenUpWord, "presentes": "present", "libra": "lb", "libras": "lb", "onza": "oz", "onzas": "oz",
		"galon": "gal", "galón": "gal", "galones": "gal", "pulgada": "in", "pulgadas": "in", "pie": "ft", "pies": "ft",
		"hectarea": "ha", "hectárea": "ha", "hectareas": "ha", "hectáreas": "ha", "hora": "h", "horas": "h",
		"minuto": "min", "minutos": "min", "litro": "L", "litros": "L", "kilo": "kg", "kilos": "kg",
		"gramo": "g", "gramos": "g", "del": "of", "nitrogeno": "N", "nitrógeno": "N",
	}
	for _, t := range tongues {
		for word, said := range t.words {
			if !strings.Contains(said, " ") && said != word {
				words[said] = word
			}
		}
	}
	return words
})

// phrases are the words of units in several words, in other languages, with the English for each.
var phrases = sync.OnceValue(func() map[string]string {
	all := map[string]string{}
	for _, t := range tongues {
		for word, said := range t.words {
			if strings.Contains(said, " ") {
				all[strings.ToLower(said)] = word
			}
		}
	}
	return all
})

// inEnglish puts the words of a unit in other languages into English. What is left stays at its place, for messages.
func inEnglish(tokens []token) []token {
	for i := 0; i < len(tokens); i++ {
		if tokens[i].kind != wordToken {
			continue
		}
		if word, size := phraseAt(tokens[i:]); size > 0 {
			tokens[i].text = word
			tokens = slices.Delete(tokens, i+1, i+size)
		} else if word, other := english()[strings.ToLower(tokens[i].text)]; other {
			tokens[i].text = word
			if word == "per" {
				tokens[i].kind, tokens[i].text = strokeToken, "/"
			}
		}
	}
	return tokens
}

// phraseAt reads a word of several at the start of tokens, and gives how many tokens it has; 0 when there is none.
func phraseAt(tokens []token) (word string, size int) {
	const longest = 3
	text := strings.ToLower(tokens[0].text)
	for size := 2; size <= longest && size < len(tokens) && tokens[size-1].kind == wordToken; size++ {
		text += " " + strings.ToLower(tokens[size-1].text)
		if word, known := phrases()[text]; known {
			return word, size
		}
	}
	return "", 0
}
