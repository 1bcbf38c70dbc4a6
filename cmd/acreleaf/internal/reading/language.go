package reading

import "strings"

// languages are those that a paragraph is told to be in.
var languages = [...]string{"en", "es"}

// common are the small words of a language that are none of the other's: nobody writes a sentence or two without them.
// Each has the place of its language in the list.
var common = smallWords(
	"the of and is are to that with for your you it this from not be was has have which by or an at than "+
		"when if then what how do does",
	"el la los las de del y en que un una es con por para su sus se lo al más o como si está cuando esta "+
		"este usted qué ni le")

// fewCommon is how many of them tell a language: less may be a name, or a line quoted from a report.
const fewCommon = 4

// Language is the language of a paragraph by its small words, or "" where they do not tell it.
func Language(paragraph string) string {
	var counts [len(languages)]int
	all := 0
	for word := range Words(paragraph) {
		if len(word) > longestCommon {
			continue
		}
		if language, is := common[strings.ToLower(word)]; is {
			counts[language]++
			all++
		}
	}
	for i, n := range counts {
		if others := all - n; n >= fewCommon && n > 2*others {
			return languages[i]
		}
	}
	return ""
}

// longestCommon is how many bytes the longest of them has. No word of more becomes one of them in small letters.
var longestCommon = func() int {
	longest := 0
	for word := range common {
		longest = max(longest, len(word))
	}
	return longest
}()

// smallWords puts the words of the languages together.
func smallWords(texts ...string) map[string]int {
	set := map[string]int{}
	for language, words := range texts {
		for word := range strings.FieldsSeq(words) {
			set[word] = language
		}
	}
	return set
}
