package schema

import (
	"maps"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// reckonerForms are the keys of a reckoner that are not givens.
var reckonerForms = map[string]form{
	"down": needShaped("The given that goes down the side, and its values: water = 1, 6, 12, 24 in.",
		along(ownName)),
	"across": needShaped("The given that goes across the top, and its values: nitrate = 3, 5, 10 ppm NO3-N.",
		along(ownName)),
	"show": needShaped("The answer that the cells show, by its name.", "^"+ownName+"$"),
	"mark": {
		"description": "The answers to mark: 25 to 35 lb N/ac, or: at least 25 lb N/ac.",
		"type":        []string{"string", "number"}, "pattern": band,
	},
	"follow": {
		"description": "The worksheet whose numbers ring the nearest cell.",
		"type":        []string{"string", "number"}, "pattern": "^[a-z0-9-]+$",
	},
}

// along is an axis with one of the givens on it.
func along(names string) string { return `^\s*(` + names + `)\s*=.*[0-9]` }

// reckonerShape is the schema of a reckoner. A given that must be there may be in a line of its own, on one of the
// sides, or in the worksheet that the reckoner follows.
func reckonerShape() object {
	forms := maps.Clone(blockForms)
	maps.Copy(forms, reckonerForms)
	keys := append(worksheet.BlockKeys(), worksheet.TableKeys()...)
	sides := object{}
	s := block("The lines between the fences of a reckoner.", keys, forms,
		func(known *sheet.Sheet, properties object) object {
			var answers, numbers []string
			for _, r := range known.Answers() {
				answers = append(answers, r.Name)
			}
			var placed []object
			for _, g := range known.Givens {
				if len(g.Choices) == 0 {
					numbers = append(numbers, g.Name)
				}
				placed = append(placed, placing(g, sides))
			}
			side := object{"pattern": along(strings.Join(numbers, "|"))}
			properties["down"], properties["across"], properties["show"] = side, side, object{"enum": answers}
			return object{"allOf": placed}
		})
	s["$defs"] = sides
	return s
}

// placing is where a given of a reckoner may and must stand. It adds to the sides what it refers to: whether the given
// runs down, or across.
func placing(g *sheet.Given, sides object) object {
	written := object{"anyOf": []object{{"required": []string{g.Name}}, {"required": []string{"follow"}}}}
	if g.Usual {
		return object{} // where it is not said, one option is meant
	}
	if len(g.Choices) > 0 {
		return written // such a choice is never left out, and none runs along a side
	}
	var on []object
	for _, side := range []string{"down", "across"} {
		name := g.Name + "-" + side
		sides[name] = object{
			"properties": object{side: object{"pattern": along(g.Name)}}, "required": []string{side},
		}
		on = append(on, object{"$ref": "#/$defs/" + name})
	}
	rule := object{
		"if":   object{"anyOf": on},
		"then": object{"properties": object{g.Name: false}, "not": object{"allOf": on}},
	}
	if !g.Optional {
		rule["else"] = written
	}
	return rule
}
