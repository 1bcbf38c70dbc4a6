package reading

import "strings"

// SpanishSyllables counts the syllables of a Spanish word by the rules of its spelling (Real Academia Española,
// Ortografía de la lengua española, 2010: diphthongs, triphthongs and hiatus). An open vowel (a, e, o) is a syllable;
// a closed one (i, u, and y at the end of a word) beside an open one, or beside another closed one, belongs to its
// syllable unless it has an accent and the other is open. The "u" of que, qui, gue and gui is not heard; an "h"
// between vowels parts nothing.
func SpanishSyllables(word string) int {
	letters := []rune(spanishFold.Replace(strings.ToLower(word)))
	count := 0
	for i := 0; i < len(letters); {
		if !spanishVowel(letters, i) {
			i++
			continue
		}
		end := i + 1
		for end < len(letters) && spanishVowel(letters, end) {
			end++
		}
		count += runSyllables(letters[i:end])
		i = end
	}
	return max(1, count)
}

// spanishFold takes away what is not heard between vowels or makes no difference to them. A hyphen stays, and parts.
var spanishFold = strings.NewReplacer("que", "ke", "qui", "ki", "qué", "ké", "quí", "kí", "gue", "ge", "gui", "gi",
	"gué", "gé", "guí", "gí", "ü", "u", "ah", "a", "eh", "e", "ih", "i", "oh", "o", "uh", "u", "áh", "á", "éh", "é",
	"íh", "í", "óh", "ó", "úh", "ú", "à", "á")

func spanishVowel(word []rune, i int) bool {
	if strings.ContainsRune("aeiouáéíóú", word[i]) {
		return true
	}
	return word[i] == 'y' && i == len(word)-1 && i > 0
}

// runSyllables counts the syllables of vowels that are side by side.
func runSyllables(vowels []rune) int {
	count := 1
	for i := 1; i < len(vowels); i++ {
		if apart(vowels[i-1], vowels[i]) {
			count++
		}
	}
	return count
}

// apart says whether two vowels side by side are two syllables.
func apart(a, b rune) bool {
	if a == b || isOpen(a) && isOpen(b) {
		return true
	}
	return isOpen(a) && isAccentedClosed(b) || isAccentedClosed(a) && isOpen(b)
}

func isOpen(r rune) bool           { return strings.ContainsRune("aeoáéó", r) }
func isAccentedClosed(r rune) bool { return r == 'í' || r == 'ú' }
