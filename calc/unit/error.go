package unit

import (
	"strconv"
	"strings"
)

// An Error says why a text is not a unit, a number or a quantity, in a sentence for the person who wrote it.
type Error struct {
	Text    string // the whole text that was read
	At      int    // the byte of Text where the trouble starts
	Message string // a whole sentence: what is wrong and what to write
	Word    string // the unknown word; empty when it is no word that is wrong
	Nearest string // the known word nearest to an unknown one; empty when none is near
}

// Error gives the sentence.
func (e *Error) Error() string { return e.Message }

// Meaning is the error with the known word that was meant.
func (e *Error) Meaning(near string) *Error {
	return &Error{Text: e.Text, At: e.At, Word: e.Word, Nearest: near, Message: unknownWord(e.Word) +
		"; did you mean " + strconv.Quote(near) + "?"}
}

// Writing is the error of an unknown word with what to write, where no known word can be meant.
func (e *Error) Writing(advice string) *Error {
	return &Error{Text: e.Text, At: e.At, Word: e.Word, Message: unknownWord(e.Word) + "; " + advice}
}

func unknownWord(word string) string { return quote(word) + " is not a unit or a substance known here" }

// Advice parts the sentence of an error of calc from what to write, which comes after its last semicolon. advice is ""
// for a sentence that ends with what is needed, or with none.
func Advice(err error) (sentence, advice string) {
	sentence = err.Error()
	at := strings.LastIndex(sentence, "; ")
	if at < 0 || strings.HasPrefix(sentence[at:], "; this needs ") {
		return sentence, ""
	}
	return sentence[:at], sentence[at+len("; "):]
}

// quoted puts the text that was read before a sentence about it.
func quoted(text, message string) string {
	if strings.TrimSpace(text) == "" {
		return message
	}
	return quote(text) + ": " + message
}

// quote puts a text in quotation marks, cut short when it is long.
func quote(text string) string {
	const enough = 60
	text = strings.TrimSpace(text)
	if letters := []rune(text); len(letters) > enough {
		text = string(letters[:enough]) + "…"
	}
	return strconv.Quote(text)
}
