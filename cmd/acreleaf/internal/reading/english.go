package reading

import "strings"

// EnglishSyllables estimates the syllables of an English word from its letters: one for each run of vowels, without an
// "e" that is not heard, and with those that a run hides. A word with hyphens is counted part by part.
func EnglishSyllables(word string) int {
	count := 0
	for part := range strings.SplitSeq(strings.ToLower(word), "-") {
		count += englishPart(part)
	}
	return count
}

// heardApart are runs of letters in which two vowels beside each other are two syllables.
var heardApart = []string{"ia", "io", "iu", "eo", "ua", "uo", "riet", "dien", "lien", "nuit", "duit", "tuit", "ying",
	"being", "seeing"}

// heardTogether are runs in which a vowel of those is not heard by itself.
var heardTogether = []string{"tia", "cia", "sio", "tio", "cio", "gio", "gia", "geo", "xio", "quo", "qua", "gua", "guo",
	"eau", "eous", "cious", "tious", "iou"}

func englishPart(word string) int {
	word = strings.TrimSuffix(strings.TrimSuffix(word, "'s"), "’s")
	if word == "" {
		return 0
	}
	count, inVowels := 0, false
	for i := range len(word) {
		vowel := isVowel(word, i)
		if vowel && !inVowels {
			count++
		}
		inVowels = vowel
	}
	for _, run := range heardApart {
		count += strings.Count(word, run)
	}
	for _, run := range heardTogether {
		count -= strings.Count(word, run)
	}
	return max(1, count-silentEnd(word))
}

// isVowel counts "y" as a vowel but at the start of a word or before a vowel that it leads.
func isVowel(word string, i int) bool {
	if strings.IndexByte("aeiou", word[i]) >= 0 {
		return true
	}
	return word[i] == 'y' && i > 0 && (i+1 == len(word) || strings.IndexByte("aeiou", word[i+1]) < 0)
}

// silentEnd counts the syllable of an ending that is written and not heard: "made", "baked", "makes", but not "table",
// "needed", "watches".
func silentEnd(word string) int {
	switch {
	case len(word) < 3:
		return 0
	case len(word) > 3 && strings.HasSuffix(word, "ed"):
		if strings.IndexByte("td", word[len(word)-3]) < 0 && !isVowel(word, len(word)-3) {
			return 1
		}
		return 0
	case len(word) > 3 && strings.HasSuffix(word, "es"):
		stem := word[:len(word)-2]
		if strings.IndexByte("sxzgc", stem[len(stem)-1]) >= 0 || strings.HasSuffix(stem, "ch") ||
			strings.HasSuffix(stem, "sh") || consonantAnd(stem, 'l') || isVowel(stem, len(stem)-1) {
			return 0
		}
		return 1
	case strings.HasSuffix(word, "ely"), strings.HasSuffix(word, "eful"), strings.HasSuffix(word, "eless"),
		strings.HasSuffix(word, "ement"), strings.HasSuffix(word, "efully"):
		return 1
	case word[len(word)-1] == 'e' && !isVowel(word, len(word)-2) && !consonantAnd(word[:len(word)-1], 'l'):
		return 1
	}
	return 0
}

// consonantAnd says whether a text ends in a consonant and then a letter, as "tabl" does.
func consonantAnd(text string, letter byte) bool {
	return len(text) > 1 && text[len(text)-1] == letter && !isVowel(text, len(text)-2)
}
