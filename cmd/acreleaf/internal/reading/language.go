package reading

import "strings"

// common are the small words of a language that are none of the other's: nobody writes a sentence or two without them.
var common = map[string]map[string]bool{
	"en": setOf("the of and is are to that with for your you it this from not be was has have which by or an at than " +
		"when if then what how do does"),
	"es": setOf("el la los las de del y en que un una es con por para su sus se lo al más o como si está cuando esta " +
		"este usted qué ni le"),
}

// fewCommon is how many of them tell a language: less may be a name, or a line quoted from a report.
const fewCommon = 4

// Language is the language of a paragraph by its small words, or "" where they do not tell it.
func Language(paragraph string) string {
	counts := map[string]int{}
	for word := range Words(paragraph) {
		for language, words := range common {
			if words[strings.ToLower(word)] {
				counts[language]++
			}
		}
	}
	for language, n := range counts {
		others := 0
		for other, m := range counts {
			if other != language {
				others += m
			}
		}
		if n >= fewCommon && n > 2*others {
			return language
		}
	}
	return ""
}

func setOf(words string) map[string]bool {
	set := map[string]bool{}
	for word := range strings.FieldsSeq(words) {
		set[word] = true
	}
	return set
}
