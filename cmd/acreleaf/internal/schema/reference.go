package schema

import (
	"strings"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// referenceShape is the schema of a reference: for each table of the calculations its own columns.
func referenceShape() object {
	s := table("The lines between the fences of a reference.", worksheet.ReferenceKeys(), map[string]form{
		"table": needChoice("The table that it prints.", calc.ReferenceNames()),
		"show":  bare(needShaped("The columns to print, with commas between them; all if this line is left out.", filled)),
		"title": bare(need("A title in place of the table's own.")),
	})
	var ways []object
	for _, r := range calc.References() {
		column := `\s*(` + strings.Join(r.Columns, "|") + `)\s*`
		ways = append(ways, object{
			"if":   object{"properties": object{"table": object{"const": r.Name}}, "required": []string{"table"}},
			"then": object{"properties": object{"show": object{"pattern": "^" + column + "(," + column + ")*$"}}},
		})
	}
	s["allOf"] = ways
	return s
}
