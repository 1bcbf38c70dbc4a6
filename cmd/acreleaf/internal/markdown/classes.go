package markdown

import "github.com/alecthomas/chroma/v2"

// tokenClass maps the many types of chroma's tokens to the few classes that the style sheet has; most have none.
func tokenClass(t chroma.TokenType) string {
	switch {
	case t.InCategory(chroma.Keyword):
		return "keyword"
	case t.InSubCategory(chroma.LiteralNumber):
		return "number"
	case t.InCategory(chroma.Literal):
		return "string"
	case t.InCategory(chroma.Comment):
		return "comment"
	case t.InCategory(chroma.Operator):
		return "operator"
	}
	switch t {
	case chroma.NameFunction, chroma.NameClass, chroma.NameTag, chroma.NameAttribute:
		return "name"
	}
	return ""
}

// Class is a class in the HTML of this package and that the style sheet must know.
type Class struct{ Name, Meaning string }

// Classes gives all of them.
func Classes() []Class {
	return []Class{
		{"heading", "div around a heading and its link to itself"},
		{"self", "a heading's link to itself"},
		{"scroll", "div that scrolls sideways, around a table or a listing; it takes the focus"},
		{"code", "pre of a listing"},
		{"keyword", "keyword in a listing"},
		{"string", "string in a listing"},
		{"comment", "comment in a listing"},
		{"name", "name that a listing defines or marks up"},
		{"number", "number in a listing"},
		{"operator", "operator in a listing"},
		{"left", "cell of a column set left"},
		{"center", "cell of a column set in the middle"},
		{"right", "cell of a column set right, as numbers are"},
		{"example", "div of what was written and, beside it, what it becomes"},
		{"written", "div of an example with its listing"},
		{"made", "div of an example with what it becomes"},
		{"part", "p that names a part of an example"},
		{"signal", "aside with a signal word"},
		{"danger", "aside of the signal word DANGER"},
		{"warning", "aside of the signal word WARNING"},
		{"caution", "aside of the signal word CAUTION"},
		{"notice", "aside of the signal word NOTICE"},
		{"signal-word", "p with the signal word, at the top of its aside"},
		{"note", "link from the text to a footnote"},
		{"notes", "section of the footnotes"},
		{"back", "link from a footnote back to the text"},
	}
}
