package markdown

import (
	"strings"
	"unicode"
)

// foldID makes an id of a text: letters lose their accents and capitals, digits stay, everything between becomes one
// hyphen. The result holds only a to z, 0 to 9 and hyphens, and is empty when nothing is left.
func foldID(title string) string {
	var b strings.Builder
	b.Grow(len(title))
	gap := false
	for _, r := range title {
		if unicode.Is(unicode.Mn, r) { // an accent that is on its own after its letter
			continue
		}
		piece := foldRune(unicode.ToLower(r))
		if piece == "" {
			gap = true
			continue
		}
		if gap && b.Len() > 0 {
			b.WriteByte('-')
		}
		gap = false
		b.WriteString(piece)
	}
	return b.String()
}

const asciiWord = "0123456789abcdefghijklmnopqrstuvwxyz"

func foldRune(r rune) string {
	if r < 0x80 {
		if i := strings.IndexByte(asciiWord, byte(r)); i >= 0 {
			return asciiWord[i : i+1]
		}
		return ""
	}
	return foldedLetters[r]
}

// foldedLetters holds the accented letters of the languages written with Latin letters, and the small digits of
// chemical formulas and powers. They are listed by what they become.
var foldedLetters = func() map[rune]string {
	m := map[rune]string{}
	for plain, letters := range map[string]string{
		"a": "àáâãäåāăąª", "c": "çćĉċč", "d": "ďđð", "e": "èéêëēĕėęě", "g": "ĝğġģ", "h": "ĥħ", "i": "ìíîïĩīĭįı",
		"j": "ĵ", "k": "ķĸ", "l": "ĺļľŀł", "n": "ñńņňŉŋ", "o": "òóôõöøōŏőº", "r": "ŕŗř", "s": "śŝşšſș", "t": "ţťŧț",
		"u": "ùúûüũūŭůűųµμ", "w": "ŵ", "y": "ýÿŷ", "z": "źżž", "ae": "æ", "oe": "œ", "ss": "ß", "th": "þ", "ij": "ĳ",
		"0": "⁰₀", "1": "¹₁", "2": "²₂", "3": "³₃", "4": "⁴₄", "5": "⁵₅", "6": "⁶₆", "7": "⁷₇", "8": "⁸₈", "9": "⁹₉",
	} {
		for _, r := range letters {
			m[r] = plain
		}
	}
	return m
}()
