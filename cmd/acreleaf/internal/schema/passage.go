package schema

import "acreleaf/cmd/acreleaf/internal/markdown"

// passageForms are the keys of a case.
var passageForms = map[string]form{
	"when":      needShaped("The condition of this case: soil.nitrogen > \"60 lb N/ac\".", filled),
	"say":       need("The text when the condition holds, in Markdown."),
	"otherwise": need("The text when no case holds. It is the last case."),
}

// passageShape is the schema of a passage: a list of cases, of which the last has no condition.
func passageShape() object {
	var keys []string
	for _, key := range markdown.PassageKeys() {
		if key != "otherwise" {
			keys = append(keys, key)
		}
	}
	one := table("A case, with its text.", keys, passageForms)
	last := table("The text when no case holds.", []string{"otherwise"}, passageForms)
	return object{
		"description": "The lines between the fences of a passage.", "type": "array",
		"items":    object{"anyOf": []object{one, last}},
		"contains": last, "minContains": 1, "maxContains": 1,
	}
}
