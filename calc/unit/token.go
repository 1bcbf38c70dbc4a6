package unit

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A tokenKind is what a piece of a unit's text is.
type tokenKind uint8

const (
	endToken     tokenKind = iota
	wordToken              // a symbol, a substance, "per" or "of"
	numberToken            // digits, points and commas
	strokeToken            // "/"
	timesToken             // "·"
	openToken              // "("
	closeToken             // ")"
	strangeToken           // anything else
)

// A token is a piece of a unit's text.
type token struct {
	kind tokenKind
	text string
	at   int // the byte where it starts
}

// tokenize cuts a text into tokens; spaces only part them. The last token is an endToken.
func tokenize(text string) []token {
	tokens := make([]token, 0, 8)
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		if unicode.IsSpace(r) {
			at += size
			continue
		}
		t := nextToken(text, at, r, size)
		tokens = append(tokens, t)
		at += len(t.text)
		if t.kind == wordToken && strings.HasPrefix(text[at:], ".") && !startsDigit(text[at+1:]) {
			at++ // the point of "12 in."
		}
	}
	return append(tokens, token{endToken, "", len(text)})
}

// nextToken reads the token that starts at a byte with the rune r.
func nextToken(text string, at int, r rune, size int) token {
	switch {
	case r == '/':
		return token{strokeToken, "/", at}
	case r == '·' || r == '⋅':
		return token{timesToken, text[at : at+size], at}
	case r == '(':
		return token{openToken, "(", at}
	case r == ')':
		return token{closeToken, ")", at}
	case strings.ContainsRune("%$¢'’′\"”″#", r):
		return token{wordToken, text[at : at+size], at}
	case isDigit(r) || r == '.' || r == ',':
		return token{numberToken, text[at : at+run(text[at:], isNumberRune)], at}
	case unicode.IsLetter(r):
		return token{wordToken, text[at : at+run(text[at:], isWordRune)], at}
	}
	return token{strangeToken, text[at : at+size], at}
}

func startsDigit(text string) bool { return text != "" && isDigit(rune(text[0])) }

func isDigit(r rune) bool      { return '0' <= r && r <= '9' }
func isNumberRune(r rune) bool { return isDigit(r) || r == '.' || r == ',' }

// isWordRune says whether r goes on a word: letters, digits, the hyphen of ac-in and the raised digits of ft².
func isWordRune(r rune) bool {
	return unicode.IsLetter(r) || isDigit(r) || strings.ContainsRune("-_²³₀₁₂₃₄₅₆₇₈₉⁻⁺‑", r)
}

// run gives the length of the start of text that is made of such runes.
func run(text string, such func(rune) bool) int {
	if end := strings.IndexFunc(text, func(r rune) bool { return !such(r) }); end >= 0 {
		return end
	}
	return len(text)
}
