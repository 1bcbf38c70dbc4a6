package config

import "fmt"

// A See is a word under which a reader may look in the index, and the words of the index that it leads to.
type See struct {
	Word Value
	To   []Value
}

func readSees(t *Table, languages []string) map[string][]See {
	byLanguage := t.Table("see", "the list of words that lead to others", languages)
	if byLanguage == nil {
		return nil
	}
	sees := map[string][]See{}
	for _, language := range byLanguage.Keys() {
		words := byLanguage.Table(language, fmt.Sprintf("the words in the language %q", language), nil)
		if words == nil {
			continue
		}
		for _, word := range words.Keys() {
			s := See{Word: Value{Text: word, Span: words.KeySpan(word)}, To: words.List(word)}
			if len(s.To) == 0 {
				words.Fault(word, "value-empty", fmt.Sprintf("%q leads to no word", word),
					"type a word of the index after the colon, or take the line out")
				continue
			}
			sees[language] = append(sees[language], s)
		}
	}
	return sees
}
