package schema

import (
	"slices"
	"strings"

	"acreleaf/calc/formula"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// definitionTop are the keys of a calculation that have no tables of their own.
var definitionTop = map[string]form{
	"title":    need("What the calculation works out."),
	"summary":  need("What it does, in a sentence."),
	"work":     work(),
	"sentence": line("What the first answer comes to, in words; {name} is a number with its unit."),
	"notes":    list(line("Sentences that are shown below the answers.")),
}

// work has at least one line that gives a name to a formula, and no name is that of a function.
func work() form {
	functions := strings.ReplaceAll(strings.Join(formula.Functions(), "|"), "-", "_")
	called := object{"type": "string", "pattern": `^\s*(` + functions + `)\s*=`}
	return form{
		"description": "The arithmetic, a line each: volume = rate * area.", "type": []string{"string", "array"},
		"pattern": workLine, "contains": object{"type": "string", "pattern": filled},
		"items": object{"type": []string{"string", "null"}, "pattern": `^\s*$|` + workLine, "not": called}, "not": called,
		needed: true,
	}
}

// A part is one of the tables of a calculation, with an entry for each name.
type part struct {
	says   string
	names  object // what the names must be
	forms  map[string]form
	needed bool
}

func definitionParts() map[string]part {
	quantity := object{"pattern": "^" + ownName + "$", "not": object{"enum": formula.Functions()}}
	words := slices.Concat(formula.Functions(), worksheet.BlockKeys(), worksheet.TableKeys())
	return map[string]part{
		"givens": {
			says: "What the reader fills in, by name.", forms: givenForms,
			names: object{"pattern": "^" + ownName + "$", "not": object{"enum": words}},
		},
		"constants": {says: "Figures that are known, by name, with their sources.", names: quantity, forms: constantForms},
		"answers":   {says: "What is worked out, by name.", names: quantity, forms: answerForms, needed: true},
		"steps":     {says: "What is worked out on the way, by name.", names: quantity, forms: stepForms},
		"cases": {
			says:  "Said in place of the sentence when the numbers ask for it, by name: the first that holds.",
			forms: caseForms,
		},
		"checks": {says: "Remarks that show for some numbers, by name.", forms: checkForms()},
	}
}

var (
	givenForms = map[string]form{
		"label":   need("What the reader sees beside the box."),
		"example": needShaped("An ordinary value with its unit: 12 in.", figure, "number"),
		"range":   needShaped("The least and the most that is accepted: 0 to 72.", twoFigures),
		"hint":    line("A line of help below the box."),
		"units":   list(unitLine("Other units to offer.")),
	}
	constantForms = map[string]form{
		"label":  need("What the figure is."),
		"value":  needShaped("The figure with its unit: 8.34 lb water/gal.", figure, "number"),
		"source": need("The id of a source in sources.yaml, or common-practice, or memory."),
		"note":   line("What else there is to say about it."),
	}
	answerForms = map[string]form{
		"label": need("What the reader sees beside the answer."),
		"unit":  needShaped("Its unit: gal/ac, or number for a plain number.", unitSign),
		"also":  unitLine("A second unit to show it in."),
	}
	stepForms = map[string]form{
		"label": line("What the reader sees beside the number."),
		"unit":  unitLine("Its unit: gal/ac, or number for a plain number."),
		"also":  unitLine("A second unit to show it in."),
	}
)

// caseForms are of a case, which has a question and a sentence.
var caseForms = map[string]form{
	"when": needShaped("A question, such as: rate < \"1 gal/ac\".", question),
	"say":  need("What the reader is told."),
}

func checkForms() map[string]form {
	return map[string]form{
		"when":   needShaped("A question, such as: speed > \"6 mi/h\".", question),
		"say":    need("What the reader is told."),
		"signal": choice("How strongly it speaks.", worksheet.SignalNames(), anyCase(worksheet.SignalNames())),
		"hazard": {
			"description": "The hazard that it warns of, which brings its own signal word and sentence.",
			"anyOf":       []object{{"enum": worksheet.HazardIDs()}, {"type": "string", "pattern": whole(ownID)}},
		},
	}
}

// unitLine is a key with a unit after it, or nothing.
func unitLine(sentence string) form {
	return form{"description": sentence, "type": []string{"string", "null"}, "pattern": `^\s*$|` + unitSign}
}

// definition is the schema of a calculation that an author writes.
func definition() object {
	keys, tables := worksheet.DefinitionKeys()
	forms := map[string]form{}
	for key, f := range definitionTop {
		forms[key] = f
	}
	for key, p := range definitionParts() {
		f := form{
			"description": p.says, "type": "object",
			"additionalProperties": table("One of the "+key+".", tables[key], p.forms),
		}
		if p.names != nil {
			f["propertyNames"] = p.names
		}
		if p.needed {
			f["minProperties"], f[needed] = 1, true
		}
		forms[key] = f
	}
	return table("A calculation of your own, in a block or in a file of calculations.", keys, forms)
}
