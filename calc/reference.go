package calc

import (
	"slices"

	"acreleaf/calc/nitrogen"
)

// A Reference is a table that calculations take their figures from, as a page may print it.
type Reference struct {
	Name    string
	Columns []string // the first names the row, and is always printed
}

// references lists the tables.
var references = []Reference{
	{"material", []string{"grade", "name", "nitrogen", "forms", "weight", "lime", "apart", "note"}},
}

// Sources are the ids of all that the table's figures and notes rest on.
func (r Reference) Sources() []string {
	var ids []string
	for _, m := range Materials("en") { // the only table
		ids = append(ids, m.Sources()...)
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}

// References lists the tables that a page may print.
func References() []Reference { return slices.Clone(references) }

// FindReference gives the table of that name; false if there is none.
func FindReference(name string) (Reference, bool) {
	i := slices.IndexFunc(references, func(r Reference) bool { return r.Name == name })
	if i < 0 {
		return Reference{}, false
	}
	return references[i], true
}

// ReferenceNames lists their names.
func ReferenceNames() []string {
	var names []string
	for _, r := range references {
		names = append(names, r.Name)
	}
	return names
}

// A Material is a row of the table of materials.
type Material = nitrogen.MaterialFacts

// Materials lists the rows of that table, with their texts in a language.
func Materials(language string) []Material { return nitrogen.Materials(language) }
