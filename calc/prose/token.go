package prose

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"acreleaf/calc/unit"
)

// A kind is what a token is.
type kind uint8

const (
	end    kind = iota
	word        // letters, with digits after them (ft2, NO3), or a percent sign
	digits      // digits with points and commas between them
	part        // ½ and its like
	sign        // any other character
)

// A token is a piece of a sentence.
type token struct {
	kind     kind
	text     string
	from, to int
	spaced   bool // a space or a line end is before it
}

// dashes are the signs between two numbers or two parts of a word.
const dashes = "-–‑−"

func (t token) isDash() bool { return t.kind == sign && strings.Contains(dashes, t.text) }

// hangs says whether a token is a dash with no space before it.
func (t token) hangs() bool { return !t.spaced && t.isDash() }

// lower gives the text in small letters.
func (t token) lower() string { return strings.ToLower(t.text) }

// in says whether a token is a word of a list.
func (t token) in(words wordSet) bool { return t.kind == word && words[t.lower()] }

// next reads the token at a place, or after the space there.
func next(text string, at int) token {
	start := at
	at = pastSpace(text, at)
	if at == len(text) {
		return token{kind: end, from: at, to: at, spaced: at > start}
	}
	r, size := utf8.DecodeRuneInString(text[at:])
	t := token{kind: sign, from: at, to: at + size, spaced: at > start}
	switch {
	case isDigit(text[at]) || pointed(text, at):
		t.kind, t.to = digits, at+numeral(text[at:])
	case r >= '¼' && unit.FractionSign(r) > 0:
		t.kind = part
	case r == '%':
		t.kind = word
	case unicode.IsLetter(r):
		t.kind, t.to = word, wordEnd(text, t.to)
	}
	t.text = text[t.from:t.to]
	return t
}

// dashed reads the token after a dash that joins words, or the token at the place.
func dashed(text string, at int) token {
	t := next(text, at)
	if t.hangs() {
		return next(text, t.to)
	}
	return t
}

// pastSpace goes to the next character that is no space.
func pastSpace(text string, at int) int {
	for at < len(text) && text[at] == ' ' {
		at++
	}
	for at < len(text) && (text[at] <= ' ' || text[at] >= 0x80) {
		r, size := utf8.DecodeRuneInString(text[at:])
		if !isSpace(r) {
			break
		}
		at += size
	}
	return at
}

func isSpace(r rune) bool { return unicode.IsSpace(r) || r == '\u200B' || r == '\u2060' }

// lastLetters gives the letters at the end of a text, in small letters.
func lastLetters(text string) string {
	text = strings.TrimRightFunc(text, isSpace)
	at := len(text)
	for at > 0 && byteClasses[text[at-1]]&wordByte != 0 {
		at--
	}
	return strings.ToLower(text[at:])
}

// wordEnd goes to the end of a word from a place in it.
func wordEnd(text string, at int) int {
	for at < len(text) {
		if b := text[at]; b < 0x80 {
			if !isLetter(b) && !isDigit(b) {
				break
			}
			at++
			continue
		}
		r, size := utf8.DecodeRuneInString(text[at:])
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '²' && r != '³' && (r < '₀' || '₉' < r) {
			break
		}
		at += size
	}
	return at
}

// pointed says whether a number without its zero begins at a place: ".5". The point of a sentence has a letter or a
// digit before it.
func pointed(text string, at int) bool {
	return text[at] == '.' && at+1 < len(text) && isDigit(text[at+1]) &&
		(at == 0 || strings.IndexByte(" \n(~<>=/-$", text[at-1]) >= 0)
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// numeral gives the length of a number in digits: points and commas belong to it between digits, and so do the narrow
// spaces that part thousands.
func numeral(text string) int {
	at := 0
	for at < len(text) {
		switch {
		case isDigit(text[at]):
			at++
		case (text[at] == '.' || text[at] == ',') && at+1 < len(text) && isDigit(text[at+1]):
			at++
		case thousandsSpace(text[at:]) > 0:
			at += thousandsSpace(text[at:])
		default:
			return at
		}
	}
	return at
}

// thousandsSpace gives the length of a no-break space with just three digits after it.
func thousandsSpace(text string) int {
	for _, space := range []string{"\u00A0", "\u202F", "\u2009"} {
		rest, found := strings.CutPrefix(text, space)
		if !found || len(rest) < 3 || !isDigit(rest[0]) || !isDigit(rest[1]) || !isDigit(rest[2]) {
			continue
		}
		if len(rest) == 3 || !isDigit(rest[3]) {
			return len(space)
		}
	}
	return 0
}
