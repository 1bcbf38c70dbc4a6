package schema

import "acreleaf/cmd/acreleaf/internal/markdown"

// passageForms are the keys of a case.
var passageForms = map[string]form{
	"when":      needShaped("The condition of this case: soil.nitrogen > \"60 lb N/ac\".", filled),
	"say":       need("What is said when the condition holds, in Markdown."),
	"otherwise": need("What is said when no case holds. It stands last."),
}

// passageShape is the schema of a passage: a list of cases, of which the last has no condition.
func passageShape() object {
	var keys []string
	for _, key := range markdown.PassageKeys() {
		if key != "otherwise" {
			keys = append(keys, key)
		}
	}
	one := table("A case, and what is said when it holds.", keys, passageForms)
	last := table("What is said when no case holds.", []string{"otherwise"}, passageForms)
	return object{
		"description": "What stands between the fences of a passage.", "type": "array",
		"items":    object{"anyOf": []object{one, last}},
		"contains": last, "minContains": 1, "maxContains": 1,
	}
}
