package schema

import (
	"maps"
	"slices"
	"strings"
)

// A form is what may come after a key. A reader takes any value on one line for its text, so most keys take a number
// and a true, too; and a key that may be left out may be left empty.
type form = object

// needed are the keys that must be there. The key is in a form only, and in no schema.
const needed = "needed"

// line is a key with one line of text after it, which may be empty.
func line(sentence string) form {
	return form{"description": sentence, "type": []string{"string", "number", "boolean", "null"}}
}

// need is a key that must be there, with some text after it.
func need(sentence string) form {
	return form{"description": sentence, "type": []string{"string", "number", "boolean"}, "pattern": filled, needed: true}
}

// shaped is a key with a text that has a form of its own, or none.
func shaped(sentence, expression string) form {
	return form{"description": sentence, "type": []string{"string", "null"}, "pattern": orNone(expression)}
}

// needShaped is a key that must be there, with a text in which an expression is found.
func needShaped(sentence, expression string, types ...string) form {
	return form{
		"description": sentence, "type": append([]string{"string"}, types...), "pattern": expression, needed: true,
	}
}

// number is a key with a number after it, which may be in quotes.
func number(sentence string) form {
	return form{
		"description": sentence, "type": []string{"number", "string", "null"}, "pattern": orNone(decimal),
	}
}

// list is a key with one text after it, or with a list of them.
func list(f form) form {
	item := maps.Clone(f)
	delete(item, "description")
	f["type"] = append(slices.Clone(f["type"].([]string)), "array")
	f["items"] = item
	return f
}

// choice is a key with one of a few words after it, which an editor can offer. Expression is how else they may be
// written.
func choice(sentence string, words []string, expression string) form {
	return form{
		"description": sentence,
		"anyOf":       []object{{"enum": words}, {"type": []string{"string", "null"}, "pattern": orNone(expression)}},
	}
}

// needChoice is a choice that must be made.
func needChoice(sentence string, words []string) form {
	return form{
		"description": sentence, needed: true,
		"anyOf": []object{{"enum": words}, {"type": "string", "pattern": whole(strings.Join(words, "|"))}},
	}
}
