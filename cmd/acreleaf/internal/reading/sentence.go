package reading

import (
	"iter"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Span is a part of a text, by bytes.
type Span struct{ Start, End int }

// Sentences cuts a paragraph into sentences. A full stop, a question mark, an exclamation mark or a colon ends one when
// white space and no small letter follows, and when it is not the full stop of a shortened word.
func Sentences(paragraph string) []Span {
	var sentences []Span
	start := 0
	for at, r := range paragraph {
		if !strings.ContainsRune(".!?:", r) {
			continue
		}
		rest := paragraph[at+1:]
		after := strings.TrimLeft(rest, `"')”’»`)
		next := strings.TrimLeft(after, " \t\n")
		if after != "" && (next == after || beginsSmall(next)) || r == '.' && shortened(paragraph[start:at]) {
			continue
		}
		end := len(paragraph) - len(after)
		sentences = append(sentences, Span{start, end})
		start = len(paragraph) - len(next)
	}
	if strings.TrimSpace(paragraph[start:]) != "" {
		sentences = append(sentences, Span{start, len(strings.TrimRight(paragraph, " \t\n"))})
	}
	return sentences
}

func beginsSmall(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLower(r)
}

// abbreviations are words that end with a full stop inside a sentence, in English and in Spanish.
var abbreviations = map[string]bool{
	"dr": true, "mr": true, "mrs": true, "ms": true, "st": true, "no": true, "vs": true, "fig": true, "approx": true,
	"sr": true, "sra": true, "dra": true, "núm": true, "pág": true, "aprox": true, "ud": true, "uds": true, "ej": true,
}

// shortened says whether the last word before a full stop is a shortened one or a single letter, as of a name.
func shortened(before string) bool {
	word := before[strings.LastIndexAny(before, " \t\n(")+1:]
	return abbreviations[strings.ToLower(word)] || utf8.RuneCountInString(word) == 1 && isLetter(word)
}

func isLetter(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsLetter(r)
}

// Words gives the words of a sentence: runs of letters, with hyphens and apostrophes between them. What has a digit in
// it is no word: how hard a number is to read, no formula tells.
func Words(sentence string) iter.Seq[string] {
	return func(yield func(string) bool) {
		start, digits := -1, false
		for at, r := range sentence {
			switch {
			case 'a' <= r && r <= 'z' || unicode.IsLetter(r) || r == '\'' || r == '’' || r == '-':
			case unicode.IsDigit(r):
				digits = true
			default:
				if start >= 0 && !digits && !yieldWord(sentence[start:at], yield) {
					return
				}
				start, digits = -1, false
				continue
			}
			if start < 0 {
				start = at
			}
		}
		if start >= 0 && !digits {
			yieldWord(sentence[start:], yield)
		}
	}
}

// yieldWord gives a word without the hyphens and apostrophes around it, if anything is left of it.
func yieldWord(field string, yield func(string) bool) bool {
	word := strings.Trim(field, "'’-")
	return word == "" || yield(word)
}
