package schema

import (
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// blockOf is the shape of a block of one calculation. more are the keys that a reckoner has on top; there a given may
// also stand on one of its sides, so none has to have a line of its own.
func blockOf(s *sheet.Sheet, more []string) object {
	properties, required := object{}, []string{}
	for _, key := range worksheet.BlockKeys() {
		properties[key] = true
	}
	for _, key := range more {
		properties[key] = reckonerForms[key]
		if reckonerForms[key] == nil {
			panic(fmt.Sprintf("the key %q of a reckoner has no form and no sentence in package schema", key))
		}
	}
	for _, g := range s.Givens {
		properties[g.Name] = given(g)
		if !g.Optional && more == nil {
			required = append(required, g.Name)
		}
	}
	shape := object{"description": s.Summary, "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		shape["required"] = required
	}
	return shape
}

// given is what may stand after the name of a given: a quantity, a choice or a day, or the way to another worksheet.
func given(g *sheet.Given) object {
	text := strings.TrimSuffix(g.Label, ".") + "."
	if g.Hint != "" {
		text += " " + g.Hint
	}
	f := object{"description": text + " For example: " + g.Example(), "examples": []string{g.Example()}}
	if len(g.Choices) == 0 {
		f["type"] = []string{"string", "number"}
		return f
	}
	var names []string
	for _, o := range g.Choices {
		names = append(names, o.Name)
	}
	f["anyOf"] = []object{{"enum": names}, {"type": "string", "pattern": "^from "}}
	return f
}

var reckonerForms = map[string]form{
	"down":   text("The given that goes down the side, and its values: water = 1, 6, 12, 24 in."),
	"across": text("The given that goes across the top, and its values: nitrate = 3, 5, 10 ppm NO3-N."),
	"show":   text("The answer that stands in the cells, by its name."),
	"mark":   text("The answers to mark: 25 to 35 lb N/ac, or: at least 25 lb N/ac."),
	"follow": text("The worksheet whose numbers ring the nearest cell."),
}
