// Package schema describes the files of a content folder in JSON Schema (draft 2020-12), so that an editor can offer
// their keys and mark a slip while it is typed.
//
// It owns what each key is, in a sentence for an author. Which keys there are it takes from the packages that read
// them: a key without a sentence here is a fault of the program, and its test says so. What may come after a key is
// written here a second time, and a test compares it with the readers. It must not read a file or judge one: a schema
// knows the shape of a page, and acreleaf proof knows whether it is right.
package schema

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"strings"

	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/page"
)

// object is a JSON object. Its keys are written by the alphabet, so that a schema has the same bytes each time.
type object = map[string]any

// Folder is where the schemas are in a content folder.
const Folder = "shapes"

// shapes has what makes the schema of each kind of block.
var shapes = [construct.Kinds]func() object{
	construct.Calculation: definition,
	construct.Drawing:     drawingShape,
	construct.Exercise:    exerciseShape,
	construct.Passage:     passageShape,
	construct.Reckoner:    reckonerShape,
	construct.Reference:   referenceShape,
	construct.Worksheet:   worksheetShape,
}

// Files gives each schema by its name: "page.json".
func Files() map[string][]byte {
	site := maps.Clone(siteForms)
	site["contact"] = table("How readers reach the office.", config.ContactKeys(), contactForms)
	schemas := map[string]object{
		"page.json": table("The metadata at the top of a page, between its two lines of hyphens.", page.Keys(), pageForms),
		"site.json": table("The settings of a site: site.yaml.", config.SiteKeys(), site),
		"sources.json": {
			"description":          "The bibliography of a site: sources.yaml. Each source has a short name.",
			"type":                 []string{"object", "null"}, // a file of remarks alone is no fault
			"propertyNames":        object{"pattern": sourceID},
			"additionalProperties": table("A source.", config.ReferenceKeys(), sourceForms()),
			"patternProperties": object{builtIn(): table(
				"A source that the calculations know: only a note and figures are added to it.",
				config.BuiltInKeys(), sourceForms())},
		},
	}
	for k := range construct.All() {
		schemas[k.String()+".json"] = shapes[k]()
	}
	maps.Copy(schemas["site.json"], noticed)
	files := make(map[string][]byte, len(schemas))
	for name, schema := range schemas {
		schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
		schema["title"] = "Acreleaf: " + strings.TrimSuffix(name, ".json")
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

// bare is a form as it is in a schema.
func bare(f form) object {
	own := maps.Clone(f)
	delete(own, needed)
	return own
}

// table is the schema of a table with fixed keys. A form that has the key needed tells that its own key must be there.
func table(description string, keys []string, forms map[string]form) object {
	properties, required := object{}, []string{}
	for _, key := range keys {
		f, known := forms[key]
		if !known {
			panic(fmt.Sprintf("the key %q has no form and no sentence in package schema", key))
		}
		properties[key] = bare(f)
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
