package sheet

import (
	"cmp"
	"strings"
	"sync"

	"acreleaf/calc/words"
)

// The texts of a calculation of the catalogue are in calc/words, by keys that follow from the sheet, such as
// given.depth.label. Where its Go code tells something it gives the id of the text: "deep-layer" for remark.deep-layer.
// A sheet that an author wrote has no file of texts there, and brings the texts themselves.

// text is the text of a key, which the sheet must have: own is the text itself in a sheet without a file of texts.
func (s *Sheet) text(key, own string) string {
	if s.Texts == nil {
		return own
	}
	text := s.textIf(key, "")
	if text == "" {
		s.fault("there is no text %s in calc/words/%s/%s.txt", key, words.English, s.Name)
	}
	return text
}

// textIf is the text of a key that the sheet may have.
func (s *Sheet) textIf(key, own string) string {
	if s.Texts == nil {
		return own
	}
	text, foreign, _ := s.Texts.Find(key)
	if foreign {
		s.foreign[text] = true
	}
	return text
}

// workName is what the work calls a part of the sheet: by its own words, or by those of its name, or by the name.
func (s *Sheet) workName(key, name, own string) string {
	if s.Texts == nil {
		return cmp.Or(own, spaced(name))
	}
	if work := s.textIf(key, ""); work != "" {
		return work
	}
	return cmp.Or(s.textIf("name."+name, ""), spaced(name))
}

// language is the language of the sheet's texts, and of what it says with its numbers.
func (s *Sheet) language() string {
	if s.Texts == nil {
		return words.Language(s.Written)
	}
	return s.Texts.Language
}

// general are the words that the sheet tells its numbers with.
func (s *Sheet) general() *words.General { return words.InGeneral(s.language()) }

// LangOf is the language of a text of the sheet on a page in another: "en" for one that is not translated yet, the
// author's for the texts of an author's own sheet. It is "" for a text in the language of the page, and where the page
// tells none.
func (s *Sheet) LangOf(text, page string) string {
	language := cmp.Or(s.Written, s.language())
	if s.foreign[text] {
		language = words.English
	}
	if page == "" || primary(page) == primary(language) {
		return ""
	}
	return language
}

// primary is the language of a tag without its region: "es" of "es-MX".
func primary(tag string) string {
	language, _, _ := strings.Cut(strings.ToLower(tag), "-")
	return language
}

// In is the same calculation with its texts in another language. A sheet of an author has one language only.
func (s *Sheet) In(language string) *Sheet {
	language = words.Language(language)
	if s.Texts == nil || language == s.Texts.Language {
		return s
	}
	key := translation{s.Name, language}
	if known, ok := translations.Load(key); ok {
		return known.(*Sheet)
	}
	known, _ := translations.LoadOrStore(key, mustBuild(s.Name, words.Of(s.Name, language), s.build))
	return known.(*Sheet)
}

var translations sync.Map // of *Sheet by translation

type translation struct{ name, language string }

// spaced is a name as it reads in a sentence or a formula: "crop removal".
func spaced(name string) string { return strings.ReplaceAll(name, "-", " ") }
