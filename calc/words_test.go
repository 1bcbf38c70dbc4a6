package calc_test

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/calc/words"
)

// asked are the keys that the calculations of the catalogue ask for in a language. Those of the facts are tested in
// calc/fact.
func asked(t *testing.T, language string) map[words.Key]bool {
	t.Helper()
	all := map[words.Key]bool{}
	for _, s := range calc.Standard().All() {
		s = s.In(language)
		if s.Texts == nil {
			t.Errorf("%s has no file calc/words/%s/%s.txt", s.Name, words.English, s.Name)
			continue
		}
		maps.Copy(all, s.Texts.Asked())
	}
	return all
}

// A text is in the files because a sheet has a place for it, in every language: a key that was misspelled, or whose
// part is gone, is told.
func TestEveryTextHasItsPlace(t *testing.T) {
	for _, language := range words.Languages() {
		known := asked(t, language)
		used := map[words.Place]bool{}
		for _, key := range words.Keys(language) {
			_, at, _ := words.Text(language, key)
			used[at] = used[at] || known[key]
		}
		for _, key := range words.Keys(language) {
			others := []string{"hazards", "sources", "practice", "block"}
			if _, at, _ := words.Text(language, key); !used[at] && !slices.Contains(others, key.File) {
				t.Errorf("calc/words/%s/%s: no calculation asks for this key", language, key)
			}
		}
		for _, name := range words.Calculations(language) {
			if calc.Standard().Find(name) == nil {
				t.Errorf("calc/words/%s/%s.txt: there is no calculation of that name", language, name)
			}
		}
	}
}

var braces = regexp.MustCompile(`\{[^{}]*\}`)

// named lists what is in braces, each once and without how it is written.
func named(text string) []string {
	var names []string
	for _, name := range braces.FindAllString(text, -1) {
		names = append(names, strings.TrimSuffix(strings.Trim(name, "{}"), " bare"))
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// A translation has the numbers of the English text in it, and no others. That each is a number of the sheet is seen
// when the sheet is built.
func TestTranslationsHaveTheSameNumbers(t *testing.T) {
	for _, language := range words.Languages() {
		for _, key := range words.Keys(language) {
			text, _, _ := words.Text(language, key)
			english, _, _ := words.Text(words.English, key)
			if strings.Count(text, "{") != len(braces.FindAllString(text, -1)) {
				t.Errorf("calc/words/%s/%s: a brace is not closed in %q", language, key, text)
			}
			if got, want := named(text), named(english); !slices.Equal(got, want) {
				t.Errorf("calc/words/%s/%s has {%s}, and in English {%s}", language, key, strings.Join(got, "}, {"),
					strings.Join(want, "}, {"))
			}
		}
	}
}

// A sentence that two places need is in one of them, or in shared.txt.
func TestNoSentenceStandsTwice(t *testing.T) {
	for _, language := range words.Languages() {
		places := map[string]words.Place{}
		for _, key := range words.Keys(language) {
			text, at, same := words.Text(language, key)
			if same || !strings.HasSuffix(text, ".") || len(strings.Fields(text)) < 4 {
				continue
			}
			if first, again := places[text]; again && first != at {
				t.Errorf("calc/words/%s/%s says what line %d of %s.txt says: write \"= \" and the key of that",
					language, key, first.Line, first.File)
			}
			places[text] = at
		}
	}
}

// What is not translated is told in English and marked; it is listed here, and is no fault.
func TestUntranslatedTextsAreListed(t *testing.T) {
	for _, language := range words.Languages() {
		missing := words.Untranslated(language)
		t.Logf("%s lacks %d texts", language, len(missing))
		for _, key := range missing {
			t.Logf("calc/words/%s/%s", language, key)
		}
		if language == words.English && len(missing) > 0 {
			t.Error("English lacks what English has")
		}
	}
}
