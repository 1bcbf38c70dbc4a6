package page

import "strings"

// What begins a text that a draft left for its author. Whoever writes the text takes the words away.
const (
	ToWrite     = "TO WRITE"
	ToTranslate = "TO TRANSLATE"
)

// Unwritten says whether a text is still to be written or translated.
func Unwritten(text string) bool {
	return strings.HasPrefix(text, ToWrite) || strings.HasPrefix(text, ToTranslate)
}
