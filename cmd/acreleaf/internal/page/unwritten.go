package page

import "strings"

// Marks begin a text that a draft left for its author. Whoever writes the text takes them away.
type Marks struct{ Write, Translate string }

// marks are those of each language that pages are drafted in.
var marks = map[string]Marks{
	"en": {Write: "TO WRITE", Translate: "TO TRANSLATE"},
	"es": {Write: "POR ESCRIBIR", Translate: "POR TRADUCIR"},
}

// MarksOf gives the marks of the drafts in a language: the English ones where it has none of its own.
func MarksOf(language string) Marks {
	if own, known := marks[language]; known {
		return own
	}
	return marks["en"]
}

// Unwritten says whether a text is still to be written or translated. A page may have the mark of any language: its
// author may have changed its language since.
func Unwritten(text string) bool {
	for _, m := range marks {
		if strings.HasPrefix(text, m.Write) || strings.HasPrefix(text, m.Translate) {
			return true
		}
	}
	return false
}
