package schema

import (
	"slices"
	"strings"

	"acreleaf/calc"
	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// blockForms are the keys of a block that are not givens. Nothing in a block may be left empty.
var blockForms = map[string]form{
	"calculation": {
		"description": "The name of the calculation. A name that is not in the list counts as a calculation of your " +
			"own: small letters a to z and digits, with a letter first, and hyphens between words. Whether there is one of " +
			"that name, the desk and acreleaf proof tell you.",
		"type": "string", needed: true,
	},
	"title": bare(need("A title in place of the calculation's own.")),
}

// block is the schema of a worksheet or a reckoner: for each calculation of the catalogue its own givens. A calculation
// that is not in the catalogue may be one of the site's own, and then any name may be that of a given. Of is the shape
// for one calculation.
func block(description string, keys []string, forms map[string]form, of func(*sheet.Sheet, object) object) object {
	names := calc.Standard().Names()
	slices.Sort(names)
	s := table(description, keys, forms)
	s["properties"].(object)["calculation"].(object)["anyOf"] = []object{
		{"enum": names}, {"pattern": "^" + ownName + "$"},
	}
	s["propertyNames"] = object{"pattern": "^" + ownName + "$"}
	delete(s, "additionalProperties") // which others there may be, depends on the calculation
	ways := []object{{
		"if": object{"properties": object{"calculation": object{"enum": names}}}, "else": ownBlock(keys),
	}}
	for _, name := range names {
		known := calc.Standard().Find(name)
		properties := blank(keys)
		for _, g := range known.Givens {
			properties[g.Name] = given(g)
		}
		shape := of(known, properties)
		shape["description"], shape["properties"], shape["additionalProperties"] = known.Summary, properties, false
		ways = append(ways, object{
			"if":   object{"properties": object{"calculation": object{"const": name}}, "required": []string{"calculation"}},
			"then": shape,
		})
	}
	s["allOf"] = ways
	return s
}

// ownBlock is the shape for a calculation of the site's own. Its givens are numbers.
func ownBlock(keys []string) object {
	return object{"properties": blank(keys), "additionalProperties": object{
		"description": "A given of a calculation of your own.", "type": []string{"string", "number"},
		"pattern": entry + "|" + taken,
	}}
}

// blank are keys without a description in this place.
func blank(keys []string) object {
	properties := object{}
	for _, key := range keys {
		properties[key] = true
	}
	return properties
}

// worksheetShape is the schema of a worksheet. The words of a reckoner mean nothing there, and are no givens.
func worksheetShape() object {
	s := block("The lines between the fences of a worksheet.", worksheet.BlockKeys(), blockForms,
		func(known *sheet.Sheet, _ object) object {
			shape := object{}
			if required := must(known); len(required) > 0 {
				shape["required"] = required
			}
			return shape
		})
	s["propertyNames"].(object)["not"] = object{"enum": worksheet.TableKeys()}
	return s
}

// must are the givens that may not be left out.
func must(s *sheet.Sheet) []string {
	var names []string
	for _, g := range s.Givens {
		if !g.MayBeLeftOut() {
			names = append(names, g.Name)
		}
	}
	return names
}

// given is what may come after the name of a given: a quantity, a choice or a day, or the way to another worksheet.
func given(g *sheet.Given) object {
	text := strings.TrimSuffix(g.Label, ".") + "."
	if g.Hint != "" {
		text += " " + g.Hint
	}
	f := object{"description": text + " For example: " + g.Example(), "examples": []string{g.Example()}, "type": "string"}
	switch {
	case len(g.Choices) > 0:
		var names []string
		for _, o := range g.Choices {
			names = append(names, o.Name)
		}
		f["anyOf"] = []object{{"enum": names}, {"pattern": taken}}
	case g.Date:
		f["pattern"] = whole(day+`(\s+to\s+`+day+`)?`) + "|" + taken
	case g.Unit.String() == "":
		f["type"], f["pattern"] = []string{"number", "string"}, entry+"|"+taken
		f["minimum"], f["maximum"] = g.Low, g.High
	default:
		f["pattern"] = measure + "|" + taken
	}
	return f
}
