package schema

import (
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// reportLine is a label, a comma, and a given or a number with its unit.
const reportLine = `^\s*[^,]+, +(\{[^{}]+\}|[0-9].* .+)\s*$`

// exerciseShape is the shape of an exercise. Its givens are further keys, and which there are depends on its
// calculations.
func exerciseShape() object {
	count := func(sentence string) form {
		return form{"description": sentence, "type": []string{"integer", "string"}, "pattern": `^\s*[0-9]+\s*$`, "minimum": 1}
	}
	s := table("The lines between the fences of an exercise.", worksheet.ExerciseKeys(), map[string]form{
		"calculation": bare(need("The calculation that works the answer; a chain has this place where there are several.")),
		"chain":       bare(need("Several calculations, each with a name: soil = soil-nitrogen, season = season-budget.")),
		"title":       bare(need("A title in place of the calculation's own.")),
		"story":       need("What is asked, with each given in braces where its number is: {nitrate}."),
		"report": {
			"description": "A laboratory report, a line each with a name: nitrate: Nitrate, {nitrate}.",
			"type":        "object", "minProperties": 1, "additionalProperties": form{"type": "string", "pattern": reportLine},
		},
		"choose": bare(need("A question with several options, of which one is right on every card.")),
		"options": {
			"description": "The options of that question, each with a name.", "type": "object",
			"minProperties": 2, "maxProperties": 6, "additionalProperties": optionShape(),
		},
		"order": bare(need("A question that asks for an order.")),
		"items": {
			"description": "What is put in order: steps, or under each number that it is put in order by, a text.",
			"anyOf": []object{{"enum": []string{"steps"}},
				{"type": "object", "minProperties": 2, "maxProperties": 6, "additionalProperties": bare(need("A text."))}},
		},
		"ask":     need("What is asked for, with commas between: nitrogen, or soil.nitrogen, season.apply."),
		"digits":  count("The significant digits that are asked for; 3 if this line is left out."),
		"hint":    bare(need("What a learner is told first.")),
		"cards":   count("How many cards there are; 40 if this line is left out."),
		"minutes": count("How many minutes the plan of a workshop has for it."),
	})
	s["additionalProperties"] = true
	return s
}

func optionShape() object {
	return table("An option.", worksheet.OptionKeys(), map[string]form{
		"when":    need("When it is right: nitrogen > \"10 ppm NO3-N\"."),
		"say":     need("The option."),
		"because": need("Why it is right, on a card where it is."),
	})
}
