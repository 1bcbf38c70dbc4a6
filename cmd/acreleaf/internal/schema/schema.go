// Package schema describes the files of a content folder in JSON Schema (draft 2020-12), so that an editor can offer
// their keys and mark a slip while it is typed.
//
// It owns what each key is, in a sentence for an author. Which keys there are it takes from the packages that read
// them: a key without a sentence here is a fault of the program, and its test says so. It must not read a file or judge
// one: a schema knows the shape of a page, and acreleaf proof knows whether it is right.
package schema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// object is a JSON object. Its keys are written by the alphabet, so that a schema has the same bytes each time.
type object = map[string]any

// Folder is where the schemas stand in a content folder.
const Folder = "shapes"

// Files gives each schema by its name: "page.json".
func Files() map[string][]byte {
	site := maps.Clone(siteForms)
	site["contact"] = table("How readers reach the office.", config.ContactKeys(), contactForms)
	keys, tables := worksheet.DefinitionKeys()
	definition := maps.Clone(definitionTop)
	for key, inside := range tables {
		definition[key] = form{
			"description": definitionSays[key], "type": "object",
			"additionalProperties": table("One of the "+key+".", inside, definitionForms[key]),
		}
	}
	schemas := map[string]object{
		"page.json": table("The metadata at the top of a page, between its two lines of hyphens.", page.Keys(), pageForms),
		"site.json": table("The settings of a site: site.yaml.", config.SiteKeys(), site),
		"sources.json": {
			"description":          "The bibliography of a site: sources.yaml. Each source stands under a short name.",
			"type":                 "object",
			"propertyNames":        object{"pattern": "^[a-z0-9]+(-[a-z0-9]+)*$"},
			"additionalProperties": table("A source.", config.ReferenceKeys(), sourceForms),
		},
		"worksheet.json":   block("What stands between the fences of a worksheet.", nil),
		"reckoner.json":    block("What stands between the fences of a reckoner.", worksheet.TableKeys()),
		"calculation.json": table("A calculation of your own, in a block or in a file of calculations.", keys, definition),
	}
	files := make(map[string][]byte, len(schemas))
	for name, schema := range schemas {
		schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
		schema["title"] = "Acreleaf: " + name[:len(name)-len(".json")]
		files[name] = written(schema)
	}
	return files
}

func written(schema object) []byte {
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(schema); err != nil {
		panic(err) // texts, numbers and lists always have a JSON
	}
	return text.Bytes()
}

// A form is what may stand after a key.
type form = object

// needed are the keys that must be there.
const needed = "needed"

// table is the schema of a table with fixed keys. A form that has the key needed tells that its own key must be there.
func table(description string, keys []string, forms map[string]form) object {
	properties, required := object{}, []string{}
	for _, key := range keys {
		f, known := forms[key]
		if !known {
			panic(fmt.Sprintf("the key %q has no form and no sentence in package schema", key))
		}
		own := object{}
		for name, value := range f {
			if name != needed {
				own[name] = value
			}
		}
		properties[key] = own
		if f[needed] != nil {
			required = append(required, key)
		}
	}
	s := object{"description": description, "type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		s["required"] = required
	}
	return s
}

// block is the schema of a worksheet or a reckoner: for each calculation of the catalogue its own givens. A calculation
// that is not in the catalogue may be one of the site's own, and then any key may be a given.
func block(description string, more []string) object {
	names := calc.Standard().Names()
	slices.Sort(names)
	choices := []object{{"enum": names}, {"description": "A calculation of your own.", "pattern": "^[a-z][a-z0-9-]*$"}}
	s := object{
		"description": description, "type": "object", "required": []string{"calculation"},
		"properties": object{"calculation": object{
			"description": "The name of the calculation.", "type": "string", "anyOf": choices,
		}},
	}
	var ways []object
	for _, name := range names {
		ways = append(ways, object{
			"if":   object{"properties": object{"calculation": object{"const": name}}, "required": []string{"calculation"}},
			"then": blockOf(calc.Standard().Find(name), more),
		})
	}
	s["allOf"] = ways
	return s
}
